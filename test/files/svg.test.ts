import { describe, expect, test } from 'vitest';
import { pathData } from '../../src/files/path-data.js';
import { laserCaution, sheetSvg, sheetTitle, tidy } from '../../src/files/svg.js';
import { grown } from '../../src/geometry/clip.js';
import { flatten, moved, type Path } from '../../src/geometry/path.js';
import { circle } from '../../src/geometry/shapes.js';
import { workshopPalette } from '../../src/model/palette.js';
import type { Sheet } from '../../src/sheets/sheet.js';
import { inventedCamera } from '../sheets/invented-camera.js';
import { loopGap } from '../sheets/measure.js';
import { readSvg } from './read-svg.js';
import { kerf, sampleSheets } from './sample-sheets.js';

const written = (sheet: Sheet) =>
  sheetSvg(sheet, {
    title: sheetTitle({ name: 'Heron & Sons', revision: 'a1b2c3', of: 6, despite: [] }, sheet),
    description: laserCaution,
    palette: workshopPalette,
  });
const [sheet] = sampleSheets as [Sheet];
const svg = written(sheet);

describe('a sheet as SVG', () => {
  test('says from which remnant it is cut, where it is', () => {
    const remnant = { file: 'rack/7.json', material: 'plywood-4.05', thickness: 4.05, outline: [], holes: [] };
    const title = (own: Sheet) => sheetTitle({ name: 'Heron', revision: 'a1b2c3', of: 6, despite: [] }, own);
    expect(title({ ...sheet, remnant })).toBe(`${title(sheet)}; cut from the remnant rack/7.json`);
  });

  test('is true to size in any reader, M7.04 [verified: R52 units]', () => {
    expect(svg).toContain('width="600mm"');
    expect(svg).toContain('height="400mm"');
    expect(svg).toContain('viewBox="0 0 600 400"');
    expect(svg).not.toContain('transform');
  });

  test('carries name, revision, material and measured thickness', () => {
    expect(/<title>([^<]*)<\/title>/.exec(svg)?.[1]).toBe(
      'Heron &amp; Sons, revision a1b2c3, plywood-4.05 measured 4.05 mm, plywood-4.05-1 of 6',
    );
  });

  test('warns of fire, fumes and unknown plastics, and defers to the machine', () => {
    const words = /<desc>([^<]*)<\/desc>/.exec(svg)?.[1];
    for (const word of ['Never leave the laser alone', 'fume extraction', 'PVC', 'own instructions', 'local rules'])
      expect(words).toContain(word);
  });

  // the contract's names and order
  test('has the five operations as groups, in cutting order, on every sheet', () => {
    for (const s of sampleSheets)
      expect(readSvg(written(s)).groups).toEqual(['engrave', 'cut-inside', 'cut-nested', 'cut-window', 'cut-outside']);
  });

  test('has one loop a path, with an id of its own, and nothing but paths', () => {
    const { paths } = readSvg(svg);
    expect(paths.map(({ id, group }) => [group, id])).toEqual(
      sheet.operations.flatMap(({ layer, paths }) => paths.map(({ id }) => [layer, id])),
    );
    expect(new Set(paths.map(({ id }) => id)).size).toBe(paths.length);
    for (const { id, commands, group } of paths) {
      expect(id).toMatch(/^[^.]+\.\d+\.\d+$/);
      expect(commands.match(/M/g)).toHaveLength(1);
      if (group !== 'engrave') expect(commands).toMatch(/Z$/);
    }
    expect(svg).not.toMatch(/<(rect|circle|line|polyline|polygon|text|use|image)\b/);
  });

  test('is not changed by tidying it once more', () => expect(tidy(svg)).toBe(svg));

  test('is the same bytes each time', () => expect(written(sheet)).toBe(svg));

  test('has no number with an exponent, a bare point or a minus zero, M7.31 [common practice, no source]', () => {
    for (const { commands } of readSvg(svg).paths) {
      expect(commands).not.toMatch(/[eE]/);
      expect(commands).not.toMatch(/(^|[^\d])\.\d/);
      expect(commands).not.toMatch(/-0(?![\d.])/);
      for (const [, decimals] of commands.matchAll(/\.(\d+)/g)) expect(decimals?.length).toBeLessThanOrEqual(4);
    }
  });
});

describe('read back by another reader', () => {
  test('with the kerf undone by another offset, every finished outline and hole is met within a micrometre', () => {
    for (const s of sampleSheets) {
      const { paths } = readSvg(written(s));
      for (const { part: id, instance, x, y, rotation } of s.placed) {
        const part = inventedCamera.find((piece) => piece.part.id === id)?.part;
        const own = paths.filter((p) => p.group !== 'engrave' && p.id.startsWith(`${id}.${instance}.`));
        const edges = part ? [part.outline, ...part.holes] : [];
        expect(own).toHaveLength(edges.length);
        // numbered engraving first, then holes, then the outline
        const number = (p: { id: string }) => Number(p.id.split('.')[2]);
        const inOrder = [...own].sort((a, b) => number(a) - number(b));
        [...edges.slice(1), ...edges.slice(0, 1)].forEach((edge, i) => {
          const line = inOrder[i]?.points ?? [];
          const inwards = i === edges.length - 1 ? -kerf / 2 : kerf / 2;
          // the other offset grows what runs anticlockwise, and a hole runs clockwise
          const anticlockwise = i === edges.length - 1 ? line : [...line].reverse();
          const [finished] = grown([anticlockwise], inwards, { corners: 'mitred' });
          for (const corner of flatten(moved(edge, { x, y, turn: rotation }), 0.0002))
            expect(loopGap(corner, finished ?? [])).toBeLessThan(0.001);
        });
      }
    }
  });

  test('engraving lies where it was drawn on the part', () => {
    const { paths } = readSvg(svg);
    const lines = sheet.operations[0]?.paths ?? [];
    expect(lines.length).toBeGreaterThan(0);
    for (const { id, path } of lines) {
      const drawn = paths.find((p) => p.id === id)?.points ?? [];
      for (const p of flatten(path.vertices, 0.0005, path.closed)) expect(loopGap(p, drawn)).toBeLessThan(0.001);
    }
  });
});

describe('arcs', () => {
  const data = (path: Path) => pathData(path, 100);
  test('turn the other way on a page that counts y downwards, M7.15 [common practice, no source]', () => {
    const quarter = Math.SQRT2 - 1;
    const bow = (bulge: number): Path => ({
      closed: false,
      vertices: [
        { x: 10, y: 0, bulge },
        { x: 0, y: 10, bulge: 0 },
      ],
    });
    expect(data(bow(quarter))).toBe('M10 100A10 10 0 0 0 0 90');
    expect(data(bow(-quarter))).toBe('M10 100A10 10 0 0 1 0 90');
  });

  test('a whole circle is four quarters: half of one is not fixed by four decimals of its ends', () => {
    expect(data({ closed: true, vertices: circle(50, 50, 20) })).toBe(
      'M60 50A10 10 0 0 0 50 40A10 10 0 0 0 40 50A10 10 0 0 0 50 60A10 10 0 0 0 60 50Z',
    );
  });

  // M7.12 [common practice, no source]: bulge 0.5 on a chord of 20 is an arc of radius 12.5 and 106.26°
  test('a bulge of 0.5 on a chord of 20 has radius 12.5, M7.12', () =>
    expect(data({ closed: false, vertices: [{ x: 0, y: 0, bulge: 0.5 }, { x: 20, y: 0, bulge: 0 }] })).toBe('M0 100A12.5 12.5 0 0 0 20 100')); // biome-ignore format: one line
});

test('each operation is drawn in its own colour of the palette', () => {
  const strokes = (text: string) =>
    [...text.matchAll(/<g id="([^"]+)"[^>]* stroke="([^"]+)"/g)].map((found) => found.slice(1));
  const { engrave, cutInside, cutNested, cutWindow, cutOutside } = workshopPalette;
  expect(strokes(svg)).toEqual([
    ['engrave', engrave],
    ['cut-inside', cutInside],
    ['cut-nested', cutNested],
    ['cut-window', cutWindow],
    ['cut-outside', cutOutside],
  ]);
});
