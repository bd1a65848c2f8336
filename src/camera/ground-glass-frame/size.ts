import { type Lamination, laminate, mend } from '../../joinery/lamination.js';
import type { Ply } from '../../joinery/plate.js';
import type { Stance } from '../loose.js';
import type { Wood } from '../wood.js';

export interface PinHole {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

/** How far a frame reaches from the axis: to the closed end of the well, and towards its open end. */
export interface Extent {
  readonly closed: number;
  readonly open: number;
}

export interface GroundGlassFrame {
  readonly wood: Wood;
  readonly seat: number;
  readonly width: number;
  readonly extent: Extent;
  readonly opening: { readonly width: number; readonly height: number };
  readonly glass: {
    readonly width: number;
    readonly height: number;
    readonly thickness: number;
    readonly corner: number;
  };
  readonly pocket: { readonly width: number; readonly height: number; readonly plies: number };
  /** Physical, as it was asked for: holder seat to the frosted face. */
  readonly depth: number;
  readonly effectiveDepth: number;
  readonly effectiveOtherSide: number;
  readonly frosted: 'lens' | 'eye';
  readonly packing: Lamination;
  /** How far the packing may be out. */
  readonly within: number;
  readonly extra: readonly Ply[];
  readonly pins: readonly PinHole[];
  readonly stances: readonly Stance[];
  readonly covered: Stance;
  /** Ids of what the frame bears on in one set-up or another. */
  readonly restsOn: readonly string[];
  /** Null where neither the glass nor a film that it is for without a spacer was measured. */
  readonly stands: StandingFrame | null;
}

/** How the frame stands, or is to, where something was measured, and the shims that bring it nearer to what is wanted. */
export interface StandingFrame {
  /** Physical, as it was read on the frame; null where nobody did. */
  readonly measured: number | null;
  /** Physical: the middle of the films that want no spacer, as they stand; without one, where the glass stands. */
  readonly wanted: number;
  /** Whether it is farther from there than its packing may be out: spacers are reckoned from it, and wait until it is mended. */
  readonly isOff: boolean;
  /** Of the shims at hand, to be put under the glass. */
  readonly add: readonly number[];
  /** Of the shims that are drawn under it. */
  readonly takeOut: readonly number[];
}

/** A film that lies on no spacer, and whose glass lies on none. */
export interface FilmOnSeat {
  /** Effective, as it stands: measured, or as drawn. */
  readonly stands: number;
  readonly isMeasured: boolean;
}

export interface GroundGlassFrameGiven {
  readonly wood: Wood;
  readonly seat: number;
  readonly holderWidth: number;
  readonly extent: Extent;
  readonly imageShort: number;
  readonly imageLong: number;
  readonly openingMargin: number;
  readonly thickness: number;
  /** Physical: holder seat to the frosted face. */
  readonly depth: number;
  readonly frosted: 'lens' | 'eye';
  readonly refractiveIndex: number;
  readonly shims: readonly number[];
  readonly within: number;
  readonly stock: readonly Ply[];
  readonly pins: readonly PinHole[];
  readonly stances: readonly Stance[];
  readonly covered: Stance;
  /** Ids of what the frame bears on in one set-up or another. */
  readonly restsOn: readonly string[];
  /** Physical, as it was read on the frame; not there where nobody did. */
  readonly measured?: number | undefined;
  readonly films: readonly FilmOnSeat[];
}

/** Glass beyond the image, both sides together; its corners are cut for air and a look at the iris. */
const GLASS_MORE = 12;
const GLASS_CORNER = 14;
const POCKET_PLAY = 1;

/** How far the image stands from the frosted face when it is seen through the glass: t_g(1 − 1/n). */
const throughGlass = (thickness: number, refractiveIndex: number): number => thickness * (1 - 1 / refractiveIndex);

/** Effective depth of a ground glass: physical where the frosted side faces the lens, less the glass's own shift where it faces the eye. */
export const effectiveDepth = (glass: {
  depth: number;
  thickness: number;
  frosted: 'lens' | 'eye';
  refractiveIndex: number;
}): number =>
  glass.frosted === 'lens' ? glass.depth : glass.depth - throughGlass(glass.thickness, glass.refractiveIndex);

/** A clip lies over the glass and bears on the pocket's wood, 8.5 of it where the frame is wide enough. */
export const CLIP = { width: 16, thickness: 0.8, over: 5, onWood: 8.5 };

interface Glazing {
  readonly glass: { readonly height: number };
  readonly pocket: { readonly height: number };
}

/** Between which distances from the axis the clips lie, along the long side. */
export const clipsLie = ({ glass, pocket }: Glazing): { readonly from: number; readonly to: number } => ({
  from: glass.height / 2 - CLIP.over,
  to: pocket.height / 2 + CLIP.onWood,
});

/** The glass and the pocket that it lies in, along the long side. */
export function glazing(imageLong: number): Glazing {
  const height = imageLong + GLASS_MORE;
  return { glass: { height }, pocket: { height: height + POCKET_PLAY } };
}

export function sizeGroundGlassFrame(given: GroundGlassFrameGiven): GroundGlassFrame {
  const { wood, imageShort, imageLong, thickness, depth, frosted, refractiveIndex } = given;
  const t = wood.ply.thickness;
  const glass = { width: imageShort + GLASS_MORE, height: imageLong + GLASS_MORE, thickness, corner: GLASS_CORNER };
  // the glass's front face lies this far behind the seat
  const front = frosted === 'lens' ? depth : depth - thickness;
  const packing = laminate({
    thickness: front - t,
    ply: t,
    shims: given.shims,
    within: given.within,
    stock: given.stock.map((s) => s.thickness),
  });
  return {
    wood,
    seat: given.seat,
    width: given.holderWidth,
    extent: given.extent,
    opening: { width: imageShort + 2 * given.openingMargin, height: imageLong + 2 * given.openingMargin },
    glass,
    pocket: {
      width: glass.width + POCKET_PLAY,
      height: glass.height + POCKET_PLAY,
      plies: Math.max(1, Math.ceil(thickness / t - 1e-9)),
    },
    depth,
    effectiveDepth: effectiveDepth({ depth, thickness, frosted, refractiveIndex }),
    effectiveOtherSide: frosted === 'lens' ? depth + thickness / refractiveIndex : depth - thickness,
    frosted,
    packing,
    within: given.within,
    extra: given.stock.filter((s) => packing.plies.includes(s.thickness)),
    pins: given.pins,
    stances: given.stances,
    covered: given.covered,
    restsOn: given.restsOn,
    stands: standingFrame(given, packing.shims),
  };
}

function standingFrame(given: GroundGlassFrameGiven, inIt: readonly number[]): StandingFrame | null {
  const { measured = null, depth, films, shims, within } = given;
  if (measured === null && !films.some(({ isMeasured }) => isMeasured)) return null;
  const stands = measured ?? depth;
  const seen = films.map((film) => film.stands);
  // what the pane shifts lies between the film and the face that is measured
  const wanted =
    seen.length === 0 ? stands : (Math.min(...seen) + Math.max(...seen)) / 2 + (depth - effectiveDepth(given));
  const { add, takeOut } = mend({ lacks: wanted - stands, shims, inIt, within });
  return { measured, wanted, isOff: Math.abs(wanted - stands) > within + ROUNDING, add, takeOut };
}

/** What is off by the limit is within it. */
const ROUNDING = 1e-6;

/** From the frame's front face to the pocket's rear face. */
export const rearOfFrame = ({ wood, packing, pocket }: GroundGlassFrame): number =>
  wood.ply.thickness * (1 + pocket.plies) + packing.thickness - packing.remainder;
