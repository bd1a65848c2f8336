import type { ProcessWords } from '../../index.js';
import type { StepSheet, TankFigures } from '../../model/step-sheet.js';

/** A process as the page holds it, and what the design knows of the tank. */
export interface ProcessText {
  readonly file: string;
  readonly text: string;
  readonly tank: TankFigures | null;
}

/** The sheet of a process, or what is wrong with the file, in the words of the command line. */
export type ProcessAnswer =
  | { readonly problems: readonly string[] }
  | { readonly sheet: StepSheet; readonly words: ProcessWords };

/** The card: a picture, and the bytes of a page to print. */
export type ProcessCardAnswer =
  | { readonly svg: string; readonly pdf: Uint8Array<ArrayBuffer> }
  | { readonly refused: string };
