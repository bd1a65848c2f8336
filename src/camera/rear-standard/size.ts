import type { Path, Point } from '../../geometry/path.js';
import { type FingerRow, fingerRow } from '../../joinery/finger-joint.js';
import { type TabRow, tabRow } from '../../joinery/tab-and-slot.js';
import type { Mark } from '../../model/part.js';
import type { Wood } from '../wood.js';

export interface RearStandard {
  readonly wood: Wood;
  /** B */
  readonly side: number;
  /** W_ri: the square opening. */
  readonly opening: number;
  readonly axisHeight: number;
  readonly soleThickness: number;
  readonly soleWidth: number;
  /** z of the standard's front face at the closest station. */
  readonly front: number;
  readonly row: FingerRow;
  /** x from which the lower corners are notched over rails and keepers, and y of the notch's top. */
  readonly notchFrom: number;
  readonly notchTop: number;
  readonly ribX: number;
  readonly ribLength: number;
  readonly ribHeight: number;
  readonly ribTab: number;
  readonly soleFront: number;
  readonly soleRear: number;
  readonly foot: TabRow;
  readonly ribFoot: TabRow;
  /** z of the lock bolt. */
  readonly bolt: number;
  readonly boltLength: number;
  readonly knob: { readonly diameter: number; readonly height: number };
  readonly button: { readonly width: number; readonly length: number; readonly arm: number; readonly pivot: number };
  readonly buttonScrew: number;
  /** y of the tailboard's lower face. */
  readonly tailboardBottom: number;
  /** y of the front box's lower face. */
  readonly floorBottom: number;
  readonly cornerClip: number;
  readonly friction: number;
  readonly focus: AskedFocus;
  /** Index lines of the focus scale on the sole's upper face, in (x, z). */
  readonly indexStrokes: readonly Path[];
  readonly indexMarks: readonly Mark[];
  /** Screws from below into what stands on the sole, in (x, z). */
  readonly screws: readonly Point[];
  /** What goes into the front box with the sole, in words. */
  readonly pushed: string;
}

/** What was asked of the slide: it tells what would move its closest position back. */
export interface AskedFocus {
  readonly focalLength: number;
  readonly nearest: number;
  readonly farthest: number;
  readonly pastInfinity: number;
}

export interface RearStandardGiven {
  readonly wood: Wood;
  readonly side: number;
  readonly opening: number;
  readonly axisHeight: number;
  readonly soleThickness: number;
  readonly soleWidth: number;
  readonly soleAhead: number;
  readonly soleBehind: number;
  readonly front: number;
  readonly tailboardThickness: number;
  readonly floorBottom: number;
  readonly cornerClip: number;
  readonly friction: number;
  readonly focus: AskedFocus;
  readonly indexStrokes: readonly Path[];
  readonly indexMarks: readonly Mark[];
  readonly screws: readonly Point[];
  readonly pushed: string;
}

const RIB_LENGTH = 70;
const RIB_HEIGHT = 25;
/** Nothing that passes the sole comes nearer to the tailboard than this. */
export const ABOVE_TAILBOARD = 0.3;
/** The bolt stands so far behind the standard's front face. */
const BOLT_BEHIND = 28;
const KNOB = { diameter: 32, height: 18 };
const WASHER = 1.6;

/** x of the middle of a rib. */
export const ribPlace = (soleWidth: number, ply: number): number => soleWidth / 2 - 16 - ply / 2;

export function sizeRearStandard(given: RearStandardGiven): RearStandard {
  const { wood, axisHeight, soleThickness, soleWidth, front } = given;
  const t = wood.ply.thickness;
  const ribX = ribPlace(soleWidth, t);
  const between = 2 * ribX - 2 * t - 8;
  return {
    wood,
    side: given.side,
    opening: given.opening,
    axisHeight,
    soleThickness,
    soleWidth,
    front,
    row: fingerRow(-given.opening / 2, given.opening / 2, t),
    notchFrom: soleWidth / 2 - 9,
    notchTop: -axisHeight + soleThickness + t + 1.3,
    ribX,
    ribLength: RIB_LENGTH,
    ribHeight: RIB_HEIGHT,
    ribTab: 12,
    soleFront: front - given.soleAhead,
    soleRear: front + given.soleBehind,
    foot: tabRow(-between / 2, between / 2, 2, Math.min(30, between / 4)),
    ribFoot: tabRow(front - RIB_LENGTH, front - 4, 2, 16),
    bolt: front + BOLT_BEHIND,
    boltLength: Math.ceil((t + given.tailboardThickness + WASHER + KNOB.height) / 10) * 10,
    knob: KNOB,
    button: { width: 12, length: 27, arm: 19, pivot: 9 },
    buttonScrew: Math.max(20, Math.ceil((3 * t + 6) / 5 - 1e-9) * 5),
    tailboardBottom: -axisHeight - given.tailboardThickness,
    floorBottom: given.floorBottom,
    cornerClip: given.cornerClip,
    friction: given.friction,
    focus: given.focus,
    indexStrokes: given.indexStrokes,
    indexMarks: given.indexMarks,
    screws: given.screws,
    pushed: given.pushed,
  };
}
