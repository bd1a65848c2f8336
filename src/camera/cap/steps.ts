import type { StepWords } from '../../model/build-step.js';
import { mm, tenth } from '../../units/print.js';
import { byCaliper } from '../bench-figures.js';
import type { PlacedCap } from './parts.js';

export const capSteps = ({ cap, restsOn }: PlacedCap): readonly StepWords[] => {
  const { wood, plate, grip, peg } = cap;
  return [
    {
      step: 'cap',
      acts: [
        `Glue LC2 across the front of LC1, upper edges and sides flush: that is its grip, ${byCaliper(grip.top - grip.bottom)} high.`,
        `Glue a dowel ${mm(tenth(peg.diameter))} thick and ${byCaliper(3 * wood.ply.thickness)} long into the hole of the knob LC3, flush with its front. That is the peg. Sand it until it goes into the hole of LC1 by hand.`,
        'Paint the rear of LC1 and all of its edges matte black, thinly: fresh paint sticks to the ring.',
        'Tie the peg to the grip with a length of thread, so that it is not lost.',
      ],
      checks: [
        `LC1 is ${byCaliper(plate.width)} wide. It slides down behind the lips of the accessory frame by its own weight.`,
      ],
      needs: ['wood glue', 'clamps, 6 or more; masking tape', 'matte black', 'fine sandpaper on a block, 180 and 240'],
    },
    {
      step: 'front-on',
      acts: [
        `Let LC1 down behind the lips of the rails, until it stands on their feet. For the road push its peg through it into ${restsOn}: with the peg in it stays on whatever way up the camera is carried.`,
        'To expose by the cap: peg out, cap on, draw the dark slide. Lift the cap straight up out of the rails, wait, let it down again, and put the dark slide in.',
      ],
      checks: [
        'With the cap on, the back off and a lamp before it, no light is seen round it in a dark room.',
        'Held head down with the peg in, the camera keeps its cap.',
      ],
    },
  ];
};
