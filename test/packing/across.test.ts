import { expect, test } from 'vitest';
import { searchAcross } from '../../src/packing/across.js';
import type { NestGiven } from '../../src/packing/nest.js';
import { searchSheets } from '../../src/packing/pack-sheets.js';
import { after } from '../../src/packing/search.js';
import type { Bed, Blank, PackedSheet, Ring } from '../../src/packing/shapes.js';
import { faultsOf } from './faults-of.js';

const SPACING = 2;
const STEPS = 900;

const plate = (width: number, height: number): Ring => [
  { x: 0, y: 0 },
  { x: width, y: 0 },
  { x: width, y: height },
  { x: 0, y: height },
];
const bed = (width: number, height: number, more: Partial<Bed> = {}): Bed => ({
  outline: plate(width, height),
  holes: [],
  count: Infinity,
  cost: 1,
  ...more,
});
const blank = (outline: Ring, count: number, windows: readonly Ring[] = []): Blank => ({
  outline,
  windows,
  turns: [0],
  count,
});
const times = (blanks: readonly Blank[], copies: number): readonly Blank[] =>
  blanks.map((one) => ({ ...one, count: copies * one.count }));

/** Jobs as each is packed alone. */
function oneByOne(given: NestGiven, copies: number): readonly PackedSheet[] {
  const { sheets } = after(searchSheets(given, 1), 300);
  return Array.from({ length: copies }, () => sheets).flat();
}

function packedAcross(given: NestGiven, copies: number, steps = STEPS) {
  const alone = oneByOne(given, copies);
  const all = { ...given, blanks: times(given.blanks, copies) };
  const sheets = after(searchAcross(alone, all, 1), steps);
  expect(faultsOf({ sheets, offcut: null }, all)).toEqual([]);
  return { alone, sheets };
}

/** One plate of two thirds of a sheet and two of a third: alone they take two sheets, and a third of one stays clear. */
const twoThirds = { blanks: [blank(plate(198, 100), 1), blank(plate(98, 100), 2)], beds: [bed(300, 100)], spacing: SPACING }; // biome-ignore format: one line

test('what several jobs leave of their last sheets is used by the others', () => {
  const { alone, sheets } = packedAcross(twoThirds, 6);
  expect(alone).toHaveLength(12);
  // by hand: six sheets of 2/3 + 1/3, two of three thirds; by area eight, too: 6 × (200 + 2 × 100) in widths of 302
  expect(sheets).toHaveLength(8);
});

test('what lies in windows goes along, and no sheet is lost', () => {
  const window = [...plate(70, 70)].reverse().map(({ x, y }) => ({ x: x + 5, y: y + 5 }));
  const given = { blanks: [blank(plate(80, 80), 1, [window]), blank(plate(60, 60), 1)], beds: [bed(170, 170)], spacing: SPACING }; // biome-ignore format: one line
  const { sheets } = packedAcross(given, 8);
  // four frames a sheet, each with a plate in its window
  expect(sheets).toHaveLength(2);
  expect(sheets.flatMap(({ places }) => places).filter(({ within }) => within !== null)).toHaveLength(8);
});

test('takes no more of a bed than there are', () => {
  // the two small beds are cheap, and only two
  const given = { ...twoThirds, beds: [bed(300, 100), bed(98, 100, { count: 2, cost: 0.01 })] };
  const alone = oneByOne({ ...given, beds: [bed(300, 100), bed(98, 100, { count: 0, cost: 0.01 })] }, 3);
  const all = { ...given, blanks: times(given.blanks, 3) };
  const sheets = after(searchAcross(alone, all, 1), STEPS);
  expect(faultsOf({ sheets, offcut: null }, all)).toEqual([]);
  expect(sheets.length).toBeLessThanOrEqual(alone.length);
});

test('is never dearer and never more than it began with, at any step', () => {
  const given = {
    blanks: [blank(plate(120, 90), 2), blank(plate(61, 47), 3)],
    beds: [bed(300, 200)],
    spacing: SPACING,
  };
  const start = oneByOne(given, 5);
  let before = start.length;
  const search = searchAcross(start, { ...given, blanks: times(given.blanks, 5) }, 1);
  for (let step = 0; step < 300; step++) {
    const { value, done } = search.next();
    expect(value.length).toBeLessThanOrEqual(before);
    before = value.length;
    if (done === true) break;
  }
});

test('the same again is the same again', () => {
  const once = packedAcross(twoThirds, 4, 200);
  expect(packedAcross(twoThirds, 4, 200)).toEqual(once);
});
