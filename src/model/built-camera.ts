import type { Point } from '../geometry/path.js';
import type { Join } from './part.js';
import type { PlanDocument } from './plan.js';

/** What is known of a camera that was planned or built: its figures, and what its parts are like. */
export interface BuiltCamera {
  readonly plan: BuiltPlan;
  readonly parts: readonly BuiltPart[];
}

/** Of a plan, what cameras are compared by; the rest is carried along as it stands. */
export type BuiltPlan = Pick<
  PlanDocument,
  'name' | 'revision' | 'optics' | 'slide' | 'holders' | 'groundGlass' | 'spacers' | 'tailboard' | 'lensBoard'
> & {
  /** Where it is known. */
  readonly hardware?: PlanDocument['hardware'];
};

export interface BuiltPart {
  readonly id: string;
  readonly name: string;
  readonly count: number;
  /** With the thickness: plywood-4.05. */
  readonly material: string;
  readonly thickness: number;
  /** Digest of outline and holes, or of what is printed. */
  readonly shape: string;
  /** Digest of scales, lines and words; null where there are none. */
  readonly engraved: string | null;
  /** Of a part cut from sheet, where it is known: corners, arcs flattened. */
  readonly edges: Edges | null;
  /** What it lies against, as far as that is known. */
  readonly joins: readonly Pick<Join, 'to' | 'by'>[];
}

export interface Edges {
  readonly outline: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
}
