import { madeUpCount } from './design/made-up.js';
import type { State } from './state.js';
import { findingsNow } from './trays/findings/now.js';

export interface Verdict {
  readonly words: string;
  readonly level: 'error' | 'warning' | 'good' | 'open';
  /** How far the proof is. */
  readonly proof: string;
}

/** Whether the camera will do, in one line. */
export function verdictOn(state: State): Verdict {
  const { reading, shown } = state;
  if (reading === null) return { words: 'Reading the design', level: 'open', proof: '' };
  if (reading.problems !== null)
    return {
      words: `This is no design yet: ${counted(reading.problems.length, 'fault')}`,
      level: 'error',
      proof: shown === null ? 'no camera to show' : 'shown is the last camera that could be planned',
    };
  const { findings, proven, running } = findingsNow(state);
  const count = (level: string) => findings.filter((finding) => finding.level === level).length;
  const [errors, warnings] = [count('error'), count('warning')];
  const proof = proven
    ? errors > 0
      ? 'proof finished'
      : 'proven in every set-up'
    : running === null
      ? 'not proven yet'
      : `proof running, ${Math.floor(100 * running.done)} %`;
  const also = warnings === 0 ? '' : counted(warnings, 'warning');
  if (errors > 0)
    return { words: `It will not do: ${counted(errors, 'error')}${also && `, ${also}`}`, level: 'error', proof };
  if (!proven)
    return {
      words: also === '' ? 'Nothing against it so far' : `${also} so far`,
      level: also === '' ? 'open' : 'warning',
      proof,
    };
  const will = also === '' ? 'It will do' : `It will do, with ${also}`;
  const made = reading.madeUp.length;
  // what hangs on figures that nobody has measured is no promise
  if (made > 0)
    return { words: `${will}, if ${madeUpCount(made)} ${made === 1 ? 'holds' : 'hold'}`, level: 'warning', proof };
  return { words: will, level: also === '' ? 'good' : 'warning', proof };
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
