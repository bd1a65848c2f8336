import { describe, expect, test } from 'vitest';
import {
  apertureAtValue,
  equivalentReflectance,
  exposureValue,
  illuminance,
  luminance,
  timeAtValue,
} from '../../src/exposure/exposure-value.js';
import { apertureDials } from '../../src/standards/aperture-numbers.js';
import { nearestMark } from '../../src/standards/dial.js';

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

describe('exposure value of a setting', () => {
  test.each([
    [1, 1, 0, 1e-9], // V5.01 [verified: S36a], exact
    [16, 1 / 125, 14.966, 1e-3], // V5.02 [verified: S36a, S37]
    [16, 1 / 128, 15, 1e-3], // V5.02
    [8, 1 / 60, 12, 0.15], // V5.03 [verified: S37], the table
    [5.6, 1 / 30, 10, 0.15],
    [2.8, 1 / 15, 7, 0.15],
    [8, 1 / 60, 11.907, 5e-4], // V5.03, nominal arithmetic
    [5.6, 1 / 30, 9.878, 5e-4],
    [2.8, 1 / 15, 6.878, 5e-4],
    [16, 1 / 100, 14.644, 1e-3], // V5.09 [verified: S36a formula]; computed: a third of a stop under 15
  ])('f/%d, %d s: %d', (N, t, value, tolerance) => within(exposureValue(N, t), value, tolerance));

  test('-6 at f/16', () => {
    // V5.04 [verified: S36b]: exact 16384 s, 273.07 min; the table's 256 min within 7 %
    within(timeAtValue(-6, 16), 16_384, 1e-9 * 16_384);
    within(timeAtValue(-6, 16) / 60 / 256, 1, 0.07);
  });

  test('its f-number at a time', () => within(apertureAtValue(15, 1 / 128), 16, 1e-9)); // V5.02 [verified: S36a, S37]
});

describe('the light that it stands for at ISO 100', () => {
  test.each([
    [0, 0.125, 2.5],
    [3, 1, 20],
    [10, 128, 2560],
    [13, 1024, 20_480],
  ])('%d: %d cd/m², %d lx', (value, candelas, lux) => {
    within(luminance(value, 100), candelas, 1e-9 * candelas); // V5.05 [verified: S36c, S36d], K 12.5, exact
    within(illuminance(value, 100), lux, 1e-9 * lux); // V5.06 [verified: S36d], C 250, exact
  });

  test.each([100, 400])('f/16 at 1/S s, S = %d', (speed) => {
    within(luminance(exposureValue(16, 1 / speed), speed), 3200, 1e-9 * 3200); // V5.07 [verified: S38], exact
    within(illuminance(exposureValue(16, 1 / speed), speed), 64_000, 1e-9 * 64_000); // V5.08 [verified: S36d constant] computed
  });

  test('and back: f/16 in that light asks for 0.01 s', () => {
    // V5.08 [verified: S36d constant] computed: E S/C = 64000 · 100/250, exact
    within(timeAtValue(Math.log2((64_000 * 100) / 250), 16), 0.01, 1e-9 * 0.01);
  });
});

test.each([
  [12.5, 0.1571],
  [14, 0.1759],
])('a meter of K %d and C 250 takes the world to reflect %d', (K, reflectance) => {
  // V5.11 [verified: S39 prints 15.7 %, 17.6 %], 5e-4
  within(equivalentReflectance(K, 250), reflectance, 5e-4);
});

describe('daylight at ISO 100 and 1/100 s', () => {
  test.each([
    // the value of the scene: V5.13 [verified: S36d]; the f/16 rule's stop: V5.14 [verified: S5e]
    { scene: 'snow in sun', value: 16, stop: 22 },
    { scene: 'sun', value: 15, stop: 16 },
    { scene: 'heavy overcast', value: 12, stop: 5.6 },
  ])('$scene, $value: the rule’s f/$stop', ({ value, stop }) =>
    expect(nearestMark(apertureAtValue(value, 1 / 100), apertureDials.wholeStops).mark).toBe(stop),
  );

  test('cloudy bright, 13: the rule’s f/11 is one stop less than its value asks for', () => {
    // V5.14 [verified: S5e]: f/8 by V5.13 [verified: S36d]
    expect(nearestMark(apertureAtValue(13, 1 / 100), apertureDials.wholeStops).mark).toBe(8);
  });

  test('each step of V5.13 halves the light', () => {
    // V5.13 [verified: S36d]: 16, 15, 14, 13, 12 from snow to heavy overcast; V5.06's lx, exact
    for (const value of [16, 15, 14, 13]) expect(illuminance(value, 100)).toBe(2 * illuminance(value - 1, 100));
  });
});
