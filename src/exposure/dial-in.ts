import type { Process } from '../model/sitting-log.js';
import { celsius, plainNumber, stopsInWords } from '../units/print.js';
import { heldBack, packAgainst, packInWords, STRONGEST_STEP, stopsOfPack } from './colour-cast.js';
import { dialByDensity } from './dial-by-density.js';
import { dialByEye } from './dial-by-eye.js';
import { type Advice, type TestedSheet, wasMeasured } from './tested-sheet.js';

/*
 * From the sheets of one series (one paper, one batch, one process) to the setting of the next sheet. Exposure is counted
 * in stops more than the reckoning gave, so that what was learned holds when the distance, the stop or a filter changes.
 */

/** Developers further apart than this make other densities of one exposure, °C: such sheets do not count together. */
const LIKE_BATH = 2;

/** Sheets of a series with their results; those that were not looked at yet say nothing. */
export function dialIn(process: Process, sheets: readonly TestedSheet[]): Advice | null {
  const judged = sheets.filter(({ result }) => result !== null);
  const last = judged.at(-1);
  if (last === undefined) return null;
  const { alike, aside } = byBath(judged, last);
  const wanted = judged.findLast(({ result }) => result?.wanted !== null)?.result?.wanted ?? null;
  const step = wasMeasured(last) ? dialByDensity(process, alike, wanted) : dialByEye(process, alike);
  const colour = againstCast(process, last);
  const both =
    colour.pack !== last.pack && Math.abs(step.change) > 0
      ? ['Exposure and filters change together; both are written down, each by itself.']
      : [];
  return { ...step, pack: colour.pack, reasoning: [...aside, ...step.reasoning, ...colour.reasoning, ...both] };
}

/** The sheets whose bath was like the last one's, or was not noted, and what is said of the others. */
function byBath(
  judged: readonly TestedSheet[],
  last: TestedSheet,
): { readonly alike: readonly TestedSheet[]; readonly aside: readonly string[] } {
  const { bath } = last;
  if (bath === null) return { alike: judged, aside: [] };
  const other = (sheet: TestedSheet) => sheet.bath !== null && Math.abs(sheet.bath - bath) > LIKE_BATH;
  const [first, ...more] = judged.filter(other).toReversed();
  if (first === undefined) return { alike: judged, aside: [] };
  const rest = more.length === 0 ? '' : `, and ${more.length} before it as well`;
  return {
    alike: judged.filter((sheet) => !other(sheet)),
    aside: [
      `The developer of sheet ${last.sheet} was at ${celsius(bath)}; sheet ${first.sheet}, at ${celsius(first.bath ?? bath)}, was more than ${celsius(LIKE_BATH)} from that and is set aside${rest}.`,
    ],
  };
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
      `Against the ${cast} cast, half of what the eye asks${heldBack(castBy) ? `, but no more than ${plainNumber(STRONGEST_STEP, 2)} at a time` : ''}: ${packInWords(next)} on the lens instead of ${packInWords(pack)}.`,
      `That costs ${stopsInWords(cost)}${cost < 0 ? ' less' : ''}, by the filters' usual factors; a meter reading through them is better.`,
    ],
  };
}
