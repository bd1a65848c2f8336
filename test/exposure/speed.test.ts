import { describe, expect, test } from 'vitest';
import { aimedExposure, degrees, exposureRange, paperExposure, roughPaperIndex } from '../../src/exposure/speed.js';

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

test.each([
  [100, 0.08],
  [125, 0.064],
  [400, 0.02],
])('at ISO %d a meter aims for %d lx s', (speed, exposure) => {
  within(aimedExposure(speed), exposure, 1e-9 * exposure); // V5.10 [verified: S38, S38b], exact
});

test.each([
  [100, 21],
  [400, 27],
  [25, 15],
  [12, 12],
  [6, 9],
])('ISO %d is %d degrees', (speed, expected) => {
  // V5.25 [verified: S55 table]; formula [from memory: ISO 6 / article Film speed]; exact after rounding
  expect(degrees(speed)).toBe(expected);
});

describe('printing paper', () => {
  test.each([
    [200, 5],
    [500, 2],
  ])('of P%d is grey from %d lx s', (P, exposure) => {
    within(paperExposure(P), exposure, 1e-9 * exposure); // V5.64 formula [from memory: ISO 6846:1992]
  });

  test.each([
    [200, 1.6],
    [500, 4],
  ])('of P%d is tried at %d', (P, index) => {
    // V5.65 [common practice, no source] for the rule; half a stop is all that it promises, but its arithmetic is exact
    within(roughPaperIndex(P), index, 1e-9 * index);
  });

  test('of P500 then works where enlarging paper is said to', () => {
    // V5.65: working indices of 3 to 6, 4 best [verified: S58a], 1/2 stop
    within(Math.log2(roughPaperIndex(500) / 4), 0, 0.5);
  });

  test('R is a hundred times the logarithm that it holds', () => {
    // V5.63 [verified: S57a-c]: shadow ten times the highlight, and V5.66's 110 [verified: S57d] from 10^1.1 times
    within(exposureRange(20, 2), 100, 1e-9);
    within(exposureRange(12.589254, 1), 110, 1e-5);
  });
});
