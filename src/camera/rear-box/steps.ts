import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper, diagonal, readWithin } from '../bench-figures.js';
import type { RearBox } from './size.js';

export const rearBoxSteps = (own: RearBox): readonly StepWords[] => [walls(own), felt(own)];

function walls({ outside, clearance, slidesIn }: RearBox): StepWords {
  return {
    step: 'rear-box',
    acts: [
      `The rear box slides in the ${slidesIn}. Every marked face goes inside; the arrows point to the end that will face the lens.`,
      'Lay R3, the rear standard, flat on the board, its marked face down. Its square opening is the gauge for this box; it is glued in the next step.',
      'Dry first: stand R1L, R2T, R2F and R1R on R3, their short fingers in the notches of the opening. R2F, the floor, stands on the side where R3 is longest.',
      'Take the walls off. Put glue on the long finger joints alone, and none within 10 mm of R3. Put them together in this order: R1L, R2T, R2F, R1R.',
      'Stand the box on R3 again, tape its four corners, and clamp it across with scraps of wood.',
      'After five minutes lift it off R3, wipe both, and set it back dry, so that it does not stick.',
    ],
    checks: [
      `Measure both diagonals of the free end, from outside corner to outside corner. Each is ${diagonal(outside, outside)}; the two differ by 0.5 mm at most.`,
      `Outside it is ${byCaliper(outside)} wide and high, at both ends and in the middle, ${readWithin(outside)}.`,
      ...(slidesIn === 'front box'
        ? [
            `When it has set, try it in the front box: it has ${byCaliper(2 * clearance)} of play from side to side and the same up and down, within 0.5 mm. Sand down what is proud.`,
          ]
        : []),
    ],
    needs: ['wood glue', 'straight edge and ruler, 300 mm or longer', 'clamps, 6 or more; masking tape'],
    borrows: ['R3'],
  };
}

function felt({ outside, clearance, felt: thick, feltWidth, bands, front, slidesIn }: RearBox): StepWords {
  const [first, second] = bands.map((z) => byCaliper(z - front));
  return {
    step: 'felt',
    acts: [
      ...(slidesIn === 'front box'
        ? [
            'Before the paint and the felt slide the rear into the camera once, dry, half in and all the way. Nowhere may wood touch wood: ease it now.',
          ]
        : []),
      'Paint the rear box matte black in thin coats, inside and outside, and the edges of the opening in R3. Leave R3 itself, the ribs and the sole bare. Let the paint dry well: the felt goes on dry paint.',
      `Draw two pencil lines, white on the black, round the outside of the box: ${first} and ${second} from its front edge. Each felt band lies behind its line, ${mm(feltWidth)} wide.`,
      `Cut the felt: 4 strips ${byCaliper(outside + 2 * clearance)} long for top and bottom, and 4 strips ${byCaliper(outside)} long for the sides.`,
      'Brush the contact adhesive thinly on the wood, and hardly any on the felt: felt that is soaked sets as hard as wood. Let it dry for as long as its label says, then press on.',
      'Press the side strips on first. Then press on those of top and bottom, which reach out over the ends of the side strips. No slit may stay open at a corner.',
      `Put no felt into the ${slidesIn}: two felts would have to pass each other.`,
    ],
    checks: [
      ...(slidesIn === 'front box'
        ? [
            `Before the felt, the rear half in: the gap between the boxes, felt aside, is ${mm(clearance)} all round, within 0.3 mm. Try strips of card in it.`,
          ]
        : []),
      `The felt is ${mm(thick)} thick before it is pressed; it has to close a gap of ${mm(clearance)}.`,
      'Both bands run round the box without a gap. Look along them against a lamp.',
    ],
    cautions: [
      'Paint and contact adhesive: open the window, no flame, and as the label says.',
      'A sharp knife: cut along the straight edge, away from your fingers.',
    ],
    needs: [
      'matte black',
      'felt, black',
      'contact adhesive',
      'white pencil or chalk',
      'sharp chisel or knife',
      'straight edge and ruler, 300 mm or longer',
    ],
  };
}
