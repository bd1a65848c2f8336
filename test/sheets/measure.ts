import type { Point } from '../../src/geometry/path.js';

/** Measuring for the tests alone: nothing here is shared with the code that it measures. */
export const pointGap = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);

function segmentGap(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  return pointGap(p, { x: a.x + t * dx, y: a.y + t * dy });
}

/** Distance of a point to a closed loop of straight edges. */
export const loopGap = (p: Point, loop: readonly Point[]): number =>
  Math.min(...loop.map((a, i) => segmentGap(p, a, loop[(i + 1) % loop.length] as Point)));

/** Least distance of two loops that do not cross: it is always met at a corner of one of them. */
export const loopsGap = (a: readonly Point[], b: readonly Point[]): number =>
  Math.min(...a.map((p) => loopGap(p, b)), ...b.map((p) => loopGap(p, a)));

/** How far each loop strays from the other: corners and middles of edges of one against the other, both ways. */
export function departure(a: readonly Point[], b: readonly Point[]): number {
  const probes = (loop: readonly Point[]) =>
    loop.flatMap((p, i) => {
      const q = loop[(i + 1) % loop.length] as Point;
      return [p, { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }];
    });
  return Math.max(...probes(a).map((p) => loopGap(p, b)), ...probes(b).map((p) => loopGap(p, a)));
}

export function polygonArea(loop: readonly Point[]): number {
  let twice = 0;
  loop.forEach((a, i) => {
    const b = loop[(i + 1) % loop.length] as Point;
    twice += a.x * b.y - b.x * a.y;
  });
  return twice / 2;
}

/** Even-odd. */
export function within(p: Point, loop: readonly Point[]): boolean {
  let odd = false;
  loop.forEach((a, i) => {
    const b = loop[(i + 1) % loop.length] as Point;
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y)) odd = !odd;
  });
  return odd;
}
