import type { Point } from '../geometry/path.js';

/** A rectangle that is wanted so many times. */
export interface Rectangle {
  readonly width: number;
  readonly height: number;
  readonly count: number;
}

/** Where the lower left corner of one rectangle lies; `turned` by a quarter turn, width and height changed over. */
export interface RectanglePlace {
  /** Index into the rectangles that were given. */
  readonly item: number;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

/** Corners one after the other, the first not repeated. */
export type Ring = readonly Point[];

/** A piece as the packer sees it: flat material with windows, in its own frame. */
export interface Blank {
  /** Anticlockwise. Chords of what is round lie outside it. */
  readonly outline: Ring;
  /** Clockwise; chords of what is round lie inside the window. Other blanks may lie in them. */
  readonly windows: readonly Ring[];
  /** The ways in which it may lie, in quarter turns anticlockwise: 0 to 3. At least one. */
  readonly turns: readonly number[];
  readonly count: number;
}

/** A sheet that is to be had: what of it may be covered, margins taken off already. */
export interface Bed {
  /** Anticlockwise, in the sheet's frame. */
  readonly outline: Ring;
  /** Holes cut already, grown by the margin; clockwise. */
  readonly holes: readonly Ring[];
  /** How many there are; Infinity where more can be bought. */
  readonly count: number;
  /**
   * What taking one costs beside the others, in any unit: a packing is wanted whose sheets cost least in all. A
   * remnant that lies about costs less than its area of a new sheet.
   */
  readonly cost: number;
}

export interface Place {
  /** Index into the blanks. */
  readonly blank: number;
  /** Quarter turns anticlockwise. */
  readonly turn: number;
  /** Lower left corner of the upright rectangle round the turned blank, in the sheet's frame. */
  readonly x: number;
  readonly y: number;
  /** Where it lies in another's window: the index of that place on the same sheet, and of the window. What lies in a window has nothing in its own. */
  readonly within: { readonly place: number; readonly window: number } | null;
}

export interface PackedSheet {
  /** Index into the beds. */
  readonly bed: number;
  readonly places: readonly Place[];
}

/** The largest clear rectangle over the full width or height of a bed: what a maker keeps. */
export interface Offcut {
  /** Index into the sheets. */
  readonly sheet: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

export interface Layout {
  readonly sheets: readonly PackedSheet[];
  readonly offcut: Offcut | null;
}
