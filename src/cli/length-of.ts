import type { readFilmDepth } from '../index.js';
import { EXIT, Stop } from './stop.js';

/** The length that was typed behind an option. */
export function lengthOf(option: string, text: string, read: typeof readFilmDepth): number {
  const reading = read(text);
  if ('value' in reading) return reading.value;
  throw new Stop(EXIT.wrongCall, `${option}: ${reading.reason} ${reading.accepted}`);
}
