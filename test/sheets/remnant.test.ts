import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { remnantJson } from '../../src/files/remnant-json.js';
import { flatten, type Point, polygon, reversed } from '../../src/geometry/path.js';
import { boxAt, circle, rectangle } from '../../src/geometry/shapes.js';
import type { FlatPart } from '../../src/model/part.js';
import type { Remnant } from '../../src/model/remnant.js';
import { partsPart } from '../../src/sheets/checks.js';
import { layOut, type Piece } from '../../src/sheets/lay-out.js';
import { leftOver, offcutOf } from '../../src/sheets/remnant.js';
import { readRemnant } from '../../src/sheets/remnant-file.js';
import type { Sheet } from '../../src/sheets/sheet.js';
import type { SheetRemnant } from '../../src/sheets/stock.js';
import { plate } from './invented-camera.js';
import { loopsGap, polygonArea, within } from './measure.js';

const kerf = 0.15;
const margin = 5;
const ply = { material: 'plywood-4.05', thickness: 4.05 };
const whole = { ...ply, sheet: { width: 600, height: 400 } };

const rect = (w: number, h: number) => rectangle(boxAt(0, 0, w, h));
const one = (part: FlatPart): Piece => ({ part, count: 1 });
const cut = (pieces: readonly Piece[], more: readonly SheetRemnant[] = []) =>
  layOut(pieces, {
    materials: [
      whole,
      ...more.map((remnant) => ({
        ...ply,
        sheet: {
          width: Math.max(...remnant.outline.map(({ x }) => x)),
          height: Math.max(...remnant.outline.map(({ y }) => y)),
        },
        remnant,
      })),
    ],
    kerf,
    effort: 0,
  });

function onlySheet(pieces: readonly Piece[]): Sheet {
  const [sheet, second] = cut(pieces).sheets;
  if (sheet === undefined || second !== undefined) throw new Error('not one sheet');
  return sheet;
}

const named = (file: string, remnant: Remnant): SheetRemnant => ({ ...remnant, file });

describe('what is left of a sheet', () => {
  const frame = plate('R3', rect(300, 300), { holes: [reversed(rect(200, 180))] });
  const left = leftOver(onlySheet([one(frame)]));

  test('is the sheet with a hole, and the waste of the window', () =>
    expect(left.map(({ name }) => name)).toEqual(['plywood-4.05-1', 'plywood-4.05-1-R3.1.1']));

  test('the hole is as large as the part and the cut round it, the waste as its window less the cut', () => {
    const [sheet, waste] = left.map(({ remnant }) => remnant);
    expect(polygonArea(sheet?.outline ?? [])).toBe(600 * 400);
    expect(sheet?.holes.map(polygonArea)).toEqual([expect.closeTo(-(300.15 * 300.15), 6)]); // half a kerf each side
    expect(polygonArea(waste?.outline ?? [])).toBeCloseTo(199.85 * 179.85, 6);
    expect(waste?.holes).toEqual([]);
  });

  test('the clear rectangle has a margin to the hole and to the edge', () => {
    const [sheet, waste] = left.map(({ clear }) => clear);
    // the part lies in the corner, 300.15 wide behind a margin of 5: 600 − 5 − (305.15 + 5) by 400 − 10
    const { left: l = 0, right: r = 0, bottom: b = 0, top: t = 0 } = sheet ?? {};
    expect([r - l, t - b]).toEqual([expect.closeTo(284.85, 3), expect.closeTo(390, 3)]);
    expect(waste).toEqual({
      left: expect.closeTo(5, 3),
      bottom: expect.closeTo(5, 3),
      right: expect.closeTo(194.85, 3),
      top: expect.closeTo(174.85, 3),
    });
  });

  test('waste with parts cut from it has their holes', () => {
    const nested = leftOver(
      onlySheet([one(frame), one(plate('D', circle(0, 0, 60))), one(plate('W', rect(280, 380)))]),
    );
    const waste = nested.find(({ name }) => name.includes('R3'))?.remnant;
    expect(waste?.holes).toHaveLength(1);
    // a disc of 60.15: its chords lie in the waste, so the hole is a little larger than the disc
    const hole = -polygonArea(waste?.holes[0] ?? []);
    expect(hole).toBeGreaterThan(Math.PI * 30.075 ** 2);
    expect(hole).toBeLessThan(Math.PI * 30.2 ** 2);
    expect(within({ x: 0, y: 0 }, waste?.holes[0] ?? [])).toBe(false);
    for (const corner of waste?.holes[0] ?? []) expect(within(corner, waste?.outline ?? [])).toBe(true);
  });

  test('less than 60 mm is not kept', () => {
    // beside a part of 520 remain 600 − 520.15 − 5, and of that two margins are no use: 64.85; of 526, 58.85
    expect(leftOver(onlySheet([one(plate('P', rect(520, 385)))]))).toHaveLength(1);
    expect(leftOver(onlySheet([one(plate('P', rect(526, 385)))]))).toHaveLength(0);
    expect(leftOver(onlySheet([one(plate('P', rect(560, 385), { holes: [reversed(rect(69, 69))] }))]))).toHaveLength(0);
    expect(leftOver(onlySheet([one(plate('P', rect(560, 385), { holes: [reversed(rect(71, 71))] }))]))).toHaveLength(1);
  });

  test('is read back from its file as it was', () => {
    for (const piece of left) {
      const text = remnantJson(piece, { from: 'Heron, revision ABCDEF, plywood-4.05-1' });
      const { from, clear } = JSON.parse(text);
      expect(from).toBe('Heron, revision ABCDEF, plywood-4.05-1');
      expect(clear.right).toBeCloseTo(piece.clear.right, 3);
      const { material, thickness, outline, holes } = piece.remnant;
      const near = (loop: readonly Point[]) => loop.map(({ x, y }) => ({ x: expect.closeTo(x, 3), y: expect.closeTo(y, 3) })); // biome-ignore format: one line
      expect(readRemnant(text)).toEqual({ material, thickness, outline: near(outline), holes: holes.map(near) });
    }
  });
});

describe('the strip that a sheet keeps clear', () => {
  test('reaches from one spacing beyond the last cut to the edge', () =>
    expect(offcutOf(onlySheet([one(plate('P', rect(300, 300)))]))).toEqual({
      sheet: 'plywood-4.05-1',
      // 5 + 300.15 + 2.025
      left: expect.closeTo(307.175, 9),
      right: 600,
      bottom: 0,
      top: 400,
    }));

  test('none where less than 60 mm is clear', () => {
    // 600 − 5 − 520.15 − 2.025 is 72.8, 600 − 5 − 540.15 − 2.025 is 52.8
    expect(offcutOf(onlySheet([one(plate('P', rect(520, 385)))]))).not.toBeNull();
    expect(offcutOf(onlySheet([one(plate('P', rect(540, 385)))]))).toBeNull();
  });
});

/** Outlines as they are cut, by part and number. */
const outlinesOn = (sheet: Sheet) =>
  sheet.operations
    .filter(({ layer }) => layer === 'cut-outside' || layer === 'cut-nested')
    .flatMap(({ paths }) => paths.map(({ path }) => flatten(path.vertices, 0.01)));

/** Everything that is wrong with how parts lie on a remnant, told by code that shares nothing with the packer. */
function faultsOn(sheet: Sheet, { outline, holes }: Remnant): readonly string[] {
  return outlinesOn(sheet).flatMap((piece, i) => {
    const corner = piece[0] ?? { x: Number.NaN, y: Number.NaN };
    const faults: string[] = [];
    if (!within(corner, outline)) faults.push(`${i} lies beside the wood`);
    // chords of 0.01, and a grid of a tenth of a micrometre
    if (loopsGap(piece, outline) < margin - 0.011) faults.push(`${i} is too near to the edge`);
    for (const hole of holes) {
      if (within(corner, hole)) faults.push(`${i} lies in a hole`);
      if (hole.some((p) => within(p, piece))) faults.push(`${i} lies over a hole`);
      if (loopsGap(piece, hole) < margin - 0.011) faults.push(`${i} is too near to a hole`);
    }
    return faults;
  });
}

const ring = (points: readonly (readonly [number, number])[]): readonly Point[] => points.map(([x, y]) => ({ x, y }));
const corner: Remnant = { ...ply, outline: ring([[0, 0], [300, 0], [300, 90], [110, 90], [110, 250], [0, 250]]), holes: [] }; // biome-ignore format: one line

describe('parts on a remnant', () => {
  test('lie on wood, away from its edge, before a new sheet is taken', () => {
    const { sheets, findings, uses } = cut(
      [one(plate('A', rect(280, 60))), one(plate('B', rect(80, 150)))],
      [named('corner.json', corner)],
    );
    expect(findings).toEqual([]);
    expect(sheets).toHaveLength(1);
    expect(sheets[0]).toMatchObject({ width: 300, height: 250, remnant: { file: 'corner.json' } });
    expect(faultsOn(sheets[0] as Sheet, corner)).toEqual([]);
    expect(uses[0]).toMatchObject({ sheets: 1, atHand: 1 });
    // two rectangles on an L of 300 × 90 and 110 × 160
    expect(uses[0]?.use).toBeCloseTo((280 * 60 + 80 * 150) / (300 * 90 + 110 * 160), 9);
  });

  test('a part as large as the rectangle round it goes to a new sheet', () => {
    const { sheets, findings } = cut([one(plate('A', rect(250, 200)))], [named('corner.json', corner)]);
    expect(findings).toEqual([]);
    expect(sheets.map(({ width }) => width)).toEqual([600]);
  });

  test('round holes and between them', () => {
    const hole = (x: number, y: number, d: number) => [...flatten(circle(x, y, d), 0.05)].reverse();
    const cutBefore: Remnant = {
      ...ply,
      outline: ring([[0, 0], [400, 0], [400, 300], [0, 300]]), // biome-ignore format: one line
      // two overlap, one reaches over the edge
      holes: [hole(100, 100, 120), hole(150, 100, 100), hole(400, 300, 150), hole(300, 60, 40)],
    };
    const { sheets, findings } = cut([{ part: plate('P', rect(60, 60)), count: 12 }], [named('holes.json', cutBefore)]);
    expect(findings).toEqual([]);
    const onIt = sheets.filter(({ remnant }) => remnant !== undefined);
    expect(onIt).toHaveLength(1);
    expect(onIt[0]?.placed.length).toBeGreaterThan(6);
    expect(faultsOn(onIt[0] as Sheet, cutBefore)).toEqual([]);
  });

  test('a remnant that holes divide is one sheet', () => {
    const divided: Remnant = {
      ...ply,
      outline: ring([[0, 0], [300, 0], [300, 100], [0, 100]]), // biome-ignore format: one line
      holes: [ring([[140, 4], [140, 96], [160, 96], [160, 4]])], // biome-ignore format: one line
    };
    const { sheets, findings } = cut([{ part: plate('P', rect(120, 80)), count: 2 }], [named('two.json', divided)]);
    expect(findings).toEqual([]);
    expect(sheets).toHaveLength(1);
    expect(sheets[0]?.placed.map(({ part, instance }) => `${part}.${instance}`)).toEqual(['P.1', 'P.2']);
    expect(faultsOn(sheets[0] as Sheet, divided)).toEqual([]);
  });

  test('what lies in a window on the second piece of a divided remnant lies in that window', () => {
    const divided: Remnant = {
      ...ply,
      outline: ring([[0, 0], [420, 0], [420, 200], [0, 200]]), // biome-ignore format: one line
      holes: [ring([[200, 4], [200, 196], [220, 196], [220, 4]])], // biome-ignore format: one line
    };
    // two frames fill both pieces; two discs find room in their windows alone
    const frame = plate('B', rect(185, 185), { holes: [reversed(rect(150, 150))] });
    const { sheets, findings } = cut(
      [
        { part: frame, count: 2 },
        { part: plate('D', circle(0, 0, 120)), count: 2 },
      ],
      [named('two.json', divided)],
    );
    expect(findings).toEqual([]);
    expect(sheets).toHaveLength(1);
    const cutAs = (layer: string) =>
      sheets[0]?.operations.find((o) => o.layer === layer)?.paths.map(({ path }) => flatten(path.vertices, 0.01)) ?? [];
    const windows = cutAs('cut-window');
    expect(windows).toHaveLength(2);
    const discs = cutAs('cut-nested').map((loop) => loop[0] ?? { x: 0, y: 0 });
    expect(discs).toHaveLength(2);
    for (const window of windows) expect(discs.filter((p) => within(p, window))).toHaveLength(1);
  });

  test('what is left of one job serves the next, and that of the next the one after', () => {
    let remnants: readonly SheetRemnant[] = [];
    const panel = one(plate('P', rect(250, 120)));
    for (const job of [1, 2, 3]) {
      const { sheets, findings } = cut([panel], remnants);
      expect(findings).toEqual([]);
      expect(sheets).toHaveLength(1);
      const [sheet] = sheets as [Sheet];
      expect(sheet.remnant?.file).toBe(job === 1 ? undefined : `${job - 1}.json`);
      if (sheet.remnant) expect(faultsOn(sheet, sheet.remnant)).toEqual([]);
      const [rest] = leftOver(sheet);
      if (rest === undefined) throw new Error('nothing was left');
      expect(rest.remnant.holes).toHaveLength(job);
      remnants = [named(`${job}.json`, rest.remnant)];
    }
  });

  test('parts-part: a piece pushed over an edge of it, or into a hole', () => {
    const { sheets } = cut([one(plate('A', rect(280, 60)))], [named('corner.json', corner)]);
    const sheet = sheets[0] as Sheet;
    const pushed = (x: number, y: number): Sheet => ({
      ...sheet,
      operations: sheet.operations.map(({ layer, paths }) => ({
        layer,
        paths: paths.map(({ id, path }) => ({
          id,
          path: { ...path, vertices: path.vertices.map((v) => ({ ...v, x: v.x + x, y: v.y + y })) },
        })),
      })),
    });
    const told = expect.objectContaining({
      rule: 'parts-part',
      level: 'error',
      limit: 5,
      message:
        'On plywood-4.05-1, A.1 comes nearer than 5 mm to the edge of the remnant corner.json or to a hole in it.',
    });
    expect(partsPart(pushed(0, 0))).toEqual([]);
    expect(partsPart(pushed(-0.1, 0))).toEqual([told]);
    expect(partsPart(pushed(0, 60))).toEqual([told]); // within the rectangle round it, beside the wood
    const hole = ring([[140, 30], [140, 50], [160, 50], [160, 30]]); // biome-ignore format: one line
    expect(partsPart({ ...sheet, remnant: named('corner.json', { ...corner, holes: [hole] }) })).toEqual([told]);
  });
});

describe('laws of remnants', () => {
  const between = (min: number, max: number) => fc.integer({ min, max });
  /** A staircase with rectangular and round holes anywhere in it. */
  const remnants: fc.Arbitrary<Remnant> = fc
    .record({
      steps: fc.array(fc.tuple(between(60, 200), between(60, 200)), { minLength: 1, maxLength: 3 }),
      holes: fc.array(fc.tuple(between(0, 400), between(0, 400), between(5, 120), fc.boolean()), { maxLength: 5 }),
    })
    .map(({ steps, holes }) => {
      const width = steps.reduce((sum, [w]) => sum + w, 0);
      let [x, y] = [width, 0];
      const rising: [number, number][] = [];
      for (const [w, h] of steps) {
        rising.push([x, y + h], [x - w, y + h]);
        [x, y] = [x - w, y + h];
      }
      return {
        ...ply,
        outline: ring([[0, 0], [width, 0], ...rising]), // biome-ignore format: one line
        holes: holes.map(
          ([cx, cy, size, round]) =>
          [...flatten(round ? circle(cx, cy, size) : polygon([[cx, cy], [cx + size, cy], [cx + size, cy + size / 2], [cx, cy + size / 2]]), 0.05)].reverse(), // biome-ignore format: one line
        ),
      };
    });
  const parts = fc
    .array(fc.tuple(between(20, 150), between(20, 150), fc.constantFrom('x', 'y', 'any'), fc.boolean()), {
      minLength: 1,
      maxLength: 8,
    })
    .map((list) =>
      list.map(([w, h, grain, round], i) =>
        one(plate(`P${i}`, round ? circle(0, 0, w) : rect(w, h), { grain: grain as FlatPart['grain'] })),
      ),
    );

  test('every piece once, on wood, away from edge and holes and from each other; what is left is left again', () =>
    fc.assert(
      fc.property(parts, fc.array(remnants, { minLength: 1, maxLength: 2 }), (pieces, pile) => {
        const files = pile.map((remnant, i) => named(`${i}.json`, remnant));
        const { sheets, findings } = cut(pieces, files);
        expect(findings.filter(({ level }) => level === 'error')).toEqual([]);
        expect(sheets.flatMap(({ placed }) => placed)).toHaveLength(pieces.length);
        for (const sheet of sheets) {
          if (sheet.remnant) expect(faultsOn(sheet, sheet.remnant)).toEqual([]);
          const outlines = outlinesOn(sheet);
          outlines.forEach((a, i) => {
            for (const b of outlines.slice(i + 1)) expect(loopsGap(a, b)).toBeGreaterThanOrEqual(2.025 - 0.02);
          });
          // a card of 50 × 50 put into the clear rectangle of what is left breaks no rule there
          for (const { remnant, clear } of leftOver(sheet)) {
            const card = [[0, 0], [50, 0], [50, 50], [0, 50]].map(([x = 0, y = 0]) => ({ x: clear.left + x, y: clear.bottom + y })); // biome-ignore format: one line
            expect(within({ x: clear.left + 1, y: clear.bottom + 1 }, remnant.outline)).toBe(true);
            for (const loop of [remnant.outline, ...remnant.holes])
              expect(loopsGap(card, loop)).toBeGreaterThanOrEqual(margin - 0.011);
            for (const hole of remnant.holes)
              expect(within({ x: clear.left + 25, y: clear.bottom + 25 }, hole)).toBe(false);
          }
        }
      }),
      { numRuns: 60, seed: 1906 },
    ));
});
