import type { BenchReading } from '../model/lens-bench.js';
import { fitLine, type LineFit } from '../statistics/line-fit.js';

/** The line D = V + f·m through the readings. */
export interface BenchLine {
  readonly fit: LineFit;
  /** Whether readings count unequally, since what was stated of them differs. */
  readonly weighted: boolean;
  /** Standard uncertainty of each distance, that of its magnification in it; null where a reading states none. */
  readonly doubts: readonly number[] | null;
}

/** Uncertainties that agree so far were meant to be the same. */
const ALIKE = 1e-6;

/** Weights hang on f only by the smaller part of them: a handful of rounds is plenty. */
const MOST_ROUNDS = 50;

/**
 * Least squares of the distance on the magnification, since the distance follows from the magnification that was set, and
 * not the other way round. An uncertainty of m moves the distance by f·u(m) (law of propagation, JCGM 100:2008, 5.1.2); f is
 * not known before, so the line is drawn again until it stands still.
 *
 * What was stated only says how the readings count against each other: how well the line is known is told by their scatter.
 */
export function benchLine(readings: readonly BenchReading[]): BenchLine {
  const plain = fitLine(readings.map(({ magnification, distance }) => ({ x: magnification, y: distance })));
  if (readings.some((reading) => reading.distanceDoubt === null && reading.magnificationDoubt === null))
    return { fit: plain, weighted: false, doubts: null };
  let fit = plain;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const doubts = readings.map((reading) => distanceDoubt(reading, fit.slope));
    if (Math.max(...doubts) <= Math.min(...doubts) * (1 + ALIKE)) return { fit: plain, weighted: false, doubts };
    const mean = doubts.length / doubts.reduce((sum, u) => sum + 1 / (u * u), 0);
    const next = fitLine(
      readings.map(({ magnification, distance }, i) => ({
        x: magnification,
        y: distance,
        weight: mean / (doubts[i] ?? 1) ** 2,
      })),
    );
    const still = Math.abs(next.slope - fit.slope) <= ALIKE * ALIKE * Math.abs(next.slope);
    fit = next;
    if (still) break;
  }
  return { fit, weighted: true, doubts: readings.map((reading) => distanceDoubt(reading, fit.slope)) };
}

/** Of a distance as the line sees it, √(u(D)² + (f·u(m))²), mm. What was not stated is taken to be nothing. */
export const distanceDoubt = (
  { distanceDoubt: ofDistance, magnificationDoubt: ofRatio }: BenchReading,
  f: number,
): number => Math.sqrt((ofDistance ?? 0) ** 2 + (f * (ofRatio ?? 0)) ** 2);
