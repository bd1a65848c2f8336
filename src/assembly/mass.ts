import { area, type ClosedPath, flatten, type Point } from '../geometry/path.js';
import { apply, type Point3 } from '../geometry/placement.js';
import type { Part, Placement } from '../model/part.js';
import { slidBy } from './extent.js';

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
  const { massKg } = part;
  return part.placements.map((placement) => ({ placement, massKg, at: apply(placement.matrix, own) }));
}

/** What moves together and stands in the same set-ups: its mass, and its moment along the optical axis. */
export interface Share {
  readonly placement: Placement;
  readonly massKg: number;
  /** Mass by z. */
  readonly moment: number;
}

/**
 * Each part is weighed once, and summed with what shares its fate: a camera has hundreds of places, but few fates. Along
 * the axis alone: of a plate that stands across it nothing but its two faces needs to be looked at.
 */
export function sharesOf(parts: readonly Part[]): readonly Share[] {
  const shares: Sum[] = [];
  const latest = new Map<unknown, Sum>();
  for (const part of parts) {
    const { massKg } = part;
    const middle = thicknessOf(part) / 2;
    let centre: Point3 | null = null;
    for (const placement of part.placements) {
      const { matrix, when, group, drawnFrom } = placement;
      const ofX = matrix[2] as number;
      const ofY = matrix[6] as number;
      let z = (matrix[10] as number) * middle + (matrix[14] as number);
      if (ofX !== 0 || ofY !== 0) {
        centre ??= centreOf(part);
        z += ofX * centre.x + ofY * centre.y;
      }
      const fate = when ?? group;
      const known = latest.get(fate);
      if (known?.placement.group === group && known.placement.drawnFrom === drawnFrom) {
        known.massKg += massKg;
        known.moment += massKg * z;
      } else {
        const share = { placement, massKg, moment: massKg * z };
        shares.push(share);
        latest.set(fate, share);
      }
    }
  }
  return shares;
}

interface Sum {
  readonly placement: Placement;
  massKg: number;
  moment: number;
}

/** How far a part reaches along its own z. */
function thicknessOf(part: Part): number {
  if (part.kind === 'printed') return part.size[2];
  if (part.kind === 'flat') return part.thickness;
  return part.shape.form === 'cylinder' ? part.shape.length : part.shape.thickness;
}

/** A load with the moving groups slid by `rear`. */
export const slid = ({ placement, massKg, at }: PlacedLoad, rear: number): Load => ({
  massKg,
  at: { ...at, z: at.z + slidBy(placement, rear) },
});

function centreOf(part: Part): Point3 {
  if (part.kind === 'printed') return { x: 0, y: 0, z: part.size[2] / 2 };
  if (part.kind === 'flat') return { ...centroid(part.outline, part.holes), z: part.thickness / 2 };
  if (part.shape.form === 'cylinder') return { x: 0, y: 0, z: part.shape.length / 2 };
  return { ...centroid(part.shape.outline, part.shape.holes), z: part.shape.thickness / 2 };
}

/** Centroid of a plate: first moments of its loops over its area, loops with their sign. */
export function centroid(outline: ClosedPath, holes: readonly ClosedPath[]): Point {
  let sum = 0;
  let sx = 0;
  let sy = 0;
  for (const loop of [outline, ...holes]) {
    const [first, second] = loop;
    if (first && second && loop.length === 2) {
      // two corners are a whole circle, and most holes are: its middle needs no reckoning
      const own = area(loop);
      sum += own;
      sx += (own * (first.x + second.x)) / 2;
      sy += (own * (first.y + second.y)) / 2;
      continue;
    }
    const round = loop.some(({ bulge }) => bulge !== 0);
    const points = round ? flatten(loop, 0.1) : loop;
    let twice = 0;
    let mx = 0;
    let my = 0;
    let a = points[points.length - 1] as Point;
    for (const b of points) {
      const cross = a.x * b.y - b.x * a.y;
      twice += cross;
      mx += (a.x + b.x) * cross;
      my += (a.y + b.y) * cross;
      a = b;
    }
    const own = round ? area(loop) : twice / 2;
    sum += own;
    sx += (own * mx) / (3 * twice);
    sy += (own * my) / (3 * twice);
  }
  return { x: sx / sum, y: sy / sum };
}
