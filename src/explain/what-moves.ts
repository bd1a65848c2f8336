import type { Variable } from '../design/variables.js';
import type { Explanation } from '../model/explanation.js';
import { asWritten } from '../units/print.js';
import { parseMagnification } from '../units/ratio.js';
import { entriesOf } from './plan-tree.js';

/** Smaller than this is rounding. */
const NOTHING = 1e-9;

/** So many keys are told; the others matter less. */
const MOST_TYPED = 4;
const MOST_DEFAULTS = 2;

/** A key and what it does to a figure for each hundredth part of itself: what makes keys of different kinds comparable. */
interface Weighed {
  readonly change: Explanation['changes'][number];
  readonly weight: number;
}

/**
 * The keys that move a figure: each number of the design is changed by a small step, more and less, and the camera is
 * planned anew each time, with the value as it would be written: whoever writes it gets what was told.
 */
export function whatMoves(
  variables: readonly Variable[],
  path: string,
  value: number,
): Pick<Explanation, 'changes' | 'otherChanges'> {
  const moving = variables.flatMap((variable): readonly Weighed[] => {
    const step = stepOf(variable);
    const at = (amount: number): number | null => {
      const design = variable.changedBy(asRead(variable.value + amount, variable.unit) - variable.value);
      const found = design && entriesOf(design).find((entry) => entry.path === path)?.figure.value;
      return typeof found === 'number' ? found - value : null;
    };
    const [more, less] = [at(step), at(-step)];
    const effect = Math.max(Math.abs(more ?? 0), Math.abs(less ?? 0));
    if (effect < NOTHING) return [];
    const { path: key, what, typed, unit } = variable;
    const change = { path: key, what, typed, value: variable.value, unit, step, more, less };
    return [{ change, weight: (effect / step) * 0.01 * (Math.abs(variable.value) || step) }];
  });
  const ranked = [...moving].sort((a, b) => b.weight - a.weight).map(({ change }) => change);
  const changes = [
    ...ranked.filter(({ typed }) => typed).slice(0, MOST_TYPED),
    ...ranked.filter(({ typed }) => !typed).slice(0, MOST_DEFAULTS),
  ];
  return { changes, otherChanges: ranked.length - changes.length };
}

/** What is read back of a value that was written: 1:2.92 is not quite 0.3433. */
function asRead(value: number, unit: Variable['unit']): number {
  const written = asWritten(value, unit);
  if (unit !== 'magnification') return Number.parseFloat(written.replace('f/', ''));
  const reading = parseMagnification(written);
  return 'value' in reading ? reading.value : value;
}

/** Nothing smaller is written. */
const WRITTEN = 0.001;

/** One of the second figure that counts, of lengths a millimetre at most; one of what is counted. */
function stepOf({ value, unit }: Variable): number {
  if (unit === 'count') return 1;
  if (value === 0) return unit === 'mm' ? 0.1 : 0.01;
  const second = 10 ** (Math.floor(Math.log10(Math.abs(value)) + 1e-9) - 1);
  return Math.max(WRITTEN, unit === 'mm' ? Math.min(1, second) : second);
}
