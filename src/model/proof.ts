import type { RegisterBudget } from './register-budget.js';

/** What was proven of a camera, in figures: what `check --json` prints beside the findings. */
export interface ProofDocument {
  /** Pieces in all set-ups. */
  readonly pieces: number;
  /** Pairs of them whose boxes meet somewhere on the way of the slide, each looked at over the whole of it. */
  readonly pairs: number;
  readonly setups: readonly string[];
  readonly clearances: readonly Clearance[];
  /** How far glass and film of each holder may stand apart. */
  readonly register: readonly RegisterBudget[];
  /** How each thing reached its place, in the order in which the camera is put together. */
  readonly assembly: readonly AssemblyMove[];
}

/** Air between two groups in a direction: how far the second may be pushed before a made piece of it meets one of the first. */
export interface Clearance {
  /** The group that stands, and the one that moves in it. */
  readonly between: readonly [Layer, Layer];
  readonly direction: Direction;
  /** mm; null where nothing is met within the reach of the search, or where it lies on what bears it. */
  readonly air: number | null;
  /** The two pieces that meet first. */
  readonly parts: readonly [string, string] | null;
}

/** The front stands; the rear slides in it; the back turns in the rear; glass, spacers and holders go in and out of the back. */
export type Layer = 'front' | 'rear' | 'back' | 'seated';
export type Direction = 'left' | 'right' | 'up' | 'down';

export interface AssemblyMove {
  readonly step: number;
  readonly title: string;
  readonly pieces: readonly string[];
  /** As the photographer stands: from above, from behind; null where it is laid down first. */
  readonly from: string | null;
}
