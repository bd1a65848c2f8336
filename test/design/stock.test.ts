import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { printProblem } from '../../src/design/problem.js';
import { readDesign } from '../../src/design/read.js';
import { revisionOf } from '../../src/design/revision.js';
import { variablesOf } from '../../src/design/variables.js';
import { readRemnant } from '../../src/sheets/remnant-file.js';
import { problemsOf } from './reading.js';
import { heron } from './worked-designs.js';

/** An L-shaped piece of the plywood, 300 × 200. */
const corner = JSON.stringify({
  schema: 1,
  material: 'plywood-4.05',
  thickness: 4.05,
  outline: [[0, 0], [300, 0], [300, 80], [120, 80], [120, 200], [0, 200]], // biome-ignore format: one line
});
const files: Readonly<Record<string, string>> = { 'corner.json': corner, 'notes.json': '{ "schema": 1 }' };

const read = (stock: string) =>
  readDesign(`${heron}stock: ${stock}\n`, 'design.yaml', (file) => {
    const text = files[file];
    return text === undefined
      ? { what: `${file}: there is no such file.`, accepted: 'Name another.' }
      : readRemnant(text);
  });

function designWith(stock: string): Design {
  const outcome = read(stock);
  if ('design' in outcome) return outcome.design;
  throw new Error(outcome.problems.map(printProblem).join('\n'));
}

function refused(stock: string) {
  const outcome = read(stock);
  if ('problems' in outcome) return outcome.problems;
  throw new Error('the design was accepted');
}

describe('sheets at hand', () => {
  test('several of a size, and which to use first', () =>
    expect(designWith('[{ thickness: 4.05 mm, sheet: [900 mm, 600 mm], count: 3, first: true }]').stock).toEqual([
      {
        material: 'plywood-4.05',
        thickness: 4.05,
        sheet: { width: 900, height: 600 },
        count: 3,
        first: true,
        remnant: null,
      },
    ]));

  test('a remnant has thickness, material and size of its file', () => {
    const [entry] = designWith('[{ remnant: corner.json }]').stock;
    expect(entry).toMatchObject({
      material: 'plywood-4.05',
      thickness: 4.05,
      sheet: { width: 300, height: 200 },
      count: 1,
      first: false,
      remnant: { file: 'corner.json', holes: [] },
    });
    expect(entry?.remnant?.outline).toHaveLength(6);
  });

  test('a piece that was measured again is of the thickness that was measured', () => {
    const [entry] = designWith('[{ remnant: corner.json, thickness: 4.1 mm }]').stock;
    expect(entry).toMatchObject({ material: 'plywood-4.1', thickness: 4.1, remnant: { material: 'plywood-4.1' } });
  });

  test('more sheets of the plywood make no other camera, another thickness may', () => {
    const mark = revisionOf(designWith('[]'));
    expect(revisionOf(designWith('[{ remnant: corner.json }, { thickness: 4.05 mm, count: 2 }]'))).toBe(mark);
    expect(revisionOf(designWith('[{ thickness: 2.7 mm }]'))).not.toBe(mark);
  });

  test('the numbers of a design with a remnant can be changed', () => {
    const text = `${heron}stock: [{ remnant: corner.json }]\n`;
    const { stock } = designWith('[{ remnant: corner.json }]');
    const focal = variablesOf(text, stock).find(({ path }) => path === 'lens.focalLength');
    expect(focal?.changedBy(1)?.stock).toEqual(stock);
  });
});

describe('stock that cannot be', () => {
  test.each([
    ['no sheet', '[{ thickness: 3 mm, count: 0 }]', 'stock[0].count', '0 is not a whole number from 1'],
    ['half a sheet', '[{ thickness: 3 mm, count: 1.5 }]', 'stock[0].count', '1.5 is not a whole number'],
    ['no thickness', '[{ sheet: [600 mm, 400 mm] }]', 'stock[0].thickness', 'It is not given'],
    ['a word that is no answer', '[{ thickness: 3 mm, first: yes }]', 'stock[0].first', '"yes" is neither true nor'],
    ['a file that is not there', '[{ remnant: gone.json }]', 'stock[0].remnant', 'gone.json: there is no such file.'],
    ['a file of something else', '[{ remnant: notes.json }]', 'stock[0].remnant', '"material" is not given.'],
    ['no file', '[{ remnant: "" }]', 'stock[0].remnant', 'The text is empty.'],
    ['one file twice', '[{ remnant: corner.json }, { remnant: corner.json }]', 'stock[1].remnant', 'Entry 1 names'],
    // further off than two readings of one sheet may differ: 0.15, as thickness-spread warns from
    ['another thickness', '[{ remnant: corner.json, thickness: 4.21 mm }]', 'stock[0].thickness', 'is 4.05 mm thick'],
    ['another material', '[{ remnant: corner.json, material: birch }]', 'stock[0].material', 'is plywood-4.05, as'],
    [
      'two sizes',
      '[{ remnant: corner.json, sheet: [300 mm, 200 mm] }]',
      'stock[0].sheet',
      'has the size that its file',
    ],
    ['more than one of a piece', '[{ remnant: corner.json, count: 2 }]', 'stock[0].count', 'A remnant is one piece.'],
  ])('%s', (_, stock, path, what) => {
    const problems = refused(stock);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ path, what: expect.stringContaining(what), line: heron.split('\n').length });
  });

  test('a file, where none can be read', () =>
    expect(problemsOf(`${heron}stock: [{ remnant: corner.json }]\n`)[0]).toMatchObject({
      path: 'stock[0].remnant',
      what: 'Files of remnants cannot be read here.',
    }));
});
