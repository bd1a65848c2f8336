import type { FitName, Fits } from './ladder.js';

/** What was measured on a test piece, mm, and how it had been drawn. */
export interface CouponReadings {
  readonly cut: CutAs;
  /** Across all strips of a comb pushed together; several where several pieces were cut over the bed. */
  readonly comb: { readonly x: readonly number[]; readonly y: readonly number[] };
  /** With the caliper; empty where the sheet was not measured. */
  readonly thickness: readonly number[];
  /** Mark of the narrowest slot that takes the sheet's edge. */
  readonly slot: number | null;
  /** Mark of the sample that felt right. */
  readonly fits: Partial<Fits>;
}

/** How the piece was drawn that the readings come from: the design may have been changed since. */
export interface CutAs {
  readonly kerf: number;
  readonly thickness: number;
  readonly fits: Fits;
  readonly combSum: number;
}

/** What the form asks for, each in the words in which a terminal asks. */
export interface CouponQuestion {
  /** Path of the key in the readings. */
  readonly key: 'comb.x' | 'comb.y' | 'thickness' | 'slot' | `fits.${FitName}`;
  readonly ask: string;
  /** Must be answered; others may be left empty. */
  readonly needed: boolean;
  readonly marks?: readonly number[];
}
