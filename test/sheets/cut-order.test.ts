import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area, type Path, type Point } from '../../src/geometry/path.js';
import { boxAt, rectangle } from '../../src/geometry/shapes.js';
import { cutOrder, type Drawn } from '../../src/sheets/cut-order.js';
import { type CutPath, type Layer, layers } from '../../src/sheets/sheet.js';
import { pointGap } from './measure.js';

const home = { x: 0, y: 0 };
const steps = 5;
const loop = (layer: Layer, id: string, x: number, y: number, side = 10): Drawn => ({
  layer,
  cut: { id, path: { closed: true, vertices: rectangle(boxAt(x, y, side, side)) } },
});
const stroke = (id: string, ...points: (readonly [number, number, number?])[]): Drawn => ({
  layer: 'engrave',
  cut: { id, path: { closed: false, vertices: points.map(([x, y, bulge = 0]) => ({ x, y, bulge })) } },
});
const ordered = (drawn: readonly Drawn[]) => {
  const { operations, travelLength } = cutOrder(drawn, { steps });
  const cuts = operations.flatMap(({ paths }) => paths);
  return { operations, cuts, ids: cuts.map(({ id }) => id), travelLength };
};
const ends = ({ vertices, closed }: Path): readonly [Point, Point] => {
  const first = vertices[0] as Point;
  return [first, closed ? first : (vertices.at(-1) as Point)];
};
/** The way without the beam, walked once more. */
function walked(cuts: readonly CutPath[]): number {
  let [sum, here]: [number, Point] = [0, home];
  for (const { path } of cuts) {
    const [start, end] = ends(path);
    sum += pointGap(here, start);
    here = end;
  }
  return sum;
}

describe('the order of cuts', () => {
  test('nothing to cut moves nothing', () =>
    expect(cutOrder([], { steps })).toEqual({
      operations: layers.map((layer) => ({ layer, paths: [] })),
      travelLength: 0,
    }));

  test('a row of squares is cut from near to far, each entered at its nearest corners', () => {
    const tour = ordered(
      [105, 5, 55].map((x) => loop('cut-outside', `${x}`, x, 5)), // given by their middles
    );
    expect(tour.ids).toEqual(['5', '55', '105']);
    expect(tour.travelLength).toBeCloseTo(100, 9); // the first stands in the corner, then left corners all along
  });

  test('a stroke that ends nearer is walked backwards, its arc the other way round', () => {
    const tour = ordered([stroke('s', [50, 0], [50, 10, 0.5], [10, 10])]);
    expect(tour.cuts[0]?.path.vertices).toEqual([
      { x: 10, y: 10, bulge: -0.5 },
      { x: 50, y: 10, bulge: 0 },
      { x: 50, y: 0, bulge: 0 },
    ]);
    expect(tour.travelLength).toBeCloseTo(Math.sqrt(200), 12);
  });

  test('operations follow each other, however long the way', () => {
    const far = [...layers].reverse().map((layer, i) => loop(layer, layer, 100 * i, 0));
    expect(ordered(far).ids).toEqual([...layers]);
  });

  test('an operation ends where the next begins: the tour is one', () => {
    // both holes cost the same, but the outline lies beside the left one
    const tour = ordered([
      loop('cut-inside', 'right', 40, 40, 1),
      loop('cut-inside', 'left', 0, 40, 1),
      loop('cut-outside', 'out', 0, 60),
    ]);
    expect(tour.ids).toEqual(['right', 'left', 'out']);
  });

  test.each([
    { side: 70.6, first: 'small', why: 'less than half of 100 × 100' },
    { side: 70.8, first: 'large', why: 'more than half' },
  ])('of outlines, $first first where the far one is $side square: $why', ({ side, first }) =>
    expect(ordered([loop('cut-outside', 'large', 0, 0, 100), loop('cut-outside', 'small', 200, 0, side)]).ids[0]).toBe(
      first,
    ),
  );

  test('a window that holds parts waits for its parts only: its size is nothing to it', () => {
    const tour = ordered([loop('cut-window', 'large', 0, 0, 100), loop('cut-window', 'small', 200, 0, 10)]);
    expect(tour.ids).toEqual(['large', 'small']);
  });

  test('of an outline with many vertices the nearest of all is the entry', () => {
    const sides = 64;
    const vertices = Array.from({ length: sides }, (_, k) => {
      const turn = (2 * Math.PI * (k + 1)) / sides;
      return { x: 100 + 50 * Math.cos(turn), y: 50 * Math.sin(turn), bulge: 0 };
    });
    const tour = ordered([{ layer: 'cut-outside', cut: { id: 'disc', path: { closed: true, vertices } } }]);
    expect(tour.travelLength).toBeCloseTo(50, 9);
  });

  test('a word is engraved whole, though a stroke of another lies beside its middle', () => {
    // upright strokes every 4 from 20 to 100, and one 6 above their middle: in between it would cost 12 and not 40
    const word = Array.from({ length: 21 }, (_, n) => stroke(`w${n}`, [20 + 4 * n, 20], [20 + 4 * n, 24]));
    const { ids } = ordered([...word, stroke('other', [60, 30], [60, 34])]);
    expect([0, 21]).toContain(ids.indexOf('other'));
  });

  test('of two lines the second is engraved from its end', () => {
    const line = (y: number) => [20, 28, 36].map((x) => stroke(`${x},${y}`, [x, y], [x + 4, y]));
    const tour = ordered([...line(0), ...line(30)]);
    expect(tour.ids).toEqual(['20,0', '28,0', '36,0', '36,30', '28,30', '20,30']);
    expect(tour.travelLength).toBeCloseTo(20 + 2 * 4 + 30 + 2 * 4, 9);
  });
});

const at = fc.tuple(fc.integer({ min: 10, max: 590 }), fc.integer({ min: 10, max: 390 }));
const side = fc.integer({ min: 2, max: 90 });
const drawn = (most: number): fc.Arbitrary<readonly Drawn[]> =>
  fc
    .array(fc.tuple(at, at, side, fc.constantFrom(...layers)), { minLength: 1, maxLength: most })
    .map((list) =>
      list.map(([[x, y], [u, v], size, layer], i) =>
        layer === 'engrave' ? stroke(`${i}`, [x, y], [u, v]) : loop(layer, `${i}`, x, y, size),
      ),
    );

/** Every order, every entry. */
function best(rest: readonly Drawn[], from: Point): number {
  if (rest.length === 0) return 0;
  return Math.min(
    ...rest.flatMap((one) => {
      const others = rest.filter((c) => c !== one);
      return one.cut.path.vertices.map((corner) => pointGap(from, corner) + best(others, corner));
    }),
  );
}

describe('laws of the order', () => {
  test('every path is cut once, in its operation and as it was drawn, and the travel is what is walked', () =>
    fc.assert(
      fc.property(drawn(30), (given) => {
        const { operations, cuts, ids, travelLength } = ordered(given);
        expect(operations.map(({ layer }) => layer)).toEqual([...layers]);
        expect([...ids].sort()).toEqual(given.map(({ cut }) => cut.id).sort());
        for (const { layer, paths } of operations) {
          for (const { id, path } of paths) {
            const one = given.find(({ cut }) => cut.id === id);
            expect(one?.layer).toBe(layer);
            expect(new Set(path.vertices.map(({ x, y }) => `${x} ${y}`))).toEqual(
              new Set(one?.cut.path.vertices.map(({ x, y }) => `${x} ${y}`)),
            );
            // a hole stays a hole: a loop is begun elsewhere, never turned round
            if (path.closed) expect(area(path.vertices)).toBeCloseTo(area(one?.cut.path.vertices ?? []), 9);
          }
        }
        expect(travelLength).toBeCloseTo(walked(cuts), 6);
      }),
      { numRuns: 40, seed: 1906 },
    ));

  test('no outline is cut before one of less than half its area', () =>
    fc.assert(
      fc.property(drawn(30), (given) => {
        const outlines = ordered(given).operations.find(({ layer }) => layer === 'cut-outside')?.paths ?? [];
        const sizes = outlines.map(({ path }) => area(path.vertices));
        sizes.forEach((size, i) => {
          expect(Math.min(Infinity, ...sizes.slice(i + 1))).toBeGreaterThanOrEqual(size / 2);
        });
      }),
      { numRuns: 40, seed: 1906 },
    ));

  test('the way round a few holes is the shortest there is', () =>
    fc.assert(
      fc.property(fc.array(at, { minLength: 1, maxLength: 4 }), (places) => {
        const holes = places.map(([x, y], i) => loop('cut-inside', `${i}`, x, y, 6));
        expect(ordered(holes).travelLength).toBeCloseTo(best(holes, home), 6);
      }),
      { numRuns: 40, seed: 1906 },
    ));

  test('the same sheet is cut the same way again', () =>
    fc.assert(
      fc.property(drawn(30), (given) => {
        expect(ordered(given)).toEqual(ordered(given));
      }),
      { numRuns: 10, seed: 1906 },
    ));
});
