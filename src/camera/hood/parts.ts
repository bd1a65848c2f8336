import { matrixOf } from '../../geometry/facing.js';
import { across, compose, frame } from '../../geometry/placement.js';
import { box, boxAt, circle, ledIn, rectangle, stepped } from '../../geometry/shapes.js';
import { ownerNotches, partnerFingers } from '../../joinery/finger-joint.js';
import { boughtPlate, joined, plate, standing } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import type { Hood } from './size.js';

/** Of card, kg/mm³. */
const CARD_DENSITY = 700e-9;
/** Card, doubled, behind the packing, so that the base clears the lips of the rails. */
export const PACKING_CARD = 0.3;
/** Cut off the lower corners of what goes in from above; a choice of ours. */
const LEAD_IN = 4;

/** In which set-ups the hood is on. */
export interface PlacedHood {
  readonly hood: Hood;
  /** The ring that its plate rests on. */
  readonly restsOn: string;
  readonly when: readonly string[];
}

/** Half a turn about the axis: the wall across from one. */
const halfTurn = frame([-1, 0, 0], [0, -1, 0], [0, 0, 1], [0, 0, 0]);

export function hoodParts({ hood, restsOn, when }: PlacedHood): readonly Part[] {
  const { wood, plate: rail, betweenLips, beyondLips, openings, half, mouth, base, rows } = hood;
  const { ply } = wood;
  const t = ply.thickness;
  const fit = wood.fits.glueSlip;
  const out = half + t;
  const face = { ply, facing: 'rear', group: 'front', grain: 'y' } as const;
  const flat = (z: number) => [standing('front', across(0, 0, z), when)];
  const hole = (diameter: number) => [circle(0, 0, diameter)];
  // as high above the axis as below it, so that it may be glued on either way up
  const packing = rectangle(boxAt(0, 0, 2 * betweenLips, -2 * rail.bottom));
  const wall = { ply, low: 0, group: 'front', grain: 'z' } as const;
  const pair = (facing: 'right' | 'down', low: number) => {
    const first = matrixOf(facing, low, t);
    return [first, compose(halfTurn, first)].map((matrix) => standing('front', matrix, when));
  };
  const notches = ownerNotches(rows.base, t);
  const long = ownerNotches(rows.long, t);
  const fingers = partnerFingers(rows.long, t, fit);
  const intoBase = partnerFingers(rows.base, t, fit);
  return [
    plate({
      ...face,
      id: 'LH1',
      name: 'rail plate of the hood',
      low: 0,
      outline: ledIn(box(-rail.width / 2, rail.bottom, rail.width / 2, rail.railTop), LEAD_IN),
      holes: hole(openings.rail),
      places: flat(rail.rear - t),
      joins: [...joined('rest', restsOn), ...joined('slide', 'A4', 'A5')],
    }),
    boughtPlate({
      id: 'hood-card',
      name: 'card behind the packing of the hood',
      thickness: 2 * PACKING_CARD,
      outline: packing,
      holes: hole(openings.packing),
      placements: flat(beyondLips + t),
      joins: joined('glue', 'LH1'),
      massKg: CARD_DENSITY * 2 * PACKING_CARD * 2 * betweenLips * -2 * rail.bottom,
    }),
    plate({
      ...face,
      id: 'LH2',
      name: 'packing of the hood',
      low: 0,
      outline: packing,
      holes: hole(openings.packing),
      places: flat(beyondLips),
      joins: joined('glue', 'hood-card'),
    }),
    plate({
      ...face,
      id: 'LH3',
      name: 'base of the hood',
      grain: 'any',
      low: 0,
      outline: stepped(boxAt(0, 0, 2 * out, 2 * out), { left: notches, right: notches, top: notches, bottom: notches }),
      holes: hole(openings.base),
      places: flat(base),
      joins: joined('glue', 'LH2'),
    }),
    plate({
      ...wall,
      id: 'LH4',
      name: 'side of the hood',
      facing: 'right',
      outline: stepped(box(mouth, -out, base, out), { top: long, bottom: long, right: intoBase }),
      places: pair('right', -out),
      joins: joined('finger', 'LH3', 'LH5'),
    }),
    plate({
      ...wall,
      id: 'LH5',
      name: 'top and floor of the hood',
      facing: 'down',
      outline: stepped(box(-half, mouth, half, base), { left: fingers, right: fingers, top: intoBase }),
      places: pair('down', half),
      joins: joined('finger', 'LH3'),
    }),
  ];
}

export const hoodHardware = (): readonly Hardware[] => [
  { name: 'card', size: `${PACKING_CARD} mm thick`, count: 1, for: 'two layers behind the packing of the hood' },
];
