import type { Cited } from './cited.js';

const PRACTICE = 'common practice, no source';

/** What the single holder, loaded from behind, that is cut from the sheet of the camera is built to, mm. */
export const madeHolder = {
  /** Pocket wider than the sheet in it, both sides together. */
  pocketPlay: { value: 0.8, source: PRACTICE },
  /** Wood round the pocket, each side: 10 of land under the lid, and what the lid stands back from the edge. */
  rim: { value: 11, source: PRACTICE },
  /** From the image to the closed end. */
  closedEnd: { value: { least: 18, usual: 20 }, source: PRACTICE },
  /** From the image to the open end, for the velvet that the dark slide runs through. */
  openEnd: { value: { least: 18, usual: 24 }, source: `${PRACTICE}; the longer one is sure to have room` },
  /** Its dark slide is wider than the image, both sides together. */
  slideWider: { value: 12, source: PRACTICE },
  /** The lip holds the sheet by so much at least, each side. */
  lipHolds: { value: 1.5, source: PRACTICE },
  /** Paper; film is thinner, and lies against the same lip. */
  sheetThickness: { value: 0.25, source: PRACTICE },
} as const satisfies Readonly<Record<string, Cited<unknown>>>;
