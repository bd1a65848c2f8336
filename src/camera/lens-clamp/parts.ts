import { compose, type Matrix4 } from '../../geometry/placement.js';
import { boughtPlate, boughtRod, joined, standing } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import { clampRecipe } from './recipe.js';
import { type LensClamp, placeLensClamp } from './size.js';

/** The clamp where it stands in the camera. */
export interface FittedClamp {
  readonly clamp: LensClamp;
  /** z of the lens seat. */
  readonly seat: number;
  /** Whether the mass of the lens was reckoned from its size, for nobody gave it. */
  readonly massReckoned: boolean;
}

const MATERIAL = 'PETG';

export function lensClampParts({ clamp, seat }: FittedClamp): readonly Part[] {
  const { fasteners, flangeDiameter, length, massKg } = clamp;
  const place = placeLensClamp(clamp, seat);
  const fitted = (at: readonly Matrix4[]) => at.map((matrix) => standing('front', compose(place, matrix)));
  const rod = (id: string, name: string, rods: typeof fasteners.flangeScrews, joins: readonly string[], kg: number) =>
    boughtRod({
      id,
      name,
      diameter: rods.diameter,
      length: rods.length,
      head: 'start',
      placements: fitted(rods.at),
      joins: joined('screw', ...joins),
      massKg: kg,
    });
  const nut = (id: string, name: string, nuts: typeof fasteners.flangeNuts, joins: readonly string[]) =>
    boughtPlate({
      id,
      name,
      thickness: nuts.thickness,
      outline: nuts.outline,
      holes: nuts.holes,
      placements: fitted(nuts.at),
      joins: joined('screw', ...joins),
      massKg: 0.0008,
    });
  return [
    {
      kind: 'printed',
      id: 'lens-clamp',
      name: 'lens clamp',
      material: MATERIAL,
      solid: clampRecipe(clamp),
      size: [flangeDiameter, flangeDiameter, length],
      placements: [standing('front', place)],
      joins: joined('screw', 'F6', 'F7'),
      massKg,
    },
    rod('clamp-screw', 'M4 countersunk screw of the clamp', fasteners.flangeScrews, ['F6', 'F7', 'lens-clamp'], 0.003),
    nut('clamp-nut', 'M4 nut in the clamp’s flange', fasteners.flangeNuts, ['lens-clamp', 'clamp-screw']),
    rod('pinch-bolt', 'M4 pinch bolt of the clamp', fasteners.pinchBolts, ['lens-clamp'], 0.003),
    nut('pinch-nut', 'M4 nut of a pinch bolt', fasteners.pinchNuts, ['lens-clamp', 'pinch-bolt']),
  ];
}

export const lensClampHardware = ({ clamp }: FittedClamp): readonly Hardware[] => [
  {
    name: 'countersunk screw',
    size: `M4 × ${clamp.fasteners.flangeScrews.length}`,
    count: clamp.screwAngles.length,
    for: 'lens clamp, through board and plug',
  },
  { name: 'nut', size: 'M4', count: clamp.screwAngles.length + 2, for: 'lens clamp' },
  {
    name: 'cylinder-head screw',
    size: `M4 × ${clamp.fasteners.pinchBolts.length - 4}`,
    count: 2,
    for: 'pinch bolts of the lens clamp',
  },
];
