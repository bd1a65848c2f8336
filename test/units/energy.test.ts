import { describe, expect, test } from 'vitest';
import { parseEnergy } from '../../src/units/energy.js';
import { parseExposureTime } from '../../src/units/time.js';

describe('the energy of a flash', () => {
  // a watt second is a joule [SI Brochure, derived units]
  test.each([
    ['400', 400],
    [400, 400],
    ['400 J', 400],
    ['400Ws', 400],
    ['400 ws', 400],
    ['1.2 kJ', 1200],
    ['1.2kWs', 1200],
  ])('%s', (text, joules) => expect(parseEnergy(text)).toEqual({ value: joules }));

  test.each([['400 W'], ['0'], ['-400'], ['1,2 kJ'], ['f/16'], ['']])('not %s', (text) =>
    expect(parseEnergy(text)).toHaveProperty('accepted'),
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
