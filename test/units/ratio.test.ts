import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { density, fNumber, magnification, modulus } from '../../src/units/print.js';
import { parseDensity, parseFNumber, parseMagnification, parseModulus, parseNumber } from '../../src/units/ratio.js';

const value = (reading: unknown): number => (reading as { value: number }).value;

describe('a magnification', () => {
  test.each([
    ['1:3', 1 / 3],
    ['1/3', 1 / 3],
    ['3 / 2', 1.5],
    ['1:2.5', 0.4],
    ['2:1', 2],
    ['1 : 4', 0.25],
    ['0.33', 0.33],
    [0.33, 0.33],
    ['infinity', 0],
  ])('%s', (text, m) => expect(parseMagnification(text)).toEqual({ value: expect.closeTo(m, 12) }));

  test.each([
    ['1:2,5', /decimal comma/],
    ['1:0', /not a magnification/],
    ['1:3:5', /not a magnification/],
    ['1:', /not a magnification/],
    ['-1:3', /not a magnification/],
    ['.inf', /not a magnification/],
    [0, /zero/],
    [Number.NaN, /NaN/],
    ['1:3 mm', /not a magnification/],
    [null, /not a magnification/],
  ])('%s is refused', (input, reason) =>
    expect(parseMagnification(input)).toMatchObject({ reason: expect.stringMatching(reason) }),
  );
});

describe('an f-number', () => {
  test.each([
    ['f/6.3', 6.3],
    ['F/6.3', 6.3],
    ['f6.3', 6.3],
    ['6.3', 6.3],
    [8, 8],
    ['1:6.3', 6.3], // as lenses are engraved
  ])('%s', (text, n) => expect(parseFNumber(text)).toEqual({ value: n }));

  test.each([
    ['f/6,3', /decimal comma/],
    ['f/0', /zero/],
    ['f/-8', /negative/],
    ['f/', /not an f-number/],
    ['2:6.3', /not an f-number/],
    ['6.3 mm', /not an f-number/],
    [false, /not an f-number/],
  ])('%s is refused', (input, reason) =>
    expect(parseFNumber(input)).toMatchObject({ reason: expect.stringMatching(reason) }),
  );
});

test('a plain number takes no unit', () => {
  expect(parseNumber('1.52')).toEqual({ value: 1.52 });
  expect(parseNumber('1.52 mm')).toHaveProperty('reason');
});

test('density and modulus are read in kg/m³ and N/mm²', () => {
  expect(parseDensity('680 kg/m3')).toEqual({ value: 680 });
  expect(value(parseDensity('0.68 g/cm³'))).toBeCloseTo(680, 9);
  expect(parseDensity(680)).toEqual({ value: 680 });
  expect(parseModulus('7000 N/mm2')).toEqual({ value: 7000 });
  expect(parseModulus('7 GPa')).toEqual({ value: 7000 });
  expect(parseModulus('7000 kg')).toHaveProperty('reason');
});

describe('laws', () => {
  const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  test('a printed magnification reads back, the larger figure to a hundredth', () =>
    fc.assert(
      fc.property(positive(0.001, 20), (m) => {
        const back = value(parseMagnification(magnification(m)));
        const [was, is] = m > 1 ? [m, back] : [1 / m, 1 / back];
        expect(Math.abs(was - is)).toBeLessThanOrEqual(0.01001);
      }),
      { numRuns: 300 },
    ));

  test('a printed f-number, density and modulus read back', () =>
    fc.assert(
      fc.property(positive(0.5, 256), positive(10, 20000), (n, figure) => {
        expect(Math.abs(value(parseFNumber(fNumber(n))) - n)).toBeLessThanOrEqual(0.00501);
        expect(Math.abs(value(parseDensity(density(figure))) - figure)).toBeLessThanOrEqual(0.000501);
        expect(Math.abs(value(parseModulus(modulus(figure))) - figure)).toBeLessThanOrEqual(0.000501);
      }),
      { numRuns: 300 },
    ));

  test('nothing makes them throw', () =>
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.anything()), (input) => {
        for (const parse of [parseMagnification, parseFNumber, parseNumber, parseDensity, parseModulus])
          expect('value' in parse(input) || 'reason' in parse(input)).toBe(true);
      }),
      { numRuns: 300 },
    ));
});
