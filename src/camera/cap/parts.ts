import { ON_THE_ROAD } from '../../assembly/setups.js';
import { across } from '../../geometry/placement.js';
import { box, circle, ledIn, rectangle } from '../../geometry/shapes.js';
import { boughtRod, joined, plate, standing } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import { type Cap, KNOB } from './size.js';

/** Cut off its lower corners; a choice of ours. */
const LEAD_IN = 4;
/** Of a hardwood dowel, kg/mm³; common practice, no source. */
const DOWEL_DENSITY = 700e-9;

/** In which set-ups the cap is on; its peg is in for the road alone. */
export interface PlacedCap {
  readonly cap: Cap;
  /** The ring that it lies on. */
  readonly restsOn: string;
  readonly when: readonly string[];
}

export function capParts({ cap, restsOn, when }: PlacedCap): readonly Part[] {
  const { wood, plate: rail, grip, peg } = cap;
  const { ply } = wood;
  const t = ply.thickness;
  const [half, front] = [rail.width / 2, rail.rear - t];
  const at = (z: number, names: readonly string[]) => [standing('front', across(0, 0, z), names)];
  const face = { ply, facing: 'rear', low: 0, group: 'front' } as const;
  const length = 3 * t;
  return [
    plate({
      ...face,
      id: 'LC1',
      name: 'cap of the lens',
      grain: 'y',
      outline: ledIn(box(-half, rail.bottom, half, grip.top), LEAD_IN),
      holes: [circle(0, peg.y, peg.hole)],
      places: at(front, when),
      joins: [...joined('rest', restsOn), ...joined('slide', 'A4', 'A5')],
    }),
    plate({
      ...face,
      id: 'LC2',
      name: 'grip of the cap',
      grain: 'x',
      outline: rectangle(box(-half, grip.bottom, half, grip.top)),
      places: at(front - t, when),
      joins: joined('glue', 'LC1'),
    }),
    boughtRod({
      id: 'cap-peg',
      name: 'peg that holds the cap on the road',
      diameter: peg.diameter,
      length,
      placements: [standing('front', across(0, peg.y, front - t), [ON_THE_ROAD])],
      joins: joined('slide', 'LC1', restsOn),
      massKg: (DOWEL_DENSITY * length * Math.PI * peg.diameter ** 2) / 4,
    }),
    plate({
      ...face,
      id: 'LC3',
      name: 'knob of the peg of the cap',
      grain: 'any',
      outline: circle(0, peg.y, KNOB),
      holes: [circle(0, peg.y, peg.diameter + wood.fits.glueSlip)],
      places: at(front - t, [ON_THE_ROAD]),
      joins: joined('glue', 'cap-peg'),
    }),
  ];
}

export const capHardware = ({ cap }: PlacedCap): readonly Hardware[] => [
  {
    name: 'dowel',
    size: `${Math.round(10 * cap.peg.diameter) / 10} × ${Math.ceil(3 * cap.wood.ply.thickness)}`,
    count: 1,
    for: 'peg of the cap',
  },
];
