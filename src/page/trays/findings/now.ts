import type { Finding } from '../../../index.js';
import { markOf } from '../../mark-of.js';
import type { State } from '../../state.js';
import type { PlacedFinding } from '../../worker/placed-finding.js';

/** What can be said now against the camera that is shown. */
export interface FindingsNow {
  readonly findings: readonly PlacedFinding[];
  /** Whether the proof has been made: until then these are of the figures alone. */
  readonly proven: boolean;
  readonly running: { readonly stage: string; readonly done: number } | null;
}

export function findingsNow({ shown, findings: { proof, planned } }: State): FindingsNow {
  if (shown === null) return { findings: [], proven: false, running: null };
  const mark = markOf(shown.of);
  if (proof.kind === 'done' && proof.of === mark) return { findings: proof.findings, proven: true, running: null };
  const placed = planned?.of === mark ? planned.findings : shown.findings.map(unplaced);
  return { findings: placed, proven: false, running: proof.kind === 'running' && proof.of === mark ? proof : null };
}

const unplaced = (finding: Finding): PlacedFinding => ({ ...finding, parts: [], setup: null, rear: null });
