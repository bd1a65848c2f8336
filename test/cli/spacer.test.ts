import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { heronDesign } from './heron-design.js';
import { runHere } from './run-here.js';
import { scratch, snapshot } from './scratch.js';

const PATIENCE = { timeout: 120_000 };

/** A piece with nothing cut out of it. */
const remnant = (thickness: number, width: number, height: number, material = 'plywood'): string =>
  JSON.stringify({
    schema: 1,
    material: `${material}-${thickness}`,
    thickness,
    outline: [[0, 0], [width, 0], [width, height], [0, height]],
  }); // biome-ignore format: corners in one line

function place(files: Readonly<Record<string, string>> = {}): string {
  const folder = scratch();
  for (const [name, text] of Object.entries({ 'heron.yaml': heronDesign, ...files }))
    writeFileSync(join(folder, name), text);
  return folder;
}

interface Laid {
  readonly remnant?: string;
  readonly parts: readonly { readonly id: string }[];
}
const laidIn = (folder: string): readonly Laid[] =>
  JSON.parse(readFileSync(join(folder, 'sheets', 'layout.json'), 'utf8')).layouts.flatMap(
    ({ sheets }: { readonly sheets: readonly Laid[] }) => sheets,
  );

/** 24 − 5.8 = 18.2: four plies of 4.05 mm. */
const spacer = (folder: string, names: readonly string[], ...words: readonly string[]) =>
  runHere(
    'spacer',
    join(folder, 'heron.yaml'),
    ...names.flatMap((name) => ['--remnant', join(folder, name)]),
    '-o',
    join(folder, 'made'),
    ...words,
  );

describe('spacer --remnant', PATIENCE, () => {
  test('of several pieces, the smallest that holds all plies is cut', async () => {
    const sizes = { 'tiny.json': [90, 90], 'large.json': [600, 500], 'right.json': [500, 400] } as const;
    const folder = place(
      Object.fromEntries(Object.entries(sizes).map(([name, [width, height]]) => [name, remnant(4.05, width, height)])),
    );
    const { code, out } = await spacer(folder, Object.keys(sizes));
    expect(code).toBe(0);
    expect(out).toContain('1 remnant to cut.');
    const [sheet, ...others] = laidIn(join(folder, 'made'));
    expect(others).toEqual([]);
    expect(sheet?.remnant).toBe(join(folder, 'right.json'));
    expect(sheet?.parts).toHaveLength(4);
  });

  test('what it does not hold lies on a new sheet, and that is told', async () => {
    const folder = place({ 'small.json': remnant(4.05, 300, 290), 'tiny.json': remnant(4.05, 90, 90) });
    const { code, out } = await spacer(folder, ['small.json']);
    expect(code).toBe(0);
    expect(out).toContain('Not all of them go onto the remnant that was named: what is left lies on another sheet.');
    expect(out).toContain('1 remnant and 1 sheet to cut.');
    const none = await spacer(folder, ['tiny.json']);
    expect(none.out).toContain('Nothing goes onto the remnant that was named: all lies on another sheet.');
    expect(none.out).toContain('\n1 sheet to cut.');
  });

  test('its file says how thick it is: plies and shims are those of --thickness', async () => {
    const folder = place({ 'old.json': remnant(3.9, 500, 400) });
    const figures = (out: string) => JSON.parse(out);
    const ofRemnant = figures((await spacer(folder, ['old.json'], '--json')).out);
    const typed = figures(
      (
        await runHere(
          'spacer',
          join(folder, 'heron.yaml'),
          '--thickness',
          '3.9mm',
          '--json',
          '-o',
          join(folder, 'typed'),
        )
      ).out,
    );
    expect(ofRemnant.plies).toEqual([3.9, 3.9, 3.9, 3.9]);
    expect({ ...ofRemnant, files: [] }).toEqual({ ...typed, files: [] });
    expect(laidIn(join(folder, 'made')).map((sheet) => sheet.remnant)).toEqual([join(folder, 'old.json')]);
  });

  test('a spacer of shims alone leaves it whole', async () => {
    const folder = place({ 'right.json': remnant(4.05, 500, 400) });
    const { code, out, err } = await spacer(folder, ['right.json'], '--depth', '6.3mm');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('The remnants that were named stay whole');
  });

  test.each([
    { names: ['none.json'], words: [], says: 'there is no such file' },
    { names: ['nothing.json'], words: [], says: 'nothing.json: "schema" is not 1' },
    { names: ['board.json'], words: [], says: 'is board-4.05, and the spacer is cut from plywood-4.05' },
    { names: ['right.json', 'thin.json'], words: [], says: 'Name pieces of one thickness' },
    {
      names: ['right.json'],
      words: ['--thickness', '3.9mm'],
      says: '4.05 mm thick, and the parts are to be cut from 3.9 mm',
    },
    { names: ['right.json'], words: ['-o', '.'], says: 'right.json lies in this folder' },
  ])('$names $words ends with 2, and nothing is written', async ({ names, words, says }) => {
    const folder = place({
      'nothing.json': '{}',
      'board.json': remnant(4.05, 300, 300, 'board'),
      'right.json': remnant(4.05, 300, 300),
      'thin.json': remnant(3.9, 300, 300),
    });
    const before = snapshot(folder);
    const here = words.map((word) => (word === '.' ? folder : word));
    const { code, out, err } = await spacer(folder, names, ...here);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
    expect(snapshot(folder)).toEqual(before);
  });
});
