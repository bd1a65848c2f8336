import type { Build } from '../../src/assembly/build.js';
import { matrixOf } from '../../src/geometry/facing.js';
import { area, type ClosedPath, reversed } from '../../src/geometry/path.js';
import type { Matrix4 } from '../../src/geometry/placement.js';
import { box, rectangle } from '../../src/geometry/shapes.js';
import type { FlatPart, Part } from '../../src/model/part.js';

/** Things small enough to see at a glance whether they go together. */
interface TinyPlate {
  readonly id: string;
  /** Drawn in (x, y) for what lies across z, in (z, y) for what lies across x, in (x, z) for what lies across y. */
  readonly outline: ClosedPath;
  readonly holes?: readonly ClosedPath[];
  readonly across: 'x' | 'y' | 'z';
  readonly low: number;
  readonly thickness?: number;
  readonly change?: Partial<FlatPart>;
}

const facing = { x: 'left', y: 'down', z: 'rear' } as const;

export const rect = (left: number, bottom: number, right: number, top: number): ClosedPath =>
  rectangle(box(left, bottom, right, top));

export const tinyPlate = ({
  id,
  outline,
  holes = [],
  across,
  low,
  thickness = 4,
  change = {},
}: TinyPlate): FlatPart => ({
  kind: 'flat',
  id,
  name: `plate ${id}`,
  material: 'plywood-4',
  thickness,
  grain: 'any',
  outline,
  holes: holes.map((hole) => (area(hole) < 0 ? hole : reversed(hole))),
  engraving: [],
  marks: [],
  placements: [{ group: 'front', matrix: matrixOf(facing[across], low, thickness) }],
  joins: [],
  massKg: 0.01,
  ...change,
});

/** Put elsewhere, or several times. */
export const placed = (part: FlatPart, ...matrices: readonly Matrix4[]): FlatPart => ({
  ...part,
  placements: matrices.map((matrix) => ({ group: 'front', matrix })),
});

export const tinyBuild = (...parts: readonly Part[]): Build => ({
  parts,
  stations: [{ name: 'closest', rear: 0 }],
  setups: [{ name: 'as it is', holder: 'none', orientation: 'upright', loads: 'top', focusing: false }],
  gate: { z: 0, width: 1, height: 1 },
  opening: { z: 0, diameter: 1 },
});
