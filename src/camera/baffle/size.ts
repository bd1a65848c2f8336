import type { Wood } from '../wood.js';

/** A black frame across the rear box, behind the lens: walls that it hides cannot send glancing light to the film. */
export interface Baffle {
  readonly wood: Wood;
  /** Side of the frame, less than the box by the play on both sides. */
  readonly outside: number;
  /** From the axis to the walls of the rear box, by twice. */
  readonly inside: number;
  /** z of its front face at the closest station. */
  readonly front: number;
  /** From the front edge of the rear box. */
  readonly behindEdge: number;
  /** By half, along the two sides of the picture; the back turns, so that the frame leaves both ways open. */
  readonly opening: { readonly short: number; readonly long: number };
  readonly strip: { readonly width: number; readonly length: number };
}

export interface BaffleGiven {
  readonly wood: Wood;
  /** W_ri */
  readonly inside: number;
  /** z of the rear box's front edge, of the lens's rear end and of the turning ring's front face, all at the closest station. */
  readonly boxFront: number;
  readonly lensRear: number;
  readonly ringFront: number;
  /** What a plate must leave open for the light at a z. */
  readonly light: (z: number) => { readonly short: number; readonly long: number };
}

/** Play of the frame on each side: it goes in painted, and is told from the turning ring, which has 0.3. A choice of ours. */
const PLAY = 1;
/** Strips on the walls that the frame bears on: along the axis, and how far they end from the corners. */
const STRIP = { width: 10, short: 20 };
/** However wide the light, so much of a frame is left to be cut. */
const LEAST_FRAME = 3;

/**
 * In the middle between the lens and the ring: nearer to the lens the walls behind it are lit again, nearer to the film it
 * hides little of them.
 */
export function sizeBaffle({ wood, inside, boxFront, lensRear, ringFront, light }: BaffleGiven): Baffle {
  const t = wood.ply.thickness;
  const front = (lensRear + ringFront - t) / 2;
  const outside = inside - 2 * PLAY;
  const faces = [light(front), light(front + t)];
  const half = (side: 'short' | 'long') =>
    Math.min(outside / 2 - LEAST_FRAME, Math.max(...faces.map((face) => face[side])));
  return {
    wood,
    outside,
    inside,
    front,
    behindEdge: front - boxFront,
    opening: { short: half('short'), long: half('long') },
    strip: { width: STRIP.width, length: inside - 2 * STRIP.short },
  };
}
