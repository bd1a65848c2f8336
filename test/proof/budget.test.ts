import { describe, expect, test } from 'vitest';
import { type Contributor, halfOf, intervalOf, sharesOf, varianceOf, worstCase } from '../../src/proof/budget.js';
import { simulated } from './simulated.js';

const even = (half: number, more: Partial<Contributor> = {}): Contributor => ({
  name: 'ply',
  shift: 0,
  half,
  spread: 'uniform',
  sensitivity: 1,
  count: 1,
  ...more,
});

const reachOf = (contributors: readonly Contributor[], probability?: number): number =>
  intervalOf(0, contributors, probability)[1];

describe('the worst case is the sum of the limits', () => {
  // hand arithmetic
  test('four plies, two glue lines', () => {
    const [low, high] = worstCase(0.1, [
      even(0.05, { count: 4 }),
      even(0.035, { name: 'glue', shift: 0.065, count: 2 }),
    ]);
    // 0.1 + 2 × 0.065 = 0.23, give or take 4 × 0.05 + 2 × 0.035 = 0.27
    expect(low).toBeCloseTo(-0.04, 12);
    expect(high).toBeCloseTo(0.5, 12);
  });
  test('what acts the other way shifts the other way, and strays just as far', () => {
    const [low, high] = worstCase(0, [even(0.2, { shift: 0.1, sensitivity: -1.5 })]);
    expect(low).toBeCloseTo(-0.45, 12);
    expect(high).toBeCloseTo(0.15, 12);
  });
  test('nothing strays', () => expect(worstCase(0.3, [])).toEqual([0.3, 0.3]));
});

describe('the central 95 %, against distributions that are known', () => {
  test.each([
    // P(|X| ≤ x) = x for one even spread of half range 1
    { what: 'one even spread', of: [even(1)], reach: 0.95 },
    // two alike make a triangle: 2(1 − √0.05)
    { what: 'two alike', of: [even(1, { count: 2 })], reach: 2 * (1 - Math.sqrt(0.05)) },
    // three alike: the tail of the sum of three is y³/48 for y = 3 − x up to 2 (Irwin 1927, Hall 1927): y³ = 1.2
    { what: 'three alike', of: [even(1, { count: 3 })], reach: 3 - Math.cbrt(1.2) },
    // four alike: y⁴/384 for y = 4 − x up to 2: y⁴ = 9.6
    { what: 'four alike', of: [even(1, { count: 4 })], reach: 4 - 9.6 ** 0.25 },
    // 1 and 1/2 make a trapezium, whose tail is (1.5 − x)²/4 for x from 0.5 on: plane geometry
    { what: 'one and a half', of: [even(1), even(0.5)], reach: 1.5 - Math.sqrt(0.1) },
    { what: 'a triangle', of: [even(2, { spread: 'triangular' })], reach: 2 * (1 - Math.sqrt(0.05)) },
    // 1.959964 sigmas of a normal (table); cut off at four sigmas it loses 0.000063 in the tails, 0.0005 of the quantile
    { what: 'a normal', of: [even(4, { spread: { normal: 4 } })], reach: 1.95945 },
    // variances add: 3² + 4² = 5²
    {
      what: 'two normals',
      of: [even(12, { spread: { normal: 4 } }), even(16, { spread: { normal: 4 } })],
      reach: 5 * 1.9595,
    },
  ])('$what: $reach', ({ of, reach }) => expect(Math.abs(reachOf(of) - reach)).toBeLessThan(GRID * reach));

  test('of many alike is nearly that of a normal', () => {
    // central limit theorem; the excess kurtosis of −1.2/40 moves the quantile by less than 0.2 %
    const normal = 1.959964 * Math.sqrt(40 / 3);
    expect(Math.abs(reachOf([even(1, { count: 40 })]) - normal)).toBeLessThan(0.003 * normal);
  });
  test('of a few is narrower than a normal says, which lies beyond the worst case of one', () => {
    expect(1.959964 * Math.sqrt(varianceOf(even(1)))).toBeGreaterThan(1);
    expect(reachOf([even(1), even(0.1)])).toBeLessThan(1);
  });
});

/** The series ends after some hundred terms, and a normal is laid out in 64 slices: the latter shows in the fourth digit. */
const GRID = 5e-4;

describe('the interval', () => {
  const mixed = [
    even(0.3, { count: 5, shift: -0.1 }),
    even(0.035, { shift: 0.065, count: 4 }),
    even(0.05, { sensitivity: 4 }),
    even(0.05, { spread: { normal: 2 } }),
    even(0.2, { spread: 'triangular', sensitivity: -0.66 }),
  ];
  test('lies about the nominal and the shifts, within the worst case', () => {
    const [low, high] = intervalOf(0.2, mixed);
    const worst = worstCase(0.2, mixed);
    expect((low + high) / 2).toBeCloseTo(0.2 - 0.5 + 0.26, 12);
    expect(low).toBeGreaterThan(worst[0]);
    expect(high).toBeLessThan(worst[1]);
  });
  test('grows with the probability, up to the worst case', () => {
    const reaches = [0.5, 0.9, 0.95, 0.99, 1].map((p) => reachOf([even(1), even(0.5)], p));
    expect(reaches).toEqual([...reaches].sort((a, b) => a - b));
    expect(reaches.at(-1)).toBeCloseTo(1.5, 6);
  });
  test('of what does not stray is a point', () => {
    expect(intervalOf(0.4, [even(0, { shift: 0.1 })])).toEqual([0.5, 0.5]);
  });
  test('does not depend on the order', () => {
    const [low, high] = intervalOf(0, [...mixed].reverse());
    const [first, last] = intervalOf(0, mixed);
    expect(low).toBeCloseTo(first, 9);
    expect(high).toBeCloseTo(last, 9);
  });

  test.each([1, 2, 3])('holds 95 of 100 simulated cameras, seed %d', (seed) => {
    const draws = 40_000;
    const [low, high] = intervalOf(0.2, mixed);
    const sums = simulated(0.2, mixed, { draws, seed });
    const within = sums.filter((sum) => sum >= low && sum <= high).length / draws;
    // four standard errors of a share of 0.95: √(0.95 × 0.05/40000) = 0.0011
    expect(Math.abs(within - 0.95)).toBeLessThan(0.0044);
    // and each tail its half: √(0.025 × 0.975/40000) = 0.0008
    expect(Math.abs(sums.filter((sum) => sum < low).length / draws - 0.025)).toBeLessThan(0.0032);
    const worst = worstCase(0.2, mixed);
    expect(sums.every((sum) => sum >= worst[0] && sum <= worst[1])).toBe(true);
  });
});

describe('the shares', () => {
  // hand arithmetic: variances 2 × 0.3²/3 = 0.06 and 0.6²/6 = 0.06, limits 0.6 and 0.6
  const pair = [even(0.3, { count: 2 }), even(0.6, { spread: 'triangular' })];
  test('of the variance and of the worst case', () => {
    expect(pair.map(varianceOf)).toEqual([expect.closeTo(0.06, 12), expect.closeTo(0.06, 12)]);
    expect(pair.map(halfOf)).toEqual([expect.closeTo(0.6, 12), expect.closeTo(0.6, 12)]);
    for (const { variance, worst } of sharesOf(pair)) {
      expect(variance).toBeCloseTo(0.5, 12);
      expect(worst).toBeCloseTo(0.5, 12);
    }
  });
  test('of pieces that stray together is larger than of pieces that stray each for itself', () => {
    // 4 × 0.1 at once has four times the variance of four times 0.1
    expect(varianceOf(even(0.1, { sensitivity: 4 }))).toBeCloseTo(4 * varianceOf(even(0.1, { count: 4 })), 12);
  });
  test('of a normal that is hardly cut off is that of its sigma', () => {
    expect(varianceOf(even(6, { spread: { normal: 6 } }))).toBeCloseTo(1, 4);
    // cut off at two sigmas 0.7737 are left: 1 − 2·2φ(2)/(2Φ(2) − 1) = 1 − 0.215964/0.954500 (table of the normal)
    expect(varianceOf(even(2, { spread: { normal: 2 } }))).toBeCloseTo(0.77374, 4);
  });
  test('of nothing are nothing', () => expect(sharesOf([even(0)])).toEqual([{ variance: 0, worst: 0 }]));
});
