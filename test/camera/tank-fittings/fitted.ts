import type { Build } from '../../../src/assembly/build.js';
import { type FittedTank, tankFittingParts } from '../../../src/camera/tank-fittings/parts.js';
import { sizeTankFittings, type TankFittings } from '../../../src/camera/tank-fittings/size.js';
import { across } from '../../../src/geometry/placement.js';
import { tankOf } from './given.js';

/** Where a camera's closest seat might be. */
export const SEAT = 175;

/** The fittings of a tank, in a camera. */
export function fittedTank(given = tankOf()): FittedTank {
  return {
    number: 2,
    name: 'tank',
    given,
    fittings: sizeTankFittings(given),
    place: across(0, 0, SEAT),
    stance: { behindSeat: 0, upright: ['tank, upright'], lengthwise: ['tank, lengthwise'] },
    into: ['chamber'],
  };
}

/** All that its checks look at: its own parts, made as they are sized or as `altered` has them. */
export function buildOf(own: FittedTank, altered: TankFittings = own.fittings): Build {
  const setup = { holder: 'tank', focusing: false } as const;
  return {
    parts: tankFittingParts({ ...own, fittings: altered }),
    stations: [{ name: 'closest', rear: 0 }],
    setups: [
      { ...setup, name: 'tank, upright', orientation: 'upright', loads: 'top' },
      { ...setup, name: 'tank, lengthwise', orientation: 'lengthwise', loads: 'side' },
    ],
    gate: { z: SEAT, width: 120, height: 170 },
    opening: { z: 0, diameter: 40 },
  };
}
