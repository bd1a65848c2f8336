import { arcOf, type ClosedPath, type Point, reversed } from '../geometry/path.js';
import { apply, type Point3 } from '../geometry/placement.js';
import { type Prism, scaleAt } from '../geometry/solid.js';
import type { Piece } from './pieces.js';
import { prismsOf } from './screens.js';

/** Spacing of the points along an edge, and how far into the air they stand off it, mm. */
export interface Grain {
  readonly spacing: number;
  readonly off: number;
}

/** A point beside an edge, and two more that tell whether it is one: a little way into what continues either face. */
export interface EdgePoint {
  readonly at: Point3;
  readonly beyond: readonly [Point3, Point3];
}

/** So far off the edge it is looked whether other wood of the same body lies flush with it, mm. */
const FLUSH = 0.1;

/**
 * Points beside every convex edge of a piece, a little way into the air between the two faces that meet there:
 *
 *        o           off / √2 from either face: whatever plane light grazes the edge in, the point stands between 0.7
 *     ────┐          and 1 times `off` to the side of it
 *         │
 *
 * Edges are those of both faces of a plate, and the upright ones at its corners. Round edges get a point for each eighth
 * of a turn at least, and a round side counts as an edge wherever there is one.
 */
export function edgePoints({ part, placement }: Piece, grain: Grain): readonly EdgePoint[] {
  const prisms = prismsOf(part);
  const cuts = part.kind === 'printed' ? part.solid.cut : [];
  const levels = prisms.flatMap(({ matrix, height }) => [matrix[14] as number, (matrix[14] as number) + height]);
  return [
    ...prisms.flatMap((prism) => beside(prism, grain, [0, prism.height])),
    // the mouths of a cut lie where it meets the faces of what it is cut from
    ...cuts.flatMap((cut) => {
      const inside = levels.map((z) => z - (cut.matrix[14] as number)).filter((z) => z > 0 && z < cut.height);
      return beside({ ...cut, profile: reversed(cut.profile) }, grain, [0, cut.height, ...inside]);
    }),
  ].map(({ at, beyond: [a, b] }) => ({
    at: apply(placement.matrix, at),
    beyond: [apply(placement.matrix, a), apply(placement.matrix, b)],
  }));
}

/** Points in the part's own frame. */
function beside(
  { profile, holes, height, matrix, taper = 1 }: Prism,
  { spacing, off }: Grain,
  faces: readonly number[],
): readonly EdgePoint[] {
  const points: EdgePoint[] = [];
  const slant = off * Math.SQRT1_2;
  const own = (x: number, y: number, z: number) => apply(matrix, { x, y, z });
  const scale = (z: number) => scaleAt({ taper, height }, z);
  const rungs = Math.max(1, Math.ceil(height / spacing));
  for (const loop of [profile, ...holes])
    for (const { nx, ny, kind, ...mark } of marks(loop, spacing)) {
      if (kind !== 'upright')
        for (const z of faces) {
          const [x, y] = [mark.x * scale(z), mark.y * scale(z)];
          const ways = z === 0 ? [-1] : z === height ? [1] : [-1, 1];
          for (const way of ways)
            points.push({
              at: own(x + slant * nx, y + slant * ny, z + way * slant),
              beyond: [
                own(x - FLUSH * nx, y - FLUSH * ny, z + way * FLUSH),
                own(x + FLUSH * nx, y + FLUSH * ny, z - way * FLUSH),
              ],
            });
        }
      if (kind === 'level') continue;
      // to both sides of the corner: wood of another piece there makes it part of a face
      for (let k = 0; k < rungs; k++) {
        const z = (height * (k + 0.5)) / rungs;
        const [x, y] = [mark.x * scale(z), mark.y * scale(z)];
        points.push({
          at: own(x + off * nx, y + off * ny, z),
          beyond: [own(x - FLUSH * ny, y + FLUSH * nx, z), own(x + FLUSH * ny, y - FLUSH * nx, z)],
        });
      }
    }
  return points;
}

interface Marked extends Point {
  /** Out of the wood, unit length. */
  readonly nx: number;
  readonly ny: number;
  /** Whether it is for the edges along both faces, for the upright edge here, or for both, as on a round side. */
  readonly kind: 'level' | 'upright' | 'both';
}

/** Places along a loop with wood on its left. */
function marks(loop: ClosedPath, spacing: number): readonly Marked[] {
  const found: Marked[] = [];
  loop.forEach((from, i) => {
    const to = loop[(i + 1) % loop.length] as ClosedPath[number];
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const long = Math.sqrt(dx * dx + dy * dy);
    if (from.bulge !== 0) {
      const { centre, radius, start } = arcOf(from, to);
      const angle = 4 * Math.atan(from.bulge);
      const count = Math.max(
        Math.ceil((radius * Math.abs(angle)) / spacing),
        Math.ceil(Math.abs(angle) / (Math.PI / 4)),
      );
      const out = Math.sign(angle);
      for (let k = 0; k < count; k++) {
        const turn = start + (angle * (k + 0.5)) / count;
        const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
        found.push({
          x: centre.x + radius * cos,
          y: centre.y + radius * sin,
          nx: out * cos,
          ny: out * sin,
          kind: out > 0 ? 'both' : 'level',
        });
      }
    } else {
      const count = Math.max(1, Math.ceil(long / spacing));
      const [nx, ny] = [dy / long, -dx / long];
      for (let k = 0; k < count; k++) {
        const share = (k + 0.5) / count;
        found.push({ x: from.x + share * dx, y: from.y + share * dy, nx, ny, kind: 'level' });
      }
    }
    // the corner where this edge ends, if it points out of the wood
    const after = loop[(i + 2) % loop.length] as ClosedPath[number];
    if (from.bulge !== 0 || to.bulge !== 0) return;
    const [ex, ey] = [after.x - to.x, after.y - to.y];
    const next = Math.sqrt(ex * ex + ey * ey);
    if (dx * ey - dy * ex <= 0) return;
    const [bx, by] = [dy / long + ey / next, -dx / long - ex / next];
    const size = Math.sqrt(bx * bx + by * by);
    found.push({ x: to.x, y: to.y, nx: bx / size, ny: by / size, kind: 'upright' });
  });
  return found;
}
