import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper, diagonal } from '../bench-figures.js';
import { PACKING_CARD, type PlacedHood } from './parts.js';

export const hoodSteps = ({ hood }: PlacedHood): readonly StepWords[] => {
  const { plate, betweenLips, openings, half, mouth, base } = hood;
  return [
    {
      step: 'hood',
      acts: [
        'Dry first: the two LH4 into the base LH3 on the left and right, then the two LH5 between them, above and below. Glue, clamp, and measure across the corners of the mouth.',
        'Glue LH2 on the rear of LH3, hole over hole, its sides along those of LH3.',
        `Draw round LH2 on card, two layers of ${mm(PACKING_CARD)}, and cut them. Glue them on LH2, and on them LH1: hole over hole, lower edges flush, ${byCaliper(plate.width / 2 - betweenLips)} more of it on the left and right. Its cut corners are below.`,
        'Paint all of it inside matte black, the front of LH3 and the walls of the holes too. Line the walls with black velvet paper if you have it. Leave the rear of LH1 bare.',
      ],
      checks: [
        `The mouth is ${byCaliper(2 * half)} wide both ways; across its corners ${diagonal(2 * half, 2 * half)} both ways, within 0.5 mm.`,
        `The walls stand ${byCaliper(base - mouth)} out of LH3, whose hole is ${byCaliper(openings.base)} wide.`,
        'LH1 slides down behind the lips of the accessory frame by its own weight, and stands on the feet of the rails.',
      ],
      needs: ['wood glue', 'clamps, 6 or more; masking tape', 'matte black'],
    },
    {
      step: 'front-on',
      acts: [
        'Let LH1 of the hood down behind the lips of the rails, until it stands on their feet. It comes off upwards, by hand, and must come off to set the stops or to clean the lens.',
        'The rails take one thing at a time: shutter, hood or cap. With the hood on, expose by a black card: hold it close before the mouth, draw the dark slide, and let the camera come to rest.',
        'Take the card away for the time and hold it there again. Put the dark slide in before you take the hood off.',
        'Take the hood off before you carry the camera: nothing pins it.',
      ],
      checks: [
        'The lens set at infinity and wide open, look through the back from each corner of the picture: no wall of the hood cuts into the round opening.',
      ],
    },
  ];
};
