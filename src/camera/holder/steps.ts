import type { StepWords } from '../../model/build-step.js';
import type { HeldHolder } from './size.js';

export const holderSteps = ({ name, on, pinHoles }: HeldHolder): readonly StepWords[] => [
  {
    step: 'glass-in',
    acts: [
      pinHoles.length > 0
        ? `The ${name} needs holes for the pins that it lies on. Bore them by the template at the end of the book, as deep as the pins stand out and a little more, before it is tried.`
        : `The ${name} has no holes for the seat pins: take out the glass, pull the pins out of B1, and push them in again for the glass.`,
      `Try the ${name} in the well: glass out, holder in${on === 'B1' ? '' : ' on its spacer'}, its dark slide towards the lens, its open end at the low fence.`,
    ],
    checks: [`The ${name} lies flat, and its dark slide comes out and goes in freely over the low fence.`],
  },
];
