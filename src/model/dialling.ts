import type { ColourPack, Process } from './sitting-log.js';

/** One exposure of a test strip, given after the slide was moved on by a strip. */
export interface StripExposure {
  /** More exposure than was reckoned that this strip has got in the end, stops. */
  readonly dialled: number;
  /** What is given now; null where it is given by the other of the two. */
  readonly pops: number | null;
  /** s. */
  readonly time: number | null;
}

/** What a sitting log adds to an exposure: which sheet it is for, and why it is as it is. What does not apply is null. */
export interface Dialling {
  readonly log: string;
  readonly sheet: number;
  readonly process: Process;
  readonly paper: string | null;
  readonly batch: string | null;
  /** Whether anything was added to the log. */
  readonly written: boolean;
  /** The sheet whose result was written into the log now; null where none was. */
  readonly resultOf: { readonly sheet: number; readonly process: Process; readonly batch: string | null } | null;
  /** More exposure than was reckoned, stops; of a strip its middle. */
  readonly dialled: number;
  /** Against the sheet or strip that it starts from, stops. */
  readonly change: number | null;
  /** Whether the setting is within a third of a stop already. */
  readonly done: boolean;
  /** How likely this sheet comes within a third of a stop, 0 to 1. */
  readonly chance: number | null;
  readonly colourFilters: ColourPack;
  /** In the order in which they are given; empty where the sheet is exposed as a whole. */
  readonly strip: readonly StripExposure[];
  readonly reasoning: readonly string[];
  readonly remarks: readonly string[];
  /** What of the log was passed over. */
  readonly notes: readonly string[];
}
