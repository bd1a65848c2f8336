import type { CameraText } from '../../worker/camera-asked.js';

/** A file that can be taken away, at a place in the browser's memory. */
export interface FileAtHand {
  readonly path: string;
  /** Bytes. */
  readonly size: number;
  readonly url: string;
}

/** What was built, of the design with this mark. */
export interface Harvest {
  readonly of: string;
  /** Of the folder, by their paths in it. */
  readonly files: readonly FileAtHand[];
  /** All of them in one. */
  readonly archive: FileAtHand;
  readonly summary: readonly string[];
  /** What it was asked for: one camera, or so many kits with these prices. */
  readonly kits: Kits;
  /** The camera that stands already, of which only the rest is cut; null where all of it is. */
  readonly since: CameraText | null;
  /** What to heed with the files for the laser. */
  readonly laserCaution: string;
}

/** Kits in place of one camera, as they stand in the fields. */
export interface Kits {
  /** As typed; empty where one camera is built. */
  readonly copies: string;
  readonly prices: { readonly file: string; readonly text: string } | null;
}

export type BuildJob =
  | { readonly kind: 'none' }
  /** It begins when the proof is there. */
  | { readonly kind: 'waiting'; readonly of: string }
  | { readonly kind: 'running'; readonly of: string; readonly stage: string; readonly done: number }
  /** Put aside by the user, or by a change of the design. */
  | { readonly kind: 'stopped'; readonly because: string }
  /** The price file cannot be read; each problem with its place in it. */
  | { readonly kind: 'misread'; readonly problems: readonly string[] }
  /** Rules of level error that the build found broken. */
  | { readonly kind: 'refused'; readonly rules: readonly string[] };

export interface TakeAwayState {
  readonly job: BuildJob;
  /** What was built last; it stays until something newer is. */
  readonly harvest: Harvest | null;
  /** Rules of level error that may be broken. */
  readonly despite: readonly string[];
  readonly kits: Kits;
  /** Whether only that is cut which the camera that was opened to compare with does not have. */
  readonly onlyChanged: boolean;
}

export const firstTakeAway: TakeAwayState = {
  job: { kind: 'none' },
  harvest: null,
  despite: [],
  kits: { copies: '', prices: null },
  onlyChanged: false,
};
