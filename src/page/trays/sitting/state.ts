import type { CardAnswer, SittingAnswer } from '../../worker/sitting-asked.js';

/** A sitting log that is open: it is only ever added to. */
export interface OpenLog {
  readonly file: string;
  readonly text: string;
  /** How much of it was opened or saved. */
  readonly saved: string;
}

/** What differs today from what the design says of a sitting, and what comes of both. */
export interface SittingState {
  /** As it was typed, by the keys of the design's `sitting` and of what came out of a sheet. */
  readonly typed: Readonly<Record<string, string>>;
  readonly log: OpenLog | null;
  /** What was asked last, as a text, so that the same is not asked again. */
  readonly asked: string;
  readonly answer: SittingAnswer | null;
  /** The card, and what it was asked for; null before. */
  readonly card: { readonly asked: string; readonly answer: CardAnswer | null } | null;
}

export const firstSitting: SittingState = { typed: {}, log: null, asked: '', answer: null, card: null };
