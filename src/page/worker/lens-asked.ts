import type { ChangedKey, Finding, LensWords } from '../../index.js';
import type { BenchSheet } from '../../model/bench-sheet.js';
import type { LensDocument } from '../../model/lens-bench.js';
import type { Page } from '../../model/page.js';

/** What is wrong, and with which cell of the readings: `readings[3].distance`; `at` with the magnifications asked for. */
export interface CellFault {
  readonly path: string;
  readonly what: string;
  readonly accepted: string;
}

export interface LensFitted {
  readonly lens: LensDocument;
  readonly words: LensWords;
  /** What the readings leave over, drawn. */
  readonly page: Page;
}

/** The figures in a design, and what its own rules say of them. */
export interface LensWritten {
  readonly text: string;
  readonly changed: readonly ChangedKey[];
  readonly findings: readonly Finding[];
}

export type LensAnswer =
  | { readonly faults: null; readonly fitted: LensFitted; readonly written: LensWritten | null }
  | { readonly faults: readonly CellFault[] };

/** A sheet that was opened, or why it was not. */
export type BenchOpened = { readonly sheet: BenchSheet } | { readonly trouble: string };

export type BenchForm = 'csv' | 'yaml' | 'svg';
