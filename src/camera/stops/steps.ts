import type { StepWords } from '../../model/build-step.js';
import { fNumber, mm } from '../../units/print.js';
import { byCaliper, inARow } from '../bench-figures.js';
import type { Stops } from './size.js';

export const stopsSteps = (own: Stops): readonly StepWords[] => [wallet(own), plates(own)];

const wallet = ({ wallet: { layers } }: Stops): StepWords => ({
  step: 'stop-wallet',
  acts: [
    `Glue the ${layers} rims WW1 one on the other, edges flush, with as little glue as holds: none may creep into the pocket.`,
    'Glue the velvet on the marked side of the cover WW2, near its upper edge, pile out. Glue WW2 on the rims, the velvet in the pocket.',
    'Sand F2R bare outside, as high as the lens, in the middle between F1 and the rear edge. Glue the wallet on there, open end up.',
  ],
  checks: ['A stop goes in with a little drag, and does not fall out with the wallet upside down.'],
  needs: ['wood glue', 'clamps, 6 or more; masking tape', 'black velvet'],
});

function plates({ board, stops, marked, fullAperture, width }: Stops): StepWords {
  const [widest] = stops;
  return {
    step: 'stops',
    acts: [
      `${inARow(stops.map(({ id, mark }) => `${id} is ${fNumber(mark)}`))}. The number stands on the tab.`,
      'Blacken every cut edge with a felt pen, those of the holes above all.',
      'Push the stops into their wallet, the widest next to F2R: then all numbers are seen.',
    ],
    checks: [
      ...(widest
        ? [
            `The hole of ${widest.id} is ${byCaliper(widest.hole)} wide, within 0.05 mm. The hole of the lens at ${fNumber(marked)} was taken as ${byCaliper(fullAperture)}.`,
          ]
        : []),
      `Each stop, ${mm(width)} wide, goes into the slot of the lens until its round end lies on the floor. Seen from the front the hole then stands in the middle.`,
    ],
    cautions: [
      `The stops and the rims of their wallet are cut from black board of ${byCaliper(board.thickness)}: card or fibre only. Vinyl and unknown plastics give off gas that eats lungs and laser.`,
    ],
    needs: ['black felt pen', 'caliper that reads 0.05 mm or better'],
  };
}
