import { describe, expect, test } from 'vitest';
import { angleOffAxis, falloffStops, naturalFalloff } from '../../src/optics/illumination.js';

const DEGREE = Math.PI / 180;

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

describe('natural falloff', () => {
  test.each([
    { degrees: 0, light: 1, stops: 0, tolerance: 1e-12 }, // the middle itself
    { degrees: 10, light: 0.9406, stops: 0.088, tolerance: 1e-3 },
    { degrees: 30, light: 0.5625, stops: 0.83, tolerance: 1e-3 }, // V3.09 [verified: S28], table 94.1 %, 56.2 %
    { degrees: 45, light: 0.25, stops: 2, tolerance: 1e-9 }, // V3.10 [verified: S28 formula], exact
  ])('at $degrees degrees: $light of the light, $stops stops', ({ degrees, light, stops, tolerance }) => {
    within(naturalFalloff(degrees * DEGREE), light, tolerance);
    within(falloffStops(degrees * DEGREE), stops, tolerance);
  });

  test.each([
    // V3.11 [common practice, no source], 1e-4; angles and stops to half of the last digit shown. The angle is that of the
    // working distance, so the corner is lighter close up
    { of: '8x10', r: Math.hypot(203.2, 254) / 2, f: 240, m: 0, degrees: 34.124, light: 0.46963, stops: 1.09 },
    { of: '8x10', r: Math.hypot(203.2, 254) / 2, f: 240, m: 1, degrees: 18.718, light: 0.80464, stops: 0.314 },
    // V3.12 [common practice, no source], 1e-4
    { of: '4x5', r: Math.hypot(101.6, 127) / 2, f: 150, m: 0, degrees: 28.464, light: 0.5973, stops: 0.743 },
  ])('corner of $of at $f, magnification $m: $light', ({ r, f, m, degrees, light, stops }) => {
    const angle = angleOffAxis(r, f, m);
    within(angle / DEGREE, degrees, 5e-4);
    within(naturalFalloff(angle), light, 1e-4);
    within(falloffStops(angle), stops, 5e-4);
  });
});
