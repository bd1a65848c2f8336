import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  celsius,
  exposureTime,
  fNumber,
  kg,
  legible,
  magnification,
  metres,
  mm,
  plainNumber,
  stops,
  stopsInWords,
} from '../../src/units/print.js';

describe('lengths as text', () => {
  test.each([
    [4.05, '4.05 mm'],
    [4, '4 mm'],
    [100, '100 mm'],
    [0, '0 mm'],
    [-0, '0 mm'],
    [-0.0004, '0 mm'],
    [-0.02, '-0.02 mm'],
    [0.1 + 0.2, '0.3 mm'],
    [1.5 * 25.4, '38.1 mm'],
    [1e-9, '0 mm'],
    [1234567.8912, '1234567.891 mm'],
    [1e21, '1000000000000000000000 mm'],
    [-2e21, '-2000000000000000000000 mm'],
  ])('%d', (length, text) => expect(mm(length)).toBe(text));

  test('no exponent, no minus nought, no grouping, at most three decimals', () =>
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (any) => {
        expect(plainNumber(any)).toMatch(/^-?\d+(\.\d{0,2}[1-9])?$/);
        expect(plainNumber(any)).not.toBe('-0');
      }),
      { numRuns: 500 },
    ));

  test('what is not finite is a mistake of ours', () => {
    expect(() => mm(Number.NaN)).toThrow(RangeError);
    expect(() => mm(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });
});

test('the other figures as the trade writes them', () => {
  expect(magnification(1 / 2.15)).toBe('1:2.15');
  expect(magnification(1)).toBe('1:1');
  expect(magnification(2)).toBe('2:1');
  expect(magnification(0)).toBe('infinity');
  expect(fNumber(6.3)).toBe('f/6.3');
  expect(fNumber(8)).toBe('f/8');
  expect(stops(0.97)).toBe('0.97 stops');
  expect(stops(1)).toBe('1 stop');
  expect(kg(0.64)).toBe('0.64 kg');
  expect(celsius(22.5)).toBe('22.5 °C');
});

test.each([
  [0.5, 'half a stop'],
  [-0.5, 'half a stop'],
  [0.541, '0.54 stop'],
  [0.999, '1 stop'],
  [-1.5, '1.5 stops'],
  [0, '0 stops'],
])('%d stops within a sentence are %s', (count, says) => expect(stopsInWords(count)).toBe(says));

test.each([
  [188.15, '188.15'],
  [6.075, '6.075'],
  [0.4, '0.4'],
  [0.46619047, '0.46619'],
  [0.000123456, '0.000123456'],
  [10285.598, '10285.6'],
  [-6.5, '−6.5'],
  [0, '0'],
  [-0.0000000000001, '0'],
])('%d in a formula', (value, text) => expect(legible(value)).toBe(text));

test.each([
  [1 / 60, '1/60 s'],
  [0.25, '1/4 s'],
  [0.5, '0.5 s'],
  [8.3333, '8.33 s'],
  [36.04, '36 s'],
  [59.97, '60 s (1 min 0 s)'],
  [109.33, '109 s (1 min 49 s)'],
])('the time of an exposure, %d s', (time, text) => expect(exposureTime(time)).toBe(text));

test('a distance in a room', () => expect([metres(1071), metres(900)]).toEqual(['1.07 m', '0.9 m']));
