import { feltRound, tubeWalls } from '../../joinery/tube.js';
import type { Hardware, Part } from '../../model/part.js';
import type { RearBox } from './size.js';

/** Top and floor, and the two sides, of the box round it. */
const WALLS = {
  'front box': { lids: ['F3', 'F4'], sides: ['F2L', 'F2R'] },
  'middle box': { lids: ['C2T', 'C2F'], sides: ['C1L', 'C1R'] },
} as const;

/** Four walls into the rear standard, and the felt round them. */
export function rearBoxParts(own: RearBox): readonly Part[] {
  const { wood, inside, outside, front, rear, rows, clearance, bands, feltWidth, slidesIn } = own;
  return [
    ...tubeWalls({
      ply: wood.ply,
      fit: wood.fits.glueSlip,
      inside,
      outside,
      front,
      rear,
      rows,
      group: 'rear',
      ids: { side: 'R1', lid: 'R2', plate: 'R3' },
      name: 'rear box',
    }),
    ...feltRound({
      outside,
      clearance,
      bands,
      width: feltWidth,
      group: 'rear',
      id: 'felt-',
      name: 'felt band',
      on: { lids: ['R2T', 'R2F'], sides: ['R1L', 'R1R'] },
      in: WALLS[slidesIn],
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
