import type { Stroke } from '../model/page.js';

const INK = '#1a1a1a';

/** Width 0.5 for what is cut, half of it for what is seen, less for all that explains: ISO 128-2, its series 0.13 … 2 (from memory). */
const WIDE = 0.5;
const MIDDLE = 0.25;
const NARROW = 0.18;
const THIN = 0.13;

/** The lines of technical drawings, by ISO 128-2 (from memory): dashes and gaps in mm on paper. */
export const lines = {
  cut: { colour: INK, width: WIDE },
  /** What a step brings, and what stood there before it. */
  added: { colour: INK, width: 0.35 },
  there: { colour: '#8f8f8f', width: NARROW },
  outline: { colour: INK, width: MIDDLE },
  hidden: { colour: INK, width: NARROW, dash: [1.6, 0.8] },
  hatch: { colour: '#4a4a4a', width: THIN },
  /** A long-dashed double-dotted line would be the standard's for another place of something that moves; dashes of one length are what both writers know. */
  moved: { colour: '#4a4a4a', width: NARROW, dash: [4, 1] },
  axis: { colour: INK, width: NARROW },
  film: { colour: '#8c1d18', width: 0.35 },
  light: { colour: '#b08a2e', width: NARROW },
  way: { colour: '#b5541c', width: 0.35 },
  dimension: { colour: INK, width: NARROW },
  leader: { colour: INK, width: NARROW },
} as const satisfies Readonly<Record<string, Stroke>>;

/** Of the bundle of light, below all lines: pale enough for hatching over it. */
export const LIGHT_FILL = '#f7edcf';

/** Words on drawings, mm: 9 pt are 3.175. */
export const LETTERS = { size: 3.2, colour: INK } as const;
