import type { BenchSheet } from '../../../model/bench-sheet.js';
import type { CellFault, LensFitted, LensWritten } from '../../worker/lens-asked.js';

/** Readings on the bench, as they are typed, and the lens that comes of them. */
export interface LensState {
  readonly sheet: BenchSheet;
  /** As it was last opened or saved. */
  readonly saved: BenchSheet;
  /** What its files are called, without an ending. */
  readonly file: string;
  /** How a row says the size of the image. */
  readonly sizes: 'lengths' | 'ratio';
  /** Whether the columns of the uncertainties are shown. */
  readonly doubts: boolean;
  /** Magnifications to predict the place of the film at, between commas. */
  readonly at: string;
  /** Of the last readings that a lens could be had of; null before the first. */
  readonly fitted: LensFitted | null;
  readonly faults: readonly CellFault[];
  /** What was put into the design; null before, and again when a reading changes. */
  readonly written: LensWritten | null;
  /** Why a file could not be opened, or the design not written. */
  readonly trouble: string | null;
}

/** Three images are the fewest that tell how far off they are. */
const FEWEST = 3;

const freshSheet: BenchSheet = {
  name: '',
  readings: Array.from({ length: FEWEST }, () => ({})),
  pupils: { front: '', rear: '' },
  coverage: [],
  hole: { diameter: '', enlargement: '' },
};

export const firstLens: LensState = {
  sheet: freshSheet,
  saved: freshSheet,
  file: 'bench',
  sizes: 'lengths',
  doubts: false,
  at: '',
  fitted: null,
  faults: [],
  written: null,
  trouble: null,
};
