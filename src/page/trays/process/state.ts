import type { ProcessAnswer, ProcessCardAnswer } from '../../worker/process-asked.js';
import type { Act, StepClock } from './reckon.js';

/** How the clock looks: as the page does, or dark red on black. */
export type ClockLook = 'paper' | 'safelight';

/** Whether the browser keeps the screen from going to sleep. */
export type Awake = 'kept' | 'none';

/** A process that is open, what becomes of it, and its clock. */
export interface ProcessState {
  readonly open: { readonly file: string; readonly text: string; readonly saved: string } | null;
  /** Name of the holder of the design that the print is processed in; null where the file says all of the tank. */
  readonly holder: string | null;
  /** What was asked last, as a text, so that the same is not asked again. */
  readonly asked: string;
  readonly answer: ProcessAnswer | null;
  /** The card, and the text for which it was asked; null before. */
  readonly card: { readonly asked: string; readonly answer: ProcessCardAnswer | null } | null;
  /** null where none was started. */
  readonly clock: StepClock | null;
  /** Time of day at the last look at the clock, ms. */
  readonly now: number;
  /** Whether the clock lies over the page. */
  readonly atClock: boolean;
  /** What was to be done while nobody could look, and how long that was, s; null where nothing. */
  readonly missed: { readonly acts: readonly Act[]; readonly lapse: number } | null;
  readonly look: ClockLook;
  readonly tone: boolean;
  readonly awake: Awake;
}

export const firstProcess: ProcessState = {
  open: null,
  holder: null,
  asked: '',
  answer: null,
  card: null,
  clock: null,
  now: 0,
  atClock: false,
  missed: null,
  look: 'paper',
  tone: false,
  awake: 'none',
};
