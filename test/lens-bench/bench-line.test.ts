import { describe, expect, test } from 'vitest';
import { benchLine, distanceDoubt } from '../../src/lens-bench/bench-line.js';
import { benchA, benchB, benchWith, measured, reading } from './bench.js';

describe('the line of a bench', () => {
  test('bench A gives its 210 mm and 202.4 mm', () => {
    const lens = measured(benchWith(benchA)); // V7.07, common practice, no source: constructed
    expect(lens.focalLength).toBeCloseTo(210, 9);
    expect(lens.flangeDistance).toBeCloseTo(202.4, 9);
    expect(lens.residualStandardDeviation).toBeCloseTo(0, 9);
  });

  test('bench B gives the published figures', () => {
    const lens = measured(benchWith(benchB), { at: [0, 0.5, 1, 1.5] });
    const expected = {
      focalLength: 239.408478,
      flangeDistance: 194.650867,
      correlation: -0.863475,
      residualStandardDeviation: 0.2977,
    }; // V7.08, common practice, no source: constructed, exact fractions
    for (const [figure, value] of Object.entries(expected))
      expect(Math.abs(lens[figure as keyof typeof expected] - value), figure).toBeLessThan(1e-6); // its own keys
    expect(lens.standardErrors.focalLength).toBeCloseTo(0.369608, 6);
    expect(lens.standardErrors.flangeDistance).toBeCloseTo(0.208673, 6);
    // 2.447 is Student's t for 6 degrees of freedom: from memory: NIST/SEMATECH e-Handbook, 1.3.6.7.2
    expect(lens.intervals.focalLength).toBeCloseTo(2.447 * 0.369608, 3);
    // V7.09, common practice, no source: constructed
    expect(lens.predictions.map(({ distance }) => Math.round(distance * 1e4) / 1e4)).toEqual([
      194.6509, 314.3551, 434.0593, 553.7636,
    ]);
    expect(lens.predictions.map(({ standardError }) => Math.round(standardError * 1e4) / 1e4)).toEqual([
      0.2087, 0.1054, 0.2167, 0.3887,
    ]);
  });
});

describe('what was stated of the readings', () => {
  test('an error of the magnification is most of that of a distance: √(0.3² + (240·0.005)²) = 1.23693', () =>
    // V7.14, from memory: JCGM 100:2008, 5.1.2
    expect(
      Math.abs(distanceDoubt(reading(0.5, 300, { distanceDoubt: 0.3, magnificationDoubt: 0.005 }), 240) - 1.23693),
    ).toBeLessThan(1e-5));

  test('of two readings alone it gives f = 240.1667 ± 3.0659 and a flange distance of 194.2667 ± 1.7877', () => {
    const stated = { distanceDoubt: 0.5, magnificationDoubt: 0.005 };
    const { fit, doubts } = benchLine([reading(0.2, 242.3, stated), reading(0.8, 386.4, stated)]);
    const u = doubts?.[0] ?? 0;
    // V7.11, law of propagation, from memory: JCGM 100:2008, 5.1.2
    expect(Math.abs(fit.slope - 240.1667)).toBeLessThan(1e-3);
    expect(Math.abs(u * fit.unitErrors.slope - 3.0659)).toBeLessThan(1e-3);
    expect(Math.abs(fit.intercept - 194.2667)).toBeLessThan(1e-3);
    expect(Math.abs(u * fit.unitErrors.intercept - 1.7877)).toBeLessThan(1e-3);
  });

  test('where it is alike, all readings count alike', () => {
    const alike = benchB.map((one) => ({ ...one, distanceDoubt: 0.3, magnificationDoubt: 0.001 }));
    expect(measured(benchWith(alike))).toMatchObject({
      weighted: false,
      focalLength: measured(benchWith(benchB)).focalLength,
    });
  });

  test('where one reading states nothing, all count alike', () => {
    const most = benchB.map((one, i) => (i === 0 ? one : { ...one, distanceDoubt: 0.1 * i }));
    expect(benchLine(most)).toMatchObject({ weighted: false, doubts: null });
  });

  test('where it differs, the surer ones count more', () => {
    const doubts = [0.001, 0.001, 0.001, 0.001, 0.002, 0.002, 0.003, 0.004];
    const stated = benchB.map((one, i) => ({ ...one, distanceDoubt: 0.3, magnificationDoubt: doubts[i] ?? null }));
    const lens = measured(benchWith(stated));
    // computed apart with numpy: normal equations with weights 1/(0.3² + (f·u(m))²), repeated until f stands still
    expect(lens.weighted).toBe(true);
    expect(lens.focalLength).toBeCloseTo(239.13812353, 6);
    expect(lens.flangeDistance).toBeCloseTo(194.72206372, 6);
    expect(lens.standardErrors.focalLength).toBeCloseTo(0.49674626, 6);
    expect(lens.standardErrors.flangeDistance).toBeCloseTo(0.2026068, 6);
    expect(lens.correlation).toBeCloseTo(-0.8532475432, 8);
  });
});

test('the unit of a distance is that of the focal length', () => {
  const inches = measured(benchWith(benchB.map((one) => ({ ...one, distance: one.distance / 25.4 }))));
  expect(inches.focalLength * 25.4).toBeCloseTo(239.408478, 5);
});

test('the order of the readings is nothing to the line', () => {
  const turned = measured(benchWith(benchB.toReversed()));
  expect(turned.focalLength).toBeCloseTo(239.408478, 6);
});
