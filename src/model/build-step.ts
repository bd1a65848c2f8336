import type { StepKey } from './assembly-steps.js';

/** What the book says of a step of the assembly, told by the object that it belongs to. Plain sentences, one act in each. */
export interface StepWords {
  /** Several objects may speak of one step, in the order of the parts list. */
  readonly step: StepKey;
  /** What to do, in order. */
  readonly acts: readonly string[];
  /** What to measure or try before the glue sets, each with its figure. */
  readonly checks?: readonly string[];
  /** Where the work can hurt the builder or the camera. */
  readonly cautions?: readonly string[];
  /** Tools and consumables that the step takes, in the words of the list at the front of the book. */
  readonly needs?: readonly string[];
  /** What is bought for the step and is no part of its own, such as short wood screws: how many, and what as one asks for it. */
  readonly fixings?: readonly { readonly count: number; readonly name: string }[];
  /** Ids of parts of a later step that lend a hand, dry, as a gauge or as pegs. */
  readonly borrows?: readonly string[];
}
