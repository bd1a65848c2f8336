import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper } from '../bench-figures.js';
import { type AccessoryFrame, LENS_AIR, RAIL_CARD } from './size.js';

export const accessoryFrameSteps = (own: AccessoryFrame): readonly StepWords[] => {
  const { rings, channel, plate: rail, peg, outside, opening, board, front } = own;
  return [
    {
      step: 'accessory-frame',
      acts: [
        `Clamp two straight strips of wood to the bench, square to each other: a corner to push the stack into, so that its edges come flush. All its layers are ${mm(outside)} square.`,
        rings === 1
          ? 'Lay A1 into the corner.'
          : `Glue the ${rings} rings A1 one on another${peg && !channel ? ', their small holes over each other' : ''}.`,
        ...(channel
          ? [
              `Glue the two A2 on them, both with the open end to the same side: that is above. On them comes card, drawn round A2 and cut, ${mm(Math.round(channel.card * 100) / 100)} thick in all, and on that A3${peg ? ', its small hole at the open end' : ''}.`,
              'Wipe the glue out of the channel with a strip of card before it sets.',
            ]
          : []),
        ...(rail
          ? [
              `Draw round the two A4 on card of ${mm(RAIL_CARD)}, cut it, and glue it on them. Glue them upright on the front, left and right, flush outside, their feet below and inwards${peg ? ', the small hole above' : ''}. A strip of wood ${mm(Math.round(10 * (rail.width + RAIL_CARD)) / 10)} wide between them is the gauge.`,
              'Glue a lip A5 on each A4, flush outside.',
            ]
          : []),
        'Paint the walls of the opening matte black. Leave the rear bare, and the front where a plate will rest on it.',
      ],
      checks: [
        `The frame is ${byCaliper(board - front)} deep without its rails, at all four corners, within 0.3 mm.`,
        ...(channel ? [`The channel is ${byCaliper(channel.rear - channel.front)} deep at both ends.`] : []),
        ...(rail ? ['A piece of the sheet slides down behind the lips by its own weight.'] : []),
      ],
      needs: ['wood glue', 'clamps, 6 or more; masking tape', 'matte black'],
    },
    {
      step: 'frame-on',
      acts: [
        'Put the caps on the lens. Lay the board on its back, over the edge of the bench, so that the lens hangs free.',
        'Glue the rear A1 of the frame on the front of F6, above where the cut corner of F6 is. Its sides lie along those of F6, its opening equally far from the lens on all four sides.',
        'Lay books on it and let it set overnight. What comes out inside is wiped off with a stick, before it reaches the lens.',
      ],
      checks: [
        `The frame stands ${mm(LENS_AIR)} or more ahead of the lens, and the opening is ${byCaliper(opening)} wide.`,
        'The lens goes out to the front, past the frame, as it is held: out of its clamp or flange, or with its clamp.',
      ],
      cautions: ['Glue on glass stays: keep the caps on.'],
      needs: ['wood glue'],
    },
  ];
};
