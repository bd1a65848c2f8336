import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseMass } from '../../src/units/mass.js';
import { kg } from '../../src/units/print.js';

describe('a mass is read in kg', () => {
  test.each([
    ['640 g', 0.64],
    ['1.15 kg', 1.15],
    ['330g', 0.33],
  ])('%s', (text, massKg) => expect(parseMass(text)).toEqual({ value: expect.closeTo(massKg, 12) }));

  // A lens of 640 could be grams or, typed by a hasty hand, 0.64: a guess would be wrong by a thousand.
  test.each([
    ['640', /no unit/],
    [640, /no unit/],
    ['0,64 kg', /decimal comma/],
    ['-1 g', /negative/],
    ['0 g', /zero/],
    ['2 lb', /not a mass/],
    [null, /not a mass/],
  ])('%s is refused', (input, reason) =>
    expect(parseMass(input)).toMatchObject({ reason: expect.stringMatching(reason) }),
  );
});

test('what is printed reads back, to the gram', () =>
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 100, noNaN: true }), (massKg) => {
      expect(Math.abs((parseMass(kg(massKg)) as { value: number }).value - massKg)).toBeLessThanOrEqual(0.000501);
    }),
    { numRuns: 300 },
  ));
