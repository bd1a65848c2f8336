import { describe, expect, test } from 'vitest';
import { chiSquareShare } from '../../src/statistics/chi-square.js';
import { studentQuantile, studentShare } from '../../src/statistics/student-t.js';

describe('Student’s t, as printed in tables', () => {
  test.each([
    // from memory: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, critical values of Student's t
    { freedom: 1, t90: 3.078, t95: 6.314, t975: 12.706, t99: 31.821 },
    { freedom: 2, t90: 1.886, t95: 2.92, t975: 4.303, t99: 6.965 },
    { freedom: 3, t90: 1.638, t95: 2.353, t975: 3.182, t99: 4.541 },
    { freedom: 4, t90: 1.533, t95: 2.132, t975: 2.776, t99: 3.747 },
    { freedom: 5, t90: 1.476, t95: 2.015, t975: 2.571, t99: 3.365 },
    { freedom: 6, t90: 1.44, t95: 1.943, t975: 2.447, t99: 3.143 },
    { freedom: 8, t90: 1.397, t95: 1.86, t975: 2.306, t99: 2.896 },
    { freedom: 10, t90: 1.372, t95: 1.812, t975: 2.228, t99: 2.764 },
    { freedom: 30, t90: 1.31, t95: 1.697, t975: 2.042, t99: 2.457 },
    { freedom: 100, t90: 1.29, t95: 1.66, t975: 1.984, t99: 2.364 },
    { freedom: Number.POSITIVE_INFINITY, t90: 1.282, t95: 1.645, t975: 1.96, t99: 2.326 },
  ])('$freedom degrees of freedom', ({ freedom, t90, t95, t975, t99 }) => {
    for (const [share, printed] of [
      [0.9, t90],
      [0.95, t95],
      [0.975, t975],
      [0.99, t99],
    ] as const)
      expect(Math.abs(studentQuantile(share, freedom) - printed)).toBeLessThan(0.00051);
  });
});

describe('Student’s t, against closed forms', () => {
  // common practice, no source: the integrals of the densities for 1, 2 and 4 degrees of freedom
  const closed: Readonly<Record<number, (t: number) => number>> = {
    1: (t) => 0.5 + Math.atan(t) / Math.PI,
    2: (t) => 0.5 + t / (2 * Math.sqrt(2 + t * t)),
    4: (t) => {
      const sine = t / Math.sqrt(4 + t * t);
      return 0.5 + (3 / 4) * sine * (1 - (sine * sine) / 3);
    },
  };
  test.each([1, 2, 4])('%d degrees of freedom', (freedom) => {
    for (const t of [-40, -3.2, -1, -0.01, 0, 0.2, 0.999, 1.5, 2.776, 12, 300])
      expect(Math.abs(studentShare(t, freedom) - (closed[freedom]?.(t) ?? Number.NaN))).toBeLessThan(1e-12);
  });

  test.each([
    // from memory: Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1
    { x: 1, share: 0.8413447461 },
    { x: 2, share: 0.9772498681 },
    { x: 3, share: 0.998650102 },
  ])('the normal distribution at $x', ({ x, share }) =>
    expect(Math.abs(studentShare(x, Number.POSITIVE_INFINITY) - share)).toBeLessThan(1e-10),
  );

  test('with very many readings it is the normal one', () =>
    expect(studentQuantile(0.975, 20_000)).toBeCloseTo(studentQuantile(0.975, Number.POSITIVE_INFINITY), 3));

  test.each([1, 3, 7, 38, Number.POSITIVE_INFINITY])(
    'quantile and share undo each other, %d degrees of freedom',
    (freedom) => {
      for (const share of [0.0001, 0.025, 0.3, 0.5, 0.8, 0.975, 0.99999])
        expect(studentShare(studentQuantile(share, freedom), freedom)).toBeCloseTo(share, 12);
    },
  );
});

describe('chi square', () => {
  test.each([
    // from memory: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, critical values of chi square
    { freedom: 1, x: 3.841, share: 0.95 },
    { freedom: 5, x: 11.07, share: 0.95 },
    { freedom: 6, x: 1.237, share: 0.025 },
    { freedom: 6, x: 14.449, share: 0.975 },
    { freedom: 10, x: 23.209, share: 0.99 },
    { freedom: 30, x: 43.773, share: 0.95 },
  ])('$x is above a share of $share with $freedom degrees of freedom', ({ freedom, x, share }) =>
    expect(chiSquareShare(x, freedom)).toBeCloseTo(share, 4),
  );

  test('two degrees of freedom are 1 − exp(−x/2)', () => {
    for (const x of [0.001, 0.5, 1, 3.9, 4.1, 20]) expect(chiSquareShare(x, 2)).toBeCloseTo(1 - Math.exp(-x / 2), 14);
  });
});
