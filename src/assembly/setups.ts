import type { Placement } from '../model/part.js';
import type { Setup } from './build.js';

/** The glass and the holder of each name, upright and lengthwise, and the camera packed for the road with the first one's glass. */
export function setupsOf(holders: readonly string[]): readonly Setup[] {
  const both = holders.flatMap((holder) =>
    [true, false].flatMap((focusing) =>
      (['upright', 'lengthwise'] as const).map((orientation) => ({
        name: setupName(holder, focusing, orientation),
        holder,
        orientation,
        loads: orientation === 'upright' ? ('top' as const) : ('side' as const),
        focusing,
      })),
    ),
  );
  const first = holders[0] as string;
  return [...both, { name: ON_THE_ROAD, holder: first, orientation: 'upright', loads: 'top', focusing: true }];
}

/** The glass in, its protector on. */
export const ON_THE_ROAD = 'on the road';

const setupName = (holder: string, focusing: boolean, orientation: Setup['orientation']): string =>
  focusing ? `glass for ${holder}, ${orientation}` : `${holder}, ${orientation}`;

/** Whether a placement stands in a set-up: a holder's own group only where that holder is in. */
export function stands(placement: Placement, setup: Setup): boolean {
  if (placement.when) return placement.when.includes(setup.name);
  if (typeof placement.group === 'string') return true;
  return placement.group.holder === setup.holder && !setup.focusing;
}

/** How many pieces of a part there are: the most that stand in one set-up. */
export const countOf = (placements: readonly Placement[], setups: readonly Setup[]): number =>
  Math.max(0, ...setups.map((setup) => placements.filter((p) => stands(p, setup)).length));
