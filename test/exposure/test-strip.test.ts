import { expect, test } from 'vitest';
import { partialExposures, stripStops } from '../../src/exposure/test-strip.js';

const amounts = (stops: readonly number[]) => stops.map((stop) => 2 ** (stop - (stops[0] ?? 0)));

// "whole stops add t, t, 2t, 4t; half stops add each time 0.41 of the sum so far": common practice, no source
test('whole stops add t, t, 2t, 4t', () => {
  expect(partialExposures(amounts(stripStops('whole', 4)))).toEqual([1, 1, 2, 4]);
});

test('half stops add each time 0.41 of the sum so far', () => {
  let sum = 0;
  for (const [index, partial] of partialExposures(amounts(stripStops('half', 6))).entries()) {
    if (index > 0) expect(partial / sum).toBeCloseTo(0.4142, 4);
    sum += partial;
  }
  expect(sum).toBeCloseTo(2 ** 2.5, 9);
});

test.each([
  { step: 'whole', count: 5, stops: [-2, -1, 0, 1, 2] },
  { step: 'half', count: 3, stops: [-0.5, 0, 0.5] },
  { step: 'whole', count: 4, stops: [-1, 0, 1, 2] },
  { step: 'half', count: 2, stops: [0, 0.5] },
] as const)('$count strips of $step stops lie about the setting', ({ step, count, stops }) => {
  expect(stripStops(step, count)).toEqual(stops);
});
