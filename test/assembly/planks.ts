import type { Build } from '../../src/assembly/build.js';
import { setupsOf } from '../../src/assembly/setups.js';
import { polygon } from '../../src/geometry/path.js';
import { across } from '../../src/geometry/placement.js';
import type { FlatPart, Group, Join, Part } from '../../src/model/part.js';

type Stretch = readonly [from: number, to: number];

interface Plank {
  readonly id: string;
  readonly x: Stretch;
  readonly y: Stretch;
  readonly z: Stretch;
  readonly group?: Group;
  readonly joins?: readonly Join[];
  readonly when?: readonly string[];
}

/** A block of wood where it is told to stand, for arrangements whose answer can be worked out by hand. */
export const plank = ({ id, x, y, z, group = 'front', joins = [], when }: Plank): FlatPart => ({
  kind: 'flat',
  id,
  name: `plank ${id}`,
  material: 'plywood-4',
  thickness: z[1] - z[0],
  grain: 'any',
  outline: polygon([
    [0, 0],
    [x[1] - x[0], 0],
    [x[1] - x[0], y[1] - y[0]],
    [0, y[1] - y[0]],
  ]),
  holes: [],
  engraving: [],
  marks: [],
  massKg: 0.1,
  placements: [{ group, matrix: across(x[0], y[0], z[0]), ...(when ? { when } : {}) }],
  joins,
});

/** A build of such planks, that slides 100 mm. */
export const buildOf = (...parts: readonly Part[]): Build => ({
  parts,
  stations: [
    { name: 'closest', rear: 0 },
    { name: 'farthest', rear: 100 },
  ],
  setups: setupsOf([{ name: 'holder' }]),
  gate: { z: 0, width: 100, height: 100 },
  opening: { z: -10, diameter: 50 },
});
