import { ON_THE_ROAD, setupsOf } from '../assembly/setups.js';
import type { Holder } from '../design/design.js';
import type { BackPlaces } from './back/size.js';
import type { Stance } from './loose.js';

/** Where something of a holder's lies: upright and lengthwise, focusing or exposing; `onTheRoad` adds the set-up for carrying. */
export function stanceOf(behindSeat: number, holder: string, focusing: boolean, onTheRoad: boolean): Stance {
  const mine = setupsOf([holder]).filter((s) => s.name !== ON_THE_ROAD && s.focusing === focusing);
  const named = (orientation: string) => mine.filter((s) => s.orientation === orientation).map((s) => s.name);
  return {
    behindSeat,
    upright: [...named('upright'), ...(onTheRoad ? [ON_THE_ROAD] : [])],
    lengthwise: named('lengthwise'),
  };
}

/** Set-ups in which the back stands upright and lengthwise, and those in which the seat pins are in. */
export function backPlaces(holders: readonly Holder[]): BackPlaces {
  const setups = setupsOf(holders.map((h) => h.name));
  const pinned = setups.filter((s) => s.focusing || holders.find((h) => h.name === s.holder)?.locating === 'pins');
  return {
    upright: setups.filter((s) => s.orientation === 'upright').map((s) => s.name),
    lengthwise: setups.filter((s) => s.orientation === 'lengthwise').map((s) => s.name),
    pinned: pinned.map((s) => s.name),
  };
}
