import { describe, expect, test } from 'vitest';
import { inside } from '../../src/geometry/path.js';
import type { Ring } from '../../src/packing/shapes.js';
import { coverOf, roomsWithin } from '../../src/packing/silhouette.js';

const shape = (points: readonly (readonly [number, number])[]): Ring => points.map(([x, y]) => ({ x, y }));
const circle = (radius: number, corners: number): Ring =>
  Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });

const angle = shape([
  [0, 0],
  [100, 0],
  [100, 20],
  [20, 20],
  [20, 100],
  [0, 100],
]);
/** Slots of 10 from above, 40 deep, between bars of 10. */
const comb = shape([
  [0, 0],
  [50, 0],
  [50, 50],
  [40, 50],
  [40, 10],
  [30, 10],
  [30, 50],
  [20, 50],
  [20, 10],
  [10, 10],
  [10, 50],
  [0, 50],
]);

/** Points of a fine grid over a square round the origin, none on an edge of what is looked at. */
const grid = Array.from({ length: 61 * 61 }, (_, i) => ({
  x: ((i % 61) - 30) * 3.7 + 0.123,
  y: (Math.floor(i / 61) - 30) * 3.7 + 0.321,
}));

describe('the cover of a piece', () => {
  test('of an angle is its two arms', () => {
    const cover = coverOf(angle, { shallow: 5, narrow: 10 });
    expect(cover).toHaveLength(2);
    expect(cover).toContainEqual({ left: 0, bottom: 0, right: 100, top: 20 });
    expect(cover).toContainEqual({ left: 0, bottom: 0, right: 20, top: 100 });
  });

  test('of a comb is one rectangle where nothing goes between its teeth', () => {
    expect(coverOf(comb, { shallow: 5, narrow: 10.5 })).toEqual([{ left: 0, bottom: 0, right: 50, top: 50 }]);
  });

  test('of a comb leaves its slots where something may lie in them', () => {
    const cover = coverOf(comb, { shallow: 5, narrow: 9.5 });
    expect(cover.some(({ left, right, top }) => left < 15 && right > 15 && top > 11)).toBe(false);
  });

  test.each([3, 6, 24, 48])('of a round piece of %i chords holds all of it and leaves its corners', (corners) => {
    const ring = circle(100, corners);
    const cover = coverOf(ring, { shallow: 8, narrow: 20 });
    const covered = ({ x, y }: { x: number; y: number }) =>
      cover.some((b) => x > b.left && x < b.right && y > b.bottom && y < b.top);
    expect(grid.filter((p) => inside(ring, p) && !covered(p))).toEqual([]);
    expect(covered({ x: 95, y: 95 })).toBe(false);
  });
});

describe('rooms', () => {
  test('beside a hole reach as far as the ring on every side', () => {
    const ring = shape([
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ]);
    const hole = shape([
      [30, 40],
      [30, 70],
      [80, 70],
      [80, 40],
    ]);
    expect(roomsWithin(ring, [hole], 5)).toEqual([
      { left: 0, bottom: 0, right: 100, top: 40 },
      { left: 0, bottom: 0, right: 30, top: 100 },
      { left: 0, bottom: 70, right: 100, top: 100 },
      { left: 80, bottom: 0, right: 100, top: 100 },
    ]);
  });

  test.each([6, 24, 48])('in a round window of %i chords lie within it', (corners) => {
    const ring = circle(100, corners);
    const rooms = roomsWithin(ring, [], 8);
    const outside = rooms.filter(({ left, bottom, right, top }) =>
      [left + 1e-6, right - 1e-6].some((x) => [bottom + 1e-6, top - 1e-6].some((y) => !inside(ring, { x, y }))),
    );
    expect(rooms.length).toBeGreaterThan(0);
    expect(outside).toEqual([]);
  });
});
