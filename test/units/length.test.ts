import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { acceptedLength, hasLengthUnit, parseLength, unitMeant } from '../../src/units/length.js';
import { mm } from '../../src/units/print.js';

describe('a length is read in mm', () => {
  // One inch is 25.4 mm exactly (international yard and pound agreement, 1959); the rest is arithmetic.
  test.each([
    ['4.05 mm', 4.05],
    ['4.05mm', 4.05],
    ['4.05', 4.05],
    [4.05, 4.05],
    [' 12 cm ', 120],
    ['0.9 m', 900],
    ['5 in', 127],
    ['7"', 177.8],
    ['1 1/2 in', 38.1],
    ['7/8"', 22.225],
    ['5/32 in', 3.96875],
    ['0.228 in', 5.7912], // M1.14, the depth of 5x7 holders [verified: R1]
    ['.5 mm', 0.5],
    ['+3', 3],
    ['10 MM', 10],
    // One foot is 0.3048 m exactly (international yard and pound agreement, 1959).
    ['3 ft', 914.4],
    ["3'", 914.4],
    ['6 1/2 ft', 1981.2],
    ['10′', 3048],
  ])('%s is %d mm', (text, length) => expect(parseLength(text)).toEqual({ value: expect.closeTo(length, 10) }));
});

describe('what is no length is refused with a reason', () => {
  test.each([
    ['4,05 mm', /decimal comma/],
    ['4.05 mn', /"4\.05 mn" is not a length/],
    ['-3 mm', /negative/],
    ['0 mm', /zero/],
    [0, /zero/],
    [-0, /zero/],
    [Number.NaN, /NaN/],
    [Number.POSITIVE_INFINITY, /not finite/],
    ['.nan', /not a length/],
    ['.inf', /not a length/],
    ['infinity', /not a length/],
    ['0x10', /not a length/],
    ['1e3 mm', /not a length/],
    ['5/32', /fraction .* no unit/],
    ['1/0 in', /divides by zero/],
    ['1 1/2/3 in', /not a length/],
    ['', /not a length/],
    ['mm', /not a length/],
    ['4 . 05 mm', /not a length/],
    ['3 ft 6 in', /not a length/],
    ['3\'6"', /not a length/],
    [true, /not a length/],
    [null, /not a length/],
    [undefined, /not a length/],
    [[4], /not a length/],
    [{}, /not a length/],
  ])('%s', (input, reason) => {
    expect(parseLength(input)).toMatchObject({
      reason: expect.stringMatching(reason),
      accepted: expect.stringMatching(/^Write /),
    });
  });

  test('a decimal comma is answered with the same figure and a point', () =>
    expect(parseLength('4,05 mm')).toMatchObject({ accepted: 'Write 4.05 mm, with a point.' }));

  test('a quoted value cannot act on a terminal, nor fill it', () => {
    const { reason } = parseLength(`\u001b[31m\u009b\u202e${'x'.repeat(500)}`) as { reason: string };
    expect(reason).not.toMatch(/[\p{Cc}\u202e]/u);
    expect(reason.length).toBeLessThan(120);
  });
});

test('nothing and less than nothing are lengths where the place takes them', () => {
  expect(parseLength('0 mm', 'not-negative')).toEqual({ value: 0 });
  expect(Object.is((parseLength('-0', 'not-negative') as { value: number }).value, 0)).toBe(true);
  expect(parseLength('-0.02 mm', 'any')).toEqual({ value: -0.02 });
  expect(parseLength('-1 mm', 'not-negative')).toHaveProperty('reason');
});

test('a distance is told from a bare magnification by its unit', () => {
  expect(['0.9 m', '900mm', '3 in', '36"', '3 ft', "3'"].map(hasLengthUnit)).toEqual(Array(6).fill(true));
  expect(['0.33', '1:3', 'infinity'].map(hasLengthUnit)).toEqual([false, false, false]);
});

describe('laws', () => {
  test('what is printed reads back, to the micrometre', () =>
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (length) => {
        const text = mm(length);
        expect(parseLength(text, 'any')).toEqual({ value: expect.closeTo(length, 2) });
        expect(Math.abs((parseLength(text, 'any') as { value: number }).value - length)).toBeLessThanOrEqual(0.000501);
        expect(mm((parseLength(text, 'any') as { value: number }).value)).toBe(text);
      }),
      { numRuns: 500 },
    ));

  test('a fraction of an inch is the same as its decimal', () =>
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 1, max: 63 }), (whole, sixtyFourths) => {
        const fraction = parseLength(`${whole} ${sixtyFourths}/64 in`);
        expect(fraction).toEqual({ value: expect.closeTo((whole + sixtyFourths / 64) * 25.4, 9) });
      }),
      { numRuns: 300 },
    ));

  test('no text and no value whatever makes it throw', () =>
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.anything()), (input) => {
        const reading = parseLength(input);
        expect('value' in reading ? reading.value > 0 && Number.isFinite(reading.value) : reading.reason !== '').toBe(
          true,
        );
      }),
      { numRuns: 500 },
    ));
});

test('a distance in a room is shown in metres and feet, a thickness in fractions of an inch', () => {
  expect(acceptedLength('1.2 m')).toBe('Write 1.2 m, or feet such as 4 ft.');
  expect(acceptedLength('4.05 mm')).toBe('Write 4.05 mm, or an inch fraction such as 5/32 in.');
});

test.each([
  { typed: 1.5, meant: '1.5 m' },
  { typed: 20, meant: '20 m' },
  { typed: 90, meant: '90 cm' },
  // neither metres nor centimetres would do in a room
  { typed: 0.05, meant: null },
  { typed: 5000, meant: null },
])('who types $typed for a distance in a room and forgets the unit means $meant', ({ typed, meant }) =>
  expect(unitMeant(typed)).toBe(meant),
);
