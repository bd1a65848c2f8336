import { madeHolder } from '../standards/made-holder.js';
import { clearanceHole, nuts } from '../standards/screws.js';
import { tank } from '../standards/tank.js';
import { windowTakes } from './design.js';
import { endsOf, type MadeGiven, type MadeSizes } from './made-holder.js';

interface TankSizesGiven extends MadeGiven {
  readonly window: { readonly thickness: number };
  readonly refractiveIndex: number;
}

interface TankSizes extends MadeSizes {
  /** From the glass to the sheet. */
  readonly chamber: number;
}

export const chamberOf = (sizes: MadeSizes & { readonly chamber?: number }): number => sizes.chamber ?? 0;

/** Wood round the pocket: the land of the gasket, a screw's hole, and 3 of web outside it. */
export const leastWidthOfTank = (sheetWidth: number): number =>
  sheetWidth +
  madeHolder.pocketPlay.value +
  2 * (tank.gasketLand.value + clearanceHole.M4.medium.value + tank.web.value);

/** Loses nothing to rounding where plies come to a length exactly. */
const ROUNDING = 1e-9;

/**
 * A holder in which the print is processed: face, channel, window, chamber plies and packing, lip; behind the sheet the plies
 * of the rim, the stop beside the gasket, and the lid. Where no depth is asked for, as many plies as make the chamber deep
 * enough, and no packing.
 */
export function tankSizes(given: TankSizesGiven): TankSizes {
  const { ply, boards, sheetWidth, window, refractiveIndex } = given;
  const { channel, lip } = boards;
  const front = ply + channel + lip + Math.max(1, Math.ceil(window.thickness / ply - ROUNDING)) * ply;
  const shift = windowTakes(window, refractiveIndex);
  const plies = Math.ceil((tank.leastChamber.value - lip) / ply - ROUNDING);
  const physical = given.filmDepth === undefined ? front + plies * ply + lip : given.filmDepth + shift;
  const nutPlies = Math.ceil((nuts.M4.height.value + tank.nutRoom.value) / ply - ROUNDING);
  return {
    ...endsOf(given),
    filmDepth: physical - shift,
    slideDepth: ply,
    width: given.width ?? sheetWidth + tank.chamberMore.value + tank.glassMore.value + 2 * tank.rim.value,
    thickness: physical + nutPlies * ply + ply + channel + lip + ply,
    chamber: physical - front,
  };
}
