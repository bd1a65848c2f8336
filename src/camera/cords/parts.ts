import { frame } from '../../geometry/placement.js';
import { boughtRod, joined } from '../../joinery/plate.js';
import type { Hardware, Part } from '../../model/part.js';
import { inStances } from '../loose.js';
import type { Cords } from './size.js';

const DIAMETER = 3;

/** As they lie on the rear face of what is in: a straight length across it; the ends down to the hooks are left out. */
export function cordParts({ seat, hookY, across, stances, over }: Cords): readonly Part[] {
  const lying = [hookY, -hookY].map((y) =>
    frame([0, 1, 0], [0, 0, 1], [1, 0, 0], [-across / 2, y, seat + DIAMETER / 2]),
  );
  return [
    boughtRod({
      id: 'cord',
      name: 'elastic cord',
      diameter: DIAMETER,
      length: across,
      placements: lying.flatMap((matrix) => inStances('back', matrix, stances)),
      joins: joined('rest', ...over),
      massKg: 0.006,
    }),
  ];
}

export const cordHardware = ({ backSide }: Cords): readonly Hardware[] => [
  {
    name: 'elastic cord',
    size: `3 thick, ${Math.ceil((2 * backSide + 200) / 50) * 50} long, 10 N or more when stretched`,
    count: 2,
    for: 'holding glass and holders; mind your eyes when you let go of one',
  },
];
