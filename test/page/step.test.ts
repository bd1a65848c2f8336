import { describe, expect, test } from 'vitest';
import { stepped, steppedAt } from '../../src/page/design/step.js';

describe('a step changes the last digit that was written', () => {
  test.each([
    ['203.5 mm', 1, '203.6 mm'],
    ['203.5 mm', -1, '203.4 mm'],
    ['203.5 mm', 10, '204.5 mm'],
    ['203.50 mm', 1, '203.51 mm'],
    ['203.9mm', 1, '204.0mm'],
    ['210', -1, '209'],
    ['1:2.5', 1, '1:2.6'],
    ['2.5:1', 1, '2.6:1'],
    ['f/6.3', 1, 'f/6.4'],
    ['1/60 s', -1, '1/59 s'],
    ['0.1 mm', -1, '0.0 mm'],
    ['-0.02 mm', -1, '-0.03 mm'],
    ['-0.01 mm', 1, '0.00 mm'],
    ['0.00 mm', -1, '-0.01 mm'],
    ['22.5 °C', 1, '22.6 °C'],
    ['7000 N/mm2', 10, '7010 N/mm2'],
    ['680 kg/m3', 10, '690 kg/m3'],
    ['60 %', 1, '61 %'],
    ['0.3 mm', 1, '0.4 mm'],
  ])('%s by %i is %s', (value, by, next) => expect(stepped(value, by, true)).toBe(next));
});

test.each([
  ['0.5 mm', -10],
  ['1:1', -1],
  ['1/1 s', -1],
])('%s is not stepped to nothing', (value, by) => expect(stepped(value, by, true)).toBe(null));

test.each(['0 mm', '0.0 mm', '0'])('%s stays where less than nothing is not taken', (value) => {
  expect(stepped(value, -1, false)).toBe(null);
  expect(stepped(value, 1, false)).not.toBe(null);
});

test.each(['210 mm f/6.3 process lens', 'infinity', '1 1/2 in', '1/2 in', '', 'plywood', '#ff0000', '5x7'])(
  '%s is no number to step',
  (value) => expect(stepped(value, 1, true)).toBe(null),
);

test('of several values the one is stepped in which the caret stands', () => {
  expect(steppedAt('600 mm, 400 mm', 2, 1, false)).toEqual({ value: '601 mm, 400 mm', caret: 2 });
  expect(steppedAt('600 mm, 400 mm', 14, 1, false)).toEqual({ value: '600 mm, 401 mm', caret: 14 });
  expect(steppedAt('9 mm, 400 mm', 12, 1, false)?.value).toBe('9 mm, 401 mm');
});

test('ten steps up and ten down lead back, whatever the digits', () => {
  for (const value of ['0.1 mm', '203.5 mm', '1:2.15', '4.05 mm', '0.15 mm']) {
    const there = Array.from({ length: 10 }).reduce<string>((now) => stepped(now, 1, false) ?? 'none', value);
    expect(stepped(there, -10, false)).toBe(value);
  }
});
