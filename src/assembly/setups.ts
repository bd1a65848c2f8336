import type { Placement } from '../model/part.js';
import type { Setup } from './build.js';

/** A holder, and the smaller size that can be put into it. */
interface Named {
  readonly name: string;
  readonly insert?: string | undefined;
}

/**
 * The glass and each holder, upright and lengthwise, each holder with its insert upright, and the camera packed for the road
 * with the first one's glass.
 */
export function setupsOf(holders: readonly Named[]): readonly Setup[] {
  const both = holders.flatMap(({ name: holder, insert }): readonly Setup[] => [
    ...[true, false].flatMap((focusing) =>
      (['upright', 'lengthwise'] as const).map((orientation) => ({
        name: setupName(holder, focusing, orientation),
        holder,
        orientation,
        loads: orientation === 'upright' ? ('top' as const) : ('side' as const),
        focusing,
      })),
    ),
    ...(insert === undefined
      ? []
      : [
          {
            name: `${holder} with its insert for ${insert}, upright`,
            holder,
            orientation: 'upright' as const,
            loads: 'top' as const,
            focusing: false,
            insert,
          },
        ]),
  ]);
  const first = holders[0]?.name as string;
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
