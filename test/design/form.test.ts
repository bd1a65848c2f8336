import { describe, expect, test } from 'vitest';
import { isMap, isScalar, isSeq, parseDocument } from 'yaml';
import { designForm } from '../../src/design/form.js';
import { designJsonSchema } from '../../src/design/json-schema.js';
import { keyTable } from '../../src/design/key-table.js';
import { asOthersWrite, nodeAt, nodesOf, worked, workedDesign } from './form-nodes.js';
import { changed, problemsOf } from './reading.js';

const heron = workedDesign('heron');
const dunlin = workedDesign('dunlin');

/** One entry in every list that there is, and a format of its own. */
const everyList = `${changed(dunlin, 'format: 5x7', 'format: { width: 127 mm, height: 177.8 mm }')}
  reciprocity: [{ metered: 10 s, given: 25 s }]
stock: [{ thickness: 3 mm }]
masks: [{ name: square, image: [90 mm, 90 mm] }]
`.replace(/ {4}- \{ name: soft through.*\n/, '');

describe('what the form says of the keys', () => {
  test('every key of the schema is there once, with its words', () => {
    const rows = nodesOf(everyList).filter(({ path }) => !path.endsWith(']'));
    const general = (path: string) => path.replaceAll(/\[\d+\]/g, '[]');
    const table = keyTable(designJsonSchema());
    expect(rows.map(({ path }) => general(path)).sort()).toEqual(table.map(({ path }) => path).sort());
    for (const { path, description, required } of table)
      expect
        .soft(
          rows.find((row) => general(row.path) === path),
          path,
        )
        .toMatchObject({ description, required });
  });

  test.each([
    ['lens.focalLength', { label: 'focal length', unit: 'mm', required: true, whenAbsent: null, several: false }],
    ['focus.nearest', { whenAbsent: '1:5', example: '1:2.5', unit: '' }],
    ['plywood.sheet', { whenAbsent: '600 mm, 400 mm', example: '600 mm, 400 mm', several: true, unit: 'mm' }],
    ['plywood.thickness', { kind: 'field', several: true, options: [] }],
    ['lens.maxAperture', { unit: 'f-number', whenAbsent: 'f/8' }],
    ['lens.barrel.mass', { unit: 'g' }],
    ['lens.barrel.front', { mayBeNegative: false }],
    ['workshop.fits.press', { mayBeNegative: true }],
    ['lens.uncertainty.correlation', { mayBeNegative: true }],
    ['laser.cutSpeed', { unit: 'mm/s', whenAbsent: '10 mm/s' }],
    ['laser.palette.engrave', { example: '#5b7a8c', whenAbsent: '#5b7a8c' }],
    ['lens.name', { unit: '', example: '210 mm f/6.3 process lens' }],
    ['lens.mount.by', { options: ['clamp', 'flange', 'ring'] }],
    ['stock[0].first', { options: ['true', 'false'] }],
    ['groundGlass.depth', { whenAbsent: 'the film depth of the first holder' }],
    ['stock', { kind: 'list', most: 24, fresh: '{ thickness: 3 mm, sheet: [600 mm, 400 mm] }', whenAbsent: 'none' }],
    ['sitting.filterSets[0].filters', { kind: 'list', fresh: '{ name: straw gel, factor: 1.5 }' }],
    ['sitting.reciprocity', { kind: 'list', alone: expect.objectContaining({ example: '1.31', value: null }) }],
    ['holders[0]', { kind: 'group', label: 'holder 1', key: '0', description: 'a holder' }],
  ])('%s', (path, says) => expect(nodeAt(everyList, path)).toMatchObject(says));

  test('a holder that could be added has a name of its own', () =>
    expect(nodeAt(heron, 'holders')).toMatchObject({ fresh: expect.stringMatching(/^\{ name: paper holder 2, film/) }));
});

describe('what the form says of the text', () => {
  test.each([
    ['lens.flangeDistance', '203.5 mm'],
    ['lens.maxAperture', 'f/6.3'],
    ['focus.nearest', '1:2.5'],
    ['plywood.sheet', '600 mm, 400 mm'],
    ['shims', '0.1 mm, 0.25 mm, 0.5 mm'],
    ['holders[1].filmDepth', '24 mm'],
    ['lens.flange.screws', null],
  ])('%s stands as it is written', (path, value) =>
    expect(nodeAt(heron, path)).toMatchObject({ value, written: value !== null }),
  );

  test.each([
    ['quotes off', 'kerf: 0.15 mm', `kerf: '7/64 in'`, 'laser.kerf', '7/64 in'],
    ['in double quotes', 'kerf: 0.15 mm', 'kerf: "0.15\\tmm"', 'laser.kerf', '0.15\tmm'],
    ['a bare number as it is written', 'kerf: 0.15 mm', 'kerf: 0.150', 'laser.kerf', '0.150'],
    ['what is no length', 'kerf: 0.15 mm', 'kerf: narrow', 'laser.kerf', 'narrow'],
    ['a decimal comma within braces', 'thickness: 4.05 mm', 'thickness: 4,05 mm', 'plywood.thickness', '4,05 mm'],
    ['decimal commas in a list', '[600 mm, 400 mm]', '[600,5 mm, 400,5 mm]', 'plywood.sheet', '600,5 mm, 400,5 mm'],
    ['a list where one length belongs', 'kerf: 0.15 mm', 'kerf: [0.15 mm]', 'laser.kerf', '[0.15 mm]'],
    ['a group where a length belongs', 'kerf: 0.15 mm', 'kerf: { a: 1 }', 'laser.kerf', '{ a: 1 }'],
    ['nothing behind the colon', 'kerf: 0.15 mm', 'kerf: ', 'laser.kerf', null],
    ['three sides of a sheet', '[600 mm, 400 mm]', '[600, 400, 2]', 'plywood.sheet', '600, 400, 2'],
  ])('%s', (_, from, to, path, value) => {
    const text = changed(heron, from, to);
    expect(nodeAt(text, path)).toMatchObject({ value, written: true });
  });

  test('an alias as what it stands for', () => {
    const text = changed(heron, 'pastInfinity: 4 mm', 'pastInfinity: &four 4 mm, pastNearest: *four');
    expect(nodeAt(text, 'focus.pastNearest')).toMatchObject({ value: '4 mm' });
  });

  test('no shims at all', () =>
    expect(nodeAt(changed(heron, '[0.1 mm, 0.25 mm, 0.5 mm]', '[]'), 'shims')).toMatchObject({ value: 'none' }));

  test('a format by its name, or by keys of its own', () => {
    expect(nodeAt(heron, 'format')).toMatchObject({ kind: 'group', word: '5x7' });
    expect(nodeAt(everyList, 'format')).toMatchObject({ kind: 'group', word: null });
    expect(nodeAt(everyList, 'format.width')).toMatchObject({ value: '127 mm' });
    expect(nodeAt(changed(heron, 'format: 5x7', 'format: 5x8'), 'format')).toMatchObject({ word: '5x8' });
  });

  test('an exponent in place of a table', () =>
    expect(nodeAt(`${dunlin}  reciprocity: 1.31\n`, 'sitting.reciprocity')).toMatchObject({
      entries: [],
      alone: { value: '1.31', path: 'sitting.reciprocity' },
    }));

  test('a problem of a text that is no design has its field', () => {
    const text = changed(changed(heron, '203.5 mm', '203.5 mn'), 'depth: 5.8 mm', 'depth: [5.8 mm]');
    for (const { path } of problemsOf(text)) expect.soft(nodeAt(text, path).kind, path).toBe('field');
  });

  test.each([
    ['a list', '- a\n- b\n'],
    ['a single value', 'Heron'],
    ['nothing', ''],
    ['no YAML', 'a: [1\nb: 2\n'],
  ])('there is no form of %s', (_, text) => expect(designForm(text)).toBeNull());
});

describe('every value that another reader of YAML finds in a design stands in its field', () => {
  test.each([...worked].flatMap(([name, text]) => Object.keys(asOthersWrite).map((as) => ({ name, as, text }))))(
    '$name, $as',
    ({ text, as }) => {
      const given = asOthersWrite[as]?.(text) ?? '';
      const found = new Map(
        nodesOf(given).flatMap((node) => {
          if (node.kind === 'field') return node.value === null ? [] : [[node.path, node.value] as const];
          return node.kind === 'group' && node.word !== null ? [[node.path, node.word] as const] : [];
        }),
      );
      expect(found).toEqual(new Map(scalarsIn(parseDocument(given).contents, '')));
    },
  );
});

/** Paths and sources of single values; lists of them with commas between. */
function scalarsIn(node: unknown, path: string): (readonly [string, string])[] {
  if (isScalar(node)) return [[path, node.source ?? '']];
  if (isMap(node))
    return node.items.flatMap(({ key, value }) => scalarsIn(value, path === '' ? `${key}` : `${path}.${key}`));
  if (!isSeq(node)) return [];
  if (node.items.every(isScalar)) return [[path, node.items.map((item) => item.source).join(', ')]];
  return node.items.flatMap((item, index) => scalarsIn(item, `${path}[${index}]`));
}
