import { expect, test } from 'vitest';
import { nearestText } from '../../src/units/nearest-text.js';

test.each([
  // 97.9/210 is 1:2.1450…, so 1:2.15 is farther and 1:2.14 nearer
  { m: 97.9 / 210, down: '1:2.15', up: '1:2.14' },
  { m: 1 / 2.5, down: '1:2.5', up: '1:2.5' },
  { m: 1, down: '1:1', up: '1:1' },
  { m: 1.234, down: '1.23:1', up: '1.24:1' },
  { m: 1 / 59.15, down: '1:60', up: '1:59' },
  { m: 0, down: 'infinity', up: 'infinity' },
])('$m is no nearer than $down and no farther than $up', ({ m, down, up }) =>
  expect([nearestText(m), nearestText(m, 'up')]).toEqual([down, up]),
);
