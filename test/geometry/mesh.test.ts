import { describe, expect, test } from 'vitest';
import { isClosed, type Mesh, meshVolume, rounded, withoutSlivers } from '../../src/geometry/mesh.js';

/** A box with its lower corner somewhere, outwards. */
const box = (x: number, y: number, z: number): Mesh => ({
  positions: [0, 1, 2, 3, 4, 5, 6, 7].flatMap((k) => [x + (k & 1) * 100, y + ((k >> 1) & 1) * 80, z + (k >> 2) * 60]),
  triangles: [
    [0, 2, 1],
    [1, 2, 3],
    [4, 5, 6],
    [5, 7, 6],
    [0, 1, 4],
    [1, 5, 4],
    [2, 6, 3],
    [3, 6, 7],
    [0, 4, 2],
    [2, 4, 6],
    [1, 3, 5],
    [3, 7, 5],
  ].flat(),
});

const inwards = ({ positions, triangles }: Mesh): Mesh => ({ positions, triangles: [...triangles].reverse() });

describe('a box of 100 x 80 x 60', () => {
  // M10.27 [common practice, no source]
  test.each([
    [0, 0, 0],
    [-50, -40, -30],
    [1000, -2000, 500],
  ])('has 480 000 mm³ wherever it stands: %d, %d, %d', (x, y, z) =>
    expect(meshVolume(box(x, y, z))).toBeCloseTo(480000, 4),
  );

  test('has less than nothing when its faces look inwards, and is closed all the same', () => {
    expect(meshVolume(inwards(box(0, 0, 0)))).toBeCloseTo(-480000, 4);
    expect(isClosed(inwards(box(0, 0, 0)))).toBe(true);
  });

  test('is not closed when one face is turned', () => {
    const { positions, triangles } = box(0, 0, 0);
    const [a = 0, b = 0, c = 0, ...others] = triangles;
    expect(isClosed({ positions, triangles })).toBe(true);
    expect(isClosed({ positions, triangles: [a, c, b, ...others] })).toBe(false);
  });

  // M7.24 [verified: 3MF Core Specification 1.4.0, by its rule]
  test('is not closed when each face has corners of its own', () => {
    const { positions, triangles } = box(0, 0, 0);
    const apart: Mesh = {
      positions: triangles.flatMap((k) => positions.slice(3 * k, 3 * k + 3)),
      triangles: triangles.map((_, i) => i),
    };
    expect(isClosed(apart)).toBe(false);
    expect(isClosed(rounded(apart))).toBe(true);
  });
});

test('rounding makes equal what falls on one point of the grid, and leaves no minus before zero', () => {
  const mesh = rounded({
    positions: [0, 0, 0, 1, 0, 0, 0, 1, -1e-9, 0.99999, 0.00001, 0],
    triangles: [0, 1, 2, 1, 3, 2],
  });
  expect(mesh).toEqual({ positions: [0, 0, 0, 1, 0, 0, 0, 1, 0], triangles: [0, 1, 2] });
  expect(mesh.positions.every((v) => !Object.is(v, -0))).toBe(true);
});

test('a face whose corners lie on a line gives way to its neighbour, divided', () => {
  // a tetrahedron whose edge from 0 to 1 has a seam: corner 4 in its middle, a flat face on one side
  const seamed: Mesh = {
    positions: [0, 0, 0, 6, 0, 0, 0, 6, 0, 0, 0, 6, 3, 0, 0],
    triangles: [
      [0, 2, 1],
      [0, 1, 4],
      [0, 4, 3],
      [4, 1, 3],
      [1, 2, 3],
      [0, 3, 2],
    ].flat(),
  };
  expect(isClosed(seamed)).toBe(true);
  const mended = withoutSlivers(seamed);
  expect(isClosed(mended)).toBe(true);
  expect(meshVolume(mended)).toBeCloseTo(36, 9); // 6 x 6 x 6 / 6
  const faces = Array.from({ length: 6 }, (_, i) => mended.triangles.slice(3 * i, 3 * i + 3));
  expect(faces.filter((face) => face.every((k) => k === 0 || k === 1 || k === 4))).toEqual([]);
});
