import { frame } from '../../geometry/placement.js';
import { box, boxAt, rectangle, stepped } from '../../geometry/shapes.js';
import { ownerNotches, partnerFingers } from '../../joinery/finger-joint.js';
import { boughtPlate, joined, plate, standing } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import type { RearBox } from './size.js';

/** Felt weighs about 0.2 g/cm³ (common practice, no source). */
const FELT_DENSITY = 200e-9;

/** The sides own the long edges; at the rear both go with fingers into the standard's notches. */
export function rearBoxParts(own: RearBox): readonly Part[] {
  const { wood, inside, outside, front, rear, rows } = own;
  const { ply } = wood;
  const t = ply.thickness;
  const fit = wood.fits.glueSlip;
  const half = outside / 2;
  const intoStandard = partnerFingers(rows.standard, t, fit);
  const sideOutline = stepped(box(front, -half, rear, half), {
    top: ownerNotches(rows.long, t),
    bottom: ownerNotches(rows.long, t),
    right: intoStandard,
  });
  const lidOutline = stepped(box(-inside / 2, front, inside / 2, rear), {
    left: partnerFingers(rows.long, t, fit),
    right: partnerFingers(rows.long, t, fit),
    top: intoStandard,
  });
  const side = (id: string, name: string, facing: 'left' | 'right', low: number) =>
    plate({
      id,
      name,
      ply,
      facing,
      low,
      group: 'rear',
      grain: 'any',
      outline: sideOutline,
      joins: joined('finger', 'R2T', 'R2F', 'R3'),
    });
  const lid = (id: string, name: string, facing: 'up' | 'down', low: number) =>
    plate({
      id,
      name,
      ply,
      facing,
      low,
      group: 'rear',
      grain: 'any',
      outline: lidOutline,
      joins: joined('finger', 'R3'),
    });
  return [
    side('R1L', 'rear box side, left', 'right', -half),
    side('R1R', 'rear box side, right', 'left', half - t),
    lid('R2T', 'rear box top', 'down', half - t),
    lid('R2F', 'rear box floor', 'up', -half),
    ...felt(own),
  ];
}

/** Felt as fitted: pressed to the gap. Top and bottom strips run out over the corners; the sides' butt against them. */
function felt({ outside, clearance, bands, feltWidth }: RearBox): readonly Part[] {
  const half = outside / 2;
  const long = outside + 2 * clearance;
  const lying = (y: number) =>
    bands.map((z) => standing('rear', frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [0, y, z + feltWidth / 2])));
  const upright = (x: number) =>
    bands.map((z) => standing('rear', frame([0, 0, -1], [0, 1, 0], [1, 0, 0], [x, 0, z + feltWidth / 2])));
  return [
    boughtPlate({
      id: 'felt-long',
      name: 'felt band, top and bottom',
      thickness: clearance,
      outline: rectangle(boxAt(0, 0, long, feltWidth)),
      placements: [...lying(half), ...lying(-half - clearance)],
      joins: [...joined('glue', 'R2T', 'R2F'), ...joined('slide', 'F3', 'F4')],
      massKg: long * feltWidth * clearance * FELT_DENSITY,
    }),
    boughtPlate({
      id: 'felt-side',
      name: 'felt band, sides',
      thickness: clearance,
      outline: rectangle(boxAt(0, 0, feltWidth, outside)),
      placements: [...upright(half), ...upright(-half - clearance)],
      joins: [...joined('glue', 'R1L', 'R1R'), ...joined('slide', 'F2L', 'F2R')],
      massKg: outside * feltWidth * clearance * FELT_DENSITY,
    }),
  ];
}

export const rearBoxHardware = (own: RearBox): readonly Hardware[] => [
  {
    name: 'felt, black',
    size: `${own.felt} thick, ${own.feltWidth} wide, ${Math.ceil((8 * own.outside + 16 * own.clearance) / 10) * 10} long`,
    count: 1,
    for: 'two bands round the rear box',
  },
  { name: 'contact adhesive', size: '30 ml', count: 1, for: 'felt, sparingly: soaked felt is wood' },
];
