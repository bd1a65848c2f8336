import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readRemnant } from '../../src/sheets/remnant-file.js';
import { polygonArea } from './measure.js';

const square = [[0, 0], [300, 0], [300, 200], [0, 200]]; // biome-ignore format: one line
const file = (more: object = {}) =>
  JSON.stringify({ schema: 1, material: 'plywood-4.05', thickness: 4.05, outline: square, ...more });

const piece = (text: string) => {
  const found = readRemnant(text);
  if ('what' in found) throw new Error(found.what);
  return found;
};

describe('a remnant', () => {
  test('is read from a file that is written in a minute', () =>
    expect(piece(file())).toEqual({
      material: 'plywood-4.05',
      thickness: 4.05,
      outline: [{ x: 0, y: 0 }, { x: 300, y: 0 }, { x: 300, y: 200 }, { x: 0, y: 200 }],
      holes: [],
    })); // biome-ignore format: one line

  test('may be drawn either way round, anywhere, its first corner repeated', () => {
    const hole = [[120, 120], [180, 120], [180, 180], [120, 180]]; // biome-ignore format: one line
    const shifted = square.map(([x = 0, y = 0]) => [x + 100, y + 100]).reverse();
    const { outline, holes } = piece(file({ outline: [...shifted, shifted[0]], holes: [hole] }));
    expect(outline).toHaveLength(4);
    expect(polygonArea(outline)).toBe(300 * 200);
    expect(polygonArea(holes[0] ?? [])).toBe(-60 * 60);
    expect(Math.min(...outline.map(({ x }) => x), ...outline.map(({ y }) => y))).toBe(0);
    expect(Math.min(...(holes[0] ?? []).map(({ x }) => x))).toBe(20);
  });

  test('says what else it likes', () => expect(piece(file({ from: 'Heron', clear: {} })).thickness).toBe(4.05));
});

describe('what is no remnant is refused with the reason', () => {
  test.each([
    ['no JSON', '{ schema: 1 }', 'not JSON from line 1, column 3 on'],
    ['a list', '[1, 2]', 'not the JSON of a remnant'],
    ['a later form', file({ schema: 2 }), '"schema" is not 1'],
    ['no material', file({ material: ' ' }), '"material" is not given'],
    ['a thickness in words', file({ thickness: '4.05 mm' }), '"thickness" is not a length'],
    ['no thickness', file({ thickness: 0 }), '"thickness" is not a length'],
    ['a key that is none', JSON.stringify({ schema: 1, material: 'plywood-4.05', thickness: 4.05, outlin: square }), '"outlin" is no key of a remnant'],
    ['a hole with a slip', file({ hole: [square] }), '"hole" is no key of a remnant'],
    ['two corners', file({ outline: [[0, 0], [1, 1]] }), '"outline" has fewer than three corners'],
    ['a corner of three', file({ outline: [[0, 0, 0], [1, 0], [1, 1]] }), '"outline" has a corner that is not a pair'],
    ['a corner in words', file({ holes: [[['0', 0], [1, 0], [1, 1]]] }), '"holes"[0] has a corner that is not a pair'],
    ['a line', file({ outline: [[0, 0], [100, 0], [200, 0]] }), '"outline" encloses nothing'],
    ['a bow tie', file({ outline: [[0, 0], [100, 100], [100, 0], [0, 100]] }), '"outline" crosses itself'],
    ['a field', file({ outline: [[0, 0], [20000, 0], [0, 20000]] }), 'farther out than 10000 mm'],
    ['holes that are no list', file({ holes: {} }), '"holes" is not a list'],
    ['a curve of chords', file({ outline: Array.from({ length: 4000 }, (_, i) => [i, i * i]) }), 'more than 3000 corners'],
    ['dust', file({ outline: [[0, 0], [1, 0], [1, 1], [0, 1]], holes: [[[0, 0], [0.5, 0], [0.5, 1]]] }), '"holes"[0] encloses nothing'],
  ])('%s', (_, text, what) => {
    const found = readRemnant(text);
    expect(found).toMatchObject({ what: expect.stringContaining(what), accepted: expect.stringMatching(/\.$/) });
  }); // biome-ignore format: one row each

  test('whatever JSON stands there, it is read or refused, never thrown at', () =>
    fc.assert(
      fc.property(fc.json(), fc.jsonValue(), (text, outline) => {
        for (const found of [readRemnant(text), readRemnant(file({ outline, holes: [outline] }))])
          if ('what' in found) expect(found.accepted).not.toBe('');
          else expect(found.outline.length).toBeGreaterThan(2);
      }),
      { numRuns: 300, seed: 1906 },
    ));
});
