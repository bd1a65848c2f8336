import type { Point } from '../geometry/path.js';
import { type Faced, faced } from './faced.js';
import type { Body } from './scene.js';
import type { View } from './view.js';

/** What is seen of bodies at single points: quick, where lines would be slow. Points as `project` gives them. */
export interface SurfacePoints {
  /** Points on the faces of a piece that nothing hides, in the middle of its largest facets. */
  readonly spots: (key: string, wanted: number) => readonly Point[];
  /** Of the edges of pieces that look at the eye, the share that nothing hides, each asked at its middle. */
  readonly share: (keys: readonly string[]) => number;
}

/** How many of the largest facets of a piece are tried for each point that is wanted. */
const TRIES = 4;
/** What is less than this before a point does not hide it, mm. */
const BEFORE = 0.05;
/** Squares along the longer side of the paper in which facets are looked up. */
const SQUARES = 48;
/** Edges of a piece that are asked at most. */
const ASKED = 32;

export function surfacePoints(bodies: readonly Body[], view: View): SurfacePoints {
  const surfaces = bodies.map(({ mesh, matrix }) => faced(mesh, matrix, view));
  const byKey = new Map(bodies.map(({ key }, i) => [key, surfaces[i] as Faced]));
  const hidden = lookUp(surfaces);
  return {
    spots: (key, wanted) => {
      const surface = byKey.get(key);
      if (surface === undefined) return [];
      const { corners, fronts } = surface;
      const circles: { readonly x: number; readonly y: number; readonly depth: number; readonly radius: number }[] = [];
      for (let f = 0; f < fronts.length; f += 3)
        circles.push(inCircle(corners, 3 * at(fronts, f), 3 * at(fronts, f + 1), 3 * at(fronts, f + 2)));
      const points: Point[] = [];
      for (const { x, y, depth } of circles.sort((a, b) => b.radius - a.radius).slice(0, TRIES * wanted)) {
        if (!hidden(x, y, depth)) points.push({ x, y });
        if (points.length === wanted) break;
      }
      return points;
    },
    share: (keys) => {
      let [seen, all] = [0, 0];
      for (const key of keys) {
        const surface = byKey.get(key);
        if (surface === undefined) continue;
        const { corners, edges } = surface;
        const stride = 4 * Math.max(1, Math.floor(edges.length / 4 / ASKED));
        for (let e = 0; e < edges.length; e += stride) {
          const [p, q] = [3 * at(edges, e), 3 * at(edges, e + 1)];
          const middle = (axis: number) => (at(corners, p + axis) + at(corners, q + axis)) / 2;
          const [dx, dy] = [at(corners, p) - at(corners, q), at(corners, p + 1) - at(corners, q + 1)];
          const length = Math.sqrt(dx * dx + dy * dy);
          all += length;
          if (!hidden(middle(0), middle(1), middle(2))) seen += length;
        }
      }
      return all === 0 ? 0 : seen / all;
    },
  };
}

const at = (list: Float64Array | Int32Array, i: number): number => list[i] as number;

/** Whether a facet of any surface lies before a point. */
function lookUp(surfaces: readonly Faced[]): (x: number, y: number, depth: number) => boolean {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { corners } of surfaces)
    for (let i = 0; i < corners.length; i += 3) {
      left = Math.min(left, at(corners, i));
      right = Math.max(right, at(corners, i));
      bottom = Math.min(bottom, at(corners, i + 1));
      top = Math.max(top, at(corners, i + 1));
    }
  const side = Math.max(right - left, top - bottom, 1) / SQUARES;
  const column = (x: number) => Math.floor((x - left) / side);
  const row = (y: number) => Math.floor((y - bottom) / side);
  /** In each square its facets: which surface, and the places of its three corners. */
  const squares: number[][] = Array.from({ length: (SQUARES + 1) * (SQUARES + 1) }, () => []);
  surfaces.forEach(({ corners, fronts }, surface) => {
    for (let f = 0; f < fronts.length; f += 3) {
      const [a, b, c] = [3 * at(fronts, f), 3 * at(fronts, f + 1), 3 * at(fronts, f + 2)];
      const [ax, bx, cx] = [at(corners, a), at(corners, b), at(corners, c)];
      const [ay, by, cy] = [at(corners, a + 1), at(corners, b + 1), at(corners, c + 1)];
      const [first, last] = [column(Math.min(ax, bx, cx)), column(Math.max(ax, bx, cx))];
      const [low, high] = [row(Math.min(ay, by, cy)), row(Math.max(ay, by, cy))];
      for (let r = low; r <= high; r++)
        for (let s = first; s <= last; s++) squares[r * (SQUARES + 1) + s]?.push(surface, a, b, c);
    }
  });
  return (x, y, depth) => {
    const square = squares[row(y) * (SQUARES + 1) + column(x)] ?? [];
    for (let i = 0; i < square.length; i += 4) {
      const { corners } = surfaces[square[i] as number] as Faced;
      if (depthAt(corners, square, i + 1, x, y) > depth + BEFORE) return true;
    }
    return false;
  };
}

/** How near the eye a facet is at a point of the paper; endlessly far beside it. */
function depthAt(corners: Float64Array, places: readonly number[], i: number, x: number, y: number): number {
  const [a, b, c] = [places[i] as number, places[i + 1] as number, places[i + 2] as number];
  const [ax, ay, bx, by] = [at(corners, a), at(corners, a + 1), at(corners, b), at(corners, b + 1)];
  const [cx, cy] = [at(corners, c), at(corners, c + 1)];
  const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
  const u = ((bx - x) * (cy - y) - (cx - x) * (by - y)) / area;
  const v = ((cx - x) * (ay - y) - (ax - x) * (cy - y)) / area;
  const w = 1 - u - v;
  if (!(u >= 0 && v >= 0 && w >= 0)) return -Infinity;
  return u * at(corners, a + 2) + v * at(corners, b + 2) + w * at(corners, c + 2);
}

/** The circle that touches the three sides of a facet on the paper. */
function inCircle(corners: Float64Array, a: number, b: number, c: number) {
  const between = (p: number, q: number) => {
    const [dx, dy] = [at(corners, p) - at(corners, q), at(corners, p + 1) - at(corners, q + 1)];
    return Math.sqrt(dx * dx + dy * dy);
  };
  const [sideA, sideB, sideC] = [between(b, c), between(c, a), between(a, b)];
  const round = sideA + sideB + sideC || 1;
  const mixed = (axis: number) =>
    (sideA * at(corners, a + axis) + sideB * at(corners, b + axis) + sideC * at(corners, c + axis)) / round;
  const doubleArea = Math.abs(
    (at(corners, b) - at(corners, a)) * (at(corners, c + 1) - at(corners, a + 1)) -
      (at(corners, c) - at(corners, a)) * (at(corners, b + 1) - at(corners, a + 1)),
  );
  return { x: mixed(0), y: mixed(1), depth: mixed(2), radius: doubleArea / round };
}
