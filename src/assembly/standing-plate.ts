import { arcOf, type ClosedPath, flatten, type Point } from '../geometry/path.js';
import type { FlatPart, Part, Placement } from '../model/part.js';

/** A closed loop of straight edges. Arcs have become chords; what lies farthest out on them is a corner all the same. */
export type Loop = readonly Point[];

/**
 * A plate in one of its places, drawn in the two axes of the camera that it lies in:
 *
 *      thickness along z: (x, y)      along x: (z, y)      along y: (x, z)
 */
export interface StandingPlate {
  readonly part: Part;
  readonly placement: Placement;
  /** Along which of the camera's axes its thickness runs, and from where to where. */
  readonly thickAlong: 'x' | 'y' | 'z';
  readonly low: number;
  readonly high: number;
  readonly outline: Loop;
  readonly holes: readonly Loop[];
}

/** A plate in all of its places, at the closest station; nothing of a part that is no plate. */
export function standingPlates(part: Part): readonly StandingPlate[] {
  const shape = plateShape(part);
  if (shape === null || part.placements.length === 0) return [];
  const loops = [shape.outline, ...shape.holes].map(traced);
  return part.placements.map((place) => laid(part, place, shape.thickness, loops));
}

/** The plate that a part is, or null. */
export function plateShape(part: Part): Pick<FlatPart, 'outline' | 'holes' | 'thickness'> | null {
  if (part.kind === 'flat') return part;
  return part.kind === 'bought' && part.shape.form === 'plate' ? part.shape : null;
}

/** Corners of a path, with the middle of each arc among them: there half a circle reaches farthest. */
export function traced(path: ClosedPath): Loop {
  if (path.every(({ bulge }) => bulge === 0)) return path;
  const halved = path.flatMap((from, i) => {
    if (from.bulge === 0) return [from];
    const { centre, radius, start } = arcOf(from, path[(i + 1) % path.length] ?? from);
    const middle = start + 2 * Math.atan(from.bulge);
    const bulge = Math.tan(Math.atan(from.bulge) / 2);
    const [x, y] = [centre.x + radius * Math.cos(middle), centre.y + radius * Math.sin(middle)];
    return [
      { x: from.x, y: from.y, bulge },
      { x, y, bulge },
    ];
  });
  return flatten(halved);
}

/** A plate drawn where it stands. */
function laid(part: Part, placement: Placement, thickness: number, loops: readonly Loop[]): StandingPlate {
  const { matrix } = placement;
  const at = (i: number) => matrix[i] as number;
  const axis = Math.abs(at(10)) > 0.5 ? 2 : Math.abs(at(8)) > 0.5 ? 0 : 1;
  const face = at(12 + axis);
  const other = face + at(8 + axis) * thickness;
  const [h, v] = axis === 2 ? [0, 1] : axis === 0 ? [2, 1] : [0, 2];
  const [hx, hy, h0] = [at(h), at(4 + h), at(12 + h)];
  const [vx, vy, v0] = [at(v), at(4 + v), at(12 + v)];
  const drawn = ({ x, y }: Point): Point => ({ x: hx * x + hy * y + h0, y: vx * x + vy * y + v0 });
  const [first, ...others] = loops.map((loop) => loop.map(drawn));
  return {
    part,
    placement,
    thickAlong: axis === 2 ? 'z' : axis === 0 ? 'x' : 'y',
    low: Math.min(face, other),
    high: Math.max(face, other),
    outline: first ?? [],
    holes: others,
  };
}
