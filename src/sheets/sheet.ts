import type { Path } from '../geometry/path.js';
import type { SheetRemnant } from './stock.js';

/** What the laser does, in cutting order: what lies in a window is cut free before the window is. */
export const layers = ['engrave', 'cut-inside', 'cut-nested', 'cut-window', 'cut-outside'] as const;

export type Layer = (typeof layers)[number];

/** Where a part lies: x, y (from the sheet's lower left corner) and rotation (rad, anticlockwise) take its own frame to the sheet. */
export interface Placed {
  readonly part: string;
  /** Counted from 1. */
  readonly instance: number;
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
}

export interface CutPath {
  /** part.instance.n */
  readonly id: string;
  readonly path: Path;
}

export interface Operation {
  readonly layer: Layer;
  /** In cutting order; each path begins where the head comes down. */
  readonly paths: readonly CutPath[];
}

/** A sheet as the laser sees it: lines for the beam, y up, the face grain along x. */
export interface Sheet {
  /** material-n: what its files are called. */
  readonly name: string;
  readonly material: string;
  readonly thickness: number;
  /** Of a remnant, of the rectangle round it. */
  readonly width: number;
  readonly height: number;
  /** Where it is no whole sheet: the piece that it is cut from. */
  readonly remnant?: SheetRemnant;
  /** It is there already, and need not be bought. */
  readonly atHand?: true;
  /** Least distance of a cut line from the sheet's edge. */
  readonly margin: number;
  /** Least distance between the cut lines of two parts. */
  readonly spacing: number;
  readonly placed: readonly Placed[];
  /** All five, in cutting order, some of them empty. */
  readonly operations: readonly Operation[];
  /** The parts less their holes, mm². */
  readonly usedArea: number;
  /** Cuts without engraving. */
  readonly cutLength: number;
  /** Beam off, in straight moves from the lower left corner. */
  readonly travelLength: number;
}
