import { describe, expect, test } from 'vitest';
import { parseBathTime, parseExposureTime, parseSeconds } from '../../src/units/time.js';

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

describe('the time of an exposure', () => {
  test.each([
    ['1/4s', 0.25],
    ['1/125 s', 0.008],
    ['90 s', 90],
    ['2 min', 120],
    ['8', 8],
    ['500 ms', 0.5],
  ])('%s', (text, time) => {
    const reading = parseExposureTime(text);
    expect('value' in reading ? reading.value : reading.reason).toBeCloseTo(time, 12);
  });

  test('a fraction wants its unit, and nothing is no time', () => {
    expect(parseExposureTime('1/4')).toHaveProperty('reason', 'The fraction "1/4" has no unit.');
    expect(parseExposureTime('0 s')).toHaveProperty('accepted', 'Write 1/4 s, 90 s or 2 min.');
  });
});

describe('the time of a bath', () => {
  test.each([
    ['1m30s', 90],
    ['1 min 30 s', 90],
    ['1M30S', 90],
    ['90 s', 90],
    ['1.5 min', 90],
    ['2m', 120],
    ['1h5m', 3900],
    ['1 h 5 s', 3605],
    ['2m7.5s', 127.5],
    ['90 m', 5400],
    ['0 s', 0],
  ])('%s', (text, time) => {
    const reading = parseBathTime(text);
    expect('value' in reading ? reading.value : reading.reason).toBeCloseTo(time, 12);
  });

  test.each([
    ['90', /has no unit/],
    [90, /has no unit/],
    ['1m60s', /60 or more/],
    ['1h60m', /60 or more/],
    ['30s1m', /not a time/],
    ['1:30', /not a time/],
    ['', /not a time/],
    ['1,5 min', /decimal comma/],
    ['-5 s', /negative/],
    [null, /not a time/],
  ])('%s is refused', (input, reason) =>
    expect(parseBathTime(input)).toEqual({
      reason: expect.stringMatching(reason),
      accepted: expect.stringMatching(/^Write /),
    }),
  );
});
