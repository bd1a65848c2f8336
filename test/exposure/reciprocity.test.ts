import { describe, expect, test } from 'vitest';
import { beyondTable, givenTime, meteredTime } from '../../src/exposure/reciprocity.js';

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

/** A table as a maker prints one, though its times are those of t^1.31, so that another formula knows what lies between. */
const powers = [2, 10, 100].map((metered) => ({ metered, given: metered ** 1.31 }));

describe('by exponent', () => {
  test.each([
    { p: 1.31, metered: 10, given: 20.417, tolerance: 5e-4 }, // V5.57 [verified: S54], published 20.4
    { p: 1.26, metered: 30, given: 72.64, tolerance: 0.01 }, // V5.58 [verified: S54 factors]
    { p: 1.33, metered: 2, given: 2.514, tolerance: 0.01 }, // V5.58
  ])('$metered s by $p: $given s', ({ p, metered, given, tolerance }) => {
    within(givenTime(metered, { exponent: p }), given, tolerance);
  });

  test.each([0.01, 0.5, 1])('%d s stays as it is: the power would shorten it', (time) => {
    // V5.59 [verified: S54], exact: 0.5^1.31 is 0.403
    expect(givenTime(time, { exponent: 1.31 })).toBe(time);
    expect(meteredTime(time, { exponent: 1.31 })).toBe(time);
  });

  test('leads back', () => {
    // V5.57 [verified: S54]: 20.417 s to its printed digits
    within(meteredTime(20.417, { exponent: 1.31 }), 10, 1e-3);
  });

  test('knows no end', () => expect(beyondTable(1e6, { exponent: 1.31 })).toBe(false));
});

describe('by table', () => {
  test.each([
    [1.5, 1.5 ** 1.31], // before the first row, from 1 s on
    [2, 2 ** 1.31],
    [5, 5 ** 1.31],
    [10, 20.417], // V5.57 [verified: S54]
    [36, 109.33], // V5.61
    [100, 100 ** 1.31],
    [1000, 1000 ** 1.31], // beyond the last
  ])('%d s: what the formula says of which the rows are', (metered, given) => {
    // t^p is a straight line between logarithms [verified: S54 formula]; half of the last digit printed
    within(givenTime(metered, { table: powers }), given, 5e-3);
    within(meteredTime(given, { table: powers }), metered, 5e-3);
  });

  test.each([0.25, 1])('%d s stays as it is', (time) => {
    // V5.59 [verified: S54]
    expect(givenTime(time, { table: powers })).toBe(time);
    expect(meteredTime(time, { table: powers })).toBe(time);
  });

  test('rows are met, whatever lies between', () => {
    // [common practice, no source]: 1 s asks for 2, 10 s for 50, 100 s for 1200, a table of an old kind of film
    const old = [
      { metered: 1, given: 2 },
      { metered: 10, given: 50 },
      { metered: 100, given: 1200 },
    ];
    for (const { metered, given } of old) {
      within(givenTime(metered, { table: old }), given, 1e-9 * given);
      within(meteredTime(given, { table: old }), metered, 1e-9 * metered);
    }
    // geometry: halfway between logarithms
    within(givenTime(Math.sqrt(1000), { table: old }), Math.sqrt(50 * 1200), 1e-9 * 245);
    // geometry: beyond the end the last line, 24 times for 10 times, and not the first
    within(givenTime(1000, { table: old }), 24 * 1200, 1e-9 * 28_800);
    // V5.59: never shorter than metered, where the first line is followed down
    expect(givenTime(0.01, { table: old })).toBe(0.01);
    expect(meteredTime(0.01, { table: old })).toBe(0.01);
  });

  test('one row keeps its ratio beyond, and begins at 1 s', () => {
    // [common practice, no source]
    const one = [{ metered: 1, given: 2 }];
    expect(givenTime(30, { table: one })).toBe(60);
    within(givenTime(10, { table: [{ metered: 100, given: 10_000 }] }), 100, 1e-9);
  });

  test('says where it is only followed on', () => {
    // [common practice, no source]
    expect(beyondTable(100, { table: powers })).toBe(false);
    expect(beyondTable(101, { table: powers })).toBe(true);
    expect(beyondTable(1.5, { table: powers })).toBe(false); // between 1 s, where nothing is lost, and the first row
    expect(beyondTable(0.2, { table: powers })).toBe(false); // nothing is lost
    const fast = [
      { metered: 0.5, given: 0.8 },
      { metered: 10, given: 50 },
    ];
    expect(beyondTable(0.4, { table: fast })).toBe(true);
    expect(beyondTable(0.5, { table: fast })).toBe(false);
    expect(beyondTable(1e-3, { table: fast })).toBe(false); // so short that nothing is lost
  });

  test('without a row nothing is known to be lost', () => {
    // [common practice, no source]
    expect(givenTime(30, { table: [] })).toBe(30);
    expect(beyondTable(30, { table: [] })).toBe(true);
  });
});
