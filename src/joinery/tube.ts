import type { ClosedPath } from '../geometry/path.js';
import { frame } from '../geometry/placement.js';
import { box, boxAt, rectangle, stepped } from '../geometry/shapes.js';
import type { FlatPart, Group, Part } from '../model/part.js';
import { type FingerRow, ownerNotches, partnerFingers } from './finger-joint.js';
import { boughtPlate, joined, type Ply, plate, standing } from './plate.js';

/** A square box round the axis without ends: four walls, and a plate round its rear end that holds it square. */
export interface Tube {
  readonly ply: Ply;
  readonly fit: number;
  readonly inside: number;
  readonly outside: number;
  /** z of the front edges, and of the front face of the plate at the rear. */
  readonly front: number;
  readonly rear: number;
  readonly rows: { readonly long: FingerRow; readonly standard: FingerRow };
  readonly group: Group;
  /** The letter and number of its sides, of its top and floor, and of the plate. */
  readonly ids: { readonly side: string; readonly lid: string; readonly plate: string };
  readonly name: string;
}

/** The sides own the long edges; at the rear both go with fingers into the notches of the plate. */
export function tubeWalls({
  ply,
  fit,
  inside,
  outside,
  front,
  rear,
  rows,
  group,
  ids,
  name,
}: Tube): readonly FlatPart[] {
  const t = ply.thickness;
  const half = outside / 2;
  const intoPlate = partnerFingers(rows.standard, t, fit);
  const sideOutline = stepped(box(front, -half, rear, half), {
    top: ownerNotches(rows.long, t),
    bottom: ownerNotches(rows.long, t),
    right: intoPlate,
  });
  const lidOutline = stepped(box(-inside / 2, front, inside / 2, rear), {
    left: partnerFingers(rows.long, t, fit),
    right: partnerFingers(rows.long, t, fit),
    top: intoPlate,
  });
  const wall = (id: string, what: string, facing: 'left' | 'right' | 'up' | 'down', low: number) => {
    const upright = facing === 'left' || facing === 'right';
    return plate({
      id,
      name: `${name} ${what}`,
      ply,
      facing,
      low,
      group,
      grain: 'any',
      outline: upright ? sideOutline : lidOutline,
      joins: joined('finger', ...(upright ? [`${ids.lid}T`, `${ids.lid}F`] : []), ids.plate),
    });
  };
  return [
    wall(`${ids.side}L`, 'side, left', 'right', -half),
    wall(`${ids.side}R`, 'side, right', 'left', half - t),
    wall(`${ids.lid}T`, 'top', 'down', half - t),
    wall(`${ids.lid}F`, 'floor', 'up', -half),
  ];
}

/** The opening of the plate, with notches for the fingers of the walls, cut a fit deeper than those are thick. */
export function tubeOpening({ inside, row, ply, fit }: TubeOpening): ClosedPath {
  const notches = partnerFingers(row, ply.thickness + fit, 0);
  return stepped(boxAt(0, 0, inside, inside), { left: notches, right: notches, top: notches, bottom: notches });
}

interface TubeOpening {
  readonly inside: number;
  readonly row: FingerRow;
  readonly ply: Ply;
  readonly fit: number;
}

/** Felt weighs about 0.2 g/cm³ (common practice, no source). */
const FELT_DENSITY = 200e-9;

export interface FeltRound {
  readonly outside: number;
  /** The gap that it closes. */
  readonly clearance: number;
  /** z of the front edges of the bands. */
  readonly bands: readonly number[];
  readonly width: number;
  readonly group: Group;
  /** Before `long` and `side`. */
  readonly id: string;
  readonly name: string;
  /** Top and floor, and the two sides, of the box that carries it, and of the one in which it slides. */
  readonly on: { readonly lids: readonly string[]; readonly sides: readonly string[] };
  readonly in: { readonly lids: readonly string[]; readonly sides: readonly string[] };
}

/** Felt as fitted: pressed to the gap. Top and bottom strips run out over the corners; the sides' butt against them. */
export function feltRound({
  outside,
  clearance,
  bands,
  width,
  group,
  id,
  name,
  on,
  in: around,
}: FeltRound): readonly Part[] {
  const half = outside / 2;
  const long = outside + 2 * clearance;
  const lying = (y: number) =>
    bands.map((z) => standing(group, frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [0, y, z + width / 2])));
  const upright = (x: number) =>
    bands.map((z) => standing(group, frame([0, 0, -1], [0, 1, 0], [1, 0, 0], [x, 0, z + width / 2])));
  return [
    boughtPlate({
      id: `${id}long`,
      name: `${name}, top and bottom`,
      thickness: clearance,
      outline: rectangle(boxAt(0, 0, long, width)),
      placements: [...lying(half), ...lying(-half - clearance)],
      joins: [...joined('glue', ...on.lids), ...joined('slide', ...around.lids)],
      massKg: long * width * clearance * FELT_DENSITY,
    }),
    boughtPlate({
      id: `${id}side`,
      name: `${name}, sides`,
      thickness: clearance,
      outline: rectangle(boxAt(0, 0, width, outside)),
      placements: [...upright(half), ...upright(-half - clearance)],
      joins: [...joined('glue', ...on.sides), ...joined('slide', ...around.sides)],
      massKg: outside * width * clearance * FELT_DENSITY,
    }),
  ];
}
