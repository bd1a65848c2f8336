import { describe, expect, test } from 'vitest';
import { kerfDoubt, kerfOfComb, STRIPS } from '../../src/coupon/comb.js';

describe('the kerf of a comb is what is missing, divided by the cuts in it', () => {
  test.each([
    // M6.03, M6.04 [verified: R46]: hole and piece of one cut
    { what: 'hole and piece of one cut', drawn: 20.14, sum: 19.76, cuts: 2, kerf: 0.19 },
    { what: 'the same at another place', drawn: 20.09, sum: 19.86, cuts: 2, kerf: 0.115 },
    // M6.06 [common practice, no source]
    { what: 'ten pieces of 10.00', drawn: 100, sum: 98.5, cuts: 10, kerf: 0.15 },
    // M6.07 [common practice, no source]: what is missing is the gap of 1.65 in the window, and 11 lines made it
    { what: 'the gap in a window with 11 lines', drawn: 1.65, sum: 0, cuts: 11, kerf: 0.15 },
    // M6.08 [common practice, no source]
    { what: 'two outer edges from the factory', drawn: 100, sum: 98.65, cuts: 9, kerf: 0.15 },
  ])('$what', ({ drawn, sum, cuts, kerf }) => expect(kerfOfComb(drawn, sum, cuts)).toBeCloseTo(kerf, 9));

  test('our own comb has as many cuts as strips, half a one at each edge of each', () =>
    // M6.06: each piece drawn 10.00 comes out 9.85
    expect(kerfOfComb(STRIPS * 10, STRIPS * 9.85)).toBeCloseTo(0.15, 9));

  test('dividing by one cut too few is a tenth wrong: M6.07 [common practice, no source]', () =>
    expect(kerfOfComb(1.65, 0, 10)).toBeCloseTo(0.165, 9));
});

test('the doubt of a caliper of ±0.02 mm is divided by the cuts', () => {
  const { standard, interval } = kerfDoubt(10);
  // an even spread of half-width a has the standard deviation a/√3 [from memory: GUM 4.3.7]: 0.02/√3/10 = 0.00115,
  // and 95 of 100 of its values lie within 0.95 a = 0.0019; rounding to hundredths and micrometres adds to both
  expect(standard).toBeGreaterThan(0.00115);
  expect(standard).toBeLessThan(0.0013);
  expect(interval).toBeGreaterThan(0.0019);
  expect(interval).toBeLessThan(0.0021);
  expect(kerfDoubt(1).standard).toBeGreaterThan(9 * standard);
});
