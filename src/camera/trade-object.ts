import type { Build } from '../assembly/build.js';
import type { StepWords } from '../model/build-step.js';
import type { Finding } from '../model/finding.js';
import type { Hardware, Part } from '../model/part.js';

/** What each object of the camera offers; its sizing is not in here, for sizes depend on one another (see camera.ts). */
export interface TradeObject<Own> {
  readonly title: string;
  readonly parts: (own: Own) => readonly Part[];
  readonly hardware: (own: Own) => readonly Hardware[];
  /** What is said of it at the bench. */
  readonly steps: (own: Own) => readonly StepWords[];
  readonly checks: readonly ((own: Own, build: Build) => readonly Finding[])[];
}
