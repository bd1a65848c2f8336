import { type FingerRow, fingerRow } from '../../joinery/finger-joint.js';
import { type TabRow, tabRow } from '../../joinery/tab-and-slot.js';
import type { Wood } from '../wood.js';

export interface FrontBox {
  readonly wood: Wood;
  readonly inside: number;
  readonly outside: number;
  /** From z = 0 to the rear edge. */
  readonly length: number;
  readonly axisHeight: number;
  /** Side of the opening for the plug. */
  readonly opening: number;
  /** Whether the camera hangs from its top: then the grain must run from side to side. */
  readonly carries: boolean;
  readonly rows: {
    readonly panelToSide: FingerRow;
    readonly panelToTop: FingerRow;
    readonly sideToTop: FingerRow;
  };
  readonly tabs: {
    readonly floorToPanel: TabRow;
    readonly floorToSide: TabRow;
    /** Tenons into the tailboard, along x under the panel and along z under the sides. */
    readonly panelFoot: TabRow;
    readonly sideFoot: TabRow;
  };
}

export interface FrontBoxGiven {
  readonly wood: Wood;
  readonly inside: number;
  readonly outside: number;
  readonly length: number;
  readonly axisHeight: number;
  readonly opening: number;
  readonly carries: boolean;
}

/** Corner strip: width, and how far short of the wall it ends. */
export const STRIP = 8;

export function sizeFrontBox(given: FrontBoxGiven): FrontBox {
  const { wood, inside, outside, length, axisHeight } = given;
  const t = wood.ply.thickness;
  const tab = (run: number) => Math.min(40, run / 4);
  return {
    ...given,
    rows: {
      panelToSide: fingerRow(-axisHeight, outside / 2, t),
      panelToTop: fingerRow(-outside / 2, outside / 2, t),
      sideToTop: fingerRow(0, length, t),
    },
    tabs: {
      floorToPanel: tabRow(-inside / 2, inside / 2, 2, tab(inside)),
      floorToSide: tabRow(0, length, 2, tab(length)),
      panelFoot: tabRow(-outside / 2, outside / 2, 3, Math.min(30, outside / 6)),
      sideFoot: tabRow(0, length, 2, Math.min(30, length / 5)),
    },
  };
}
