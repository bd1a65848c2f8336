import { describe, expect, test } from 'vitest';
import { cutting } from '../../src/cutting.js';
import { layoutJson } from '../../src/files/layout-json.js';
import { sheetsPage } from '../../src/files/sheets-page.js';
import { sheetSvg } from '../../src/files/svg.js';
import type { Point } from '../../src/geometry/path.js';
import { planCamera } from '../../src/pipeline.js';
import { cutMinutes } from '../../src/sheets/cut-time.js';
import type { LayOut } from '../../src/sheets/lay-out.js';
import type { Sheet } from '../../src/sheets/sheet.js';
import { keptDesign } from '../designs/kept-design.js';
import { readSvg } from './read-svg.js';

describe.each(['heron', 'bittern'])('what the terminal says of the sheets of %s, against a ruler', (name) => {
  const design = keptDesign(name);
  const planned = planCamera(design);
  const { cut } = cutting(planned, planned.parts);
  const lines = sheetsPage(cut, (sheet) => cutMinutes(sheet, design.laser));
  const said = lines.join('\n');
  const drawn = cut.sheets.map((sheet) => ({
    sheet,
    ...readSvg(sheetSvg(sheet, { title: '', description: '', palette: design.laser.palette })),
  }));
  const laid = JSON.parse(layoutJson(cut.sheets, design.laser)).layouts.flatMap((l: { sheets: unknown[] }) => l.sheets);

  test('counts the sheets of each material, their size, and what is needed at least', () => {
    for (const { material, sheets, bound } of cut.uses) {
      const [first] = drawn.filter(({ sheet }) => sheet.material === material);
      const size = `${first?.sheet.width} × ${first?.sheet.height} mm`;
      const line = lines.find((text) => text.startsWith(`${material}: `));
      expect(line).toContain(`${sheets} ${sheets === 1 ? 'sheet' : 'sheets'} of ${size}`);
      expect(drawn.filter(({ sheet }) => sheet.material === material)).toHaveLength(sheets);
      if (bound === null) throw new Error('the bound was not reckoned');
      if (sheets > bound) expect(line).toContain(`at least ${bound} ${bound === 1 ? 'is' : 'are'} needed`);
    }
  });

  test('the metres are those of all cuts on the pictures, to a tenth, and those of layout.json', () => {
    const cuts = drawn.flatMap(({ paths }) => paths.filter(({ group }) => group !== 'engrave'));
    const metres = cuts.reduce((sum, { points }) => sum + around(points), 0) / 1000;
    const told = Number(/([\d.]+) m to cut/.exec(said)?.[1]);
    expect(Math.abs(told - metres)).toBeLessThanOrEqual(0.0501);
    const listed = laid.reduce((sum: number, { cutLength }: { cutLength: number }) => sum + cutLength, 0) / 1000;
    expect(listed).toBeCloseTo(metres, 3);
  });

  test('the minutes of each sheet follow from its picture and the speeds of the design, and add up', () => {
    const { cutSpeed, engraveSpeed, travelSpeed, pierceTime } = design.laser;
    const minutes = drawn.map(({ paths }) => {
      const [strokes, cuts] = [paths.filter((p) => p.group === 'engrave'), paths.filter((p) => p.group !== 'engrave')];
      const engraved = strokes.reduce((sum, p) => sum + (isLoop(p.commands) ? around(p.points) : along(p.points)), 0);
      const cutLength = cuts.reduce((sum, { points }) => sum + around(points), 0);
      let head: Point = { x: 0, y: 0 };
      let travelled = 0;
      for (const { points, commands } of paths) {
        travelled += apart(head, points[0] as Point);
        head = (isLoop(commands) ? points[0] : points.at(-1)) as Point;
      }
      return (cutLength / cutSpeed + engraved / engraveSpeed + travelled / travelSpeed + cuts.length * pierceTime) / 60;
    });
    minutes.forEach((each, i) => {
      expect(laid[i].estimatedMinutes).toBeCloseTo(each, 2);
    });
    const numbers = lines.filter((line) => /: [\d, and]+ minutes?\.$/.test(line)).flatMap((line) => (/: (.*) minute/.exec(line)?.[1] ?? '').match(/\d+/g) ?? []); // biome-ignore format: one line
    expect(numbers.map(Number)).toEqual(minutes.map((each) => Math.max(1, Math.round(each))));
    expect(Number(/about (\d+) minutes/.exec(said)?.[1])).toBe(numbers.map(Number).reduce((sum, n) => sum + n, 0));
  });

  test('the largest piece left is as large as said, and nothing is drawn on it', () => {
    const [, width, height, of] = /Largest piece left: (\d+) × (\d+) mm of (\S+)\./.exec(said) ?? [];
    const { sheet, paths } = drawn.find(({ sheet: own }) => own.name === of) ?? expect.fail();
    const all = paths.flatMap(({ points }) => points);
    const [xs, ys] = [all.map(({ x }) => x), all.map(({ y }) => y)];
    // over the full height beside all parts, or over the full width above them
    const room =
      Number(height) === sheet.height
        ? Math.max(sheet.width - Math.max(...xs), Math.min(...xs))
        : Math.max(sheet.height - Math.max(...ys), Math.min(...ys));
    expect(Number(height) === sheet.height ? Number(width) : Number(height)).toBeLessThanOrEqual(room);
    for (const { left, right, bottom, top } of cut.offcuts)
      expect((right - left) * (top - bottom)).toBeLessThanOrEqual((Number(width) + 1) * (Number(height) + 1));
  });
});

describe('the words', () => {
  const sheet = (name: string, change: Partial<Sheet> = {}): Sheet => ({
    name,
    material: 'plywood-4',
    thickness: 4,
    width: 600,
    height: 400,
    margin: 5,
    spacing: 2,
    placed: [],
    operations: [],
    usedArea: 0,
    cutLength: 5000,
    travelLength: 0,
    ...change,
  });
  const page = (sheets: readonly Sheet[], use: Partial<LayOut['uses'][number]>, offcuts: LayOut['offcuts'] = []) => {
    const uses = [{ material: 'plywood-4', sheets: sheets.length, atHand: 0, bound: 1, use: 0.714, ...use }];
    return sheetsPage({ sheets, uses, offcuts }, () => 8.4);
  };
  const three = [sheet('plywood-4-1'), sheet('plywood-4-2'), sheet('plywood-4-3')];

  test('say that fewer are impossible where they are', () =>
    expect(page(three, { bound: 3 })).toEqual([
      'plywood-4: 3 sheets of 600 × 400 mm; fewer than 3 is impossible; 71 % used.',
      '15 m to cut in about 24 minutes at the laser.',
      'plywood-4-1 to 3: 8, 8 and 8 minutes.',
    ]));

  test('say else how many are needed at least', () => {
    expect(page(three, { bound: 2 })[0]).toBe('plywood-4: 3 sheets of 600 × 400 mm; at least 2 are needed; 71 % used.');
    expect(page(three, { bound: 1 })[0]).toContain('at least 1 is needed');
  });

  test('of one sheet are few', () =>
    expect(page([sheet('plywood-4-1')], {})).toEqual([
      'plywood-4: 1 sheet of 600 × 400 mm; 71 % used.',
      '5 m to cut in about 8 minutes.',
    ]));

  test('tell sheets of two sizes and remnants apart, and what was at hand', () => {
    const remnant = { file: 'a.json', material: 'plywood-4', thickness: 4, outline: [], holes: [] };
    const mixed = [sheet('plywood-4-1'), sheet('plywood-4-2', { width: 300 }), sheet('plywood-4-3', { remnant })];
    expect(page(mixed, { atHand: 2, bound: 2 })[0]).toBe(
      'plywood-4: 1 sheet of 600 × 400 mm and 1 sheet of 300 × 400 mm and 1 remnant; 2 at hand; at least 2 are needed; 71 % used.',
    );
  });

  test('name the largest piece that is left, in millimetres that are there', () => {
    const offcuts = [
      { sheet: 'plywood-4-1', left: 0, bottom: 300, right: 600, top: 400 },
      { sheet: 'plywood-4-3', left: 218.04, bottom: 0, right: 600, top: 400 },
    ];
    expect(page(three, {}, offcuts)[1]).toBe('Largest piece left: 381 × 400 mm of plywood-4-3.');
  });

  test('say so where nothing is cut', () =>
    expect(sheetsPage({ sheets: [], uses: [], offcuts: [] }, () => 0)).toEqual(['Nothing is cut from sheet.']));
});

const apart = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);
const isLoop = (commands: string): boolean => /z\s*$/i.test(commands);
const along = (points: readonly Point[]): number =>
  points.slice(1).reduce((sum, p, i) => sum + apart(p, points[i] as Point), 0);
const around = (points: readonly Point[]): number => along(points) + apart(points.at(-1) as Point, points[0] as Point);
