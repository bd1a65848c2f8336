import { describe, expect, test } from 'vitest';
import { chordsOf } from '../../src/geometry/facets.js';
import type { Mesh } from '../../src/geometry/mesh.js';
import { buildPrism } from '../../src/geometry/modelling.js';
import { type ClosedPath, polygon, reversed } from '../../src/geometry/path.js';
import { across, frame } from '../../src/geometry/placement.js';
import { circle, rectangle } from '../../src/geometry/shapes.js';
import { tally, volumeOf } from '../files/read-print.js';

const asRead = ({ positions, triangles }: Mesh) => {
  const threes = (list: readonly number[]) =>
    Array.from({ length: list.length / 3 }, (_, i) => list.slice(3 * i, 3 * i + 3));
  return { corners: threes(positions), faces: threes(triangles) };
};

const ngon = (n: number, radius: number): ClosedPath =>
  polygon(
    Array.from({ length: n }, (_, i) => {
      const turn = (2 * Math.PI * i) / n;
      return [radius * Math.cos(turn), radius * Math.sin(turn)] as const;
    }),
  );

const upright = { holes: [], matrix: across(0, 0, 0) };

describe('chords of a circle of radius 29', () => {
  test.each([
    { sagitta: 0.01, chords: 120 }, // M8.11 [common practice, no source]: pi/acos(1 - tol/r), rounded up
    { sagitta: 0.05, chords: 54 }, // M8.11 [common practice, no source]
  ])('none strays by more than $sagitta', ({ sagitta, chords }) => expect(chordsOf(29, sagitta)).toBe(chords));
});

test('an inscribed polygon loses what the handbook says: 64 sides, r 29, h 22', () => {
  const prism = buildPrism({ ...upright, profile: ngon(64, 29), height: 22 }, 'add');
  expect(volumeOf(asRead(prism))).toBeCloseTo(58032.420172, 5); // M10.20 [common practice, no source]
});

describe('a bore of 58', () => {
  const ring = { ...upright, profile: circle(0, 0, 74), height: 22 };
  /** From the axis to the middle of the nearest side, bore or rim. */
  const leastRadius = (mesh: Mesh) => {
    const { corners, faces } = asRead(mesh);
    const walls = faces.filter((face) => new Set(face.map((k) => corners[k]?.[2])).size > 1);
    const middles = walls.flatMap((face) =>
      face.map((from, k) =>
        [0, 1].map((axis) => ((corners[from]?.[axis] ?? 0) + (corners[face[(k + 1) % 3] ?? 0]?.[axis] ?? 0)) / 2),
      ),
    );
    return Math.min(...middles.map(([x = 0, y = 0]) => Math.sqrt(x * x + y * y)));
  };

  // M8.10 [common practice, no source]: an inscribed 64-gon is 0.06986 too small across its flats; so the facets go round it
  test('as a hole of what is joined stays at least 58 across its flats', () => {
    const mesh = buildPrism({ ...ring, holes: [reversed(circle(0, 0, 58))] }, 'add');
    expect(leastRadius(mesh)).toBeGreaterThanOrEqual(29 - 1e-9);
    expect(leastRadius(mesh)).toBeLessThan(29.01);
  });

  test('as what is taken away stays at least 58 across its flats', () => {
    const mesh = buildPrism({ ...upright, profile: circle(0, 0, 58), height: 22 }, 'cut');
    expect(leastRadius(mesh)).toBeGreaterThanOrEqual(29 - 1e-9);
  });

  test('as a pin of 58 stays within 58', () => {
    const { corners } = asRead(buildPrism({ ...upright, profile: circle(0, 0, 58), height: 22 }, 'add'));
    expect(Math.max(...corners.map(([x = 0, y = 0]) => Math.sqrt(x * x + y * y)))).toBeLessThanOrEqual(29 + 1e-9);
  });
});

test('a box has 8 corners, 18 edges, 12 faces and no gap', () => {
  const box = buildPrism(
    { ...upright, profile: rectangle({ left: 0, bottom: 0, right: 100, top: 80 }), height: 60 },
    'add',
  );
  // M10.22 [common practice, no source]
  expect(tally(asRead(box))).toMatchObject({ vertices: 8, edges: 18, faces: 12, chi: 2, unpaired: 0 });
  expect(volumeOf(asRead(box))).toBeCloseTo(480000, 6); // M10.27 [common practice, no source]
});

test('a tube of 64 segments has 256 corners, 768 edges, 512 faces and one handle', () => {
  const tube = buildPrism({ ...upright, profile: ngon(64, 37), holes: [reversed(ngon(64, 29))], height: 22 }, 'add');
  // M10.23 [common practice, no source]
  expect(tally(asRead(tube))).toMatchObject({ vertices: 256, edges: 768, faces: 512, chi: 0, genus: 1, unpaired: 0 });
});

test('corners in a straight edge leave no gap between walls and ends', () => {
  const profile = polygon([
    [0, 0],
    [10, 0],
    [20, 0],
    [20, 10],
    [7, 10],
    [0, 10],
  ]);
  const slab = asRead(buildPrism({ ...upright, profile, height: 5 }, 'add'));
  expect(tally(slab)).toMatchObject({ vertices: 8, unpaired: 0, genus: 0 });
  expect(volumeOf(slab)).toBeCloseTo(1000, 9);
});

test('a prism laid on its side stands where its matrix says', () => {
  // drawn out along -y from y = 4: own y is the world's z
  const matrix = frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [10, 4, 20]);
  const profile = rectangle({ left: -1, bottom: -2, right: 1, top: 2 });
  const { corners } = asRead(buildPrism({ ...upright, profile, matrix, height: 6 }, 'add'));
  const span = (axis: number) => {
    const all = corners.map((point) => point[axis] ?? Number.NaN);
    return [Math.min(...all), Math.max(...all)];
  };
  expect([span(0), span(1), span(2)]).toEqual([
    [9, 11],
    [-2, 4],
    [18, 22],
  ]);
});

test('a square that shrinks to half on the way up is a frustum: closed, of the volume of the handbook', () => {
  const solid = asRead(buildPrism({ ...upright, profile: rectangle(SQUARE), height: 12, taper: 0.5 }, 'add'));
  expect(tally(solid)).toMatchObject({ vertices: 8, edges: 18, faces: 12, unpaired: 0 });
  expect(volumeOf(solid)).toBeCloseTo((12 / 3) * (400 + 100 + Math.sqrt(400 * 100)), 9);
});

const SQUARE = { left: -10, bottom: -10, right: 10, top: 10 };
