/*
 * What a flat chamber holds, and how far liquid in it covers a sheet that lies on its floor. Lengths mm, angles rad, volumes
 * ml. Plane geometry of a level surface: the liquid is taken to be still, and no thinner than `puddleDepth` of film.ts.
 */

/** The inside of a chamber that lies on its broad side. */
export interface Chamber {
  /** Along the side that goes up and down when it is rocked. */
  readonly length: number;
  readonly width: number;
  readonly depth: number;
}

/** All that goes in: of the chamber, not of the sheet in it. */
export const fullMl = ({ length, width, depth }: Chamber): number => (length * width * depth) / 1000;

/** A layer over the whole floor of a level chamber. The sheet takes room too, a hundredth of a layer of some millimetres. */
export const layerMl = ({ length, width }: Pick<Chamber, 'length' | 'width'>, layer: number): number =>
  (length * width * layer) / 1000;

/** How much one end is lower than the other. */
export const outOfLevel = (length: number, tilt: number): number => length * Math.tan(tilt);

/** A sheet that lies in the middle of the floor, by its side along the chamber's length. */
interface Lying extends Chamber {
  readonly sheet: number;
}

/** Least volume that still covers the whole sheet when the chamber is tilted. */
export const coveringMl = (lying: Lying, tilt: number): number =>
  (wedge(farEdge(lying), lying.depth, tilt) * lying.width) / 1000;

/**
 * Greatest tilt at which a volume covers the whole sheet: its surface then meets the floor at the sheet's upper edge, and at
 * the lower end the lid where the chamber is that shallow. A right angle where it covers the sheet in a chamber on end.
 */
export const coveringTilt = (lying: Lying, ml: number): number => tiltFor(farEdge(lying), lying, ml);

/** Tilt at which a volume wets a chamber's floor as far as `reach` from its lower end. */
function tiltFor(reach: number, { width, depth }: Chamber, ml: number): number {
  const section = (1000 * ml) / width;
  if (section >= reach * depth) return Math.PI / 2;
  return 2 * section <= reach * depth
    ? Math.atan((2 * section) / (reach * reach))
    : Math.atan((depth * depth) / (2 * (reach * depth - section)));
}

/**
 * Least volume for rocking to a tilt on either side: at the end of each swing it reaches the middle, so that no place lies
 * bare at both ends. Every place is then under liquid for half of the time at least.
 */
export const rockingMl = ({ length, width, depth }: Chamber, tilt: number): number =>
  (wedge(length / 2, depth, tilt) * width) / 1000;

/** Greatest tilt to which a volume may be rocked so that it still reaches the middle: the inverse of `rockingMl`. */
export const rockingTilt = (chamber: Chamber, ml: number): number => tiltFor(chamber.length / 2, chamber, ml);

/** From the wall at the lower end to the sheet's upper edge. */
const farEdge = ({ length, sheet }: Lying): number => (length + sheet) / 2;

/**
 * Section of a liquid that wets a tilted floor as far as `reach` from its lower end: a triangle, of which a low lid takes
 * the tip.
 */
function wedge(reach: number, depth: number, tilt: number): number {
  const slope = Math.tan(tilt);
  return reach * slope <= depth ? (reach * reach * slope) / 2 : reach * depth - (depth * depth) / (2 * slope);
}

/** A chamber that stands on an edge or a corner. */
interface Standing extends Chamber {
  /** By how much its width rises from the level: 0 stands on the edge along the width, a right angle on that along the length. */
  readonly turn: number;
}

/**
 * Surface of the liquid, mm², when it stands at a height over the lowest corner. Level lines across a turned rectangle grow
 * evenly from its lowest corner up to the next, stay as long up to the third, and shrink evenly to the last.
 */
export function surfaceAt(standing: Standing, height: number): number {
  const { corner, top, widest } = turned(standing);
  const rise = Math.min(height, top - height);
  if (rise < 0) return 0;
  return standing.depth * widest * (rise >= corner ? 1 : rise / corner);
}

/** Height of the surface over the lowest corner when a volume stands in it. */
export function levelOf(standing: Standing, ml: number): number {
  const { corner, top, widest } = turned(standing);
  const mean = (1000 * ml) / (widest * standing.depth);
  if (mean < corner / 2) return Math.sqrt(2 * corner * mean);
  const free = top - corner - mean;
  return free < corner / 2 ? top - Math.sqrt(2 * corner * Math.max(0, free)) : mean + corner / 2;
}

/** Heights of the second and the last corner, and the longest level line. */
function turned({ length, width, turn }: Standing) {
  const [rise, fall] = [width * Math.sin(turn), length * Math.cos(turn)];
  return {
    corner: Math.min(rise, fall),
    top: rise + fall,
    widest: Math.min(width / Math.cos(turn), length / Math.sin(turn)),
  };
}
