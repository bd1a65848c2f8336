import type { Sitting } from './design.js';
import { BEYOND_USE, BREAK } from './fields.js';
import { ALTERNATIVES } from './sitting-faults.js';
import { sittingSchema } from './sitting-schema.js';

/** Keys of a flash reading, and what only a flash has. */
const OF_FLASH = ['flashEnergy', 'flashAperture', 'flashDistance', 'flashSpeed', 'lampDistance', 'flashMost'] as const;
const OF_METER = ['meterTime', 'meterAperture', 'meterSpeed'] as const;

/** `meterTime` as it is typed: `--meter-time`. */
export const flagOf = (key: string): string => `--${key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

/**
 * What is typed for one sitting, by the keys of the design's `sitting`: read by the same schema, so that a flag takes what
 * its key takes. Two flags that say the same in two ways are refused.
 */
export function readToday(
  typed: Readonly<Record<string, string | readonly string[]>>,
): { readonly today: Sitting } | { readonly refused: string } {
  const outcome = sittingSchema.safeParse(typed, { jitless: true });
  if (!outcome.success) {
    const [issue] = outcome.error.issues;
    const message = issue?.message.replace(BEYOND_USE, 'than this flag takes').replaceAll(BREAK, ' ') ?? '';
    return { refused: `${flagOf(String(issue?.path[0] ?? ''))}: ${message}` };
  }
  const today = outcome.data;
  for (const keys of ALTERNATIVES) {
    const [first, second] = keys.filter((key) => today[key] !== undefined);
    if (first !== undefined && second !== undefined)
      return { refused: `${flagOf(first)} and ${flagOf(second)} say the same in two ways. Give one of them.` };
  }
  const metered = OF_METER.find((key) => today[key] !== undefined);
  const flashed = OF_FLASH.find((key) => today[key] !== undefined);
  if (metered !== undefined && flashed !== undefined)
    return {
      refused: `${flagOf(metered)} belongs to a meter reading and ${flagOf(flashed)} to a flash. Give one or the other.`,
    };
  return { today };
}
