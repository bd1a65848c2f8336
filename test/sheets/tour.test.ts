import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/geometry/path.js';
import { after as bestAfter } from '../../src/packing/search.js';
import { type Contour, enterBest, searchTour, type Tour, type TourGiven } from '../../src/sheets/tour.js';
import { pointGap } from './measure.js';

const start = { x: 0, y: 0 };
const spot = (x: number, y: number, waits: readonly number[] = []): Contour => ({ points: [{ x, y }], after: waits });
const stroke = (a: Point, b: Point): Contour => ({ points: [a, b], ends: [b, a], after: [] });
const square = (x: number, y: number, side: number, waits: readonly number[] = []): Contour => ({
  points: [
    { x, y },
    { x: x + side, y },
    { x: x + side, y: y + side },
    { x, y: y + side },
  ],
  after: waits,
});
const best = (contours: readonly Contour[], steps = 3): Tour => bestAfter(searchTour({ start, contours }, 1), steps);

describe('a tour by hand', () => {
  test('nothing to cut moves nothing', () => expect(best([])).toEqual({ order: [], entries: [], travel: 0 }));

  test('a hole before the square round it: to the middle and back to a corner', () => {
    const { order, travel } = best([square(0, 0, 100, [1]), spot(50, 50)]);
    expect(order).toEqual([1, 0]);
    expect(travel).toBeCloseTo(2 * Math.sqrt(5000), 9); // and not 0 + 70.7 with the square first
  });

  test('a row of squares is entered where the head comes by', () => {
    const { order, entries, travel } = best([square(100, 0, 10), square(0, 0, 10), square(50, 0, 10)]);
    expect(order).toEqual([1, 2, 0]);
    expect(entries[2]).toBe(0);
    expect(travel).toBeCloseTo(100, 9);
  });

  test('a stroke ends at its other end, and may be walked either way', () => {
    const { order, entries, travel } = best([
      stroke({ x: 90, y: 0 }, { x: 60, y: 0 }),
      stroke({ x: 10, y: 0 }, { x: 50, y: 0 }),
    ]);
    expect([order, entries]).toEqual([
      [1, 0],
      [0, 1],
    ]);
    expect(travel).toBeCloseTo(10 + 10, 9);
  });

  test('a lower stage comes first, however far away', () => {
    const { order, travel } = best([
      { ...spot(10, 0), stage: 1 },
      { ...spot(40, 0), stage: 0 },
      { ...spot(30, 0), stage: 2 },
    ]);
    expect(order).toEqual([1, 0, 2]);
    expect(travel).toBeCloseTo(40 + 30 + 20, 9);
  });

  test('what waits through another that waits comes after both', () => {
    const { order, travel } = best([spot(10, 0, [1]), spot(20, 0, [2]), spot(30, 0)]);
    expect(order).toEqual([2, 1, 0]);
    expect(travel).toBeCloseTo(50, 9);
  });

  test('contours that wait for each other are a mistake of the program', () =>
    expect(() => best([spot(1, 0, [1]), spot(2, 0, [0])])).toThrow('wait for each other'));

  test('the search ends where no travel is left, and where there is but one contour', () => {
    expect([...searchTour({ start, contours: [square(0, 0, 5), square(0, 0, 9)] }, 1)]).toHaveLength(1);
    expect([...searchTour({ start, contours: [square(3, 4, 5)] }, 1)].map(({ travel }) => travel)).toEqual([5]);
  });

  test.each([4, 5, 6])(
    'a square lattice, %i points a side: no move shorter than its pitch, and none longer is needed',
    (n) => {
      const points = Array.from({ length: n * n }, (_, i) => spot(10 * (i % n), 10 * Math.floor(i / n)));
      const shuffled = points.map((_, i) => points[(i * 7) % points.length] as Contour); // 7 divides none of these counts
      expect(best(shuffled, 40).travel).toBeCloseTo(10 * (n * n - 1), 9);
    },
  );

  test('a settled order is kept, its entries are the best together', () => {
    const contours = [square(0, 20, 10), spot(30, 30), square(20, 0, 10)];
    const { order, entries, travel } = enterBest({ start, contours }, [0, 1, 2]);
    // (0, 0) to (10, 20) or (0, 20): by way of (10, 20) it is √500 + √500, by way of (10, 30) √1000 + 20; then 20 down
    expect([order, entries]).toEqual([
      [0, 1, 2],
      [1, 0, 2],
    ]);
    expect(travel).toBeCloseTo(2 * Math.sqrt(500) + 20, 9);
  });
});

const at = fc.record({ x: fc.integer({ min: 0, max: 200 }), y: fc.integer({ min: 0, max: 150 }) });
const form = fc.oneof(
  fc.tuple(at, fc.integer({ min: 1, max: 60 })).map(([{ x, y }, side]) => square(x, y, side)),
  fc.tuple(at, at).map(([a, b]) => stroke(a, b)),
  at.map(({ x, y }) => spot(x, y)),
);
/** Each contour may wait for the one before it and for the one before that; they stand in three stages. */
const job = (most: number): fc.Arbitrary<TourGiven> =>
  fc.array(fc.tuple(form, fc.boolean(), fc.boolean()), { minLength: 1, maxLength: most }).map((rows) => ({
    start,
    contours: rows.map(([contour, one, two], i) => ({
      ...contour,
      after: [...(one && i > 2 ? [i - 1] : []), ...(two && i > 4 ? [i - 2] : [])],
      stage: Math.floor((3 * i) / rows.length),
    })),
  }));

/** Walks a tour once more; whether each contour comes once, and after all that it waits for. */
function judged({ contours }: TourGiven, { order, entries }: Tour) {
  const place = new Map(order.map((c, i) => [c, i]));
  let [travel, here] = [0, start as Point];
  order.forEach((c, i) => {
    const { points, ends = points } = contours[c] as Contour;
    const entry = entries[i] as number;
    travel += pointGap(here, points[entry] as Point);
    here = ends[entry] as Point;
  });
  const whole = place.size === contours.length && order.length === contours.length;
  const waits = contours.every(({ after: earlier }, c) =>
    earlier.every((e) => (place.get(e) as number) < (place.get(c) as number)),
  );
  const stages = order.map((c) => contours[c]?.stage ?? 0);
  return { travel, whole, kept: waits && stages.every((s, i) => i === 0 || s >= (stages[i - 1] as number)) };
}

/** The shortest of all, over all sets of contours done and all ways by which the last was left (Held and Karp 1962). */
function shortest({ contours }: TourGiven): number {
  const count = contours.length;
  let layer = new Map<string, { done: number; here: Point; travel: number }>([
    ['', { done: 0, here: start, travel: 0 }],
  ]);
  for (let n = 0; n < count; n++) {
    const next: typeof layer = new Map();
    for (const { done, here, travel } of layer.values()) {
      contours.forEach(({ points, ends = points, after: earlier, stage = 0 }, c) => {
        const open = (other: number) => (done & (1 << other)) === 0;
        if (!open(c) || earlier.some(open)) return;
        if (contours.some((other, o) => open(o) && (other.stage ?? 0) < stage)) return;
        points.forEach((point, entry) => {
          const state = { done: done | (1 << c), here: ends[entry] as Point, travel: travel + pointGap(here, point) };
          const key = `${state.done} ${c} ${entry}`;
          if (state.travel < (next.get(key)?.travel ?? Infinity)) next.set(key, state);
        });
      });
    }
    layer = next;
  }
  return Math.min(...[...layer.values()].map(({ travel }) => travel));
}

describe('laws of the tour', () => {
  test('every contour once, after all that it waits for, at every step; no step loses what was found', () =>
    fc.assert(
      fc.property(job(40), fc.nat(1000), (given, seed) => {
        let before = Infinity;
        let steps = 0;
        for (const tour of searchTour(given, seed)) {
          const { travel, whole, kept } = judged(given, tour);
          expect({ whole, kept }).toEqual({ whole: true, kept: true });
          expect(tour.travel).toBeCloseTo(travel, 6);
          expect(tour.travel).toBeLessThanOrEqual(before);
          before = tour.travel;
          if (++steps === 4) break;
        }
      }),
      { numRuns: 40, seed: 1906 },
    ));

  test('up to seven contours: as short as the shortest of all orders and entries', () =>
    fc.assert(
      fc.property(job(7), (given) => {
        expect(bestAfter(searchTour(given, 3), 3).travel).toBeCloseTo(shortest(given), 6);
      }),
      { numRuns: 40, seed: 1907 },
    ));

  test('the same seed and steps give the same tour', () =>
    fc.assert(
      fc.property(job(30), fc.nat(1000), (given, seed) => {
        const [once, again] = [0, 1].map(() => bestAfter(searchTour(given, seed), 3));
        expect(once).toEqual(again);
      }),
      { numRuns: 10, seed: 1908 },
    ));
});
