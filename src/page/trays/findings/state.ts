import type { PlacedFinding } from '../../worker/placed-finding.js';
import type { Checked } from '../../worker/workbench-tasks.js';

/**
 * How far the proof of a design is, which follows each change in the background.
 * `of` is the mark of the design that it is the proof of; `findingsNow` tells whether that is the camera that is shown.
 */
export type Proof =
  | { readonly kind: 'none' }
  | { readonly kind: 'running'; readonly of: string; readonly stage: string; readonly done: number }
  /** It came to nothing by a mistake of ours, until the next change. */
  | { readonly kind: 'failed'; readonly of: string }
  | ({ readonly kind: 'done'; readonly of: string } & Checked);

export interface FindingsState {
  readonly proof: Proof;
  /** Findings of the plan, which are there at once, with their places; of the design with this mark. */
  readonly planned: { readonly of: string; readonly findings: readonly PlacedFinding[] } | null;
  /** Message of the finding that the camera points at. */
  readonly shown: string | null;
}

export const firstFindings: FindingsState = { proof: { kind: 'none' }, planned: null, shown: null };
