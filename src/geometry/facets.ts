import { arcOf, type ClosedPath, type Point, SAGITTA } from './path.js';

/** Corners that stray less than this from the line between their neighbours are left out, mm: the kernel's floats end there. */
const STRAIGHT = 1e-5;

/**
 * The corners of a loop, its curves cut into chords that lie on the side of air, so that facets never make a bore too
 * small or a pin too large; corners that bend nothing are left out.
 *
 * @param role whether the loop bounds what is joined or what is taken away: that says on which side of it the air is
 */
export const corners = (loop: ClosedPath, role: 'add' | 'cut'): readonly Point[] => straightened(faceted(loop, role));

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

const next = <T>(list: readonly T[], i: number): T => list[(i + 1) % list.length] as T;
