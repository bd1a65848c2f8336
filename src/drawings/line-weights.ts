import type { Stroke } from '../model/page.js';

const INK = '#1a1a1a';

/**
 * Widths of the series of ISO 128-2 (0.13, 0.18, 0.25, 0.35 …, from memory). What is cut is twice as wide as what lies
 * behind it; wider, the plies of a board at a third of their size would run together.
 */
const WIDE = 0.35;
const MIDDLE = 0.25;
const NARROW = 0.18;
const THIN = 0.13;

/** The lines of technical drawings, by ISO 128-2 (from memory): dashes and gaps in mm on paper. */
export const lines = {
  cut: { colour: INK, width: WIDE },
  /** What a step brings, and what stood there before it. */
  added: { colour: INK, width: WIDE },
  there: { colour: '#8f8f8f', width: NARROW },
  outline: { colour: INK, width: MIDDLE },
  /** What is seen behind a cut. */
  beyond: { colour: INK, width: NARROW },
  hidden: { colour: INK, width: NARROW, dash: [1.6, 0.8] },
  hatch: { colour: '#4a4a4a', width: THIN },
  /** Another place of something that moves, as a chain line with two dots. */
  moved: { colour: '#4a4a4a', width: NARROW },
  axis: { colour: INK, width: NARROW },
  film: { colour: '#8c1d18', width: WIDE },
  light: { colour: '#b08a2e', width: NARROW },
  way: { colour: '#b5541c', width: WIDE },
  dimension: { colour: INK, width: NARROW },
  leader: { colour: INK, width: NARROW },
} as const satisfies Readonly<Record<string, Stroke>>;

/** Of the bundle of light, below all lines: pale enough for hatching over it. */
export const LIGHT_FILL = '#f7edcf';

/** Words on drawings, mm: 9 pt are 3.175. */
export const LETTERS = { size: 3.2, colour: INK } as const;
