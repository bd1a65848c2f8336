import type { ShownSheets } from '../../../model/shown-sheets.js';

/** What the page keeps for this tray. */
export interface SheetsState {
  /** Mark of the design that the sheets are of; null before the first. */
  readonly of: string | null;
  /** null where there is no camera to cut. */
  readonly shown: ShownSheets | null;
  /** Every piece, and the sheet that it lies on. */
  readonly places: readonly PieceOnSheet[];
  /** How far the search for a better layout is, 0 to 1; null where none is under way. */
  readonly search: number | null;
  /** The sheet that is opened large, and whether the tray had taken the room of the camera before. */
  readonly open: { readonly sheet: string; readonly spreadBefore: boolean } | null;
  /** Of the opened sheet: 1 where all of it is seen. */
  readonly zoom: number;
  /** A part chosen elsewhere that the tray has still to bring into sight, and whether the focus goes there with it. */
  readonly sought: { readonly part: string; readonly led: boolean } | null;
  /** Whether lines have the colours by which the laser's program knows them. */
  readonly asCut: boolean;
}

export interface PieceOnSheet {
  readonly sheet: string;
  readonly part: string;
  /** Counted from 1. */
  readonly instance: number;
}

export const firstSheets: SheetsState = {
  of: null,
  shown: null,
  places: [],
  search: null,
  open: null,
  zoom: 1,
  sought: null,
  asCut: false,
};
