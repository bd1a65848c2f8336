import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper, readWithin } from '../bench-figures.js';
import { BESIDE_BOARD, CARD, CORNER_GAP, retainerScrew } from './parts.js';
import type { LensBoard } from './size.js';

export const lensBoardSteps = (own: LensBoard): readonly StepWords[] => [board(own), packing(own), boardIn(own)];

function board(own: LensBoard): StepWords {
  const { board: side, plug, opening, dowels, by, screws, wood } = own;
  const bearing = { clamp: 'the clamp of the lens', flange: 'the flange of the lens', ring: 'the lens or its ring' }[
    by
  ];
  const onPlug = own.side === 'inside' || by === 'ring';
  return {
    step: 'lens-board',
    acts: [
      'F6 is the lens board, which comes off with the lens on it. F7 is its plug, which fills the opening of F1. Their marked faces meet.',
      dowels.length > 0
        ? `Try it dry first. Then push the dowels, ${dowels.map(({ diameter }) => mm(diameter)).join(' and ')} thick, with a touch of glue, through F6 and F7. The holes meet in one way only.`
        : 'Dry first: lay F7 on F6 so that the holes for the screws of the clamp meet, and put four of these screws through. They hold the two in line.',
      `Glue F7 on F6, and clamp between flat boards. Wipe the glue out of the round hole in the middle${screws.places.length > 0 ? ' and out of the screw holes' : ''}.`,
      dowels.length > 0
        ? `When the glue has set, pare the dowels flush on both sides: ${byCaliper(2 * wood.ply.thickness)} is all that stays of them.`
        : 'Take the screws out before the glue sets.',
      `Paint the wall of the hole and the rear face of F7 matte black. Leave F6 bare${onPlug ? `, and F7 where ${bearing} will bear on it: lay that on it, hole over hole, draw round it, and paint outside the line only` : ''}.`,
    ],
    checks: [
      `F6 stands ${byCaliper((side - plug) / 2)} over F7 on all four sides; the four differ by 0.2 mm at most.`,
      `The plug goes into the opening of F1 by hand, with ${byCaliper((opening - plug) / 2)} of play on each side.`,
    ],
    needs: ['wood glue', 'clamps, 6 or more; masking tape', 'matte black', 'sharp chisel or knife'],
  };
}

function packing({ board: side, wood }: LensBoard): StepWords {
  return {
    step: 'retainer-packing',
    acts: [
      'Set the lens board (F6, F7) into F1 from the front, dry. Its cut corner is above, on the right as seen from behind.',
      `Glue the small corner block F10 on F1 into that corner, ${mm(CORNER_GAP)} from the board: a doubled strip of thin card keeps it away. It makes sure that the board goes in one way up.`,
      `Glue a strip of card ${mm(CARD)} thick on the rear face of both F8, the marked one. Cut two dowels of 5 mm to ${byCaliper(2 * wood.ply.thickness)}, not longer. Glue one into the round hole of each F8, down on the card; the half that stands out is a guide.`,
      'Set a nut M4 with epoxy into the six-sided hole of each F8, down on the card. Keep its thread clean. The epoxy is what holds the nut when the thumb screw pulls.',
      `Glue the F8 with their card upright on F1, to the left and right of the board, ends flush with it and ${mm(BESIDE_BOARD)} beside it: a strip of card that thick on each side is the gauge. Put a clamp over each, through the opening of F1. On the right, as seen from behind, the nut is above; on the left it is below.`,
      'Take the board out before the glue sets. Wipe off what has run into its place.',
    ],
    checks: [
      `The F8 stand ${byCaliper(side + 2 * BESIDE_BOARD)} apart, above and below, ${readWithin(side + 2 * BESIDE_BOARD)}.`,
      `Laid in, the board lies ${mm(CARD)} deeper than the front of the F8, so that nothing pinches it: that is its play.`,
      'The board drops in and out by hand, and does not go in upside down.',
    ],
    cautions: [
      'Epoxy: gloves, open window, and as its label says. Let it harden until the next day before anything pulls at the nuts.',
    ],
    needs: ['wood glue', 'epoxy', 'card 0.2 mm thick', `card ${mm(BESIDE_BOARD)} thick`, 'fine saw'],
  };
}

const boardIn = ({ overlap, draw, wood }: LensBoard): StepWords => ({
  step: 'board-in',
  acts: [
    'Put the caps on the lens, or tie a clean cloth over both ends.',
    'Set the lens board into F1 from the front, its cut corner at F10. Hold it there.',
    'Lay a retainer F9 on each F8: the wider long hole over the guide dowel, the narrower one over the nut, the marked face to the wood.',
    `Put the thumb screws in${underHead(retainerScrew(wood).washers)}, push both F9 inwards over the board, and tighten with two fingers. Hard tightening pulls the nuts out.`,
  ],
  checks: [
    `Each F9 reaches ${mm(overlap)} over the board, along its whole length, within 0.5 mm.`,
    `With loose screws each F9 can be drawn back by ${mm(draw)} or more, and the board comes out with the lens on it.`,
    `Tilt the camera forward, a hand under the lens: the board moves by ${mm(CARD)} at most. Where it rattles more, stick a strip of card ${mm(CARD)} thick under each F9, where it reaches over the board. Tighter screws do not help.`,
  ],
  cautions: ['Keep a hand under the lens until both retainers hold it.'],
});

/** What lies under the head of each thumb screw. */
function underHead(washers: number): string {
  if (washers === 0) return '';
  return washers === 1 ? ', each with a washer under its head' : `, each with ${washers} washers under its head`;
}
