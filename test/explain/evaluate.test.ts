import { expect, test } from 'vitest';
import { evaluate } from './evaluate.js';

// arithmetic, from nowhere else
test.each([
  ['2 + 3 × 4', 14],
  ['2 (3 + 4)', 14],
  ['2 × (2 + 0.3 + 6.075)', 16.75],
  ['12 / 3 / 2', 2],
  ['−2 × 4.05', -8.1],
  ['117.02 − (−117.02)', 234.04],
  ['max(6, 1.5 × 4.05)', 6.075],
  ['|5.8 − 24|', 18.2],
  ['2 × (1 + 2)³ / 12', 4.5],
  ['2 log2(8)', 6],
  ['sqrt(3² + 4²)', 5],
])('%s', (text, value) => expect(evaluate(text)).toBeCloseTo(value, 12));

test('symbols, the longer before the shorter', () => {
  const symbols = new Map([
    ['W_r', 100],
    ['W_ri', 3],
    ['T*_1', -2],
    ['t', 4],
  ]);
  expect(evaluate('W_ri + 2 t T*_1', symbols)).toBe(-13);
});

test('what is not understood is not passed over', () => {
  expect(() => evaluate('2 q')).toThrow(/not understood/);
});
