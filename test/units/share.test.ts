import { expect, test } from 'vitest';
import { parsePercent } from '../../src/units/share.js';

test.each([
  ['10 %', 10],
  ['10%', 10],
  [10, 10],
  ['12.5', 12.5],
  [0, 0],
  [1, 1],
  ['0.5 %', 0.5],
])('%s is %d per cent', (input, value) => expect(parsePercent(input)).toEqual({ value }));

test.each([
  [0.1, /^0\.1 has no unit/, /10 % for a tenth, or 0\.1 %/],
  ['0.15', /has no unit/, /or 0\.15 %/],
  [-5, /is negative/, /10 %/],
  ['a tenth', /is not a percentage/, /10 %/],
  ['10 percent', /is not a percentage/, /10 %/],
])('%s is refused', (input, reason, accepted) =>
  expect(parsePercent(input)).toEqual({
    reason: expect.stringMatching(reason),
    accepted: expect.stringMatching(accepted),
  }),
);
