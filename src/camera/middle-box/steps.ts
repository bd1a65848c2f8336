import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper, diagonal, readWithin } from '../bench-figures.js';
import type { MiddleBox } from './size.js';

export const middleBoxSteps = (own: MiddleBox): readonly StepWords[] => [
  walls(own),
  felt(own),
  onTheRear(own),
  blocks(own),
];

const RULER = 'straight edge and ruler, 300 mm or longer';

function walls({ inside, outside, clearance }: MiddleBox): StepWords {
  return {
    step: 'middle-box',
    acts: [
      'The middle box slides in the front box, and the rear box in it. Every marked face goes inside; the arrows point to the end that will face the lens.',
      'Lay C3, its frame, flat on the board, its marked face down: its opening is the gauge. Stand C1L, C2T, C2F and C1R on it dry, their short fingers in its notches. C2F, the floor, stands on the side of the tongue.',
      'Glue the long finger joints and the notches of C3, put the walls together in this order: C1L, C2T, C2F, C1R, and press them home in C3. Tape the four corners and clamp across with scraps of wood.',
      'Check that nothing stands proud of the rear face of C3: the rear standard comes within 2 mm of it.',
      'Before the paint try all three in each other once, dry: the rear box in this one, and this one in the front box. Nowhere may wood touch wood: ease it now.',
      'Then paint the box matte black in thin coats, inside and outside. Let the paint dry well: the felt goes on dry paint.',
    ],
    checks: [
      `Measure both diagonals of the end away from C3, from outside corner to outside corner. Each is ${diagonal(outside, outside)}; the two differ by 0.5 mm at most.`,
      `Inside, the walls stand ${byCaliper(inside)} apart, at both ends, ${readWithin(inside)}.`,
      `Try it in the front box: there is ${byCaliper(2 * clearance)} of play to the sides and as much up and down, within 0.5 mm.`,
    ],
    needs: ['wood glue', 'matte black', 'try square', RULER, 'clamps, 6 or more; masking tape'],
  };
}

function felt({ outside, clearance, felt: thick, feltWidth, bands, front }: MiddleBox): StepWords {
  const [first, second] = bands.map((z) => byCaliper(z - front));
  return {
    step: 'middle-felt',
    acts: [
      `Draw two lines with the white pencil round the outside of the middle box, ${first} and then ${second} behind its front edge. Each felt band lies behind its line, ${mm(feltWidth)} wide.`,
      `Cut the felt: 4 pieces of ${byCaliper(outside + 2 * clearance)} for top and bottom, and 4 pieces of ${byCaliper(outside)} for the sides. Glue them as on the rear box, the side strips first.`,
      'Put no felt inside the middle box: that of the rear box shuts this gap.',
      'Glue the tabs of the two bars C4 into the slots of C3, from the side of the walls. Their hooks point up, at the end away from C3. The bars stay free of the felt.',
    ],
    checks: [
      'Nothing of the bars stands proud of the rear face of C3.',
      `The felt is ${mm(thick)} thick before it is pressed; it has to close a gap of ${mm(clearance)}.`,
    ],
    cautions: ['Contact adhesive: open the window, no flame, and as the label says.'],
    needs: ['wood glue', 'felt, black', 'contact adhesive', 'white pencil or chalk', 'sharp chisel or knife', RULER],
  };
}

function onTheRear({ rearRun }: MiddleBox): StepWords {
  return {
    step: 'middle-on',
    acts: [
      'Push the middle box over the rear box from the front, its bars towards the lens, until its frame C3 stands 2 mm before the rear standard R3.',
      'Glue the two plies of the batten R10 on each other, not on the sole. Lay it across the front end of the sole, its front edge flush with the end, and screw it fast from below: there is no room for a screwdriver above.',
      'Drive the heads below the face of the sole: it slides on the tailboard.',
      'The batten takes the middle box along when the camera is drawn out. To take the boxes apart again, unscrew it.',
    ],
    checks: [
      `Draw the two apart: after ${byCaliper(rearRun)} the batten meets the tongue of C3, over its whole width.`,
      'The tongue does not rub on the sole: a card of 0.5 mm goes under it.',
    ],
    needs: ['wood glue', 'drill bits and a screwdriver for each screw of the list', RULER],
  };
}

function blocks({ ownRun, block: { z } }: MiddleBox): StepWords {
  return {
    step: 'middle-stops',
    acts: [
      'With the slide pushed in, hold the two blocks F14 against the outside of the front box, above the bars, their rear faces 1 mm before its rear edge. Glue one on each side, 1 mm clear of the bar.',
      'Keep the glue off the bars. Draw the camera out when it has set: the hooks meet the blocks and the middle box goes no farther.',
      'To take the boxes out, bend the two bars outwards with a finger, past the blocks, and draw.',
    ],
    checks: [
      `From the panel to the front face of each block it is ${byCaliper(z)}, within 0.5 mm.`,
      `Held back by hand, the middle box comes out of the front box by ${byCaliper(ownRun)} and no more.`,
    ],
    needs: ['wood glue', RULER],
  };
}
