import { describe, expect, test } from 'vitest';
import { parseExpression } from '../../src/camera/expression.js';

const value = (text: string, ...values: number[]) => parseExpression(text.split('?')).evaluate(values);

// arithmetic, from nowhere else
test.each([
  ['1 + 2 * 3', 7],
  ['2 (1 + 2)', 6],
  ['8 - 3 - 2', 3],
  ['12 / 3 / 2', 2],
  ['12 / 3 2', 8],
  ['-2 * 3', -6],
  ['5 - -2', 7],
  ['2 3^2', 18],
  ['-3^2', -9],
  ['|2 - 5| + 1', 4],
  ['max(1, 2 + 3, 4)', 5],
  ['min(6, 2 (1 + 1))', 4],
  ['sqrt(3^2 + 4^2)', 5],
  ['2 log2(8)', 6],
  ['atan(1)', 45],
])('%s', (text, expected) => expect(value(text)).toBe(expected));

test('values stand where the text is parted', () => {
  expect(value('? + 2 (? - ?)', 10, 4, 1)).toBe(16);
  expect(value('2 ? ?', 3, 4)).toBe(24);
});

test('the order of the arithmetic is that of the language, to the last bit', () => {
  const [a, b, c] = [0.1, 0.2, 0.3];
  expect(value('? + ? + ?', a, b, c)).toBe(a + b + c);
  expect(value('? / (3 ? ?)', a, b, c)).toBe(a / (3 * b * c));
});

describe('what is no formula is a mistake of ours, and is told at once', () => {
  test.each(['2 +', '2 + )', '(1 + 2', 'max(1, 2', '2 $ 3', 'sine(2)', '1, 2', ''])('%j', (text) => {
    expect(() => parseExpression([text])).toThrow();
  });
});
