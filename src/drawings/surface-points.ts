import type { Point } from '../geometry/path.js';
import { faced } from './faced.js';
import type { Body } from './scene.js';
import type { View } from './view.js';

/** A facet that looks at the eye: x, y, depth of its corners. */
interface Facet {
  readonly body: number;
  readonly corners: Float64Array;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** How many of the largest facets of a piece are tried for each point that is wanted. */
const TRIES = 4;
/** What is less than this before a point does not hide it, mm. */
const BEFORE = 0.05;

/** Points on the faces of a piece that nothing hides, as `project` gives them; in the middle of its largest facets. */
export type SurfacePoints = (key: string, wanted: number) => readonly Point[];

export function surfacePoints(bodies: readonly Body[], view: View): SurfacePoints {
  const facets = bodies.map(({ mesh, matrix }, body): readonly Facet[] => {
    const { corners, fronts } = faced(mesh, matrix, view);
    return Array.from({ length: fronts.length / 3 }, (_, f) => {
      const own = new Float64Array(9);
      for (let k = 0; k < 3; k++)
        own.set(corners.subarray(3 * at(fronts, 3 * f + k), 3 * at(fronts, 3 * f + k) + 3), 3 * k);
      const [xs, ys] = [0, 1].map((axis) => [at(own, axis), at(own, 3 + axis), at(own, 6 + axis)]) as [
        number[],
        number[],
      ];
      return {
        body,
        corners: own,
        left: Math.min(...xs),
        right: Math.max(...xs),
        bottom: Math.min(...ys),
        top: Math.max(...ys),
      };
    });
  });
  const all = facets.flat();
  const seen = (x: number, y: number, depth: number): boolean =>
    !all.some(
      (facet) =>
        x > facet.left &&
        x < facet.right &&
        y > facet.bottom &&
        y < facet.top &&
        (depthAt(facet.corners, x, y) ?? -Infinity) > depth + BEFORE,
    );
  return (key, wanted) => {
    const own = facets.find((_, i) => bodies[i]?.key === key) ?? [];
    const large = [...own].sort((a, b) => inRadius(b.corners) - inRadius(a.corners)).slice(0, TRIES * wanted);
    const points: Point[] = [];
    for (const { corners } of large) {
      const { x, y, depth } = inCentre(corners);
      if (seen(x, y, depth)) points.push({ x, y });
      if (points.length === wanted) break;
    }
    return points;
  };
}

const at = (list: Float64Array | Int32Array, i: number): number => list[i] as number;

/** The sides of a facet on the paper, each opposite its corner. */
const sides = (c: Float64Array): readonly [number, number, number] => {
  const between = (i: number, j: number) => {
    const [dx, dy] = [at(c, 3 * i) - at(c, 3 * j), at(c, 3 * i + 1) - at(c, 3 * j + 1)];
    return Math.sqrt(dx * dx + dy * dy);
  };
  return [between(1, 2), between(2, 0), between(0, 1)];
};

const doubleArea = (c: Float64Array): number =>
  Math.abs((at(c, 3) - at(c, 0)) * (at(c, 7) - at(c, 1)) - (at(c, 6) - at(c, 0)) * (at(c, 4) - at(c, 1)));

/** Radius of the circle that touches all three sides. */
const inRadius = (c: Float64Array): number => doubleArea(c) / (sides(c).reduce((sum, side) => sum + side, 0) || 1);

function inCentre(c: Float64Array): Point & { readonly depth: number } {
  const [a, b, d] = sides(c);
  const whole = a + b + d || 1;
  const mixed = (axis: number) => (a * at(c, axis) + b * at(c, 3 + axis) + d * at(c, 6 + axis)) / whole;
  return { x: mixed(0), y: mixed(1), depth: mixed(2) };
}

/** How near the eye a facet is at a point of the paper; null beside it. */
function depthAt(c: Float64Array, x: number, y: number): number | null {
  const [ax, ay, bx, by, cx, cy] = [at(c, 0), at(c, 1), at(c, 3), at(c, 4), at(c, 6), at(c, 7)];
  const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
  const u = ((bx - x) * (cy - y) - (cx - x) * (by - y)) / area;
  const v = ((cx - x) * (ay - y) - (ax - x) * (cy - y)) / area;
  const w = 1 - u - v;
  if (!(u >= 0 && v >= 0 && w >= 0)) return null;
  return u * at(c, 2) + v * at(c, 5) + w * at(c, 8);
}
