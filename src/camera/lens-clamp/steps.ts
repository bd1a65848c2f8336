import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import type { FittedClamp } from './parts.js';

export function lensClampSteps({ clamp }: FittedClamp): readonly StepWords[] {
  const { side, bore, fasteners, screwAngles } = clamp;
  const inside = side === 'inside';
  const screws = `${screwAngles.length} screws M4 × ${fasteners.flangeScrews.length}`;
  const [bearsOn, headsIn] = inside
    ? ['the rear face of F7', 'the front of F6']
    : ['the front face of F6', 'the rear of F7'];
  return [
    {
      step: 'lens',
      acts: [
        `Try the lens in the printed clamp (lens-clamp), without its pinch bolts: the bore is ${mm(bore)} wide, and the barrel goes in by hand. Where it sticks, scrape the bore with a knife. Never force a lens.`,
        `Take the lens out again. Press the nuts into the ${screwAngles.length} six-sided pockets of the clamp’s flange, the flat disc, and one nut into each lug.`,
        `Countersink the screw holes in ${headsIn} until a screw head lies flush.`,
        `Lay the flange flat on ${bearsOn}, the lugs left and right. Drive the ${screws} from ${headsIn} into the nuts, crosswise, a little at a time.`,
      ],
      checks: ['The flange bears on the wood all round: a strip of thin paper goes in nowhere.'],
      needs: ['countersink bit', 'hexagon keys and screwdriver for M4'],
    },
  ];
}
