import type { BenchReadings, Measured } from '../model/lens-bench.js';
import { combined, meanOf, type Repeated, type Share, withInterval } from './repeated.js';

/** A rule before a pupil is read to a tenth, each way half of it, mm. */
const READ_TO = 0.05;

/** What the error of an input does to a product or a quotient: as much in proportion. */
const inProportion = (figure: number, { value, standardError, freedom }: Repeated): Share => ({
  error: standardError === null ? null : (figure * standardError) / value,
  freedom,
});

/** Pupil magnification, the rear disc over the front one; null where either was not read. */
export function pupilMagnification({ front, rear }: BenchReadings['pupils']): Repeated | null {
  if (front.length === 0 || rear.length === 0) return null;
  const [entrance, exit] = [meanOf(front, READ_TO), meanOf(rear, READ_TO)];
  const value = exit.value / entrance.value;
  return combined(value, [inProportion(value, entrance), inProportion(value, exit)]);
}

/**
 * The widest stop, N = f over the entrance pupil. That is the bright disc seen from the front; without it, the hole times
 * what the front group enlarges it: f over the bare hole would be too large a number (or too small, for a few lenses).
 */
export function widestStop(f: Repeated, { pupils, hole }: BenchReadings): Measured | null {
  const disc = pupils.front.length > 0 ? meanOf(pupils.front, READ_TO) : holePupil(hole);
  if (disc === null) return null;
  const value = f.value / disc.value;
  return withInterval(combined(value, [inProportion(value, f), inProportion(value, disc)]));
}

function holePupil(hole: BenchReadings['hole']): Repeated | null {
  if (hole === null) return null;
  const { value, standardError, freedom } = meanOf(hole.diameters, READ_TO);
  const enlarged = hole.enlargement ?? 1;
  return { value: value * enlarged, standardError: standardError === null ? null : standardError * enlarged, freedom };
}

/** How much the front group enlarges the hole, where disc and hole were both measured. */
export const frontEnlargement = ({ pupils, hole }: BenchReadings): number | null =>
  pupils.front.length > 0 && hole !== null
    ? meanOf(pupils.front, READ_TO).value / meanOf(hole.diameters, READ_TO).value
    : null;
