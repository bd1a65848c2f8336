import { ON_THE_ROAD, setupsOf } from '../assembly/setups.js';
import type { Holder } from '../design/design.js';
import type { BackPlaces } from './back/size.js';
import type { Stance } from './loose.js';

/** A holder as the set-ups know it. */
export const inSetups = ({ name, make }: Pick<Holder, 'name' | 'make'>) => ({
  name,
  ...(make?.insert ? { insert: make.insert.name } : {}),
});

interface StanceGiven {
  readonly behindSeat: number;
  readonly holder: Pick<Holder, 'name' | 'make'>;
  readonly focusing: boolean;
  /** Whether it stands in the set-up for carrying too. */
  readonly onTheRoad?: boolean;
  /** In the set-up with the insert alone, or in all others; left out, in both. */
  readonly withInsert?: boolean;
}

/** Where something of a holder's lies: upright and lengthwise, focusing or exposing. */
export function stanceOf({ behindSeat, holder, focusing, onTheRoad = false, withInsert }: StanceGiven): Stance {
  const mine = setupsOf([inSetups(holder)]).filter(
    (s) =>
      s.name !== ON_THE_ROAD &&
      s.focusing === focusing &&
      (withInsert === undefined || withInsert === (s.insert !== undefined)),
  );
  const named = (orientation: string) => mine.filter((s) => s.orientation === orientation).map((s) => s.name);
  return {
    behindSeat,
    upright: [...named('upright'), ...(onTheRoad ? [ON_THE_ROAD] : [])],
    lengthwise: named('lengthwise'),
  };
}

/** Set-ups in which the back stands upright and lengthwise, and those in which the seat pins are in. */
export function backPlaces(holders: readonly Holder[]): BackPlaces {
  const setups = setupsOf(holders.map(inSetups));
  const pinned = setups.filter((s) => s.focusing || holders.find((h) => h.name === s.holder)?.locating === 'pins');
  return {
    upright: setups.filter((s) => s.orientation === 'upright').map((s) => s.name),
    lengthwise: setups.filter((s) => s.orientation === 'lengthwise').map((s) => s.name),
    pinned: pinned.map((s) => s.name),
  };
}
