import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper } from '../bench-figures.js';
import { CARD, woodScrew } from './parts.js';
import type { Tailboard } from './size.js';

export const tailboardSteps = (own: Tailboard): readonly StepWords[] => [
  tripodNut(own),
  upperPly(own),
  rails(own),
  keepers(own),
  endStop(own),
];

function tripodNut({ thread, doubler, wood }: Tailboard): StepWords {
  return {
    step: 'tripod-nut',
    acts: [
      'Wipe the soot off all cut edges with a damp cloth, here and in every step. Let the parts dry before you glue them. The marked face of a part is the one with its number engraved.',
      'Lay T1L on the flat board, its marked face down. It is the lower ply of the tailboard, the base plate of the camera.',
      `Glue the ${doubler.plies} pieces of T4 on each other and on T1L, hole over hole, their edges along its edges. They thicken the base where the tripod is screwed in.`,
      'Push the barrel of the tripod nut through T1L from the marked side while the glue is wet. It keeps the holes in line. Wipe the glue off the barrel: none may reach the thread.',
      'Clamp T4 down with a scrap of wood on top, and let the glue set.',
      `Draw the nut home: a bolt ${thread.name} with a wide washer, from below, pulls its flange down, and its prongs, if it has any, into T1L. Do not hammer: the plies would split.`,
    ],
    checks: [
      `The flange, the flat disc of the nut, lies on the wood all round. It stands up less than ${mm(wood.ply.thickness)}, so that the next ply covers it.`,
      'The screw of your tripod goes in from below and turns easily.',
    ],
    cautions: ['Wear a dust mask when you sand: soot and glue of plywood are no good for lungs.'],
    needs: ['wood glue', 'clamps, 6 or more; masking tape', `bolt ${thread.name} with a wide washer`],
  };
}

const upperPly = ({ slot }: Tailboard): StepWords => ({
  step: 'tailboard',
  acts: [
    'Dry first: lay T1U, the upper ply, on T1L with its marked face down. The two marked faces meet. The flange of the nut goes into the round hole, and the long slots lie over each other.',
    'Spread the glue thinly on T1L. Keep it 5 mm away from the long slot and from the flange.',
    'Lay T1U on, bring all edges flush, and clamp the two between flat boards. Put most clamps in the middle, or heavy books.',
    'Wipe the glue out of every slot at once: tenons must go in there later, and a bolt must run in the long one.',
  ],
  checks: [
    'All four edges of T1U and T1L are flush.',
    `A 6 mm bolt runs from end to end of the long slot, which is ${mm(slot.width)} wide.`,
    'The nut stands nowhere above T1U.',
    'A straight edge laid along, across and cornerwise shows no gap that takes a card 0.25 mm thick.',
  ],
  needs: ['wood glue', 'clamps, 6 or more; masking tape', 'card 0.25 mm thick'],
});

function rails({ soleWidth, railPlay }: Tailboard): StepWords {
  return {
    step: 'rails',
    acts: [
      'The rails are the two tracks between which the sole will run. Each is two pieces of T2 on each other. All four are alike.',
      'Dry first: lay two T2 at each side of T1U, marked faces up, their round holes over those of T1U. Push a 6 mm dowel through each.',
      `Lay the sole (R4L, R4U) between the rails as a gauge, with a strip of card ${mm(railPlay)} thick at each side. It must slide from end to end, and not shake.`,
      'Take the T2 off again. Glue them on T1U and on each other, thinly towards the inner edge. Put the dowels back in with a touch of glue, and clamp.',
      'Slide the sole through once more while the glue is wet. Pull it out, and wipe the inner edges of the rails.',
      'When the glue has set, pare the dowels flush with the upper T2.',
    ],
    checks: [
      `The rails stand ${byCaliper(soleWidth + 2 * railPlay)} apart, in front, in the middle and at the rear.`,
      `The sole slides from end to end with the card of ${mm(railPlay)} at each side.`,
    ],
    cautions: ['A chisel or knife slips: clamp the work, and cut away from your hands.'],
    needs: ['wood glue', `card ${mm(railPlay)} thick`, 'sharp chisel or knife'],
  };
}

function keepers(own: Tailboard): StepWords {
  const { keeperScrews, keeperWidth, railWidth } = own;
  return {
    step: 'keepers',
    acts: [
      'The keepers lie over the rails, so that the sole cannot be lifted out. Left and right are always meant as you stand behind the camera, the lens away from you.',
      `Lay a strip of card ${mm(CARD)} thick on each rail, dry, and prick the screw holes through it. It gives the sole its play in height.`,
      'Lay T3 on the left rail and T3S on the right one, the scales up, their numbers running along the inner edges.',
      `Countersink the screw holes of T3 and T3S by hand until a screw head lies flush. Then drive the ${2 * keeperScrews.length} wood screws, 3 × ${woodScrew(own)}, into the rails.`,
      'Use no glue here: the keepers must come off when the camera is mended.',
    ],
    checks: [
      `The keepers reach ${byCaliper(keeperWidth - railWidth)} inwards over the sole, along their whole length.`,
      'The sole, slid in from behind, runs under both keepers from end to end.',
    ],
    cautions: ['A screwdriver that slips goes into the hand. Hold the work with a clamp.'],
    needs: ['countersink bit', 'drill bits and a screwdriver for each screw of the list'],
  };
}

const endStop = (own: Tailboard): StepWords => ({
  step: 'rear-in',
  acts: [
    `Screw T5, the end stop, across the rear end of T1U, its marked face down, with the 2 wood screws 3 × ${woodScrew(own)}. Do not glue it: it comes off to let the sole out.`,
  ],
  checks: ['At the far end the sole stops against T5, and not against the knob in its slot.'],
  needs: ['drill bits and a screwdriver for each screw of the list'],
});
