import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import type { MountedLens } from './size.js';

export const lensSteps = (own: MountedLens): readonly StepWords[] => [
  {
    step: 'lens',
    acts: fixing(own),
    checks: [
      own.by === 'clamp'
        ? 'Before you tighten: the front rim of the lens stands equally far out of F6 at four places, within 0.1 mm. Then its shoulder bears all round.'
        : 'The lens sits on its seat all round: a strip of thin paper goes in nowhere.',
      'It does not turn or shift by hand, and its stops still move.',
    ],
    fixings:
      own.by === 'flange' && own.flange ? [{ count: own.flange.screws, name: 'countersunk wood screw 3 × 10' }] : [],
    needs: own.by === 'flange' ? ['drill bits and a screwdriver for each screw of the list'] : [],
    cautions: [
      'Work over a soft cloth, with the caps on. Keep tools and screws away from the glass.',
      'Taking a lens out of an old machine: pull the plug first, and leave flash units and their capacitors shut. They stay charged for a long time.',
      'Some old glass is slightly radioactive. Looking through it does no harm; never grind or sand it.',
    ],
  },
];

function fixing({ by, side, flange, barrel }: MountedLens): readonly string[] {
  const inside = side === 'inside';
  const turn = 'Turn the lens so that its scale of stops is read from above, if it has one.';
  if (by === 'clamp')
    return [
      inside
        ? 'Put the lens in from the front, through F6 and F7, until its shoulder bears on the clamp. The shoulder is the step where the wide front part ends.'
        : 'Put the lens into the collar of the clamp from the front, until its shoulder bears on the collar. The shoulder is the step where the wide front part ends.',
      turn,
      'Put the two pinch bolts into the lugs, and tighten them in turn, until the lens no longer turns by hand. More does not help: the print would creep.',
    ];
  if (by === 'flange') {
    const wood = inside ? 'the rear face of F7' : 'the front face of F6';
    return [
      `Lay the flange of the lens on ${wood}, its holes over the small holes in the wood.`,
      `Drive its ${flange?.screws ?? 0} wood screws in by hand, crosswise. Stop as soon as they sit: in plywood a thread strips easily.`,
      inside
        ? 'Screw the lens into its flange. Its front looks out through the hole of F6.'
        : 'Screw the lens into its flange from the front.',
      'If its scale of stops is not read from above then, the flange may be turned on by one hole.',
    ];
  }
  const [from, shoulder, ring] = inside
    ? ['from behind', 'the rear face of F7', 'in front, against F6']
    : ['from the front', 'the front face of F6', 'from behind, against F7'];
  return [
    `Put the lens in ${from}, until its shoulder bears on ${shoulder}. Its thread, ${mm(inside ? barrel.frontDiameter : barrel.diameter)} across, passes through the hole.`,
    turn,
    `Screw the retaining ring on ${ring}. Tighten it by hand, or with a wooden stick in its slots.`,
  ];
}
