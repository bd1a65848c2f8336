import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { keyTable } from '../../src/design/key-table.js';
import { lensesJsonSchema } from '../../src/forms/lenses.js';
import { readLenses } from '../../src/forms/read-lenses.js';
import { changed } from '../design/reading.js';
import { randomDrawer } from '../survey/random-drawer.js';

const dunlin = readFileSync('designs/dunlin/drawer.yaml', 'utf8');

const list = `plywood: { thickness: 4.05 mm }
formats: [5x7, { name: 6x9, width: 60 mm, height: 90 mm }]
holders:
  - { format: 5x7, name: paper holder, filmDepth: 5.8 mm, width: 150 mm, length: 210 mm, thickness: 13.9 mm }
  - { format: 6x9, name: paper holder, filmDepth: 5.8 mm, width: 90 mm, length: 130 mm, thickness: 13.9 mm }
focus: { nearest: 1:4, farthest: infinity }
lenses:
  - { name: one, focalLength: 210 mm, flange: { diameter: 80 mm, boltCircle: 70 mm, screws: 3, thickness: 4 mm } }
  - { name: two, focalLength: 150 mm, flangeDistance: 141 mm }
`;

function problemsOf(...texts: readonly string[]) {
  const read = readLenses(texts.map((text, i) => ({ file: `list-${i + 1}.yaml`, text })));
  if ('problems' in read) return read.problems;
  throw new Error('the list was accepted');
}

describe('a list of lenses', () => {
  test.each([
    ['as in the example', dunlin],
    ['with holders and a size of its own', list],
    ['of a thousand lenses', randomDrawer(1000)],
  ])('%s is read', (_, text) => expect(readLenses([{ file: 'x', text }])).toHaveProperty('drawers'));

  test('leaves open what nobody said, and takes defaults as a design does', () => {
    const read = readLenses([{ file: 'x', text: list }]);
    if ('problems' in read) throw new Error('refused');
    const [drawer] = read.drawers;
    expect(drawer?.plywood.sheet).toEqual([600, 400]);
    expect(drawer?.lenses[0]).toMatchObject({ name: 'one', focalLength: 210, pupilMagnification: 1, mount: {} });
    expect(drawer?.lenses[0]?.flangeDistance).toBeUndefined();
  });

  test.each([
    ['a format that is not in the table', '[5x7,', '[5x8,', 'formats[0]', '2:11'],
    ['a format twice', '[5x7,', '[5x7, 5x7,', 'formats[1]', '2:16'],
    [
      'a size with a name of the table',
      '{ name: 6x9, width',
      '{ name: 4x5, width: 6 cm, height: 9 cm }, { name: 6x9, width',
      'formats[1].name',
      '2:24',
    ],
    ['a size that its holder hides', 'width: 60 mm, height: 90 mm', 'width: 6, height: 9', 'formats[1]', '2:16'],
    ['a holder for no format', 'format: 6x9, name', 'format: 9x6, name', 'holders[1].format', '5:15'],
    ['two holders of a camera alike', 'format: 6x9, name', 'format: 5x7, name', 'holders[1].name', '5:26'],
    [
      'a film behind its holder',
      'filmDepth: 5.8 mm, width: 90',
      'filmDepth: 58 mm, width: 90',
      'holders[1].filmDepth',
      '5:51',
    ],
    ['a lens twice', 'name: two', 'name: One', 'lenses[1].name', '9:13'],
    ['a lens without a name', 'name: two, ', '', 'lenses[1].name', '9:5'],
    ['a lens without a focal length', 'focalLength: 150 mm, ', '', 'lenses[1].focalLength', '9:5'],
    ['a slip in a key', 'flangeDistance', 'flangedistance', 'lenses[1].flangedistance', '9:39'],
    ['a length without sense', 'focalLength: 150 mm', 'focalLength: 150 nm', 'lenses[1].focalLength', '9:31'],
    ['a bolt circle outside its flange', 'boltCircle: 70', 'boltCircle: 90', 'lenses[0].flange.boltCircle', '8:78'],
    ['a farthest focus within a focal length', 'farthest: infinity', 'farthest: 20 cm', 'focus.farthest', '6:34'],
    ['a nearest focus that is none', 'nearest: 1:4', 'nearest: infinity', 'focus.nearest', '6:19'],
    ['no thickness', 'thickness: 4.05 mm', 'sheet: [600 mm, 400 mm]', 'plywood.thickness', '1:1'],
    ['the key of a design', 'plywood:', 'laser: { kerf: 0.15 mm }\nplywood:', 'laser', '1:1'],
  ])('%s is refused where it stands', (_, from, to, path, place) => {
    const [problem, ...others] = problemsOf(changed(list, from, to));
    expect(others).toEqual([]);
    expect(problem).toMatchObject({ file: 'list-1.yaml', path });
    expect(`${problem?.line}:${problem?.column}`).toBe(place);
    expect(problem?.accepted).not.toBe('');
  });

  test('no lens is refused', () => {
    const [problem] = problemsOf('plywood: { thickness: 4 mm }\nlenses: []\n');
    expect(problem).toMatchObject({ path: 'lenses', line: 2, column: 9 });
  });

  test('two lists do not call two lenses alike, nor two sizes', () => {
    expect(problemsOf(list, `${list}# another\n`)).toMatchObject([
      { file: 'list-2.yaml', path: 'lenses[0].name', line: 8, what: 'list-1.yaml has a lens of this name.' },
      { file: 'list-2.yaml', path: 'lenses[1].name', line: 9 },
    ]);
    const other = list.replace('name: one', 'name: three').replace('name: two', 'name: four');
    expect(
      readLenses([
        { file: 'a', text: list },
        { file: 'b', text: other },
      ]),
    ).toHaveProperty('drawers');
    expect(problemsOf(list, changed(other, 'width: 60 mm', 'width: 65 mm'))).toMatchObject([
      { file: 'list-2.yaml', path: 'formats[1]', line: 2 },
    ]);
  });
});

describe('the published schema', () => {
  const accepts = new Ajv2020({ strict: false }).compile(lensesJsonSchema());

  test.each([
    ['the example', dunlin],
    ['holders and a size of its own', list],
  ])('takes %s', (_, text) => {
    accepts(parse(text));
    expect(accepts.errors).toBeNull();
  });

  test.each([
    ['a slip in a key', 'flangeDistance', 'flangeDistanse'],
    ['a lens without a name', 'name: two, ', ''],
    ['a format that nobody knows', '[5x7,', '[5x8,'],
    ['a size without a name', 'name: 6x9, width', 'width'],
    ['a holder for no format', 'format: 6x9, name', 'name'],
  ])('refuses %s', (_, from, to) => expect(accepts(parse(changed(list, from, to)))).toBe(false));

  test('describes every key, with an example, and what holds where it is left out', () => {
    const silent = /flange$|rib$|window$|sheetThickness$/;
    for (const { path, description, example, required, whenAbsent } of keyTable(lensesJsonSchema())) {
      expect.soft(description, path).not.toBe('');
      expect.soft(example, path).not.toBe('');
      expect.soft(required || whenAbsent !== null || silent.test(path), path).toBe(true);
    }
  });
});
