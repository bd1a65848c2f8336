import { fNumber, mm } from '../units/print.js';
import type { Fault } from './explain.js';
import type { Written } from './schema.js';

type Given = Pick<Written, 'lens' | 'stops'>;

/** Wood, or rather board, that stands beside the widest hole of a plate; common practice, no source. */
const BESIDE_HOLE = 3;

/** What cannot be true of a set of stops and the slot that they go into. */
export function stopsFit({ lens, stops }: Given): readonly Fault[] {
  if (stops === undefined) return [];
  const { fullAperture, slot, board, series = [] } = stops;
  const [width, thickness] = slot;
  const fault = (path: Fault['path'], what: string, accepted: string): Fault => ({
    path: ['stops', ...path],
    at: 'value',
    what,
    accepted,
  });
  const marked = stops.marked ?? lens.maxAperture;
  const faults: Fault[] = [];
  if (fullAperture + 2 * BESIDE_HOLE > width)
    faults.push(
      fault(
        ['slot'],
        `A slot ${mm(width)} wide leaves nothing of a plate round a hole of ${mm(fullAperture)}.`,
        `Measure again: the slot is ${mm(fullAperture + 2 * BESIDE_HOLE)} wide or more, and its width is written first.`,
      ),
    );
  if (board !== undefined && board >= thickness)
    faults.push(
      fault(
        ['board'],
        `Board of ${mm(board)} does not go into a slot of ${mm(thickness)}.`,
        `Write a board of less than ${mm(thickness)}.`,
      ),
    );
  series.forEach((number, index) => {
    if (number < marked)
      faults.push(
        fault(
          ['series', index],
          `${fNumber(number)} is wider than the lens opens: ${fNumber(marked)}.`,
          `Write ${fNumber(marked)} or a smaller stop.`,
        ),
      );
    else if (series.indexOf(number) !== index)
      faults.push(fault(['series', index], `${fNumber(number)} is there already.`, 'Write each stop once.'));
  });
  return faults;
}
