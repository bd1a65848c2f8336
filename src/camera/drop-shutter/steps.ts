import type { StepWords } from '../../model/build-step.js';
import { exposureTime, mm, plainNumber } from '../../units/print.js';
import { byCaliper } from '../bench-figures.js';
import { CARRIER_CARD, type PlacedShutter } from './parts.js';
import { FELT } from './size.js';

export const dropShutterSteps = ({ shutter }: PlacedShutter): readonly StepWords[] => {
  const { wood, plate, betweenLips, openings, guide, slide, timeSlide, peg, elastic, figures } = shutter;
  const slip = wood.fits.slide;
  return [
    {
      step: 'shutter',
      acts: [
        'Paint the inner faces of D3 and D9 and all walls of holes matte black, the strips where the slide runs left out. Let it dry: fresh paint holds the slide.',
        `Draw round D2 on card, two layers of ${mm(CARRIER_CARD)}, and cut them. Glue them, and on them D2, on the front of D1: hole over hole, upper edges flush, ${byCaliper(plate.width / 2 - betweenLips)} free on the left and right.`,
        'Glue D3 on D2, its small hole below, hole over hole and the upper edges flush.',
        `Glue the two strips D8 on D3, flush with its sides, and strips of card of ${mm(slip)} as wide on them. Wipe the glue out of the corners where the slide runs.`,
        'Glue D9 on the strips, upper edges and sides flush. A dowel through the small holes of D3 and D9 keeps them in line.',
        `Glue a strip of felt ${mm(FELT)} thick, as wide as the edge, on the upper edge of D9.`,
        'Rub candle wax or graphite on the inner faces and on the strips.',
      ],
      checks: [
        'D1 slides down behind the lips of the accessory frame by its own weight, and stands on the feet of the rails.',
        `Between the strips it is ${byCaliper(2 * slide.half + slip)} wide, above and below.`,
      ],
      needs: ['wood glue', 'clamps, 6 or more; masking tape', 'matte black', 'wax'],
    },
    {
      step: 'shutter-slides',
      acts: [
        `D4 is the slide of the shutter: its slot is ${byCaliper(slide.slot)} high. D5, with the large opening, is for focusing and for times by hand. Paint both matte black, thinly, edges too.`,
        'Glue the bar D6 across the front of D4, and D7 across that of D5, upper edges flush. They lie square to the slide, as far out on the left as on the right.',
        `Glue a dowel ${mm(peg.diameter)} thick into the hole of the knob D10, flush with its front. That is the peg. Sand it until it turns in its holes by hand.`,
        'Wax the edges and faces of both slides.',
      ],
      checks: [
        'Each slide falls through the guide by its own weight, from any height, and does not touch on its way.',
        'Held against a lamp, neither blind of D4 lets light through.',
      ],
      needs: ['wood glue', 'matte black', 'wax', 'fine sandpaper on a block, 180 and 240'],
    },
    {
      step: 'front-on',
      acts: [
        'Let D1 of the shutter down behind the lips of the rails, until it stands on their feet. To set the stops of the lens, or to clean it, take the shutter off again.',
        'To focus: put the peg in, and let D5 down into the guide until it stands on the peg. It is open. With the peg out it falls shut; a time by hand is made by lifting it.',
        'To expose: with the dark slide still in, change D5 for D4. Lift it, put the peg in below it, and let it down on the peg: that is cocked, and shut.',
        'Draw the dark slide, let the camera come to rest, and pull the peg straight out towards the front. When the slide has fallen it is shut: put the dark slide in before you lift it.',
        ...(elastic
          ? [
              'Hang the elastic on both ears of the bar D6, and then on those of D9 below, with the slide cocked. Take it off before you carry the camera.',
            ]
          : []),
        `With the lens wide open it exposes ${exposureTime(figures.effective)}. A subject that moves is blurred for ${plainNumber(1000 * figures.open, 0)} ms: expose by the first figure, and mind the second.`,
      ],
      checks: [
        `The slide falls ${byCaliper(slide.fall)} and hangs far below the guide: nothing may stand there. On a table the front of the camera must overhang its edge.`,
        `D5 shuts when it is let down by ${byCaliper(timeSlide.fall)}: its bar then lies on the felt.`,
        `The top of the guide stands level, within 1 mm over ${mm(Math.round(2 * guide.half))}: a slide that leans rubs.`,
        `Cocked, with a lamp before it and the back off, no light is seen round the opening of ${byCaliper(openings.back)}.`,
      ],
      cautions: [
        'Keep fingers out of the slot while the slide is cocked.',
        ...(elastic
          ? [
              'Stretched elastic hits the eye when it slips: keep your face to one side, and wear glasses while you hang it on.',
            ]
          : []),
      ],
    },
  ];
};
