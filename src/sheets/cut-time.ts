import { length } from '../geometry/path.js';
import type { Sheet } from './sheet.js';

/** How fast the user's laser works on this sheet; speeds in mm/s. */
export interface Pace {
  readonly cutSpeed: number;
  readonly engraveSpeed: number;
  readonly travelSpeed: number;
  /** Before each cut, s. */
  readonly pierceTime: number;
}

/**
 * Minutes that a sheet takes: every line at its speed, the moves between them, and the time to go through the wood at the
 * beginning of every cut. The head is taken to be at full speed at once, so a machine that is slow to start takes longer
 * in letters and fingers.
 */
export function cutMinutes(sheet: Sheet, pace: Pace): number {
  const engraved = sheet.operations.filter(({ layer }) => layer === 'engrave').flatMap(({ paths }) => paths);
  const cuts = sheet.operations.filter(({ layer }) => layer !== 'engrave').flatMap(({ paths }) => paths);
  const strokes = engraved.reduce((sum, { path }) => sum + length(path.vertices, path.closed), 0);
  const seconds =
    sheet.cutLength / pace.cutSpeed +
    strokes / pace.engraveSpeed +
    sheet.travelLength / pace.travelSpeed +
    cuts.length * pace.pierceTime;
  return seconds / 60;
}

/** As people read them: no sheet takes none. */
export const wholeMinutes = (minutes: number): number => Math.max(1, Math.round(minutes));
