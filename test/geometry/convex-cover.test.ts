import { describe, expect, test } from 'vitest';
import { type ConvexLoop, convexCover } from '../../src/geometry/convex-cover.js';
import { type ClosedPath, inside, type Point, polygon, reversed } from '../../src/geometry/path.js';
import { boxAt, circle, clipped, rectangle, rounded, stepped } from '../../src/geometry/shapes.js';

const STRAY = 0.02;

/** Points of a grid over a plate whose outline reaches to ±30. */
const grid: readonly Point[] = Array.from({ length: 121 * 121 }, (_, i) => ({
  x: -30.2 + 0.5 * (i % 121) + 0.0137,
  y: -30.2 + 0.5 * Math.floor(i / 121) + 0.0291,
}));

const isConvex = (loop: ConvexLoop): boolean =>
  loop.length > 2 &&
  loop.every((a, i) => {
    const [b, c] = [loop[(i + 1) % loop.length] as Point, loop[(i + 2) % loop.length] as Point];
    return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) > -1e-9;
  });

const box = { left: -28, right: 28, bottom: -20, top: 20 };

describe('a plate covered with convex pieces', () => {
  test.each<{
    name: string;
    outline: ClosedPath;
    holes?: readonly ClosedPath[];
    /** Wood by plain plane geometry; `edge` says how far off the border a point must be to count. */
    wood: (p: Point) => boolean;
    most: number;
  }>([
    {
      name: 'a rectangle is one piece',
      outline: rectangle(box),
      wood: ({ x, y }) => Math.abs(x) < 28 && Math.abs(y) < 20,
      most: 1,
    },
    {
      name: 'a frame is four',
      outline: rectangle(box),
      holes: [reversed(rectangle(boxAt(0, 0, 20, 10)))],
      wood: ({ x, y }) => Math.abs(x) < 28 && Math.abs(y) < 20 && !(Math.abs(x) < 10 && Math.abs(y) < 5),
      most: 4,
    },
    {
      name: 'clipped corners',
      outline: clipped(box, 8),
      wood: ({ x, y }) => Math.abs(x) < 28 && Math.abs(y) < 20 && Math.abs(x) + Math.abs(y) < 40,
      most: 6,
    },
    {
      name: 'a round hole off the middle',
      outline: rectangle(box),
      holes: [reversed(circle(6, 3, 22))],
      wood: ({ x, y }) => Math.abs(x) < 28 && Math.abs(y) < 20 && Math.hypot(x - 6, y - 3) > 11,
      most: 80,
    },
    {
      name: 'fingers',
      outline: stepped(box, { left: [{ from: -10, to: 0, depth: -3 }], top: [{ from: 5, to: 15, depth: 4 }] }),
      wood: ({ x, y }) =>
        (Math.abs(x) < 28 && Math.abs(y) < 20 && !(x < -25 && y > -10 && y < 0)) ||
        (x > 5 && x < 15 && y >= 20 && y < 24),
      most: 6,
    },
    {
      name: 'a hole that runs out of the outline, and into another',
      outline: rectangle(box),
      holes: [
        reversed(rectangle(boxAt(28, 0, 16, 8))),
        reversed(
          polygon([
            [15, -10],
            [24, 0],
            [15, 10],
          ]),
        ),
      ],
      wood: ({ x, y }) =>
        Math.abs(x) < 28 &&
        Math.abs(y) < 20 &&
        !(x > 20 && Math.abs(y) < 4) &&
        !(x > 15 && (x - 15) / 9 + Math.abs(y) / 10 < 1),
      most: 20,
    },
  ])('$name', ({ outline, holes = [], wood, most }) => {
    const cover = convexCover(outline, holes, STRAY);
    expect(cover.length).toBeLessThanOrEqual(most);
    expect(cover.every(isConvex)).toBe(true);
    // a chord strays by 0.02: points nearer to the border than twice that are left out
    const clear = grid.filter((p) =>
      [-0.04, 0.04].every((d) => wood({ x: p.x + d, y: p.y }) === wood(p) && wood({ x: p.x, y: p.y + d }) === wood(p)),
    );
    const wrong = clear.filter((p) => cover.some((loop) => inside(loop, p)) !== wood(p));
    expect(wrong).toEqual([]);
  });

  test('rounded corners are one piece each at most', () => {
    const cover = convexCover(rounded(box, 6), [], STRAY);
    expect(cover.length).toBeLessThanOrEqual(7);
  });
});
