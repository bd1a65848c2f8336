import type { ResultEntry, SettingEntry } from '../model/sitting-log.js';
import { plainNumber } from '../units/print.js';
import { densitySlope, READING_ERROR } from './density-slope.js';
import { directionOf, moreComesOut } from './dial-by-density.js';
import type { ResultFault } from './logged-sheets.js';

/*
 * A result is asked about before it is written, where what was read cannot be used or says the opposite of what was seen:
 * a slip of the fingers is then put right for nothing, while a result that stands in the log has used up its sheet.
 */

/** What is wrong with a result of which densities were read; null where nothing is. */
export function disagreement(
  result: ResultEntry,
  setting: SettingEntry,
  earlier: readonly ResultEntry[],
): ResultFault | null {
  const read = result.density === null ? result.densities : [result.density];
  if (read.length === 0) return null;
  const path = ['result', result.density === null ? 'densities' : 'density'];
  const wanted = result.wanted ?? earlier.findLast((one) => one.wanted !== null)?.wanted ?? null;
  if (wanted === null)
    return {
      path,
      what: 'Which density is wanted was never said for this paper and batch.',
      accepted: 'Write wanted: 1.1, or whichever it is, beside it.',
    };
  const against = eyeAgainst(result, read, wanted);
  if (against !== null)
    return {
      path,
      what: against,
      accepted: 'Look again, and leave out what is mistaken; with both the density counts.',
    };
  const points = result.densities.map((density, index) => ({ given: setting.strips[index] ?? 0, density }));
  const learned = densitySlope(points, directionOf(setting.process));
  if ('refused' in learned && learned.wrongWay)
    return {
      path,
      what: `The densities contradict the process: ${moreComesOut(setting.process)}, and here it is the other way.`,
      accepted: `Count them from the strip that got least, and look whether the process is ${setting.process}; write looks: void where the sheet is spoiled.`,
    };
  return null;
}

/** What the eye and the densities say against each other, more than a reading's own error apart. */
function eyeAgainst({ looks }: ResultEntry, read: readonly number[], wanted: number): string | null {
  const lighter = Math.max(...read) < wanted - READING_ERROR;
  const darker = Math.min(...read) > wanted + READING_ERROR;
  if (!(looks === 'too dark' && lighter) && !(looks === 'too light' && darker)) return null;
  const densities = read.map((density) => plainNumber(density, 2)).join(', ');
  return `The eye says ${looks} and the density says too ${lighter ? 'light' : 'dark'}: ${densities} is ${lighter ? 'less' : 'more'} than ${plainNumber(wanted, 2)}, which is wanted.`;
}
