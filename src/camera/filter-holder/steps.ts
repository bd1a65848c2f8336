import type { StepWords } from '../../model/build-step.js';
import { mm, plainNumber } from '../../units/print.js';
import { byCaliper } from '../bench-figures.js';
import type { FilterHolder } from './size.js';

export const filterHolderSteps = ({ card, gels, gel, opening, pocket }: FilterHolder): readonly StepWords[] => [
  {
    step: 'filter-holder',
    acts: [
      'Paint the inner faces of FH1 and FH2 black round their holes, and the walls of the holes.',
      `Draw round FH1 on card of ${plainNumber(card, 2)} mm in all. Cut out of it the room for the gels, ${byCaliper(2 * pocket)} high, level with the hole, from the right edge to ${byCaliper(pocket)} beyond the middle. Glue it on FH1: left and right are as seen from behind.`,
      'Glue FH2 on it, edges flush and hole over hole. No glue may run into the room of the gels.',
      'Glue one cheek FH3 on the rear and one on the front, their upper edges flush with those of FH1 and FH2, the ends equally far out. They are the handle.',
    ],
    checks: [
      `A gel of ${mm(gel)} goes in from the right, into room ${byCaliper(2 * pocket)} high, and lies over the hole of ${byCaliper(opening)} all round.`,
      'The lower edges of both cheeks lie level, within 0.3 mm: the holder hangs on them.',
    ],
    needs: ['wood glue', 'clamps, 6 or more; masking tape', 'matte black'],
  },
  {
    step: 'front-on',
    acts: [
      'Push the filter holder into its channel from above, until the cheeks FH3 of its handle rest on the rings.',
      `For use: at most ${gels} ${gels === 1 ? 'gel' : 'gels'} at once, each with a tab of tape at its right edge, on which its name stands. Without gels the holder stays in: its handle keeps daylight out of the slot.`,
    ],
    checks: ['It comes out with two fingers, and does not fall out when the camera is tilted forward.'],
  },
];
