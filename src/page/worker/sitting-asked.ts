import type { DiallingWords, ExposureWords } from '../../index.js';

/** What is typed for today, by the keys of the design's `sitting` and of what came out of a sheet: only what has something in it. */
export type Typed = Readonly<Record<string, string | readonly string[]>>;

/** A sitting log as it stands, and the date and time of day that its next entries bear. */
export interface LogGiven {
  readonly file: string;
  readonly text: string;
  readonly at: string;
}

export interface SittingAnswer {
  /** Names of the filter sets of the design. */
  readonly filterSets: readonly string[];
  /** What is wrong with how it was asked for, in the words of the command line; null where nothing is. */
  readonly refused: string | null;
  readonly exposure: SittingExposure | null;
}

export interface SittingExposure {
  readonly words: ExposureWords;
  /** What a log says of it; null without one. */
  readonly dialling: DiallingWords | null;
  /** What is to be added to the log; empty where it says all of it already. */
  readonly append: string;
}

/** The card of a camera: a picture, and the bytes of a page to print. */
export type CardAnswer = { readonly svg: string; readonly pdf: Uint8Array<ArrayBuffer> } | { readonly refused: string };
