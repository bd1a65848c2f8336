import type { Process } from '../model/sitting-log.js';
import { stops as stopsText } from '../units/print.js';
import { packAgainst, packInWords, stopsOfPack } from './colour-cast.js';
import { dialByDensity } from './dial-by-density.js';
import { dialByEye } from './dial-by-eye.js';
import { type Advice, type TestedSheet, wasMeasured } from './tested-sheet.js';

/*
 * From the sheets of one series (one paper, one batch, one process) to the setting of the next sheet. Exposure is counted
 * in stops more than the reckoning gave, so that what was learned holds when the distance, the stop or a filter changes.
 */

/** Sheets of a series with their results; those that were not looked at yet say nothing. */
export function dialIn(process: Process, sheets: readonly TestedSheet[]): Advice | null {
  const judged = sheets.filter(({ result }) => result !== null);
  const last = judged.at(-1);
  if (last === undefined) return null;
  const step = wasMeasured(last) ? dialByDensity(process, judged) : dialByEye(process, judged);
  const colour = againstCast(process, last);
  const both =
    colour.pack !== last.pack && Math.abs(step.change) > 0
      ? ['Exposure and filters change together; both are written down, each by itself.']
      : [];
  return { ...step, pack: colour.pack, reasoning: [...step.reasoning, ...colour.reasoning, ...both] };
}

function againstCast(process: Process, { pack, result }: TestedSheet): Pick<Advice, 'pack' | 'reasoning'> {
  if (result === null || result.cast === null) return { pack, reasoning: [] };
  const { cast, castBy } = result;
  if (process === 'negative')
    return {
      pack,
      reasoning: [
        `The ${cast} cast is left alone: the colours of a negative are set right by the filters of its print, and what is seen on the negative itself is not what the print will show.`,
      ],
    };
  if (castBy === null)
    return { pack, reasoning: [`How strong the ${cast} cast is was not said; the filters stay as they are.`] };
  const next = packAgainst(cast, castBy, pack);
  if (packInWords(next) === packInWords(pack))
    return {
      pack,
      reasoning: [`Half of the ${cast} cast is less than the weakest filter; the filters stay as they are.`],
    };
  const cost = stopsOfPack(next) - stopsOfPack(pack);
  return {
    pack: next,
    reasoning: [
      `Against the ${cast} cast, half of what the eye asks: ${packInWords(next)} on the lens instead of ${packInWords(pack)}.`,
      `That costs ${stopsText(cost)}, by the filters' usual factors; a meter reading through them is better.`,
    ],
  };
}
