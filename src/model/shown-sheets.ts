import type { Box } from '../geometry/path.js';
import type { Finding } from './finding.js';

/** What a screen shows of the sheets as they will be cut: pictures with y down, in mm, as path data of SVG. */
export interface ShownSheets {
  /** At once: the first layout that is found, no marks on the parts. Sought: as they are built, marks and all. */
  readonly layout: 'at once' | 'sought';
  readonly sheets: readonly ShownSheet[];
  /** How many sheets of what, what is used and left, how far the beam goes and for how long; a line each. */
  readonly summary: readonly string[];
  /** What finds no room, and what else can be said against a layout. */
  readonly findings: readonly Finding[];
  /** For whoever starts the laser. */
  readonly caution: string;
}

export interface ShownSheet {
  readonly name: string;
  readonly material: string;
  readonly width: number;
  readonly height: number;
  /** The file of the piece that it is cut from, where it is no whole sheet. */
  readonly remnant: string | null;
  /** Its own edge, and the holes that a remnant has. */
  readonly wood: string;
  /** Area of the parts over area of the rectangle round it, 0 to 1. */
  readonly use: number;
  /** Cuts without engraving, mm. */
  readonly cutLength: number;
  readonly minutes: number;
  readonly parts: readonly ShownOnSheet[];
  /** What the laser does, in cutting order. */
  readonly operations: readonly { readonly layer: string; readonly colour: string; readonly path: string }[];
  /** What stays clear, y down. */
  readonly offcut: (Pick<Box, 'left' | 'right'> & { readonly top: number; readonly bottom: number }) | null;
}

/** A piece where it lies on a sheet. */
export interface ShownOnSheet {
  readonly part: string;
  readonly name: string;
  /** Counted from 1, of so many. */
  readonly instance: number;
  readonly count: number;
  /** Outline and holes as it will be, the width of the cut left out; evenodd. */
  readonly shape: string;
  /** Where its number has most room, and the largest letters that fit there; mm. */
  readonly label: { readonly x: number; readonly y: number; readonly size: number };
  /** Whether it lies in the window of another part. */
  readonly nested: boolean;
}
