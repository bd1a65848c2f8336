import { describe, expect, test } from 'vitest';
import { factorOfDensity, factorOfStops, stackFactor, stopsOfFactor } from '../../src/exposure/filters.js';
import { filters } from './sitting.js';

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

describe('factors in stops', () => {
  test.each([
    [2, 1, 1],
    [2.5, 1.322, 4 / 3],
    [3, 1.585, 5 / 3],
    [4, 2, 2],
    [8, 3, 3],
    [10, 3.322, 10 / 3],
    [100, 6.644, 20 / 3],
    [1000, 9.966, 10],
  ])('%d is %d', (factor, stops, table) => {
    // V5.50 [verified: S49; fractions in the scan are garbled, restored from log2], 0.1 to the table, computed digits
    within(stopsOfFactor(factor), stops, 5e-4);
    within(stopsOfFactor(factor), table, 0.1);
  });

  test.each([
    ['8, daylight', 1.5, 2 / 3],
    ['11, daylight', 3, 5 / 3],
    ['25, daylight', 8, 3],
    ['58, daylight', 6, 8 / 3],
    ['25, tungsten', 4, 2],
    ['47, tungsten', 25, 14 / 3],
  ])('filter no. %s: factor %d', (_, factor, stops) => {
    // V5.52, V5.53 [verified: S51], on one panchromatic film, 0.1 stop
    within(stopsOfFactor(factor), stops, 0.1);
  });
});

describe('neutral densities', () => {
  test.each([
    [0.3, 1.9953, 0.997, 1],
    [0.6, 3.9811, 1.993, 2],
    [0.9, 7.9433, 2.99, 3],
    [2, 100, 6.644, 20 / 3],
  ])('%d', (density, factor, stops, listed) => {
    // V5.51 [verified: S50], 0.03 stop to the list, computed digits
    within(factorOfDensity(density), factor, 5e-5);
    within(stopsOfFactor(factorOfDensity(density)), stops, 5e-4);
    within(stopsOfFactor(factorOfDensity(density)), listed, 0.03);
  });
});

test.each([
  ['CC30Y', 1 / 3],
  ['CC30M', 2 / 3],
])('%s is given in stops, not by the density in its name, which is a whole stop', (_, stops) => {
  // V5.54 [verified: S53], exact
  const factor = factorOfStops(stops);
  within(stopsOfFactor(factor), stops, 1e-12);
  expect(stopsOfFactor(factorOfDensity(0.3)) - stopsOfFactor(factor)).toBeGreaterThan(0.3);
});

describe('a stack', () => {
  test('30M and 10Y: factors multiply', () => {
    // V5.55 [verified: S52], exact but for floating point
    within(stackFactor(filters(1.7, 1.1)), 1.87, 1e-9);
  });

  test('densities and stops add', () => {
    // V5.51 [verified: S50]: 0.6 and 0.3 are 0.9, a factor of 7.9433
    within(stackFactor(filters(factorOfDensity(0.6), factorOfDensity(0.3))), 7.9433, 5e-5);
    within(stackFactor(filters(factorOfStops(1), factorOfStops(2))), 8, 1e-9); // V5.50 [verified: S49]: 8 is 3 stops
  });

  test('none leaves the light as it is', () => expect(stackFactor([])).toBe(1));
});
