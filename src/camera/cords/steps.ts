import type { StepWords } from '../../model/build-step.js';

export const cordSteps = (): readonly StepWords[] => [
  {
    step: 'glass-in',
    acts: [
      'Knot a loop into both ends of each elastic cord. Hook one loop in on the left, lay the cord across glass or holder, and hook it in on the right. Do the same with the second.',
      'Move the knots until each cord presses about as hard as a litre of water weighs.',
    ],
    checks: ['Held face down over a soft cloth, nothing in the well moves.'],
    cautions: ['A stretched cord hits the eye when it slips: keep your face away, and let go of it only on its hook.'],
  },
];
