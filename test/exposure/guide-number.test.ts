import { describe, expect, test } from 'vitest';
import { apertureByGuide, guideNumber, guideTogether, guideWithLight } from '../../src/exposure/guide-number.js';

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

const FOOT = 304.8;
const METRE = 1000;

test.each([
  [80 * FOOT, 10 * FOOT], // V5.30 [verified: S42], exact
  [120 * FOOT, 15 * FOOT],
  [160 * FOOT, 20 * FOOT],
  [32 * METRE, 4 * METRE], // V5.31 [verified: S42], exact
])('guide number %d mm at %d mm: f/8', (guide, distance) => {
  within(apertureByGuide(guide, distance), 8, 1e-9);
  within(guideNumber(8, distance), guide, 1e-9 * guide);
});

test.each([
  [25, 5.5, 0.05],
  [50, 7.78, 0.005],
  [200, 15.56, 0.005],
  [400, 22, 0.05],
])('guide number 11 m at ISO 100 is at ISO %d %d', (speed, guide, half) => {
  // V5.32 [verified: S44], half of the last digit printed; the manual prints 5.5 7.8 15.6 22
  within(guideWithLight(11 * METRE, speed / 100) / METRE, guide, half);
});

test('twice the energy, and half of it', () => {
  // exact
  within(guideWithLight(1, 2), Math.SQRT2, 1e-9); // V5.33 x 1.41421 [verified: S47, S46]
  within(guideWithLight(1, 1 / 2), Math.SQRT1_2, 1e-9); // V5.34 x 0.70711 [verified: S46]
});

describe('two flashes at the same distance', () => {
  test.each([
    [40, 40, 56.57, 5e-3],
    [40, 30, 50, 1e-9],
  ])(
    '%d and %d: %d',
    (first, second, both, tolerance) => within(guideTogether([first, second]), both, tolerance), // V5.36 [verified: S5f for the halving]; sums computed
  );

  test('two equal ones halve the exposure: one stop', () =>
    within(2 * Math.log2(guideTogether([40, 40]) / 40), 1, 1e-9)); // V5.36 [verified: S5f]
});

test('80 in feet is 24.384 in metres', () => {
  // V5.37 [verified: S48], exact: f/8 at 10 ft
  within(guideNumber(8, 10 * FOOT) / METRE, 24.384, 1e-9);
});
