import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  celsius,
  clockTime,
  duration,
  explainedFigure,
  exposureTime,
  fNumber,
  kg,
  legible,
  magnification,
  metres,
  millilitres,
  mm,
  movedBy,
  plainNumber,
  scale,
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

test.each([
  // 97.9/210 is 1:2.1450…, so 1:2.15 is farther and 1:2.14 nearer
  { m: 97.9 / 210, farther: '1:2.15', nearer: '1:2.14' },
  { m: 1 / 2.5, farther: '1:2.5', nearer: '1:2.5' },
  { m: 1, farther: '1:1', nearer: '1:1' },
  { m: 1.234, farther: '1.23:1', nearer: '1.24:1' },
  { m: 1 / 59.153, farther: '1:59.16', nearer: '1:59' },
  { m: 0, farther: 'infinity', nearer: 'infinity' },
])('$m is no nearer than $farther and no farther than $nearer', ({ m, farther, nearer }) =>
  expect([magnification(m), magnification(m, 'nearer')]).toEqual([farther, nearer]),
);

test('less than a thousandth is no promise: a nearest of 0.855 m typed for 1:3 is 1:3', () =>
  expect(magnification(1 / 3.0009)).toBe('1:3'));

test.each([
  [1 / 1.503, '1:1.5'],
  [1 / 4.037, '1:4.04'],
  [2.346, '2.35:1'],
  [0, 'infinity'],
])('a scale of %d that was measured is %s, and promises nothing', (m, printed) => expect(scale(m)).toBe(printed));

test('what a small step does to a reach is not rounded to what it does not reach, and says whether it is a gain', () => {
  // 1/(0.4 + 0.0001) is 2.49937…; 1/0.399 is 2.50626…
  expect(movedBy(0.4, 0.0001, 'magnification')).toBe('1:2.5, nearer');
  expect(movedBy(0.4, -0.001, 'magnification')).toBe('1:2.507, farther');
  // the figure itself has as many figures: 1/0.661 is 1.51286…
  expect(explainedFigure(0.661, 'magnification')).toBe('1:1.513');
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

test.each([
  [0, '0:00', '0 s'],
  [9.4, '0:09', '9 s'],
  [59.6, '1:00', '1 min'],
  [90, '1:30', '1 min 30 s'],
  [3600, '1:00:00', '1 h'],
  [3725, '1:02:05', '1 h 2 min 5 s'],
])('a time in the darkroom, %d s, on a clock and in words', (time, clock, words) => {
  expect(clockTime(time)).toBe(clock);
  expect(duration(time)).toBe(words);
});

test('a volume of liquid', () => expect([millilitres(250), millilitres(122.36)]).toEqual(['250 ml', '122.4 ml']));

test('a distance in a room', () => expect([metres(1071), metres(900)]).toEqual(['1.07 m', '0.9 m']));
