import type { Reciprocity } from '../model/exposure.js';

/**
 * What paper or film loses in a long exposure: the time that must be given for a time that was metered, s. It comes last,
 * on the time that every other factor is in already: 2 s that become 36 s by extension and filter are lengthened as 36 s.
 */

/** Up to here a time is given as metered, s: below it t^p would shorten. Source: "Film reciprocity factors", snowinsummer.co.uk. */
export const LOSS_BEGINS = 1;

interface Pair {
  readonly from: number;
  readonly to: number;
}

/** The time to be given, s, for a metered one. */
export function givenTime(metered: number, reciprocity: Reciprocity): number {
  if ('exponent' in reciprocity) return metered > LOSS_BEGINS ? metered ** reciprocity.exponent : metered;
  const pairs = reciprocity.table.map((row) => ({ from: row.metered, to: row.given }));
  return Math.max(metered, readOff(withBeginning(pairs), metered));
}

/**
 * The metered time, s, that a given one stands for: the inverse of `givenTime`. A long test exposure has its loss in it,
 * and can be multiplied only without.
 */
export function meteredTime(given: number, reciprocity: Reciprocity): number {
  if ('exponent' in reciprocity) return given > LOSS_BEGINS ? given ** (1 / reciprocity.exponent) : given;
  const pairs = reciprocity.table.map((row) => ({ from: row.given, to: row.metered }));
  return Math.min(given, readOff(withBeginning(pairs), given));
}

/** Whether a table has no row as long as this metered time, or none as short where it loses already: a guess, to be tested. */
export function beyondTable(metered: number, reciprocity: Reciprocity): boolean {
  if ('exponent' in reciprocity) return false;
  const times = reciprocity.table.map((row) => row.metered);
  return (
    metered > Math.max(...times) ||
    (metered < Math.min(...times, LOSS_BEGINS) && givenTime(metered, reciprocity) > metered)
  );
}

const NOTHING_LOST: Pair = { from: LOSS_BEGINS, to: LOSS_BEGINS };

/** A table that begins later than the loss does starts from there. */
const withBeginning = (pairs: readonly Pair[]): readonly Pair[] =>
  pairs.every(({ from, to }) => Math.min(from, to) > LOSS_BEGINS) ? [NOTHING_LOST, ...pairs] : pairs;

/**
 * Between two rows the logarithms follow a straight line, as t^p does throughout; beyond the ends the last line is
 * followed on. One row alone has no line: its ratio is kept.
 */
function readOff(pairs: readonly Pair[], from: number): number {
  const after = pairs.findIndex((pair, index) => pair.from >= from || index === pairs.length - 1);
  const [a = NOTHING_LOST, b] = pairs.slice(Math.max(0, after - 1));
  const slope = b === undefined ? 1 : Math.log(b.to / a.to) / Math.log(b.from / a.from);
  return a.to * (from / a.from) ** slope;
}
