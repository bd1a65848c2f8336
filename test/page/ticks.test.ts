import { expect, test } from 'vitest';
import { ratioTicks, roundTicks, wholeTicks } from '../../src/page/trays/what-if/ticks.js';

test('a ruler counts in ones, twos and fives', () => {
  expect(roundTicks(0, 60, 6)).toEqual([0, 10, 20, 30, 40, 50, 60]);
  expect(roundTicks(2.85, 5.25, 6)).toEqual([3, 3.5, 4, 4.5, 5]);
  expect(roundTicks(2.93, 3.07, 4)).toEqual([2.95, 3, 3.05]);
});

test('sheets are counted whole', () => expect(wholeTicks(5.4, 7.6, 4)).toEqual([6, 7]));

test('magnifications are said as 1:n and n:1, in round numbers that keep apart', () => {
  expect(ratioTicks(0.05, 1, 6).map((m) => Number((1 / m).toFixed(4)))).toEqual([10, 3, 2, 1.5, 1]);
  expect(ratioTicks(0.8, 2.2, 4)).toContain(2);
  for (const [from, to] of [
    [0.44, 0.48],
    [0.1, 0.6],
    [0.3, 3],
  ] as const) {
    const ticks = ratioTicks(from, to, 5);
    expect(ticks.length).toBeGreaterThan(1);
    for (const [i, tick] of ticks.entries()) {
      expect(tick).toBeGreaterThanOrEqual(from - 1e-9);
      expect(tick).toBeLessThanOrEqual(to + 1e-9);
      if (i > 0) expect(tick - (ticks[i - 1] as number)).toBeGreaterThanOrEqual((to - from) / 5 - 1e-9);
    }
  }
});
