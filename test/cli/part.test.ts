import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/geometry/path.js';
import { loopsGap } from '../sheets/measure.js';
import { heronDesign } from './heron-design.js';
import { scratch, snapshot, tailboard } from './scratch.js';

const PATIENCE = { timeout: 120_000 };

type Loop = readonly (readonly [number, number])[];
interface SparePart {
  readonly id: string;
  readonly count: number;
  readonly outline: Loop;
  readonly holes: readonly Loop[];
  readonly material: string;
  readonly thickness: number;
  readonly volume?: number;
}
interface SpareSheet {
  readonly file: string;
  readonly remnant?: string;
  readonly width: number;
  readonly height: number;
  readonly margin: number;
  readonly spacing: number;
  readonly parts: readonly { id: string; instance: number; x: number; y: number; rotation: number }[];
}

const json = (...path: readonly string[]) => JSON.parse(readFileSync(join(...path), 'utf8'));
const place = (design = heronDesign): string => {
  const folder = scratch();
  writeFileSync(join(folder, 'heron.yaml'), design);
  return folder;
};
const partsIn = (...path: readonly string[]): readonly SparePart[] => json(...path, 'parts.json').parts;
const sheetsIn = (folder: string): readonly SpareSheet[] =>
  json(folder, 'sheets', 'layout.json').layouts.flatMap((layout: { sheets: readonly SpareSheet[] }) => layout.sheets);

/** The outline of a part where it lies, kerf left out. */
const lying = (part: SparePart, { x, y, rotation }: SpareSheet['parts'][number]): readonly Point[] => {
  const [cos, sin] = [Math.cos((rotation * Math.PI) / 180), Math.sin((rotation * Math.PI) / 180)];
  return part.outline.map(([u, v]) => ({ x: x + u * cos - v * sin, y: y + u * sin + v * cos }));
};

/** A piece of plywood with nothing cut out of it. */
const remnant = (thickness: number, width: number, height: number): string =>
  JSON.stringify({
    schema: 1,
    material: `plywood-${thickness}`,
    thickness,
    outline: [[0, 0], [width, 0], [width, height], [0, height]],
  }); // biome-ignore format: corners in one line

const kept = partsIn(import.meta.dirname, '../../output/heron');

describe('part', PATIENCE, () => {
  test('a lens board, its plug and the clamp: what was asked and nothing else, as it was built', async () => {
    const folder = place(readFileSync(join(import.meta.dirname, '../../designs/heron.yaml'), 'utf8'));
    const { code, out } = await tailboard(['part', 'heron.yaml', 'F6', 'F7', 'lens-clamp', '--json'], folder);
    expect(code).toBe(0);
    const document = JSON.parse(out);
    expect(document.schema).toBe(1);
    expect(document.parts.map(({ id }: { id: string }) => id)).toEqual(['F6', 'F7', 'lens-clamp']);
    const made = join(folder, 'output', 'heron-parts');
    expect(document.files.every((file: string) => readFileSync(join(folder, file)).length > 0)).toBe(true);
    for (const part of partsIn(made)) {
      const before = kept.find(({ id }) => id === part.id);
      expect(part.outline).toEqual(before?.outline);
      expect(part.holes).toEqual(before?.holes);
      expect(part.volume).toEqual(before?.volume);
    }
    expect(readdirSync(join(made, 'prints')).sort()).toEqual(['lens-clamp.3mf', 'lens-clamp.stl']);
    const [sheet, ...others] = sheetsIn(made);
    expect(others).toEqual([]);
    expect(sheet?.parts.map(({ id }) => id).sort()).toEqual(['F6', 'F7']);
    // the design's own revision: a part of today fits the camera of today
    expect(document.revision).toBe(json(import.meta.dirname, '../../output/heron/plan.json').revision);
  });

  test('lies apart and within the margin, each piece once', async () => {
    const folder = place();
    expect(await tailboard(['part', 'heron.yaml', 'F5', 'R6', 'B5', 'G2'], folder)).toMatchObject({ code: 0 });
    const made = join(folder, 'output', 'heron-parts');
    const parts = partsIn(made);
    for (const { parts: placed, width, height, margin, spacing } of sheetsIn(made)) {
      const loops = placed.map((at) => lying(parts.find(({ id }) => id === at.id) as SparePart, at));
      loops.forEach((a, i) => {
        for (const { x, y } of a) {
          expect(Math.min(x, y, width - x, height - y)).toBeGreaterThanOrEqual(margin);
        }
        for (const b of loops.slice(i + 1)) expect(loopsGap(a, b)).toBeGreaterThanOrEqual(spacing);
      });
    }
    const laid = sheetsIn(made).flatMap((sheet) => sheet.parts.map(({ id, instance }) => `${id}.${instance}`));
    expect(laid.sort()).toEqual(
      parts.flatMap(({ id, count }) => Array.from({ length: count }, (_, i) => `${id}.${i + 1}`)).sort(),
    );
    expect(parts.map(({ count }) => count).sort()).toEqual([1, 4, 4, 4]);
  });

  test('one of four, or more than the camera has, where so many are asked for', async () => {
    const folder = place();
    for (const pieces of [1, 6]) {
      const words = ['part', 'heron.yaml', 'B5', 'G2', '--pieces', String(pieces), '-o', `made-${pieces}`];
      expect(await tailboard(words, folder)).toMatchObject({ code: 0 });
      const laid = sheetsIn(join(folder, `made-${pieces}`)).flatMap((sheet) => sheet.parts.map(({ id }) => id));
      expect(laid.sort()).toEqual(['B5', 'G2'].flatMap((id) => Array.from({ length: pieces }, () => id)));
    }
  });

  test('how many pieces are cut is told, and how many the camera has', async () => {
    const folder = place();
    const said = async (...words: string[]) => (await tailboard(['part', 'heron.yaml', ...words], folder)).out;
    // four turn-buttons: of a lost one nobody wants all
    const all = await said('R6');
    expect(all).toContain('R6, turn-button: 4 pieces of plywood-4.05, as many as the camera has.\n');
    expect(all).toContain('--pieces 1 cuts one.\n');
    const three = await said('R6', 'F3', '--pieces', '3');
    expect(three).toContain('R6, turn-button: 3 pieces of plywood-4.05; the camera has 4.\n');
    expect(three).toContain('F3, front box top: 3 pieces of plywood-4.05; the camera has 1.\n');
    expect(three).not.toContain('--pieces 1');
    const one = await said('F3', 'lens-clamp');
    expect(one).toContain('F3, front box top: 1 piece of plywood-4.05.\nlens-clamp, lens clamp: printed.\n');
    expect(one).not.toContain('--pieces 1');
    // what is printed is no piece of a sheet
    const { parts } = JSON.parse(await said('R6', 'lens-clamp', '--pieces', '3', '--json'));
    expect(parts).toMatchObject([
      { id: 'R6', count: 3, inCamera: 4 },
      { id: 'lens-clamp', count: 1, inCamera: 1 },
    ]);
  });

  test('of several remnants, the smallest that holds all of them is cut', async () => {
    const folder = place();
    const sizes = {
      'tiny.json': [90, 90],
      'large.json': [500, 350],
      'right.json': [150, 160],
      'wide.json': [300, 200],
    } as const;
    for (const [name, [width, height]] of Object.entries(sizes))
      writeFileSync(join(folder, name), remnant(4.05, width, height));
    const words = Object.keys(sizes).flatMap((name) => ['--remnant', name]);
    const { code, out } = await tailboard(['part', 'heron.yaml', 'F6', ...words], folder);
    expect(code).toBe(0);
    expect(out).toContain('1 remnant');
    expect(sheetsIn(join(folder, 'output', 'heron-parts')).map((sheet) => sheet.remnant)).toEqual(['right.json']);
    // the same of the stock of a design
    const stock = Object.keys(sizes).map((name) => `{ remnant: ${name} }`);
    writeFileSync(join(folder, 'stocked.yaml'), `${heronDesign}stock: [${stock.join(', ')}]\n`);
    await tailboard(['part', 'stocked.yaml', 'F6', '-o', 'again'], folder);
    expect(sheetsIn(join(folder, 'again')).map((sheet) => sheet.remnant)).toEqual(['right.json']);
  });

  test('what the named remnant does not hold lies on a new sheet, and that is told', async () => {
    const folder = place();
    writeFileSync(join(folder, 'small.json'), remnant(4.05, 150, 160));
    const { code, out } = await tailboard(['part', 'heron.yaml', 'F6', 'F3', '--remnant', 'small.json'], folder);
    expect(code).toBe(0);
    expect(out).toContain('Not all of them go onto the remnant that was named: what is left lies on another sheet.');
    expect(sheetsIn(join(folder, 'output', 'heron-parts')).map((sheet) => sheet.remnant)).toContain(undefined);
    // F3 is 171 mm wide
    const none = await tailboard(['part', 'heron.yaml', 'F3', '--remnant', 'small.json', '-o', 'again'], folder);
    expect(none.out).toContain('Nothing goes onto the remnant that was named: all lies on another sheet.');
    expect(none.out).not.toContain('Not all');
    expect(sheetsIn(join(folder, 'again')).map((sheet) => sheet.remnant)).toEqual([undefined]);
  });

  test('from a sheet of another thickness: the outline of the camera, and what that changes', async () => {
    const folder = place();
    const { code, err } = await tailboard(['part', 'heron.yaml', 'F3', '--thickness', '3.9 mm'], folder);
    expect(code).toBe(0);
    expect(err).toContain('other-thickness');
    const [part] = partsIn(folder, 'output', 'heron-parts');
    expect(part).toMatchObject({ material: 'plywood-3.9', thickness: 3.9 });
    expect(part?.outline).toEqual(kept.find(({ id }) => id === 'F3')?.outline);
    // a remnant says it too
    writeFileSync(join(folder, 'old.json'), remnant(3.9, 300, 300));
    const again = await tailboard(['part', 'heron.yaml', 'F3', '--remnant', 'old.json', '-o', 'again'], folder);
    expect(again.code).toBe(0);
    expect(again.err).toContain('cut from 3.9 mm');
    expect(sheetsIn(join(folder, 'again')).map((sheet) => sheet.remnant)).toEqual(['old.json']);
  });

  test('a design that is no longer that of the camera that stands: told, from where a build left it', async () => {
    const folder = place(heronDesign.replace('thickness: 4.05 mm, sheet', 'thickness: 3.9 mm, sheet'));
    writeFileSync(join(folder, 'old.yaml'), heronDesign);
    const named = await tailboard(['part', 'heron.yaml', 'F3', '--since', 'old.yaml'], folder);
    expect(named.code).toBe(0);
    expect(named.err).toContain('not-as-built');
    const { out } = await tailboard(['plan', 'old.yaml', '--json'], folder);
    mkdirSync(join(folder, 'output', 'heron'), { recursive: true });
    writeFileSync(join(folder, 'output', 'heron', 'plan.json'), out);
    expect((await tailboard(['part', 'heron.yaml', 'F3'], folder)).err).toContain('not-as-built');
    // what nobody named and nobody can read is left alone
    writeFileSync(join(folder, 'output', 'heron', 'plan.json'), '{}');
    expect((await tailboard(['part', 'heron.yaml', 'F3'], folder)).err).toBe('');
  });

  test('too thick to enter: 1, and nothing is written unless it is waived', async () => {
    const folder = place();
    const words = ['part', 'heron.yaml', 'F3', '--thickness', '5 mm'];
    const { code, err } = await tailboard(words, folder);
    expect(code).toBe(1);
    expect(err).toContain('--despite other-thickness');
    expect(Object.keys(snapshot(folder))).toEqual(['heron.yaml']);
    expect(await tailboard([...words, '--despite', 'other-thickness'], folder)).toMatchObject({ code: 0 });
  });
});

describe('part refuses with 2 and writes nothing', PATIENCE, () => {
  const files = {
    'heron.yaml': heronDesign,
    'thin.json': remnant(3.9, 300, 300),
    'right.json': remnant(4.05, 300, 300),
    'board.json': remnant(4.05, 300, 300).replace('plywood', 'board'),
    'nothing.json': '{}',
  };
  test.each([
    { words: ['F66'], says: 'no part F66. Was F6 meant?' },
    { words: ['mask'], says: 'It has: F1, F2L' },
    { words: ['felt-long'], says: 'is bought: there is nothing to cut' },
    { words: [], says: 'missing required argument' },
    { words: ['F6', '--thickness', 'thick'], says: '--thickness' },
    { words: ['F6', '--pieces', 'two'], says: '--pieces: two is not a whole number from 1 to 100' },
    { words: ['F6', '--pieces', '0'], says: '--pieces: 0 is not' },
    { words: ['lens-clamp', '--thickness', '3.9mm'], says: 'no part that was named is cut from sheet' },
    { words: ['F6', '--remnant', 'none.json'], says: 'there is no such file' },
    { words: ['F6', '--remnant', 'nothing.json'], says: 'nothing.json: "schema" is not 1' },
    { words: ['F6', '--remnant', 'board.json'], says: 'is board-4.05, and F6 is cut from plywood-4.05' },
    { words: ['F6', '--remnant', 'right.json', '--remnant', 'thin.json'], says: 'Name pieces of one thickness' },
    {
      words: ['F6', '--remnant', 'right.json', '--remnant', 'right.json'],
      says: '--remnant: right.json is named twice. One file is one piece',
    },
    {
      words: ['F6', '--remnant', 'right.json', '--remnant', './right.json'],
      says: '--remnant: ./right.json is the file that right.json names already',
    },
    { words: ['R6', 'F6', 'R6'], says: 'R6 is named twice. Name each part once' },
    { words: ['F2'], says: 'no part F2. Was F2L meant?' },
    {
      words: ['F6', '--since', '.'],
      says: 'Name a folder that tailboard build wrote, its plan.json, or a design file',
    },
    { words: ['F6', '--despite', 'no-rule'], says: 'there is no rule' },
    { words: ['F6', '--remnant', 'right.json', '-o', '.'], says: 'the remnant right.json lies in this folder' },
  ])('$words', async ({ words, says }) => {
    const folder = scratch();
    for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
    const { code, out, err } = await tailboard(['part', 'heron.yaml', ...words], folder);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
    expect(snapshot(folder)).toEqual(files);
  });
});
