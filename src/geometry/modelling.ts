import jscad from '@jscad/modeling';
import type { Mesh } from './mesh.js';
import { arcOf, type ClosedPath, type Point, SAGITTA } from './path.js';
import { apply } from './placement.js';
import type { Prism } from './solid.js';

/** Corners that stray less than this from the line between their neighbours are left out, mm: the kernel's floats end there. */
const STRAIGHT = 1e-5;

/**
 * The surface of a prism. Curves become chords that lie on the side of air: round a pin they are drawn inside the
 * circle, in a bore outside it, so that facets never make a bore too small.
 *
 * @param role whether the prism is joined or taken away: that says on which side of its walls the air is
 */
export function buildPrism({ profile, holes, height, matrix }: Prism, role: 'add' | 'cut'): Mesh {
  const loops = [profile, ...holes].map((loop) => straightened(faceted(loop, role)));
  const sides = loops.flatMap((loop) => loop.map((from, i) => [pair(from), pair(next(loop, i))]));
  const solid = jscad.extrusions.extrudeLinear(
    { height },
    jscad.geometries.geom2.create(sides as [[number, number], [number, number]][]),
  );
  const positions: number[] = [];
  const triangles: number[] = [];
  const known = new Map<string, number>();
  for (const { vertices } of jscad.geometries.geom3.toPolygons(solid)) {
    const corners = vertices.map(([x, y, z]) => {
      const key = `${x},${y},${z}`;
      const index = known.get(key);
      if (index !== undefined) return index;
      const placed = apply(matrix, { x, y, z });
      positions.push(placed.x, placed.y, placed.z);
      known.set(key, known.size);
      return known.size - 1;
    });
    for (let k = 2; k < corners.length; k++)
      triangles.push(corners[0] as number, corners[k - 1] as number, corners[k] as number);
  }
  return { positions, triangles };
}

/** How many chords a whole circle needs so that none strays from it by more than the sagitta. */
export const chordsOf = (radius: number, sagitta = SAGITTA): number =>
  Math.max(8, Math.ceil(Math.PI / Math.acos(Math.max(0, 1 - sagitta / radius))));

/**
 * Corners of a loop, its arcs cut into chords or into tangents.
 *
 *      inscribed:      x---x---x    corners on the arc
 *      circumscribed:  x-x---x-x    middles of the sides on the arc, and the two half sides at its ends
 */
function faceted(loop: ClosedPath, role: 'add' | 'cut'): readonly Point[] {
  const points: Point[] = [];
  loop.forEach((from, i) => {
    points.push(from);
    if (from.bulge === 0) return;
    const { centre, radius, start } = arcOf(from, next(loop, i));
    const angle = 4 * Math.atan(from.bulge);
    const steps = Math.max(2, Math.ceil((chordsOf(radius) * Math.abs(angle)) / (2 * Math.PI)));
    // material lies to the left of every edge that is joined: an arc that turns right is hollow
    const hollow = from.bulge < 0 === (role === 'add');
    const reach = hollow ? radius / Math.cos(angle / (2 * steps)) : radius;
    for (let k = hollow ? 0.5 : 1; k < steps; k++) {
      const turn = start + (angle * k) / steps;
      points.push({ x: centre.x + reach * Math.cos(turn), y: centre.y + reach * Math.sin(turn) });
    }
  });
  return points;
}

/** Without the corners that bend nothing: the triangulation of the ends drops them, the walls would keep them, and the solid would gape. */
function straightened(loop: readonly Point[]): readonly Point[] {
  return loop.filter((here, i) => {
    const before = loop[(i + loop.length - 1) % loop.length] as Point;
    const after = next(loop, i);
    const [dx, dy] = [after.x - before.x, after.y - before.y];
    const stray = Math.abs(dx * (here.y - before.y) - dy * (here.x - before.x)) / Math.sqrt(dx * dx + dy * dy);
    return stray > STRAIGHT;
  });
}

const pair = ({ x, y }: Point): [number, number] => [x, y];

const next = <T>(list: readonly T[], i: number): T => list[(i + 1) % list.length] as T;
