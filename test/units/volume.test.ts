import { describe, expect, test } from 'vitest';
import { parseVolume } from '../../src/units/volume.js';

describe('a volume, in ml', () => {
  test.each([
    ['250 ml', 250],
    ['0.25 l', 250],
    ['25 cl', 250],
    ['250 cm3', 250],
    ['1/2 l', 500],
    [250, 250],
    ['0', 0],
  ])('%s', (text, volume) => expect(parseVolume(text)).toEqual({ value: expect.closeTo(volume, 12) }));

  test.each([
    ['8 oz', /not a volume/],
    ['-1 ml', /negative/],
    ['a cup', /not a volume/],
  ])('%s is refused', (input, reason) =>
    expect(parseVolume(input)).toEqual({ reason: expect.stringMatching(reason), accepted: 'Write 250 ml or 0.25 l.' }),
  );
});
