import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper } from '../bench-figures.js';
import type { Baffle } from './size.js';

export function baffleSteps({ wood, behindEdge, strip, inside }: Baffle): readonly StepWords[] {
  const line = behindEdge + wood.ply.thickness;
  return [
    {
      step: 'baffle',
      acts: [
        `The baffle R8 hides the walls of the rear box from the film. Draw a pencil line round the inside of the box, ${byCaliper(line)} from its front edge.`,
        `Glue the four strips R9 flat on the walls, marked face down, their front edges on the line. Their ends stay ${mm((inside - strip.length) / 2)} from the corners.`,
        'Paint R8 matte black on both faces and on all edges, those of its opening above all. Paint the strips with the inside of the box.',
        'When box and paint are dry, push R8 in from the front, its marked face to the rear, until it lies on all four strips.',
        'Fix it with a small spot of glue in the middle of each strip and no more. For a lens that is wider behind, cut the spots with a knife and put in another R8.',
      ],
      checks: [
        'R8 goes in by hand and does not bend. Sand its edges where it sticks.',
        `From the front edge of the box to R8 it is ${byCaliper(behindEdge)} in all four corners, within 0.5 mm.`,
      ],
      needs: ['wood glue', 'matte black', 'straight edge and ruler, 300 mm or longer', 'sharp chisel or knife'],
    },
  ];
}
