import { nearestFocus } from './camera/standing.js';
import type { Design, Sitting } from './design/design.js';
import { readToday } from './design/read-today.js';
import { sittingDocument } from './exposure/sitting.js';
import type { SittingDocument } from './model/sitting.js';

/**
 * The exposure of one sitting of a camera, or what is wrong with how it was asked for.
 *
 * @param typed what is given for today, by the keys of the design's `sitting`, as it was typed
 */
export function expose(
  design: Design,
  typed: Readonly<Record<string, string | readonly string[]>>,
): { readonly sitting: SittingDocument; readonly today: Sitting } | { readonly refused: string } {
  const read = readToday(typed);
  if ('refused' in read) return read;
  const { today } = read;
  const sitting = sittingDocument(design, today, nearestFocus(design));
  if ('refused' in sitting) return { refused: `${sitting.refused.what} ${sitting.refused.accepted}` };
  return { sitting, today };
}
