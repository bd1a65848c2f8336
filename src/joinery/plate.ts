import { type Facing, matrixOf, ownAxis, ownLoop, ownPoint, ownStroke } from '../geometry/facing.js';
import { area, type ClosedPath, type Path, type Point, reversed } from '../geometry/path.js';
import type { Matrix4 } from '../geometry/placement.js';
import type { BoughtPart, FlatPart, Group, Join, Mark, Placement } from '../model/part.js';

/** The sheet that a plate is cut from. */
export interface Ply {
  readonly material: string;
  readonly thickness: number;
  /** kg/m³ */
  readonly density: number;
}

/** What a plate is, drawn where it stands in the camera at the closest station. */
export interface PlateGiven {
  readonly id: string;
  readonly name: string;
  readonly ply: Ply;
  readonly facing: Facing;
  /** The smaller coordinate of its two faces along its thickness. */
  readonly low: number;
  readonly group: Group;
  /** Axis of the camera along which the face grain lies. */
  readonly grain: 'x' | 'y' | 'z' | 'any';
  readonly outline: ClosedPath;
  readonly holes?: readonly ClosedPath[];
  readonly strokes?: readonly Path[];
  readonly marks?: readonly Mark[];
  readonly joins?: readonly Join[];
  readonly role?: 'holder';
  /** Where it stands, if not (or not only) as drawn: motions of the drawn place in the camera. */
  readonly places?: readonly Placement[];
  readonly kept?: true;
}

/** A plate of sheet, from its place in the camera. */
export function plate(given: PlateGiven): FlatPart {
  const { id, name, ply, facing, low, group, grain, role } = given;
  const outline = anticlockwise(ownLoop(facing, given.outline));
  const holes = (given.holes ?? []).map((hole) => clockwise(ownLoop(facing, hole)));
  return {
    kind: 'flat',
    id,
    name,
    material: ply.material,
    thickness: ply.thickness,
    grain: grain === 'any' ? 'any' : ownAxis(facing, grain),
    outline,
    holes,
    engraving: (given.strokes ?? []).map((stroke) => ownStroke(facing, stroke)),
    marks: (given.marks ?? []).map((mark) => ({ ...mark, ...ownPoint(facing, mark) })),
    ...(given.kept ? { kept: true } : {}),
    placements: given.places ?? [{ group, matrix: matrixOf(facing, low, ply.thickness) }],
    joins: given.joins ?? [],
    ...(role ? { role } : {}),
    massKg: (netArea(outline, holes) * ply.thickness * ply.density) / 1e9,
  };
}

const netArea = (outline: ClosedPath, holes: readonly ClosedPath[]): number =>
  holes.reduce((sum, hole) => sum - Math.abs(area(hole)), Math.abs(area(outline)));

const anticlockwise = (loop: ClosedPath): ClosedPath => (area(loop) > 0 ? loop : reversed(loop));
const clockwise = (loop: ClosedPath): ClosedPath => (area(loop) < 0 ? loop : reversed(loop));

/** A bought plate: glass, felt, a washer, a nut. Drawn in its own frame. */
export function boughtPlate(given: {
  readonly id: string;
  readonly name: string;
  readonly thickness: number;
  readonly outline: ClosedPath;
  readonly holes?: readonly ClosedPath[];
  readonly placements: readonly Placement[];
  readonly joins?: readonly Join[];
  readonly massKg: number;
  readonly role?: BoughtPart['role'];
}): BoughtPart {
  const { id, name, thickness, placements, massKg, role } = given;
  const shape = {
    form: 'plate' as const,
    thickness,
    outline: anticlockwise(given.outline),
    holes: (given.holes ?? []).map(clockwise),
  };
  return { kind: 'bought', id, name, ...(role ? { role } : {}), shape, placements, joins: given.joins ?? [], massKg };
}

/** A bought rod: a screw, a pin, a dowel, a barrel. Along its own z from 0. */
export function boughtRod(given: {
  readonly id: string;
  readonly name: string;
  readonly diameter: number;
  readonly length: number;
  readonly placements: readonly Placement[];
  readonly joins?: readonly Join[];
  readonly massKg: number;
  readonly role?: 'lens';
  readonly head?: 'start' | 'end';
}): BoughtPart {
  const { id, name, diameter, length, placements, massKg, role, head } = given;
  const shape = { form: 'cylinder' as const, diameter, length, ...(head ? { head } : {}) };
  return { kind: 'bought', id, name, ...(role ? { role } : {}), shape, placements, joins: given.joins ?? [], massKg };
}

/** Joins of one kind to several parts. */
export const joined = (by: Join['by'], ...ids: readonly string[]): readonly Join[] => ids.map((to) => ({ to, by }));

export const standing = (group: Group, matrix: Matrix4, when?: readonly string[]): Placement =>
  when ? { group, matrix, when } : { group, matrix };

/** Middle of a rectangle's diagonal pattern: the four points (±x, ±y). */
export const fourCorners = (x: number, y: number): readonly Point[] => [
  { x, y },
  { x: -x, y },
  { x: -x, y: -y },
  { x, y: -y },
];
