import { describe, expect, test } from 'vitest';
import { parseSpeed } from '../../src/units/speed.js';

describe('a speed, in mm/s', () => {
  test.each([
    ['10 mm/s', 10],
    ['10mm/s', 10],
    ['600 mm/min', 10],
    ['0.6 m/min', 10],
    ['0.3 m/s', 300],
    ['1 in/s', 25.4], // an inch is 25.4 mm by agreement of 1959 [common practice]
    ['60 in/min', 25.4],
    ['12.5', 12.5],
    [200, 200],
  ])('%s', (text, speed) => expect(parseSpeed(text)).toEqual({ value: expect.closeTo(speed, 12) }));

  test.each([
    ['10 mm', /not a speed/],
    ['10 mm/h', /not a speed/],
    ['10,5 mm/s', /decimal comma/],
    ['-10 mm/s', /negative/],
    ['0 mm/s', /zero/],
    ['fast', /not a speed/],
    [null, /not a speed/],
  ])('%s is refused', (input, reason) =>
    expect(parseSpeed(input)).toEqual({
      reason: expect.stringMatching(reason),
      accepted: expect.stringMatching(/^Write /),
    }),
  );
});
