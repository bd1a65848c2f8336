import { describe, expect, test } from 'vitest';
import { parseSeconds } from '../../src/units/time.js';

describe('a time, in seconds', () => {
  test.each([
    ['0.5 s', 0.5],
    ['500 ms', 0.5],
    ['1 min', 60],
    ['0', 0],
    [0.3, 0.3],
  ])('%s', (text, time) => expect(parseSeconds(text)).toEqual({ value: expect.closeTo(time, 12) }));

  test.each([
    ['0.5 mm', /not a time/],
    ['0,5 s', /decimal comma/],
    ['-1 s', /negative/],
    ['soon', /not a time/],
  ])('%s is refused', (input, reason) =>
    expect(parseSeconds(input)).toEqual({
      reason: expect.stringMatching(reason),
      accepted: expect.stringMatching(/^Write /),
    }),
  );
});
