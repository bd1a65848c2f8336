import type { CompareWords, Finding, OutputFile } from '../../index.js';
import type { PickedFile } from '../files.js';

/** A camera as files have it: a design, or the `plan.json` of a build, where `parts.json` may lie beside it. */
export interface CameraText {
  readonly file: string;
  readonly text: string;
  /** By name. */
  readonly beside: Readonly<Record<string, string>>;
}

/** What became of a camera, or why the earlier one cannot be read. */
export type Compared = { readonly refused: string } | { readonly words: CompareWords };

/** One part of a design alone. */
export interface PartAsked {
  readonly id: string;
  /** Of the sheet at hand, as it was typed; empty where it is that of the design. */
  readonly thickness: string;
  /** Files of the pieces at hand; none where it is cut from what the design has. */
  readonly remnants: readonly PickedFile[];
  /** The camera that it is for, where that was opened. */
  readonly since: CameraText | null;
}

/** What is to be said of a part before it is made, or why there is none. */
export type PartSaid = { readonly refused: string } | { readonly findings: readonly Finding[] };

/** A holder that turned up later, as it was typed. */
export interface SpacerAsked {
  /** From its face to the film. */
  readonly depth: string;
  /** What it is called; empty where nobody says. */
  readonly name: string;
  /** Of the sheet at hand; empty where it is that of the design. */
  readonly thickness: string;
}

/** A folder in one archive; null where a rule of level error is broken that nobody waived, or nothing is to be cut. */
export type PartMade =
  | { readonly refused: string }
  | {
      readonly findings: readonly Finding[];
      readonly summary: readonly string[];
      readonly archive: OutputFile | null;
    };
