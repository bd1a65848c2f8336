import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper, readWithin } from '../bench-figures.js';
import { CARD, RAIL_DOWELS, woodScrew } from './parts.js';
import type { Tailboard } from './size.js';

export const tailboardSteps = (own: Tailboard): readonly StepWords[] => [
  tripodNut(own),
  upperPly(own),
  rails(own),
  keepers(own),
  endStop(own),
];

const BATTENS = 'two battens, higher than the tripod doubler is thick';

/** T4 stands out of the middle of the underside. */
const onBattens = ({ doubler, wood }: Tailboard): string =>
  `T4 stands ${byCaliper(doubler.plies * wood.ply.thickness)} out of the underside: lay the tailboard on two battens higher than that, one along each side.`;

function tripodNut({ thread, doubler, wood }: Tailboard): StepWords {
  return {
    step: 'tripod-nut',
    acts: [
      'Wipe the soot off all cut edges with a damp cloth, here and in every step. Let the parts dry before you glue them. The marked face of a part is the one with its number engraved.',
      'Lay T1L on the flat board, its marked face down. It is the lower ply of the tailboard, the base plate of the camera.',
      `Glue the ${doubler.plies} pieces of T4 on each other and on T1L, hole over hole, their edges along its edges. They thicken the base where the tripod is screwed in.`,
      'The tripod nut is the peg while you clamp: push its barrel from above through T4 into T1L, so that the holes come in line.',
      'Clamp T4 down at its edges with scraps of wood, beside the flange. Pull the nut out again at once and wipe it: no glue may reach the thread.',
      'Let the glue set as long as its label says, in the clamps for an hour at least, and put no load on it until the next day. That holds for every step.',
      'Turn the piece over. Put the nut in from the marked side of T1L, where it belongs.',
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
    'Lay T1U on the flat board, its marked face up, and T1L on it, the flange down in the round hole, T4 on top. Bring all edges flush.',
    'Press with two boards, one in front of T4 and one behind it, and clamp over these. T4 itself stands free between them.',
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

function rails(own: Tailboard): StepWords {
  const { soleWidth, railPlay } = own;
  const { front, rear } = RAIL_DOWELS;
  const apart = soleWidth + 2 * railPlay;
  return {
    step: 'rails',
    acts: [
      `The rails are the two tracks between which the sole will run. Each is two pieces of T2 on each other. All four are alike. The end with the hole of ${mm(front)} is the front one, the end with the hole of ${mm(rear)} the rear one.`,
      onBattens(own),
      `Dry first: lay two T2 at each side of T1U, marked faces up, their round holes over those of T1U. Push a dowel ${mm(front)} thick through each pair in front, and one ${mm(rear)} thick at the rear.`,
      `Lay the sole (R4L, R4U) between the rails as a gauge, with a strip of card ${mm(railPlay)} thick at each side. It must slide from end to end, and not shake.`,
      'Take the T2 off again. Glue them on T1U and on each other, thinly towards the inner edge. Put the dowels back in with a touch of glue, and clamp.',
      'Slide the sole through once more while the glue is wet. Pull it out, and wipe the inner edges of the rails.',
      'When the glue has set, pare the dowels flush with the upper T2.',
    ],
    checks: [
      `The rails stand ${byCaliper(apart)} apart, in front, in the middle and at the rear, ${readWithin(apart)}.`,
      'The front ends of the rails are flush with the rear edge of the row of slots across T1U. No rail lies over a slot: the panel of the front box goes in there.',
      `The sole slides from end to end with the card of ${mm(railPlay)} at each side.`,
    ],
    cautions: ['A chisel or knife slips: clamp the work, and cut away from your hands.'],
    needs: ['wood glue', `card ${mm(railPlay)} thick`, 'sharp chisel or knife', 'fine saw', BATTENS],
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
      'Use no glue here: the keepers come off when they are worn. The sole comes out without that, behind. Once the front box stands over them, the foremost screws take an angled screwdriver.',
    ],
    checks: [
      `The keepers reach ${byCaliper(keeperWidth - railWidth)} inwards over the sole, along their whole length, within 0.5 mm.`,
      'The sole, slid in from behind, runs under both keepers from end to end.',
    ],
    cautions: ['A screwdriver that slips goes into the hand. Hold the work with a clamp.'],
    needs: ['countersink bit', 'drill bits and a screwdriver for each screw of the list', BATTENS],
  };
}

const endStop = (own: Tailboard): StepWords => ({
  step: 'end-stop',
  acts: [
    'Countersink the two holes of T5, the end stop, on its unmarked face. Lay it across the rear end of T1U, its marked face down.',
    `Drill 1.5 mm wide through its holes, ${woodScrew(own) - 1} mm deep from the top of T5, no deeper. Screw it on with the 2 wood screws 3 × ${woodScrew(own)}. Do not glue it: it comes off to let the sole out.`,
  ],
  checks: ['At the far end the sole stops against T5, and not against the knob in its slot.'],
  needs: [
    'drill bits and a screwdriver for each screw of the list',
    'countersink bit',
    'tape to mark the drill’s depth',
  ],
});
