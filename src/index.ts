import type { Design } from './design/design.js';
import type { Finding } from './model/finding.js';
import type { PlanDocument, PlanSpacer } from './model/plan.js';

export type { Design } from './design/design.js';
export { slugOf } from './design/names.js';
export { type Problem, printProblem } from './design/problem.js';
export { readDesign } from './design/read.js';
export { starter } from './design/starter.js';
export { type Colour, findingsPage, planPage } from './files/plan-page.js';
export type { Finding } from './model/finding.js';
export type { PlanDocument, PlanSpacer } from './model/plan.js';
export { formats } from './standards/formats.js';
export { parseLength } from './units/length.js';

export interface OutputFile {
  /** Relative to the output folder, steps parted by `/`. */
  readonly path: string;
  readonly bytes: Uint8Array;
}

export interface Progress {
  readonly stage: string;
  /** From 0 to 1. */
  readonly done: number;
}

export interface BuildResult {
  readonly files: readonly OutputFile[];
  readonly plan: PlanDocument;
  readonly findings: readonly Finding[];
  readonly summary: readonly string[];
}

/** A holder of the design by its name, or with `filmDepth` (mm) one that the design does not know. */
export interface SpacerWanted {
  readonly name: string;
  readonly filmDepth?: number;
}

export interface SpacerResult {
  readonly spacer: PlanSpacer;
  readonly files: readonly OutputFile[];
  readonly findings: readonly Finding[];
  readonly summary: readonly string[];
}

export interface LoadedWorkshop {
  readonly check: (
    design: Design,
    options: { readonly onProgress: (progress: Progress) => void },
  ) => readonly Finding[];
  readonly build: (
    design: Design,
    options: { readonly despite: readonly string[]; readonly onProgress: (progress: Progress) => void },
  ) => BuildResult;
  readonly spacer: (design: Design, wanted: SpacerWanted) => SpacerResult;
}

export const planDesign = (_design: Design): { readonly plan: PlanDocument; readonly findings: readonly Finding[] } =>
  missing();
export const loadWorkshop = async (): Promise<LoadedWorkshop> => missing();

function missing(): never {
  throw new Error('this stage is not built yet');
}
