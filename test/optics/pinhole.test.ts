import { expect, test } from 'vitest';
import { fNumberOfPupil } from '../../src/optics/aperture.js';
import { pinhole, pinholeRules } from '../../src/optics/pinhole.js';

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

test('100 mm before the film a hole of 0.3663 mm, f/273', () => {
  within(pinhole(100), 0.3663, 1e-3); // V8.08 [verified: S71], source .366
  within(fNumberOfPupil(100, pinhole(100)), 273, 0.5);
});

test('150 mm before it, by the other rule, 0.5457 mm, f/274.9', () => {
  within(pinhole(150, pinholeRules.builders), 0.5457, 1e-3); // V8.09 [verified: S71b formula]
  within(fNumberOfPupil(150, pinhole(150, pinholeRules.builders)), 274.9, 0.05);
});
