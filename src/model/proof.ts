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
  /** Every way in that light would take, with the turns and the land that shut it. */
  readonly joints: readonly LightJoint[];
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

/** A way in that light would take, measured on a section through the placed parts. */
export interface LightJoint {
  readonly joint: string;
  /** Ids of the parts on both sides of the way. */
  readonly parts: readonly string[];
  /** Times that light must change its direction on the way in, and into the joint where nothing shines along it. */
  readonly turns: number;
  /** The longest straight stretch between wood and wood, mm; of a glue line its whole length. */
  readonly land: number;
  /** Limits: section 11 of the camera's description, common practice. */
  readonly needed: { readonly turns: number; readonly land: number };
  readonly shutBy: string;
  /** The set-up that it was measured in. */
  readonly setup: string;
  /** Bands of felt across the way. */
  readonly felt: number;
}
