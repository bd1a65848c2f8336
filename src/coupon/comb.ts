/** Pieces of a comb: ten, so that a builder divides in the head. */
export const STRIPS = 10;

/**
 * The comb: ten strips, each cut free by a loop of its own and pushed together afterwards. Every strip loses half a
 * cut at either edge, so a row of n of them is short of its drawn length by n cuts.
 *
 *      | k/2 | strip, w - k | k/2 |  web  | k/2 | strip, w - k | k/2 |
 *      |<------ drawn, w -------->|       |<------ drawn, w -------->|
 *
 * It is not cut as one row with shared lines: then the same reading would have to be divided by n - 1, n or n + 1,
 * according to which of the outer edges were cut, and the sheets hold closed loops with a web between them anyway.
 *
 * @param drawn sum of the widths of the cut lines, mm
 * @param sum what the caliper shows across all strips, mm
 * @returns full width of a cut, mm; below 0 where the reading cannot be right
 */
export const kerfOfComb = (drawn: number, sum: number, cuts = STRIPS): number => (drawn - sum) / cuts;

/** A workshop caliper is right to this, each way, and shows hundredths, mm. Common practice, no source. */
const CALIPER = 0.02;
const SHOWN = 0.01;

/** Half of what lies between the limits of an even spread, by root 3: its standard deviation (GUM, 4.3.7, from memory). */
const evenly = (half: number): number => half / Math.sqrt(3);

/** 95 of 100 values of an even spread lie within so many of its standard deviations: 0.95 root 3. */
const COVERAGE = 0.95 * Math.sqrt(3);

/** How well a kerf is known, each way, mm. */
export interface KerfDoubt {
  /** Standard uncertainty of the mean of both combs. */
  readonly standard: number;
  /** Half of the interval that holds the true kerf in at least 95 of 100 readings. */
  readonly interval: number;
}

/**
 * What the caliper leaves in doubt. Its error and the rounding of what it shows are divided by the cuts as the reading
 * is, and the kerf is rounded once more when it is written. Both combs are read with one caliper, whose error may be
 * the same for both: then their mean is known no better than one of them, and so it is reckoned here. Where the errors
 * are independent the interval holds the kerf still oftener.
 */
export function kerfDoubt(cuts = STRIPS): KerfDoubt {
  const reading = evenly(CALIPER) ** 2 + evenly(SHOWN / 2) ** 2;
  const standard = Math.sqrt(reading / (cuts * cuts) + evenly(KERF_STEP / 2) ** 2);
  return { standard, interval: COVERAGE * standard };
}

/** A kerf is written to the micrometre. */
export const KERF_STEP = 0.001;

/** How far a caliper's reading may be from the truth, mm. */
export const caliperError = CALIPER;
