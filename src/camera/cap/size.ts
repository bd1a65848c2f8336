import type { Wood } from '../wood.js';

/**
 * A plate without an opening, which goes on the rails of the accessory frame from above and lies on its ring all round the
 * opening. A grip of two plies across its upper edge, above the rails. Its own weight holds it down; for the road a peg goes
 * through it into the ring, so that it stays on whatever way up the camera is carried.
 */
export interface Cap {
  readonly wood: Wood;
  /** What goes on the rails: width, lower edge, and z of its rear. */
  readonly plate: { readonly width: number; readonly bottom: number; readonly rear: number };
  readonly grip: { readonly bottom: number; readonly top: number };
  /** Its hole, and the peg. */
  readonly peg: { readonly y: number; readonly hole: number; readonly diameter: number };
}

export interface CapGiven {
  readonly wood: Wood;
  readonly plate: {
    readonly width: number;
    readonly bottom: number;
    readonly railTop: number;
    readonly rear: number;
  };
  /** The hole in the ring. */
  readonly peg: { readonly y: number; readonly diameter: number };
}

/** The peg is as much thinner than its hole; a choice of ours. */
const PEG_PLAY = 0.2;
/** Knob of the peg, air between it and the grip, and height of the grip, for two fingers; choices of ours. */
export const KNOB = 16;
const BESIDE_KNOB = 2;
const GRIP = 14;

export function sizeCap({ wood, plate: { railTop, ...plate }, peg }: CapGiven): Cap {
  const bottom = Math.max(railTop, peg.y + KNOB / 2) + BESIDE_KNOB;
  return {
    wood,
    plate: { width: plate.width, bottom: plate.bottom, rear: plate.rear },
    grip: { bottom, top: bottom + GRIP },
    peg: { y: peg.y, hole: peg.diameter, diameter: peg.diameter - PEG_PLAY },
  };
}
