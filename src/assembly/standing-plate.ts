import { arcOf, type ClosedPath, flatten, type Point } from '../geometry/path.js';
import type { FlatPart, Part, Placement } from '../model/part.js';

/** A closed loop of straight edges. Arcs have become chords; what lies farthest out on them is a corner all the same. */
export type Loop = readonly Point[];

/**
 * A plate in one of its places, drawn in the two axes of the camera that it lies in, without its holes:
 *
 *      thickness along z: (x, y)      along x: (z, y)      along y: (x, z)
 */
export interface StandingOutline {
  readonly part: Part;
  readonly placement: Placement;
  /** Along which of the camera's axes its thickness runs, and from where to where. */
  readonly thickAlong: 'x' | 'y' | 'z';
  readonly low: number;
  readonly high: number;
  readonly outline: Loop;
}

/** The same with its holes, which have most of the corners. */
export interface StandingPlate extends StandingOutline {
  readonly holes: readonly Loop[];
}

/** A plate in some of its places, at the closest station; nothing of a part that is no plate. */
export function standingOutlines(part: Part, places: readonly Placement[]): readonly StandingOutline[] {
  const shape = plateShape(part);
  if (shape === null || places.length === 0) return [];
  const outline = traced(shape.outline);
  return places.map((placement) => {
    const { axis, face, other } = facesOf(placement, shape.thickness);
    return {
      part,
      placement,
      thickAlong: axis,
      low: Math.min(face, other),
      high: Math.max(face, other),
      outline: laid(outline, placement, axis),
    };
  });
}

export function standingPlates(part: Part, places: readonly Placement[]): readonly StandingPlate[] {
  const holes = (plateShape(part)?.holes ?? []).map(traced);
  return standingOutlines(part, places).map((plate) => ({
    ...plate,
    holes: holes.map((hole) => laid(hole, plate.placement, plate.thickAlong)),
  }));
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

/** Along which axis of the camera a plate's thickness runs, and where both of its faces stand. */
function facesOf({ matrix }: Placement, thickness: number) {
  const at = (i: number) => matrix[i] as number;
  const row = Math.abs(at(10)) > 0.5 ? 2 : Math.abs(at(8)) > 0.5 ? 0 : 1;
  const face = at(12 + row);
  return { axis: AXES[row], face, other: face + at(8 + row) * thickness };
}

const AXES = ['x', 'y', 'z'] as const;

/** A loop of a plate drawn where it lies across an axis of the camera. */
export function laid(loop: Loop, { matrix }: Placement, across: 'x' | 'y' | 'z'): Loop {
  const at = (i: number) => matrix[i] as number;
  const [h, v] = across === 'z' ? [0, 1] : across === 'x' ? [2, 1] : [0, 2];
  const [hx, hy, h0] = [at(h), at(4 + h), at(12 + h)];
  const [vx, vy, v0] = [at(v), at(4 + v), at(12 + v)];
  return loop.map(({ x, y }) => ({ x: hx * x + hy * y + h0, y: vx * x + vy * y + v0 }));
}
