import { describe, expect, test } from 'vitest';
import { fitLine, type LinePoint, lineAt } from '../../src/statistics/line-fit.js';
import { pairsOfBenchB } from '../lens-bench/bench.js';
import { norris } from './norris.js';

const pointsOf = (pairs: readonly (readonly [number, number])[]): readonly LinePoint[] =>
  pairs.map(([x, y]) => ({ x, y }));

const relative = (found: number, expected: number): number => Math.abs(found - expected) / Math.abs(expected);

describe('Norris, to the digits that are printed', () => {
  const fit = fitLine(pointsOf(norris));
  const left = fit.deviation * fit.deviation * fit.freedom;
  test('has 36 pairs', () => expect(norris).toHaveLength(36));
  test.each([
    // NIST/ITL StRD, Norris; V7.01 to V7.03, verified: S67a
    { figure: 'intercept', found: fit.intercept, expected: -0.262323073774029, within: 1e-10 },
    { figure: 'slope', found: fit.slope, expected: 1.00211681802045, within: 1e-10 },
    { figure: 'error of the intercept', found: fit.interceptError, expected: 0.232818234301152, within: 1e-9 },
    { figure: 'error of the slope', found: fit.slopeError, expected: 0.000429796848199937, within: 1e-9 },
    { figure: 'residual deviation', found: fit.deviation, expected: 0.884796396144373, within: 1e-9 },
    { figure: 'R²', found: fit.determination, expected: 0.999993745883712, within: 1e-9 },
    { figure: 'residual sum of squares', found: left, expected: 26.6173985294224, within: 1e-9 },
    {
      figure: 'F',
      found: (fit.determination / (1 - fit.determination)) * fit.freedom,
      expected: 5436385.54079785,
      within: 1e-9,
    },
    // GSL-style test with covariance quotes it as computed; V7.04, verified: S67c
    { figure: 'covariance', found: fit.covariance, expected: -7.74327536e-5, within: 1e-7 },
  ])('$figure', ({ found, expected, within }) => expect(relative(found, expected)).toBeLessThan(within));
});

describe('NIST NoInt1: x from 60 to 70, y from 130 to 140', () => {
  const pairs = Array.from({ length: 11 }, (_, i) => [60 + i, 130 + i] as const);
  test('with its intercept the line is y = 70 + x, which shows what forcing the origin does', () => {
    const fit = fitLine(pointsOf(pairs)); // V7.06, data verified: S67b; computed
    expect(fit.slope).toBeCloseTo(1, 9);
    expect(fit.intercept).toBeCloseTo(70, 9);
  });
  // Nobody is offered a line through the origin. One is had, for the check alone, by giving every point its mirror image:
  // the intercept is then nothing, the slope that of the origin's line, and of the 2·11 points 20 degrees of freedom
  // are left, twice the 10 of NIST, with twice the sum of squares.
  test('mirrored in the origin it gives the published line through the origin', () => {
    const fit = fitLine(pointsOf([...pairs, ...pairs.map(([x, y]) => [-x, -y] as const)]));
    expect(fit.intercept).toBeCloseTo(0, 10); // V7.05, verified: S67b
    expect(relative(fit.slope, 2.07438016528926)).toBeLessThan(1e-10);
    expect(relative(fit.deviation, 3.56753034006338)).toBeLessThan(1e-10);
    expect(relative(fit.slopeError * Math.SQRT2, 0.0165289256198347)).toBeLessThan(1e-10);
  });
});

test('bench A, exact: 210 mm and 202.4 mm with nothing left over', () => {
  const fit = fitLine(
    pointsOf([
      [0.1, 223.4],
      [0.25, 254.9],
      [0.5, 307.4],
      [0.75, 359.9],
      [1, 412.4],
    ]),
  ); // V7.07, common practice, no source: constructed
  expect(fit.slope).toBeCloseTo(210, 9);
  expect(fit.intercept).toBeCloseTo(202.4, 9);
  expect(fit.deviation).toBeCloseTo(0, 9);
});

describe('bench B', () => {
  const fit = fitLine(pointsOf(pairsOfBenchB));
  test.each([
    // V7.08, common practice, no source: constructed, exact fractions
    { figure: 'f', found: fit.slope, expected: 239.408478 },
    { figure: 'flange distance', found: fit.intercept, expected: 194.650867 },
    { figure: 'residual deviation', found: fit.deviation, expected: 0.2977 },
    { figure: 'u(f)', found: fit.slopeError, expected: 0.369608 },
    { figure: 'u(flange distance)', found: fit.interceptError, expected: 0.208673 },
    { figure: 'correlation', found: fit.correlation, expected: -0.863475 },
    { figure: 'R²', found: fit.determination, expected: 0.9999857 },
  ])('$figure', ({ found, expected }) => expect(Math.abs(found - expected)).toBeLessThan(1e-6));

  test.each([
    // V7.09, common practice, no source: constructed
    { m: 0, distance: 194.6509, error: 0.2087 },
    { m: 0.5, distance: 314.3551, error: 0.1054 },
    { m: 1, distance: 434.0593, error: 0.2167 },
    { m: 1.5, distance: 553.7636, error: 0.3887 },
  ])('predicts $distance at magnification $m', ({ m, distance, error }) => {
    const { y, standardError } = lineAt(fit, m);
    expect(Math.abs(y - distance)).toBeLessThan(1e-4);
    expect(Math.abs(standardError - error)).toBeLessThan(1e-4);
  });

  test('is not what the inverted regression of m on the distance gives', () => {
    const inverted = 1 / fitLine(pointsOf(pairsOfBenchB.map(([m, distance]) => [distance, m] as const))).slope;
    expect(inverted).toBeCloseTo(239.411902, 6); // V7.10, common practice, no source: constructed
    expect(fit.slope).not.toBeCloseTo(inverted, 3);
  });

  test('the covariance is the correlation times both errors', () =>
    expect(fit.covariance).toBeCloseTo(fit.correlation * fit.slopeError * fit.interceptError, 12));

  test('a weight of two is the reading taken twice', () => {
    const [first, ...rest] = pairsOfBenchB;
    const twice = fitLine(pointsOf([first, first, ...rest]));
    const weighed = fitLine([{ x: first[0], y: first[1], weight: 2 }, ...pointsOf(rest)]);
    expect(weighed.slope).toBeCloseTo(twice.slope, 10);
    expect(weighed.intercept).toBeCloseTo(twice.intercept, 10);
    expect(weighed.unitErrors.slope).toBeCloseTo(twice.unitErrors.slope, 12);
  });

  test('weights that are all alike change nothing but the unit of the scatter', () => {
    const heavy = fitLine(pairsOfBenchB.map(([x, y]) => ({ x, y, weight: 25 })));
    expect(heavy.slope).toBeCloseTo(fit.slope, 10);
    expect(heavy.slopeError).toBeCloseTo(fit.slopeError, 10);
    expect(heavy.deviation).toBeCloseTo(5 * fit.deviation, 10);
  });

  test('the points pull the line by two in all', () =>
    expect(fit.leverages.reduce((sum, one) => sum + one, 0)).toBeCloseTo(2, 12));
});
