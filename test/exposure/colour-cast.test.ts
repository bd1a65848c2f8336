import { expect, test } from 'vitest';
import { filtersOf, noPack, packAgainst, packInWords, stopsOfPack } from '../../src/exposure/colour-cast.js';

// V5.54: CC30Y a third of a stop, CC30M two thirds. verified: S53, "Color compensating filters", from the maker's table
test.each([
  { pack: { ...noPack, yellow: 0.3 }, stops: 1 / 3, name: 'CC30Y' },
  { pack: { ...noPack, magenta: 0.3 }, stops: 2 / 3, name: 'CC30M' },
  // from memory: the same table, CC30C
  { pack: { ...noPack, cyan: 0.3 }, stops: 2 / 3, name: 'CC30C' },
])('$name costs what its maker says', ({ pack, stops, name }) => {
  expect(filtersOf(pack)).toHaveLength(1);
  expect(packInWords(pack)).toBe(name);
  expect(stopsOfPack(pack)).toBeCloseTo(stops, 9);
});

// each primary's complement is the two others' sum: red and cyan, green and magenta, blue and yellow: trade, no source
test.each([
  { cast: 'red', pack: 'CC10C' },
  { cast: 'green', pack: 'CC10M' },
  { cast: 'blue', pack: 'CC10Y' },
  { cast: 'cyan', pack: 'CC10M + CC10Y' },
  { cast: 'magenta', pack: 'CC10C + CC10Y' },
  { cast: 'yellow', pack: 'CC10C + CC10M' },
] as const)('against a $cast cast of 0.20: $pack', ({ cast, pack }) => {
  expect(packInWords(packAgainst(cast, 0.2, noPack))).toBe(pack);
});

test.each([
  { by: 0.05, yellow: 0 },
  { by: 0.1, yellow: 0.05 },
  { by: 0.15, yellow: 0.05 },
  { by: 0.3, yellow: 0.15 },
  { by: 0.4, yellow: 0.2 },
  { by: 1, yellow: 0.2 },
])('half of $by in filters that are sold, at most 0.20: $yellow', ({ by, yellow }) => {
  expect(packAgainst('blue', by, noPack)).toEqual({ ...noPack, yellow });
});

test('a cast the other way takes filters off before it adds any', () => {
  expect(packAgainst('yellow', 0.2, { ...noPack, yellow: 0.15 })).toEqual({ ...noPack, yellow: 0.05 });
  expect(packAgainst('yellow', 0.2, { ...noPack, yellow: 0.1 })).toEqual(noPack);
});
