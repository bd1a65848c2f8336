import type { StepWords } from '../../model/build-step.js';
import { mm, plainNumber } from '../../units/print.js';
import { type FittedTank, fittingIds } from './parts.js';

/** What is said where spout and vent are glued into the wall of a tank. */
export function tankFittingSteps({ number, given, fittings }: FittedTank): readonly StepWords[] {
  const { spout, cap, funnel } = fittings;
  const ids = fittingIds(number);
  const thread = Math.round((cap.turn * 180) / Math.PI);
  return [
    {
      step: 'tank-spout',
      acts: [
        `Print ${ids.spout} and ${ids.vent} necks up, ${ids.cap} twice with its top down, and ${ids.funnel} with its mouth down, in black, without support, lines ${mm(given.nozzle)} wide.`,
        `Pour matt black paint, thinned, through ${ids.spout} and ${ids.vent}, let it run out at the neck and dry for a day.`,
        `Try ${ids.spout} in its notch at one corner and ${ids.vent} at the other, their open faces flush with the inside of the chamber and the opening in the corner itself. Each goes in with a little less than a tenth of a millimetre all round.`,
        `Roughen what will be in the wood, coat it all round with epoxy and push it in; wipe off what comes out before it sets. The face towards the lid ends up flush, or the lip does not lie flat.`,
        `Cut two discs ${plainNumber(cap.gasket.diameter, 0)} mm across of the foam, ${mm(cap.gasket.thickness)} thick, and lay one in each cap.`,
      ],
      checks: [
        `Each cap goes on over the three lugs, down against the foam, and shuts by ${thread}° clockwise.`,
        `The funnel sits on the lip of ${ids.spout} half-way down its socket, ${plainNumber(funnel.seat.depth / 2, 0)} mm.`,
        `In a dark room, a lamp at the open neck of ${ids.spout}, then of ${ids.vent}, lets no light into the chamber. Its passage is ${plainNumber(spout.passage.area, 0)} mm², and you cannot see through.`,
      ],
      cautions: [
        'Epoxy: gloves, and a window open; keep to what its label says.',
        'Never shut both caps tight on a bleach, or on an acid after a carbonate: they give off gas, and a sealed tank bursts at its lid.',
      ],
      needs: ['epoxy', 'matte black'],
    },
  ];
}
