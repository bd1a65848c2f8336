import type { Build } from '../../src/assembly/build.js';
import type { ClosedPath } from '../../src/geometry/path.js';
import { reversed } from '../../src/geometry/path.js';
import { frame, type Matrix4 } from '../../src/geometry/placement.js';
import { boxAt, rectangle } from '../../src/geometry/shapes.js';
import type { FlatPart, Join } from '../../src/model/part.js';

/** Thickness of all plates here. */
export const THICK = 4;

interface Plate {
  readonly id: string;
  readonly outline: ClosedPath;
  readonly holes?: readonly ClosedPath[];
  readonly matrix: Matrix4;
  readonly thickness?: number;
  readonly joins?: readonly Join[];
}

export const plateAt = ({ id, outline, holes = [], matrix, thickness = THICK, joins = [] }: Plate): FlatPart => ({
  kind: 'flat',
  id,
  name: `plate ${id}`,
  material: 'plywood-4',
  thickness,
  grain: 'any',
  outline,
  holes: holes.map((hole) => reversed(hole)),
  engraving: [],
  marks: [],
  placements: [{ group: 'front', matrix }],
  joins,
  massKg: 0.1,
});

/** Plates that lie across the optical axis, across x and across y; each drawn in the two other axes of the camera. */
export const acrossZ = (z: number): Matrix4 => frame([1, 0, 0], [0, 1, 0], [0, 0, 1], [0, 0, z]);
export const acrossX = (x: number): Matrix4 => frame([0, 1, 0], [0, 0, 1], [1, 0, 0], [x, 0, 0]);
export const acrossY = (y: number): Matrix4 => frame([0, 0, 1], [1, 0, 0], [0, 1, 0], [0, y, 0]);

const glued: readonly Join[] = [{ to: 'B1', by: 'glue' }];

/**
 * A closed box, 100 wide and high inside and 100 deep, with a gate of 60 × 40 in its rear wall B1 and a lid H behind that:
 * nothing in it lets light in. All is one body, so nothing has any play.
 *
 *      front ┌──────┐ B1 H          z: front −4…0, walls 0…100, B1 100…104, H 104…108
 *            │        ┤
 *            └──────┘
 */
export const darkBox: readonly FlatPart[] = [
  plateAt({
    id: 'B1',
    outline: rectangle(boxAt(0, 0, 108, 108)),
    holes: [rectangle(boxAt(0, 0, 60, 40))],
    matrix: acrossZ(100),
  }),
  plateAt({ id: 'H', outline: rectangle(boxAt(0, 0, 108, 108)), matrix: acrossZ(104), joins: glued }),
  plateAt({ id: 'front', outline: rectangle(boxAt(0, 0, 108, 108)), matrix: acrossZ(-4), joins: glued }),
  plateAt({ id: 'left', outline: rectangle(boxAt(0, 50, 108, 100)), matrix: acrossX(-54), joins: glued }),
  plateAt({ id: 'right', outline: rectangle(boxAt(0, 50, 108, 100)), matrix: acrossX(50), joins: glued }),
  plateAt({ id: 'top', outline: rectangle(boxAt(50, 0, 100, 100)), matrix: acrossY(50), joins: glued }),
  plateAt({ id: 'floor', outline: rectangle(boxAt(50, 0, 100, 100)), matrix: acrossY(-54), joins: glued }),
];

export const buildOf = (parts: Build['parts']): Build => ({
  parts,
  stations: [{ name: 'closest', rear: 0 }],
  setups: [{ name: 'exposing', holder: 'H', orientation: 'upright', loads: 'top', focusing: false }],
  gate: { z: 104, width: 60, height: 40 },
  opening: { z: -4, diameter: 0 },
});

/** The box with one plate cut differently. */
export const recut = (id: string, change: (plate: FlatPart) => Partial<FlatPart>): readonly FlatPart[] =>
  darkBox.map((plate) => (plate.id === id ? { ...plate, ...change(plate) } : plate));
