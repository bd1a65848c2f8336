import type { PlanDocument } from './plan.js';

/** How one figure of the plan came about: what `explain --json` prints. Lengths in mm, masses in kg. */
export interface Explanation {
  readonly schema: 1;
  readonly name: PlanDocument['name'];
  readonly revision: PlanDocument['revision'];
  /** Where it stands in the plan: slide.rearBoxInside. */
  readonly figure: string;
  readonly what: string;
  readonly symbol: string;
  /** null where the camera has none; a word or yes and no where the plan has that. */
  readonly value: number | string | boolean | null;
  readonly unit: string;
  /** The number that decides, where the figure itself is a word. */
  readonly decidedBy: number | null;
  /** Why there is none, or how a word is decided; null for a number. */
  readonly because: string | null;
  readonly formula: FormulaText | null;
  /** The design key that it is, where nothing is reckoned. */
  readonly key: KeyText | null;
  readonly inputs: readonly ExplainedInput[];
  readonly governs: string | null;
  /** The claims behind the one that governs, the nearest first. */
  readonly behind: readonly ExplainedClaim[];
  /** Keys of the design that move it, those that matter most first. */
  readonly changes: readonly Change[];
  /** How many other keys move it, each less than those. */
  readonly otherChanges: number;
  readonly source: string;
}

/** A formula with symbols, and the same with the numbers put in. */
export interface FormulaText {
  readonly symbols: string;
  readonly numbers: string;
}

export interface KeyText {
  readonly path: string;
  /** Whether the user wrote it. */
  readonly typed: boolean;
  /** Where a value that the key stands for comes from; null where the key says it itself. */
  readonly source: string | null;
}

/** A number that was put into a formula. */
export interface ExplainedInput {
  readonly symbol: string;
  readonly value: number;
  readonly unit: string;
  readonly what: string;
  readonly key: KeyText | null;
  /** The figure of the plan that it is, to be explained in its turn. */
  readonly figure: string | null;
  readonly formula: FormulaText | null;
  /** Of several claims the one that governs, and the next behind it. */
  readonly governs: string | null;
  readonly next: { readonly because: string; readonly distance: number } | null;
  readonly inputs: readonly ExplainedInput[];
  readonly source: string | null;
}

export interface ExplainedClaim {
  readonly because: string;
  readonly value: number;
  /** By how much the governing claim stands before it. */
  readonly distance: number;
  readonly formula: FormulaText;
  readonly inputs: readonly ExplainedInput[];
  readonly source: string;
}

/** What a figure does when one key of the design is changed and the whole camera planned anew. */
export interface Change {
  readonly path: string;
  readonly what: string;
  readonly typed: boolean;
  readonly value: number;
  readonly unit: string;
  /** By so much the key was changed, to the figures with which it is written. */
  readonly step: number;
  /** What that does to the figure, more of the key and less of it; null where no such camera can be planned. */
  readonly more: number | null;
  readonly less: number | null;
}

/** The figures that can be explained: what `explain --json` prints without a name. */
export interface FigureList {
  readonly schema: 1;
  readonly name: PlanDocument['name'];
  readonly revision: PlanDocument['revision'];
  readonly figures: readonly Pick<Explanation, 'figure' | 'what' | 'value' | 'unit'>[];
}
