import type { Measured } from '../model/lens-bench.js';
import { reachOf95 } from '../statistics/line-doubt.js';

/** The mean of the same thing read several times. */
export interface Repeated {
  readonly value: number;
  /** null with one reading, which does not tell. */
  readonly standardError: number | null;
  readonly freedom: number;
}

/**
 * Mean and standard error, s/√n. Readings that agree better than they can be read say nothing of how true they are, so the
 * error is never less than that of one reading to ± `readTo` (rectangular, JCGM 100:2008, 4.3.7).
 *
 * @param readings at least one
 */
export function meanOf(readings: readonly number[], readTo: number): Repeated {
  const n = readings.length;
  const value = readings.reduce((sum, one) => sum + one, 0) / n;
  if (n < 2) return { value, standardError: null, freedom: 0 };
  const scatter = Math.sqrt(readings.reduce((sum, one) => sum + (one - value) ** 2, 0) / (n - 1) / n);
  const least = readTo / Math.sqrt(3);
  return scatter > least
    ? { value, standardError: scatter, freedom: n - 1 }
    : { value, standardError: least, freedom: Number.POSITIVE_INFINITY };
}

/** What the error of one input does to a figure, in the unit of the figure. */
export interface Share {
  readonly error: number | null;
  readonly freedom: number;
}

/**
 * A figure with the errors of its inputs taken together (law of propagation, JCGM 100:2008, 5.1.2) and their degrees of
 * freedom by the formula of Welch and Satterthwaite (the same, G.4.1). Where one input was read once, the error of the
 * figure is not known.
 */
export function combined(value: number, shares: readonly Share[]): Repeated {
  const squares = shares.flatMap(({ error, freedom }) => (error === null ? [] : [{ square: error * error, freedom }]));
  if (squares.length < shares.length) return { value, standardError: null, freedom: 0 };
  const all = squares.reduce((sum, { square }) => sum + square, 0);
  const bottom = squares.reduce((sum, { square, freedom }) => sum + (square * square) / freedom, 0);
  return {
    value,
    standardError: Math.sqrt(all),
    freedom: bottom > 0 ? (all * all) / bottom : Number.POSITIVE_INFINITY,
  };
}

/** With the interval that follows, for whole degrees of freedom: rounded down, as JCGM 100:2008, G.4.1 asks. */
export const withInterval = ({ value, standardError, freedom }: Repeated): Measured => ({
  value,
  standardError,
  interval: standardError === null ? null : reachOf95(Math.max(1, Math.floor(freedom))) * standardError,
});
