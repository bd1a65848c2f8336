import type { StepWords } from '../../model/build-step.js';
import { byCaliper } from '../bench-figures.js';
import type { Handle } from './size.js';

export const handleSteps = ({ along, middle, plate, innerPlies, screw }: Handle): readonly StepWords[] => [
  {
    step: 'handle',
    acts: [
      `Glue the ${innerPlies} F12 to each other, marked faces all to one side, edges flush. Their slots must be in one line: put a drill bit through each as a gauge.`,
      'Scrape the glue out of slots and pockets before it sets.',
      'Lay a washer and a nut into each pocket, the washer towards the foot. Wax their threads first, or glue closes them.',
      'Glue an F13 on each side, marked face inwards. Leave 5 mm round the pockets without glue.',
      'When it has set, round the edges of the bar and of the finger hole with file and sandpaper, as far as a hand asks for it.',
      'Countersink the two holes of F11 on its marked face, until the heads lie a hair below the wood.',
      'Put glue on the foot of the handle, set it on the unmarked face of F11, and drive both screws from below into the nuts, in turn.',
    ],
    checks: [
      `Before the second F13, a screw M4 × ${screw.length} goes up each slot and turns in its nut by hand.`,
      'The foot is flat before it is glued: no light shows under a straight edge. A ruler laid over the heads in F11 does not rock.',
    ],
    cautions: ['Wear a dust mask when you sand.'],
    needs: [
      'wood glue',
      'clamps, 6 or more; masking tape',
      'small file',
      'straight edge and ruler, 300 mm or longer',
      'drill bits and a screwdriver for each screw of the list',
    ],
  },
  {
    step: 'handle-on',
    acts: [
      `Sand F3 bare where F11 will lie, and glue F11 on, its marked face down, from side to side in the middle${along === 'z' ? ', the handle from front to rear' : ''}. Clamp it, or weigh it down at both ends of the plate.`,
    ],
    checks: [
      `The front edge of F11 lies ${byCaliper(middle - (along === 'z' ? plate.length : plate.width) / 2)} behind the inner face of F1, within 1 mm: the handle is then over the middle of the weight.`,
      'After a day, lift the camera a hand’s breadth over a soft cloth and jerk it. Nothing creaks.',
    ],
    cautions: ['Wear a dust mask when you sand.'],
    needs: ['wood glue', 'clamps, 6 or more; masking tape', 'straight edge and ruler, 300 mm or longer'],
  },
];
