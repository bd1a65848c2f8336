import { expect, test } from 'vitest';
import { sagOf } from '../../src/camera/sag.js';

test('a board of 200 x 9.2 and 11395 N/mm² under 3 kg, 250 out', () => {
  // M4.10: sag 1.03613, slope 0.00621678 [verified: R36, the formula; number computed], tol 1e-5
  const { sag, tilt } = sagOf({
    loadN: 3 * 9.80665,
    overhang: 250,
    width: 200,
    thickness: 9.2,
    modulus: 11395,
  });
  expect(sag).toBeCloseTo(1.03613, 5);
  expect(tilt).toBeCloseTo(0.00621678, 7);
});
