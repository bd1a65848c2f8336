import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/geometry/path.js';
import { loopsGap, within } from '../sheets/measure.js';
import { heronDesign } from './heron-design.js';
import { runHere } from './run-here.js';
import { scratch, snapshot, tailboard } from './scratch.js';

/** A build proves a whole camera: seconds on a slow machine. */
const PATIENCE = { timeout: 300_000 };

const place = (design: string): string => {
  const folder = scratch();
  writeFileSync(join(folder, 'heron.yaml'), design);
  return folder;
};
const withStock = (stock: string) => `${heronDesign}stock: ${stock}\n`;

const loop = (corners: readonly (readonly [number, number])[]): readonly Point[] => corners.map(([x, y]) => ({ x, y }));

/** Straight and curved outlines of a sheet's cut-outside, read from its SVG: only corners, with y up. */
function outlinesOf(svg: string, height: number): readonly (readonly Point[])[] {
  const group = /<g id="cut-outside"[^>]*>(.*?)<\/g>/s.exec(svg)?.[1] ?? '';
  return [...group.matchAll(/ d="([^"]*)"/g)].map(([, path = '']) => cornersOf(path, height));
}

/** Ends of the steps of an absolute or relative path. */
function cornersOf(path: string, height: number): readonly Point[] {
  const points: Point[] = [];
  let [x, y] = [0, 0];
  for (const [, command = '', text = ''] of path.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)) {
    const numbers = [...text.matchAll(/-?(?:\d+\.?\d*|\.\d+)/g)].map(([n]) => Number(n));
    const size = { m: 2, l: 2, h: 1, v: 1, a: 7 }[command.toLowerCase()] ?? 0;
    for (let i = 0; size > 0 && i < numbers.length; i += size) {
      const own = numbers.slice(i, i + size);
      const [dx, dy] = command === command.toLowerCase() ? [x, y] : [0, 0];
      const kind = command.toLowerCase();
      if (kind === 'h') x = dx + (own[0] ?? 0);
      else if (kind === 'v') y = dy + (own[0] ?? 0);
      else [x, y] = [dx + (own.at(-2) ?? 0), dy + (own.at(-1) ?? 0)];
      points.push({ x, y: height - y });
    }
  }
  return points;
}

describe('what is left of one job serves the next', PATIENCE, () => {
  test('Heron leaves remnants, and a spacer is cut from one of them', async () => {
    const folder = place(heronDesign);
    expect(await tailboard(['build', 'heron.yaml', '--effort', '0'], folder)).toMatchObject({ code: 0 });
    const kept = join(folder, 'output', 'heron', 'remnants');
    const names = readdirSync(kept);
    const files = names.map((name) => ({ name, ...JSON.parse(readFileSync(join(kept, name), 'utf8')) }));
    // the windows of the frames, 129.45 × 184.25 in the glass frame of the worked camera, among them
    expect(files.length).toBeGreaterThan(3);
    // a spacer is wider than a strip: what counts is the narrow side
    const size = ({ clear }: { clear: { left: number; right: number; bottom: number; top: number } }) =>
      Math.min(clear.right - clear.left, clear.top - clear.bottom);
    const whole = files.filter(({ outline }) => outline.length === 4 && outline[2][0] === 600);
    const [largest] = whole.sort((a, b) => size(b) - size(a));
    const { clear, name } = largest;
    for (const hole of largest.holes) {
      const inside = loop(hole).filter(
        ({ x, y }) => x > clear.left && x < clear.right && y > clear.bottom && y < clear.top,
      );
      expect(inside).toEqual([]);
    }

    const rack = join(folder, 'rack');
    mkdirSync(rack);
    writeFileSync(join(rack, name), readFileSync(join(kept, name)));
    writeFileSync(join(folder, 'heron.yaml'), withStock(`[{ remnant: rack/${name}, first: true }]`));
    const spacer = await tailboard(['spacer', 'heron.yaml', '--holder', 'processing holder'], folder);
    expect(spacer.code).toBe(0);
    const made = join(folder, 'output', 'heron-spacer-processing-holder');
    const { layouts } = JSON.parse(readFileSync(join(made, 'sheets', 'layout.json'), 'utf8'));
    const onIt = layouts[0].sheets.filter((sheet: { remnant?: string }) => sheet.remnant === `rack/${name}`);
    expect(onIt).toHaveLength(1);
    expect(onIt[0].parts.length).toBeGreaterThan(0);
    const svg = readFileSync(join(made, 'sheets', onIt[0].file), 'utf8');
    expect(svg).toContain(`cut from the remnant rack/${name}`);
    const outlines = outlinesOf(svg, onIt[0].height);
    expect(outlines.length).toBeGreaterThan(0);
    for (const outline of outlines) {
      // frames have straight sides and short arcs at their corners: their corners tell
      expect(loopsGap(outline, loop(largest.outline))).toBeGreaterThanOrEqual(5 - 0.01);
      for (const hole of largest.holes) {
        expect(loopsGap(outline, loop(hole))).toBeGreaterThanOrEqual(5 - 0.05);
        expect(within(outline[0] as Point, loop(hole))).toBe(false);
        expect(loop(hole).some((corner) => within(corner, outline))).toBe(false);
      }
    }
  });

  test('the same effort gives the same bytes, and none gives the first sheets', async () => {
    const folder = place(heronDesign);
    const built = async (effort: string, into: string) => {
      expect(await tailboard(['build', 'heron.yaml', '--effort', effort, '-o', into], folder)).toMatchObject({
        code: 0,
      });
      return snapshot(join(folder, into));
    };
    const few = await built('3', 'a');
    expect(await built('3', 'b')).toEqual(few);
    expect(Object.keys(await built('0', 'c'))).toContain('sheets/layout.json');
  });
});

describe('stock that cannot be used ends with 2, and nothing is written', () => {
  test.each(['plan', 'check', 'build', 'spacer'])('%s: no such file', async (command) => {
    const folder = place(withStock('[{ remnant: rack/7.json }]'));
    const design = join(folder, 'heron.yaml');
    const { code, out, err } = await runHere(command, design);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    const line = heronDesign.split('\n').length;
    expect(err).toContain(
      `${design}:${line}:20  stock[0].remnant: ${join(folder, 'rack', '7.json')}: there is no such file`,
    );
    expect(err).toContain('stock: [{ remnant: rack/7.json }]');
    expect(readdirSync(folder)).toEqual(['heron.yaml']);
  });

  test.each([
    ['a picture', '<svg/>', 'It is not JSON from line 1, column 1 on.'],
    ['a bow tie', '{ "schema": 1, "material": "plywood-4.05", "thickness": 4.05, "outline": [[0,0],[9,9],[9,0],[0,9]] }', '"outline" crosses itself.'],
    ['a folder', null, 'this is a folder, not a file'],
    ['a book', ' '.repeat(1024 * 1024 + 1), 'larger than 1024 KB'],
  ])('%s for a remnant', async (_, content, what) => {
    const folder = place(withStock('[{ remnant: 7.json }]'));
    if (content === null) mkdirSync(join(folder, '7.json'));
    else writeFileSync(join(folder, '7.json'), content);
    const { code, err } = await runHere('build', join(folder, 'heron.yaml'));
    expect(code).toBe(2);
    expect(err).toContain(what);
    expect(readdirSync(folder).sort()).toEqual(['7.json', 'heron.yaml']);
  }); // biome-ignore format: one row each

  test('a remnant in the folder that would be replaced', async () => {
    const folder = place(withStock('[{ remnant: output/heron/remnants/7.json }]'));
    const output = join(folder, 'output', 'heron');
    mkdirSync(join(output, 'remnants'), { recursive: true });
    const piece = { schema: 1, material: 'plywood-4.05', thickness: 4.05, outline: [[0, 0], [90, 0], [90, 90]] }; // biome-ignore format: one line
    const file = join(folder, 'output', 'heron', 'remnants', '7.json');
    writeFileSync(file, JSON.stringify(piece));
    const before = snapshot(folder);
    for (const command of ['build', 'spacer']) {
      const { code, err } = await runHere(command, join(folder, 'heron.yaml'), '-o', output);
      expect(code).toBe(2);
      expect(err).toContain(`${output}: the remnant output/heron/remnants/7.json lies in this folder`);
      expect(snapshot(folder)).toEqual(before);
    }
  });

  test.each(['-1', 'lots', '1e3', '', '100001'])('--effort %s', async (effort) => {
    const folder = place(heronDesign);
    const { code, err } = await runHere('build', join(folder, 'heron.yaml'), `--effort=${effort}`);
    expect(code).toBe(2);
    expect(err).toContain('is not a number from 0 to 100000. Write 0 for the first sheets');
    expect(readdirSync(folder)).toEqual(['heron.yaml']);
  });
});
