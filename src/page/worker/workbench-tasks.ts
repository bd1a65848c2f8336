import type { Finding, LightProof, OutputFile } from '../../index.js';
import type { ProofDocument } from '../../model/proof.js';
import type { TakenOut } from '../../model/shown.js';
import type { CameraText } from './camera-asked.js';
import type { PlacedFinding } from './placed-finding.js';
import type { DesignText } from './questions.js';

/** What the whole check came to. */
export interface Checked {
  readonly findings: readonly PlacedFinding[];
  /** null where there was no camera to put together. */
  readonly document: ProofDocument | null;
  /** How it comes apart again; null where nothing was put together. */
  readonly apart: TakenOut | null;
  /** A drawing of each leak, as SVG. */
  readonly leaks: readonly OutputFile[];
}

/** What was built: the files of the folder, and all of them in one archive. */
export interface Built {
  readonly files: readonly OutputFile[];
  readonly archive: OutputFile;
  readonly findings: readonly Finding[];
  readonly summary: readonly string[];
  /** What to heed with the files for the laser. */
  readonly laserCaution: string;
}

/** Kits in place of one camera, as they were typed. */
export interface KitsWanted {
  readonly copies: number;
  readonly prices: { readonly file: string; readonly text: string } | null;
}

/** To the worker that proves and builds. Of a check, the light is handed in when it was found. */
export type ToWorkbench =
  | { readonly kind: 'check'; readonly given: DesignText }
  | { readonly kind: 'light'; readonly light: LightProof | null }
  | {
      readonly kind: 'build';
      readonly given: DesignText;
      readonly kits: KitsWanted | null;
      /** The camera that stands already: what it has is not cut. */
      readonly since: CameraText | null;
      readonly despite: readonly string[];
      readonly light: LightProof | null;
    };

export type FromWorkbench =
  | { readonly kind: 'progress'; readonly stage: string; readonly done: number }
  /** All of a check is done that needs no light. */
  | { readonly kind: 'ready' }
  | { readonly kind: 'checked'; readonly checked: Checked }
  | { readonly kind: 'built'; readonly built: Built }
  /** What was typed for the kits cannot be taken; each problem with its place in the price file. */
  | { readonly kind: 'refused'; readonly problems: readonly string[] }
  | { readonly kind: 'mistake'; readonly words: string };

/** To and from the worker that looks for light: null where there is no camera to look into. */
export type ToLight = DesignText;
export type FromLight =
  | { readonly kind: 'progress'; readonly done: number }
  | { readonly kind: 'light'; readonly light: LightProof | null }
  | { readonly kind: 'mistake'; readonly words: string };
