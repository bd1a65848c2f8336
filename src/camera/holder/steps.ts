import type { StepWords } from '../../model/build-step.js';
import type { HeldHolder } from './size.js';

export const holderSteps = ({ name, on }: HeldHolder): readonly StepWords[] => [
  {
    step: 'glass-in',
    acts: [
      `Try the ${name} in the well: glass out, holder in${on === 'B1' ? '' : ' on its spacer'}, its dark slide towards the lens, its open end at the low fence.`,
    ],
    checks: [`The ${name} lies flat, and its dark slide comes out and goes in freely over the low fence.`],
  },
];
