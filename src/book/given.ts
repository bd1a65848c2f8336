import type { StepWords } from '../model/build-step.js';
import type { Drawing } from '../model/page.js';
import type { Hardware, Part } from '../model/part.js';
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

/** F6, F7 and F8. */
export const inWords = (ids: readonly string[]): string =>
  ids.length < 2 ? ids.join('') : `${ids.slice(0, -1).join(', ')} and ${ids.at(-1)}`;

/** A line of what a step brings: a part, several that are bought as one thing, or fixings that are no part of their own. */
export interface StepPart {
  readonly ids: readonly string[];
  readonly count: number;
  /** Its number where it is made, and what it is. */
  readonly id: string | null;
  readonly name: string;
}

/** What a step is at a camera that stands already. */
export interface StepSince {
  /** Parts that are cut again: those that come in, and those that came in earlier and are met. */
  readonly brings: readonly string[];
  readonly meets: readonly string[];
  /** Stacks of kept plies and of shims that are made here, or made otherwise, in words. */
  readonly stacks: readonly string[];
  /** Parts that come in, are kept, and bear other lines or words than drawn. */
  readonly otherLines: readonly string[];
}

/** A camera that stands already, of which the sheets hold only what it lacks. */
export interface StandingCamera {
  readonly name: string;
  readonly revision: string;
  /** Number of the part, what it is, why it is cut again. */
  readonly recut: readonly (readonly [string, string, string])[];
  /** Of these, those that stay where they are glued in, and have their opening sawn out. */
  readonly sawn: readonly string[];
  /** What is said of the parts that are kept, those first that are. */
  readonly kept: readonly string[];
  /** Parts that are kept, and bear other lines or words than drawn, that are not to be trusted. */
  readonly otherLines: readonly string[];
  /** Holders of which a kept sole, whose lines are right else, has no index line or number. */
  readonly withoutLine: readonly string[];
  /** Hardware that it does not have; null where nobody knows what it has. */
  readonly hardware: readonly Hardware[] | null;
  /** What is bought and sits fast in a part that is cut again: it goes with the old one. */
  readonly fast: readonly Counted[];
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
  /** Null where the whole camera is built. */
  readonly since: StepSince | null;
}

/** A line of what is bought. */
export interface Bought extends Hardware {
  /** Of which not every piece is used: as measured, so many are. */
  readonly toChooseFrom: boolean;
}

/** What the chapters at the front are made from. */
export interface BookGiven {
  readonly plan: PlanDocument;
  /** Null where the whole camera is built. */
  readonly since: StandingCamera | null;
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
  readonly bought: readonly Bought[];
  /** Chapters on what comes before the assembly, and after it. */
  readonly before: readonly Chapter[];
  readonly after: readonly Chapter[];
}
