import { area, type ClosedPath, flatten, type Point } from '../geometry/path.js';
import { apply, type Point3 } from '../geometry/placement.js';
import type { Part, Placement } from '../model/part.js';

/** Mass and centre of gravity of what stands in a place. */
export interface Load {
  readonly massKg: number;
  readonly at: Point3;
}

/** What a part weighs in one of its places. */
export interface PlacedLoad extends Load {
  readonly placement: Placement;
}

/** The loads of all placements of a part at the closest station. */
export function loadsOf(part: Part): readonly PlacedLoad[] {
  if (part.placements.length === 0) return [];
  const own = centreOf(part);
  return part.placements.map((placement) => ({ placement, massKg: part.massKg, at: apply(placement.matrix, own) }));
}

/** A load with the moving groups slid by `rear`. */
export const slid = ({ placement, massKg, at }: PlacedLoad, rear: number): Load => ({
  massKg,
  at: placement.group === 'front' ? at : { ...at, z: at.z + rear },
});

/** One load for many. */
export function together(loads: readonly Load[]): Load {
  const massKg = loads.reduce((sum, load) => sum + load.massKg, 0);
  const mean = (axis: 'x' | 'y' | 'z') => loads.reduce((sum, load) => sum + load.massKg * load.at[axis], 0) / massKg;
  return { massKg, at: { x: mean('x'), y: mean('y'), z: mean('z') } };
}

function centreOf(part: Part): Point3 {
  if (part.kind === 'printed') return { x: 0, y: 0, z: part.size[2] / 2 };
  if (part.kind === 'flat') return { ...centroid(part.outline, part.holes), z: part.thickness / 2 };
  if (part.shape.form === 'cylinder') return { x: 0, y: 0, z: part.shape.length / 2 };
  return { ...centroid(part.shape.outline, part.shape.holes), z: part.shape.thickness / 2 };
}

/** Centroid of a plate: first moments of its loops over its area, loops with their sign. */
export function centroid(outline: ClosedPath, holes: readonly ClosedPath[]): Point {
  let [sum, sx, sy] = [0, 0, 0];
  for (const loop of [outline, ...holes]) {
    const points = loop.some(({ bulge }) => bulge !== 0) ? flatten(loop, 0.1) : loop;
    let twice = 0;
    let mx = 0;
    let my = 0;
    for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
      const a = points[j] as Point;
      const b = points[i] as Point;
      const cross = a.x * b.y - b.x * a.y;
      twice += cross;
      mx += (a.x + b.x) * cross;
      my += (a.y + b.y) * cross;
    }
    const own = area(loop);
    sum += own;
    sx += (own * mx) / (3 * twice);
    sy += (own * my) / (3 * twice);
  }
  return { x: sx / sum, y: sy / sum };
}
