import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper, readWithin } from '../bench-figures.js';
import { CARD } from './parts.js';
import { ABOVE_TAILBOARD, type RearStandard } from './size.js';

export const rearStandardSteps = (own: RearStandard): readonly StepWords[] => [
  sole(own),
  standard(own),
  ribs(own),
  rearIn(own),
  buttons(own),
];

const sole = ({ soleWidth, soleThickness }: RearStandard): StepWords => ({
  step: 'sole',
  acts: [
    'The sole is the plate that slides on the tailboard and carries the rear of the camera. R4L is its lower ply, R4U its upper one.',
    'Lay R4L down, its marked face up, and R4U on it with its lines and names up. The square hole of R4L lies under the round hole of R4U.',
    'Push the feet of R3 and of the two R5 through the slots of both plies, dry. They are pegs here, and hold the plies in line.',
    'Pull the pegs out, spread glue thinly on R4L, lay R4U on, and put the pegs back. Clamp between flat boards beside the pegs.',
    'Pull the pegs out after five minutes, before they stick. Wipe the glue out of the slots, out of the round hole, and off the edges.',
  ],
  checks: [
    `The sole is ${byCaliper(soleWidth)} wide at both ends, ${readWithin(soleWidth)}, and its edges are flush: they run between rails.`,
    `It is ${mm(soleThickness)} thick, and the glue adds 0.1 mm at most.`,
    'A straight edge along and across the underside shows no gap wider than 0.2 mm.',
    'The feet of R3 and R5 go in and out by hand.',
    'The carriage bolt drops in: its head into the round hole of R4U, its neck into the square one of R4L, and not out below. Ease the square hole with a small file.',
  ],
  needs: ['wood glue', 'clamps, 6 or more; masking tape', 'straight edge and ruler, 300 mm or longer', 'small file'],
  borrows: ['R3', 'R5'],
});

const standard = ({ side }: RearStandard): StepWords => ({
  step: 'rear-standard',
  acts: [
    'R3, the rear standard, is the upright plate behind the rear box. Its marked face looks to the rear, and its long end down.',
    'Countersink the four corner holes of R3 now, on its unmarked face, until a screw head lies flush. Once the rear box is on, no tool reaches them.',
    'Put glue on the short fingers of R1L, R1R, R2T and R2F, and into the notches of R3.',
    'Push the box into R3 from the front, R2F towards the long end, until its shoulders bear on R3 all round.',
    'Lay R3 on the flat board, its marked face down on a sheet of plastic film, and weigh the box down. Wipe off the glue inside.',
  ],
  checks: [
    'No head of a screw M4, laid in, stands out of the front face of R3.',
    'No finger stands out of the rear face of R3: lay the straight edge across. What stands out is sanded flush when it has set, for the back will lie there.',
    'The box stands square on R3: hold the try square against the middle of all four walls.',
    `R3 is flat: over its ${byCaliper(side)} the straight edge shows no gap wider than 0.2 mm.`,
  ],
  needs: ['wood glue', 'try square', 'countersink bit', 'plastic film', 'fine sandpaper on a block, 180 and 240'],
});

function ribs({ front, soleFront, side }: RearStandard): StepWords {
  return {
    step: 'ribs',
    acts: [
      'Dry first: push the tabs of the two ribs R5 into the small slots of R3 from the front, their marked faces to the left. Their feet point down, as those of R3 do.',
      'Push the sole, its lines and names up, from below over the feet of R3 and R5. The shorter part of the sole lies behind R3.',
      'Take it apart, glue all tabs, feet and slots, and put it together in the same order. Push until R3 and R5 bear on R4U along their whole length.',
      'Stand the sole on the flat board, on a sheet of plastic film, and clamp R3 upright against a square block. Wipe off the glue above and below the sole.',
    ],
    checks: [
      `From the front edge of the sole to R3 it is ${byCaliper(front - soleFront)}, left and right, within 0.3 mm; the two differ by 0.2 mm at most.`,
      `R3 is square to the sole: over its ${byCaliper(side)} the try square shows no gap wider than 0.2 mm. Press it true while the glue is wet.`,
      `No foot stands out below R4L: they end ${mm(ABOVE_TAILBOARD)} inside it. Nothing but its flat face may slide.`,
      'No tab of R5 stands out of the rear face of R3: lay the straight edge over them and sand them flush, for the back lies there. No glue has run on the edges of the sole.',
    ],
    needs: ['wood glue', 'try square', 'clamps, 6 or more; masking tape', 'square block', 'plastic film'],
  };
}

function rearIn({ boltLength, pushed }: RearStandard): StepWords {
  return {
    step: 'rear-in',
    acts: [
      'Rub wax on the underside and the edges of the sole, and on the rails where it runs. Polish it with a cloth.',
      `Slide the sole from behind between the rails, under the keepers T3 and T3S. The ${pushed} goes into the front box at the same time. Press the felt in with a strip of card where it catches.`,
      `Drop the carriage bolt M6 × ${boltLength} from above through the sole and the long slot. Its square neck goes into the square hole of R4L, its head into the round hole of R4U.`,
      'Put the washer on from below, then the knob.',
    ],
    checks: [
      'The head of the bolt lies in the sole, and nothing of it stands above R4U.',
      'The rear slides from end to end with one hand. It drags evenly, and binds nowhere.',
      'The knob locks it wherever it stands.',
    ],
    needs: ['wax'],
  };
}

function buttons({ buttonScrew, button }: RearStandard): StepWords {
  return {
    step: 'turn-buttons',
    acts: [
      'The turn-buttons are four small arms that hold the back on R3. Draw the slide out, so that you reach the front of R3.',
      `A screw M4 × ${buttonScrew}, put through each corner hole of R3 from the front, keeps the next two in line. Set a disc of card ${mm(CARD)} thick and a disc R7 on the rear face of R3 over it. R7 is round and bears no mark.`,
      'Fix card and R7 with small spots of glue: the card may have to come out again. Hold them down until the glue holds.',
      'Set the back on, its ring in the opening of R3.',
      'Put an R6 on each screw, its marked face on the back and its long arm towards the middle. Screw a lock nut on until the button turns stiffly. Hold the head from the front with a screwdriver bit in a small spanner, for a handle has no room there.',
      'Now finish the outside, if you like, with thin oil or varnish: outside of the front box, underside and edges of the tailboard. Leave bare what slides or bears: R3, B1, sole, rails, keepers and felt.',
    ],
    checks: [
      `Turned in, each arm, ${mm(button.arm)} long, lies over the back with up to ${mm(CARD)} of air: the back may move by that much, and no more. Turned out, it lets the back go.`,
      'Where the back rattles more than that, take the card under that R7 out.',
    ],
    needs: ['wood glue', 'spanner 7 mm', 'screwdriver bit in a small spanner'],
  };
}
