import type { StepWords } from '../../model/build-step.js';
import { mm, tenth } from '../../units/print.js';
import { byCaliper, inARow } from '../bench-figures.js';
import type { FilmMask, Masks } from './size.js';

export const maskSteps = (own: Masks): readonly StepWords[] => [ledge(own), masks(own), packed(own)];

function ledge({ opening, plies, ledge: { width, height, opening: inner }, card }: Masks): StepWords {
  const packing = plies - 2;
  const [x, y] = [(opening.width - inner.width) / 2, (opening.height - inner.height) / 2];
  return {
    step: 'mask-ledge',
    acts: [
      `Glue the four strips of card, ${byCaliper(card.thickness)} thick, on the front face of B2, one along each side of the opening. They make room for the glue of the masks.`,
      ...(packing > 0
        ? [
            `Glue ${packing === 1 ? 'the B7' : `the ${packing} B7, one on the other,`} on the strips, flush with the opening all round. They carry the ledge farther ahead, where the light is narrower.`,
          ]
        : []),
      'Glue the ledge B6 on, marked face to B2, so that it looks into the opening by the same amount left and right, and above and below.',
      'When it has set, paint B6 matte black. No paint comes on the face that looks to the rear, where masks lie.',
    ],
    checks: [
      `B6 looks ${byCaliper(x)} into the opening at its long sides and ${byCaliper(y)} at its short ones, within 0.2 mm.`,
      `Its outside is ${byCaliper(width)} by ${byCaliper(height)}, and nowhere stands out over B2.`,
    ],
    needs: ['wood glue', 'clamps, 6 or more; masking tape', 'matte black', 'card 0.2 mm thick'],
  };
}

const sizes = ({ image }: FilmMask): string => `${mm(tenth(image.width))} by ${mm(tenth(image.height))}`;

function masks({ masks: all, card, plies }: Masks): StepWords {
  return {
    step: 'masks',
    acts: [
      ...all.map(
        (mask) =>
          `${mask.id} is the mask ${mask.name}, for pictures of ${sizes(mask)} in the ${mask.holder}. Glue its ${plies} plies one on the other, marked faces to the same side, all edges flush.`,
      ),
      'Sand the outside until a mask drops into the back by its own weight. Paint it matte black, with the edges of its opening; thin coats.',
      'It goes in with its writing to the rear. To take it out, reach through its opening with a finger: a notch would let light pass.',
    ],
    checks: [
      `A mask in the back lies ${byCaliper(card.thickness)} below the seat, and never above it: a straight edge across the seat lies on B1 alone. Where it rocks on the mask, sand the face of the mask.`,
      'With a holder on it, the mask may be heard but not seen to move.',
    ],
    cautions: ['Wear a dust mask when you sand.'],
    needs: ['wood glue', 'clamps, 6 or more; masking tape', 'matte black', 'straight edge and ruler, 300 mm or longer'],
  };
}

const packed = ({ masks: all }: Masks): StepWords => ({
  step: 'glass-in',
  acts: [
    `On the road ${inARow(all.map(({ id }) => id))} ${all.length === 1 ? 'lies' : 'lie'} on G3, under the cords. Before a picture the mask that you want drops into the back first, then glass or holder.`,
  ],
});
