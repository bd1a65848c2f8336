import { describe, expect, test } from 'vitest';
import { benchLine } from '../../src/lens-bench/bench-line.js';
import { outliersOf } from '../../src/lens-bench/outliers.js';
import { seeded } from '../../src/packing/random.js';
import { fitLine } from '../../src/statistics/line-fit.js';
import { benchA, benchB, benchWith, measured, reading } from './bench.js';

const found = (readings: Parameters<typeof benchLine>[0]) => outliersOf(readings, benchLine(readings));

/** Bench B with one reading moved. */
const moved = (row: number, by: number) =>
  benchB.map((one, i) => (i === row - 1 ? { ...one, distance: one.distance + by } : one));

/**
 * The same test the long way round: the line through the others, where it puts this reading, and by how much a new reading
 * may miss it (prediction error of any text on regression).
 */
function theLongWay(readings: typeof benchB, row: number): number {
  const points = readings.map(({ magnification: x, distance: y, distanceDoubt: u }) => ({
    x,
    y,
    weight: (u ?? 1) ** -2,
  }));
  const { slope, intercept, deviation, spread } = fitLine(points.filter((_, i) => i !== row - 1));
  const { x = 0, y = 0, weight = 1 } = points[row - 1] ?? {};
  return (
    (y - intercept - slope * x) /
    (deviation * Math.sqrt(1 / weight + 1 / spread.weight + (x - spread.mean) ** 2 / spread.square))
  );
}

describe('a reading that does not belong to the line of the others', () => {
  // t at 1 − 0.05/16 with 5 degrees of freedom is 4.526 (computed apart with scipy)
  test('is one beyond t at 5 % shared among the readings', () => expect(found(benchB).critical).toBeCloseTo(4.526, 3));

  test('none is in bench B', () => expect(found(benchB).found).toEqual([]));

  test.each([1, 4, 8])('reading %d is flagged just beyond, and not just within', (row) => {
    const at = (by: number) => found(moved(row, by)).found;
    let [within, beyond] = [0, 10];
    while (beyond - within > 1e-6) {
      const middle = (within + beyond) / 2;
      if (at(middle).length === 0) within = middle;
      else beyond = middle;
    }
    expect(at(beyond)).toMatchObject([{ row, turnedOver: false }]);
    expect(theLongWay(moved(row, beyond), row)).toBeCloseTo(4.526, 3);
    expect(at(beyond)[0]?.studentised).toBeCloseTo(theLongWay(moved(row, beyond), row), 6);
  });

  test.each([1, 4, 8])('reading %d, by what was stated of it and of the others', (row) => {
    const stated = moved(row, 9).map((one, i) => ({ ...one, distanceDoubt: 0.2 + 0.1 * i }));
    expect(found(stated).found.map((one) => one.row)).toEqual([row]);
    expect(found(stated).found[0]?.studentised).toBeCloseTo(theLongWay(stated, row), 6);
  });

  test('of readings that lie on the line exactly, one that does not is one, and the others are not', () => {
    expect(found(benchA).found).toEqual([]);
    const slipped = benchA.map((one, i) => (i === 2 ? { ...one, distance: one.distance + 0.5 } : one));
    expect(found(slipped).found.map(({ row }) => row)).toEqual([3]);
  });

  test('one whose ratio is turned over is told so', () => {
    const turned = benchB.map((one, i) => (i === 2 ? { ...one, magnification: 1 / 0.3 } : one));
    expect(found(turned).found).toMatchObject([{ row: 3, turnedOver: true }]);
  });

  test('one that is merely nearer to the line that way is not', () => {
    // 0.8 turned over is 1.25, where the line stands 108 mm farther on: 70 mm off lies 38 mm off that place
    expect(found(moved(7, 70)).found).toMatchObject([{ row: 7, turnedOver: false }]);
  });

  // three of four can lie on a line by the chance of the scale: 249.5, 303 and 410 are 196 + 214 m to the tenth
  test('is none where the others agree more closely than they were read', () => {
    const four = (last: number) =>
      found([reading(1, 410), reading(1 / 2, 303), reading(1 / 4, 249.5), reading(1 / 3, last)]).found;
    expect(four(267.1)).toEqual([]);
    expect(four(267)).toEqual([]);
    expect(four(277.5).map(({ row }) => row)).toContain(4);
  });

  // 8 1/2, 9 1/4 and 10 in lie on a line exactly; a sixteenth is the finest that these were read to
  test('nor where they were read in sixteenths of an inch', () => {
    const inches = [8.5, 9.25, 10, 9.5625].map((length) => length * 25.4);
    const ratios = [0.2, 0.3, 0.4, 0.35];
    expect(found(inches.map((distance, i) => reading(ratios[i] ?? 0, distance))).found).toEqual([]);
  });

  test('three readings judge nothing', () => expect(found(benchB.slice(0, 3))).toEqual({ critical: null, found: [] }));

  test('points at nothing in about 95 of 100 benches without a fault', () => {
    const random = seeded(3);
    const deviation = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    let flagged = 0;
    for (let i = 0; i < 2000; i++)
      if (
        found(benchB.map((one) => reading(one.magnification, 195 + 240 * one.magnification + 0.3 * deviation()))).found
          .length > 0
      )
        flagged++;
    // Bonferroni is a bound: a little less than 5 %
    expect(flagged / 2000).toBeGreaterThan(0.03);
    expect(flagged / 2000).toBeLessThan(0.06);
  });
});

test('an outlier stays in the figures, and what they would be without it is told', () => {
  const lens = measured(benchWith(moved(4, 5)));
  expect(lens.outliers).toEqual([4]);
  expect(lens.remarks[0]).toMatchObject({
    level: 'warning',
    message: expect.stringMatching(/^Reading 4 .* not left out/),
  });
  const without = measured(benchWith(benchB.filter((_, i) => i !== 3)));
  expect(lens.outlierTest.without).toMatchObject({
    focalLength: without.focalLength,
    flangeDistance: without.flangeDistance,
  });
  expect(lens.focalLength).not.toBeCloseTo(without.focalLength, 2);
});
