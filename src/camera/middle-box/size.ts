import type { Point } from '../../geometry/path.js';
import { type FingerRow, fingerRow } from '../../joinery/finger-joint.js';
import type { Wood } from '../wood.js';

/**
 * The box between the front box and the rear box. Nothing guides it but felt: it hangs at its front end in the front box
 * and at its rear end round the rear box, which both are guided. Two stops keep each of its joints from being drawn too far.
 *
 *   front box |=========|                     closed      F14: block on the outside of the front box
 *        |============[C3] middle box                     C4:  bar outside, from C3 to the front, hooks on F14
 *        |=============|]  rear box  |R3                  R10: batten on the sole, hooks on the tongue of C3
 */
export interface MiddleBox {
  readonly wood: Wood;
  readonly inside: number;
  readonly outside: number;
  /** From the front edge to the front face of its frame. */
  readonly length: number;
  readonly front: number;
  /** z of the front face of the frame, at the closest station. */
  readonly rear: number;
  readonly clearance: number;
  /** Free thickness of the felt. */
  readonly felt: number;
  readonly feltWidth: number;
  readonly bands: readonly [number, number];
  readonly rows: { readonly long: FingerRow; readonly standard: FingerRow };
  /** How far it is drawn out of the front box, and the rear box out of it, before a stop holds. */
  readonly ownRun: number;
  readonly rearRun: number;
  readonly frame: {
    /** From the axis to its left and right edges, up and down. */
    readonly half: number;
    readonly top: number;
    readonly bottom: number;
    /** The tongue between the ribs, down to just above the sole. */
    readonly tongue: { readonly half: number; readonly bottom: number };
  };
  readonly bar: {
    /** x of its middle, y of its middle, its height and that of its tab. */
    readonly x: number;
    readonly y: number;
    readonly height: number;
    readonly tab: number;
    /** z of its front end, and of the face of its hook that holds. */
    readonly front: number;
    readonly hook: number;
    readonly top: number;
  };
  /** On the outside of the front box: z of its front face, y of its lower edge, its length and height, |x| of its inner face. */
  readonly block: {
    readonly z: number;
    readonly y: number;
    readonly long: number;
    readonly high: number;
    readonly face: number;
  };
  /** On the sole: y of its lower face, z of its front edge. */
  readonly batten: {
    readonly y: number;
    readonly z: number;
    readonly long: number;
    readonly half: number;
    readonly screws: readonly Point[];
  };
}

export interface MiddleBoxGiven {
  readonly wood: Wood;
  readonly inside: number;
  readonly outside: number;
  readonly length: number;
  readonly front: number;
  readonly clearance: number;
  readonly felt: number;
  readonly feltWidth: number;
  readonly overlapRequired: number;
  readonly ownRun: number;
  readonly rearRun: number;
  /** Outside and length of the front box. */
  readonly around: { readonly outside: number; readonly length: number };
  /** y of the sole's upper face, x of the middle of a rib. */
  readonly sole: { readonly top: number; readonly ribX: number };
  readonly battenLength: number;
}

/** Bar beside the front box, and what it hooks on; a choice of ours. */
const BAR = { air: 0.5, height: 16, tab: 10, hook: 10, long: 12, above: 20 };
const BLOCK = { long: 12, air: 1, high: 14, fromEdge: 1 };
/** The frame reaches so far beyond the bars, and over the front box. */
const RIM = 8;
const OVER = 6;
/** The tongue clears the ribs and the sole. */
const TONGUE = { air: 3, above: 1 };

export function sizeMiddleBox(given: MiddleBoxGiven): MiddleBox {
  const { wood, inside, length, front, around, ownRun, rearRun, sole, overlapRequired, feltWidth, battenLength } =
    given;
  const t = wood.ply.thickness;
  const rear = front + length;
  const face = around.outside / 2;
  const y = -face + BAR.above;
  const z = around.length - BLOCK.fromEdge - BLOCK.long;
  const half = sole.ribX - t / 2 - TONGUE.air;
  return {
    wood,
    inside,
    outside: given.outside,
    length,
    front,
    rear,
    clearance: given.clearance,
    felt: given.felt,
    feltWidth,
    bands: [front + 1, front + Math.min(overlapRequired, length) - feltWidth - 1],
    rows: { long: fingerRow(front, rear, t), standard: fingerRow(-inside / 2, inside / 2, t) },
    ownRun,
    rearRun,
    frame: {
      half: face + BAR.air + t + RIM,
      top: face + OVER,
      bottom: -face,
      tongue: { half, bottom: sole.top + TONGUE.above },
    },
    bar: {
      x: face + BAR.air + t / 2,
      y,
      height: BAR.height,
      tab: BAR.tab,
      front: z - ownRun - BAR.long,
      hook: z - ownRun,
      top: y + BAR.height / 2 + BAR.hook,
    },
    block: { z, y: y + BAR.height / 2 + BLOCK.air, long: BLOCK.long, high: BLOCK.high, face },
    batten: {
      y: sole.top,
      z: rear - rearRun - battenLength,
      long: battenLength,
      half,
      screws: [1, -1].map((side) => ({ x: (side * half * 2) / 3, y: rear - rearRun - battenLength / 2 })),
    },
  };
}
