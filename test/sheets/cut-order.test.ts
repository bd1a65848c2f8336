import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Path, Point } from '../../src/geometry/path.js';
import { boxAt, rectangle } from '../../src/geometry/shapes.js';
import { cutOrder } from '../../src/sheets/cut-order.js';
import type { CutPath } from '../../src/sheets/sheet.js';
import { pointGap } from './measure.js';

const home = { x: 0, y: 0 };
const loop = (id: string, x: number, y: number, side = 10): CutPath => ({
  id,
  path: { closed: true, vertices: rectangle(boxAt(x, y, side, side)) },
});
const stroke = (id: string, ...points: (readonly [number, number, number?])[]): CutPath => ({
  id,
  path: { closed: false, vertices: points.map(([x, y, bulge = 0]) => ({ x, y, bulge })) },
});
const ends = ({ vertices, closed }: Path): readonly [Point, Point] => {
  const first = vertices[0] as Point;
  return [first, closed ? first : (vertices.at(-1) as Point)];
};
/** The way without the beam, walked once more. */
function walked(paths: readonly CutPath[], from: Point): number {
  let [sum, here] = [0, from];
  for (const { path } of paths) {
    const [start, end] = ends(path);
    sum += pointGap(here, start);
    here = end;
  }
  return sum;
}

describe('the order of cuts', () => {
  test('nothing to cut moves nothing', () => expect(cutOrder([], home)).toEqual({ paths: [], end: home, travel: 0 }));

  test('a row of squares is cut from near to far, each entered at its nearest corners', () => {
    const tour = cutOrder([loop('c', 105, 5), loop('a', 5, 5), loop('b', 55, 5)], home);
    expect(tour.paths.map(({ id }) => id)).toEqual(['a', 'b', 'c']);
    // 10 inside the first is saved: in at its right lower corner costs the same way; 10, then 40, then 50: 100 in all
    expect(tour.travel).toBeCloseTo(100, 9);
  });

  test('a stroke that ends nearer is walked backwards, its arc the other way round', () => {
    const tour = cutOrder([stroke('s', [50, 0], [50, 10, 0.5], [10, 10])], home);
    expect(tour.paths[0]?.path.vertices).toEqual([
      { x: 10, y: 10, bulge: -0.5 },
      { x: 50, y: 10, bulge: 0 },
      { x: 50, y: 0, bulge: 0 },
    ]);
    expect(tour.travel).toBeCloseTo(Math.sqrt(200), 12);
    expect(tour.end).toEqual(expect.objectContaining({ x: 50, y: 0 }));
  });
});

const at = fc.tuple(fc.integer({ min: 10, max: 590 }), fc.integer({ min: 10, max: 390 }));
const cuts = (most: number) =>
  fc
    .array(fc.tuple(at, at, fc.boolean()), { minLength: 1, maxLength: most })
    .map((list) =>
      list.map(([[x, y], [u, v], closed], i) => (closed ? loop(`${i}`, x, y, 6) : stroke(`${i}`, [x, y], [u, v]))),
    );

/** Every order, every entry. */
function best(rest: readonly CutPath[], from: Point): number {
  if (rest.length === 0) return 0;
  return Math.min(
    ...rest.flatMap((cut) => {
      const others = rest.filter((c) => c !== cut);
      const { vertices, closed } = cut.path;
      const [a, b] = [vertices[0] as Point, vertices.at(-1) as Point];
      const ways = closed ? vertices.map((v) => [v, v] as const) : ([[a, b], [b, a]] as const); // biome-ignore format: one line
      return ways.map(([start, end]) => pointGap(from, start) + best(others, end));
    }),
  );
}

describe('laws of the order', () => {
  test('every path is cut once and as it was drawn, and the travel is what is walked', () =>
    fc.assert(
      fc.property(cuts(30), (given) => {
        const tour = cutOrder(given, home);
        expect(tour.paths.map(({ id }) => id).sort()).toEqual(given.map(({ id }) => id).sort());
        for (const { id, path } of tour.paths) {
          const drawn = given.find((cut) => cut.id === id)?.path.vertices ?? [];
          expect(new Set(path.vertices.map(({ x, y }) => `${x} ${y}`))).toEqual(
            new Set(drawn.map(({ x, y }) => `${x} ${y}`)),
          );
        }
        expect(tour.travel).toBeCloseTo(walked(tour.paths, home), 6);
        expect(tour.travel).toBeLessThanOrEqual(walked(given, home) + 1e-6);
      }),
      { numRuns: 60, seed: 1906 },
    ));

  test('with few paths the way is within a tenth of the shortest there is', () =>
    fc.assert(
      fc.property(cuts(4), (given) => {
        expect(cutOrder(given, home).travel).toBeLessThanOrEqual(1.1 * best(given, home) + 1e-6);
      }),
      { numRuns: 40, seed: 1906 },
    ));
});
