import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper, diagonal, readWithin } from '../bench-figures.js';
import { type FrontBox, STRIP } from './size.js';

export const frontBoxSteps = (own: FrontBox): readonly StepWords[] => [walls(own), top(own), strips(own), legs(own)];

function walls({ wood, inside, outside, length }: FrontBox): StepWords {
  return {
    step: 'front-box',
    acts: [
      'The front box carries the lens. Every marked face goes inside. An arrow with U points up, one with L towards the panel F1, where the lens comes.',
      'Dry first: push the tabs of F4, the floor, into the slots of F2L, the left side. Add F2R on the right, then the front panel F1 over fingers and tabs. Lay F3, the top, on as a gauge.',
      'The long ends of F1, F2L and F2R all point the same way, down: they are the legs of the box.',
      'Everything must go together by hand. Where it sticks, take a little off the tab with sandpaper, never off the slot.',
      'Take it apart. Put glue on tabs, fingers and slots, not on the joints with F3. Put it together in the same order: F2L, F4, F2R, F1.',
      'Set F3 on dry; it holds the top square. Clamp across the sides, and from F1 to the rear edges, with scraps of wood under the clamps.',
      'Wipe off all glue inside. Lift F3 a little after five minutes, so that it does not stick, and leave it on dry until the joints hold.',
    ],
    checks: [
      `Measure both diagonals of the top, from outside corner to outside corner, across F1 and the two sides. Each is ${diagonal(outside, length + wood.ply.thickness)}; the two differ by 0.5 mm at most.`,
      `The sides stand ${byCaliper(inside)} apart inside, in front, at the rear, at the floor and at the top, ${readWithin(inside)}.`,
      'A try square stands in the corners of F1 with F2L, F2R and F4 without showing light.',
      'Stood on its legs on the flat board, the box does not rock.',
    ],
    needs: ['wood glue', 'try square', 'straight edge and ruler, 300 mm or longer', 'clamps, 6 or more; masking tape'],
    borrows: ['F3'],
  };
}

const top = ({ inside }: FrontBox): StepWords => ({
  step: 'front-box-top',
  acts: [
    'Glue F3 on from above, its marked face down and its arrow towards F1.',
    'Press it home along all three edges. Tape it, or clamp it with a board across.',
    'Wipe off the glue inside, above all in the rear half: the rear box slides there.',
  ],
  checks: [
    `Measure both diagonals of the open rear end, from inside corner to inside corner. Each is ${diagonal(inside, inside)}; the two differ by 0.5 mm at most.`,
    `Inside, floor and top stand ${byCaliper(inside)} apart, left and right, ${readWithin(inside)}.`,
  ],
  needs: ['wood glue', 'straight edge and ruler, 300 mm or longer', 'clamps, 6 or more; masking tape'],
});

function strips({ inside }: FrontBox): StepWords {
  return {
    step: 'corner-strips',
    acts: [
      'Glue the four F5 flat on the rear face of F1, each with its long edge against a wall: left, right, above and below. They shut the corners against light.',
      `Each strip ends ${mm(STRIP)} short of the next wall, at both ends. Press them down with a stick until the glue holds.`,
      'Look along every joint from inside, with a lamp outside. Where light shows, run in a little glue with a splinter of wood.',
      'When the glue has set, paint all inside faces matte black in thin coats: F1, F2L, F2R, F3, F4 and the strips. Paint the edges of the opening in F1 too, but thinly: the plug must go in there.',
      'Leave bare: the outside, which is finished when all stands, the front face of F1, and the ends of the legs that will be glued.',
    ],
    checks: [
      `The strips leave a square of ${byCaliper(inside - 2 * STRIP)} clear between them, ${readWithin(inside - 2 * STRIP)}.`,
      'Held flat against a lamp, no painted face shines. A second thin coat helps; a thick one narrows the box.',
    ],
    cautions: ['Paint where air moves, and as its label says.'],
    needs: ['wood glue', 'matte black', 'lamp', 'brush for the paint, cloth for the glue'],
  };
}

function legs({ axisHeight, opening }: FrontBox): StepWords {
  return {
    step: 'legs',
    acts: [
      'Lay the tailboard on two battens higher than T4 is thick, one along each side.',
      'Dry first: stand the box on the tailboard, F1 at the end with the row of slots across. Its legs stand outside the rails, and their tenons go down into the slots of T1U.',
      'Lift it off. Put glue on the tenons and into the slots, none on the rails.',
      'Push the box straight down until F1, F2L and F2R bear on T1U along their whole length.',
      'Weigh it down with some heavy books on F3, or clamp it. Wipe the glue away between leg and rail.',
    ],
    checks: [
      'F1 stands square to the tailboard, and so do F2L and F2R: hold the try square in the middle of each.',
      `From T1U up to the lower edge of the opening in F1 it is ${byCaliper(axisHeight - opening / 2)}, left and right, within 0.5 mm; the two differ by 0.5 mm at most.`,
      'The sole slides under the floor F4 from end to end, and touches no leg.',
    ],
    needs: ['wood glue', 'try square'],
  };
}
