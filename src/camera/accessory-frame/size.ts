import type { Point } from '../../geometry/path.js';
import { type LightAhead, openingAt } from '../light-ahead.js';
import type { RailPlate } from '../rail-plate.js';
import type { Wood } from '../wood.js';

/**
 * What everything ahead of the lens hangs on: square rings, glued on the lens board one on another until they stand out
 * past the lens, so that nothing touches glass; a channel in them for the filter holder; and two upright rails for a
 * plate, that of the drop shutter, of the hood or of the cap, which is pushed in from above. It comes off with the lens board.
 *
 * ```
 *           front ◀── z                     from above, cut through beside the axis
 *   A5 lip ▓▓▓▓▓▓▓▓                   A2  A2
 *   A4 rail   ▓▓▓▓▓▓│ A3 ring ▓▓▓▓▓▓│ channel   │▓ A1 ▓▓▓ A1 ▓▓▓│ F6 lens board
 *            │plate ││        ▓▓▓▓▓▓│  holder   │▓ A1 ▓▓▓ A1 ▓▓▓│
 * ```
 */
export interface AccessoryFrame {
  readonly wood: Wood;
  /** Side of the square rings, and of the square opening in them. */
  readonly outside: number;
  readonly opening: number;
  /** z of the front of the lens board. */
  readonly board: number;
  /** Rings between the board and the channel, or the rails. */
  readonly rings: number;
  readonly channel: Channel | null;
  /** z of the front of the rings. */
  readonly front: number;
  readonly plate: RailPlate | null;
  /** Hole in the rings for the peg of the cap, above the opening; null where no cap is made. */
  readonly peg: { readonly y: number; readonly diameter: number } | null;
  readonly light: LightAhead;
}

/** Open at the top, between the rings behind it and the ring before it. */
export interface Channel {
  /** z of its rear and of its front. */
  readonly rear: number;
  readonly front: number;
  readonly width: number;
  readonly floor: number;
  /** On its two plies, to make up its depth. */
  readonly card: number;
  /** Side of the gels that a holder in it takes, and of their room in it. */
  readonly gel: number;
  readonly gelRoom: number;
}

export interface AccessoryFrameGiven {
  readonly wood: Wood;
  readonly board: number;
  /** z of the foremost point of the lens, and what it is across there. */
  readonly lensFront: number;
  readonly lensDiameter: number;
  /** Clamp, flange or ring in front of the board, across; 0 where there is none. */
  readonly discInFront: number;
  /** Screws whose heads lie in the front of the board. */
  readonly heads: readonly Point[];
  readonly light: LightAhead;
  /** The stack of gels and the card that makes room for it; null where no filter holder is made. */
  readonly gels: { readonly card: number; readonly side: number | null } | null;
  /** Whether anything goes on rails. */
  readonly rails: boolean;
  /** z that what falls there must stay ahead of; null where nothing does. */
  readonly fallsAhead: number | null;
  /** z that what is as wide as the frame or wider must stay ahead of; null where nothing is. */
  readonly wideAhead: number | null;
  /** Whether a cap is pinned to it for the road. */
  readonly cap: boolean;
}

/** Air between the lens and what hangs ahead of it; common practice, no source. */
export const LENS_AIR = 2;
/** Fingers go in between the lens and the rings, to its stops and to clean it, each side; a choice of ours. */
const FINGERS = 8;
/** Land of a plate on the ring round the opening, which keeps daylight out; common practice, no source. */
export const FRAME_LAND = 10;
/** Limbs of the channel, and packing of the rails: narrower strips twist; a choice of ours. */
export const LIMB = 8;
/** A lip over the plate, and air beside what stands between the lips. */
export const LIP_LAP = 4;
const LIP_AIR = 1;
/** Of the peg of the cap, and its play in its hole; choices of ours. */
export const CAP_PEG = 4;
const PEG_PLAY = 0.2;
/** Card behind the packing of a rail, so that the plate is not pinched; and as much air ahead of the lips. */
export const RAIL_CARD = 0.3;
/** Head of a countersunk M4 screw with air round it, and room round what the lens is held by; choices of ours. */
const HEAD = 9;
const PASSING = 2;
/** Sides of square gels as they are sold, mm (from memory). */
const GELS = [75, 100, 125, 150];
/** A gel over the edge of the holder's opening, each side, and play in its pocket, in all; choices of ours. */
const GEL_LAP = 4;
const GEL_PLAY = 1;

/** Rounding must not cost a ring. */
const ROUNDING = 1e-9;

export function sizeAccessoryFrame(given: AccessoryFrameGiven): AccessoryFrame {
  const { wood, board, light, gels, rails } = given;
  const t = wood.ply.thickness;
  const { slide, dropIn } = wood.fits;
  const channelDepth = gels ? 2 * t + gels.card + slide : 0;
  // the rail plate, and a ply with card on both sides that carries what is wider past the lips
  const onRails = 2 * t + 2 * RAIL_CARD;
  const stack = channelDepth + (gels ? t : 0);
  const toPass = board - given.lensFront + LENS_AIR;
  // the guide of a slide begins beyond the lips with its back plate
  const toFall = given.fallsAhead === null ? 0 : board - given.fallsAhead - stack - onRails - t;
  const toClear = given.wideAhead === null ? 0 : board - given.wideAhead - stack - onRails;
  const rings = Math.max(1, Math.ceil(Math.max(toPass, toFall, toClear) / t - ROUNDING));
  const ringsFront = board - rings * t;
  const channelFront = ringsFront - channelDepth;
  const front = ringsFront - stack;
  const beyondLips = front - onRails;
  const outermost = Math.max(0, ...given.heads.flatMap(({ x, y }) => [Math.abs(x), Math.abs(y)]));
  const opening = Math.max(
    given.lensDiameter + 2 * FINGERS,
    given.discInFront > 0 ? given.discInFront + PASSING : 0,
    outermost > 0 ? 2 * outermost + HEAD : 0,
    openingAt(light, rails ? beyondLips : front),
  );
  const lit = openingAt(light, channelFront);
  const gel = gels?.side ?? GELS.find((side) => side >= lit + 2 * GEL_LAP) ?? Math.ceil(lit + 2 * GEL_LAP);
  const landed = opening + 2 * FRAME_LAND;
  const outside =
    2 * LIMB + Math.max(rails ? landed + slide : 0, gels ? Math.max(landed, gel + GEL_PLAY + 2 * LIMB) + dropIn : 0);
  const width = outside - 2 * LIMB - slide;
  const half = outside / 2;
  return {
    wood,
    outside,
    opening,
    board,
    rings,
    channel: gels
      ? {
          rear: ringsFront,
          front: channelFront,
          width: outside - 2 * LIMB,
          floor: LIMB - half,
          card: gels.card + slide,
          gel,
          gelRoom: gel + GEL_PLAY,
        }
      : null,
    front,
    plate: rails
      ? {
          width,
          bottom: LIMB - half,
          railTop: half,
          rear: front,
          betweenLips: width / 2 - LIP_LAP - LIP_AIR,
          beyondLips,
        }
      : null,
    // as far out as daylight that comes in by it still has the land of the ring before it
    peg: given.cap ? { y: opening / 2 + FRAME_LAND + (CAP_PEG + PEG_PLAY) / 2, diameter: CAP_PEG + PEG_PLAY } : null,
    light,
  };
}
