import type { StepWords } from '../model/build-step.js';
import type { Drawing } from '../model/page.js';
import type { Part } from '../model/part.js';
import type { PlanDocument } from '../model/plan.js';
import type { Sheet } from '../sheets/sheet.js';
import type { Chapter } from './chapter.js';

/** A part and how many of it are made or bought. */
export interface Counted {
  readonly part: Part;
  readonly count: number;
}

/** A part of which the number is only its name, such as the lens clamp, is called by its name in texts. */
export const isNamedAlike = (id: string, name: string): boolean => id.replaceAll('-', ' ') === name;

/** A line of what a step brings: a part, several that are bought as one thing, or fixings that are no part of their own. */
export interface StepPart {
  readonly ids: readonly string[];
  readonly count: number;
  /** Its number where it is made, and what it is. */
  readonly id: string | null;
  readonly name: string;
}

/** One step of the assembly as the book shows it. */
export interface BookStep {
  readonly number: number;
  readonly title: string;
  readonly words: readonly StepWords[];
  /** What comes in, in the order in which it comes. */
  readonly parts: readonly StepPart[];
  /** Of a later step, that lend a hand in this one. */
  readonly borrowed: readonly Counted[];
  readonly drawing: Drawing | null;
}

/** What the chapters at the front are made from. */
export interface BookGiven {
  readonly plan: PlanDocument;
  /** As the design names it. */
  readonly lens: string;
  /** Such as 5x7, and what the film receives, mm. */
  readonly format: string;
  readonly image: { readonly short: number; readonly long: number };
  readonly parts: readonly Counted[];
  readonly sheets: readonly Sheet[];
  /** Parts that bear no mark of their number. */
  readonly bare: readonly string[];
  readonly steps: readonly BookStep[];
  readonly cover: Drawing;
  /** Of the whole camera, each with what it is to be looked at for. */
  readonly drawings: readonly Drawing[];
  /** To choose from when the register is set, beyond those that are drawn. */
  readonly spareShims: readonly { readonly thickness: number; readonly count: number }[];
  /** Chapters on what comes before the assembly, and after it. */
  readonly before: readonly Chapter[];
  readonly after: readonly Chapter[];
}
