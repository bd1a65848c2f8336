import { expect, test } from 'vitest';
import { standardGravity } from '../../src/standards/gravity.js';

test('a camera of 5 kg weighs 49.03325 N', () => {
  // 9.80665 m/s² [verified: S73]; exact but for floating point
  expect(Math.abs(5 * standardGravity.value - 49.03325)).toBeLessThanOrEqual(1e-12);
});
