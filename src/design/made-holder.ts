import { madeHolder } from '../standards/made-holder.js';

/** What a holder that is cut from the sheet comes to, from its face to its lid. */
export interface MadeSizes {
  readonly filmDepth: number;
  /** From the face to the dark slide. */
  readonly slideDepth: number;
  readonly width: number;
  readonly length: number;
  readonly thickness: number;
  readonly closedEnd: number;
}

export interface MadeGiven {
  readonly ply: number;
  readonly boards: { readonly channel: number; readonly lip: number };
  /** Width of the sheet that lies in it, upright. */
  readonly sheetWidth: number;
  readonly imageLong: number;
  /** What the user wrote; undefined where the construction decides. */
  readonly filmDepth?: number | undefined;
  readonly width?: number | undefined;
  readonly length?: number | undefined;
  readonly closedEnd?: number | undefined;
}

/**
 * Face ply, channel, lip, pocket ply, lid: the film lies against the lip, so that its depth is that of what stands ahead
 * of it, T = t + channel + lip. A depth that is asked for is met ahead of the channel, by plies and packing.
 */
export function madeSizes(given: MadeGiven): MadeSizes {
  const { ply, boards, sheetWidth } = given;
  const { pocketPlay, rim } = madeHolder;
  const filmDepth = given.filmDepth ?? ply + boards.channel + boards.lip;
  return {
    ...endsOf(given),
    filmDepth,
    slideDepth: filmDepth - boards.channel - boards.lip,
    width: given.width ?? sheetWidth + pocketPlay.value + 2 * rim.value,
    thickness: filmDepth + 2 * ply,
  };
}

/** Length and closed end, of which either may be written. */
export function endsOf({ length, closedEnd: written, imageLong }: MadeGiven): Pick<MadeSizes, 'length' | 'closedEnd'> {
  const { closedEnd: usualEnd, openEnd } = madeHolder;
  const closedEnd =
    written ?? (length === undefined ? usualEnd.value.usual : Math.min(usualEnd.value.usual, (length - imageLong) / 2));
  return { length: length ?? imageLong + closedEnd + openEnd.value.usual, closedEnd };
}
