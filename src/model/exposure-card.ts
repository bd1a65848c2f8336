import type { SittingDocument } from './sitting.js';

/** What rides with the camera: the exposures for the distances and the filter sets of its design. Lengths in mm. */
export interface ExposureCard {
  readonly camera: { readonly name: string; readonly revision: string; readonly lens: string };
  /** From the lens seat to the film at infinity. */
  readonly flangeDistance: number;
  /** Exposure index; null where nobody says. */
  readonly speed: number | null;
  readonly paper: string | null;
  readonly process: 'negative' | 'reversal';
  /** Energy of one pop at full power, J. */
  readonly flashMost: number | null;
  /** In the order of their columns; null is the column without a set. */
  readonly sets: readonly (string | null)[];
  /** Nearest first; an exposure for each set. */
  readonly rows: readonly CardRow[];
  /** What had to be taken for granted, in sentences. */
  readonly assumed: readonly string[];
  /** What the photographer has to look out for, in sentences. */
  readonly warnings: readonly string[];
}

export interface CardRow {
  readonly exposures: readonly SittingDocument[];
}
