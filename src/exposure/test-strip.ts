/*
 * A test strip: one sheet, and the slide of the holder moved across it between exposures. What is exposed first gets every
 * exposure, what is exposed last only the last.
 *
 *     whole stops   t, then t, 2t, 4t more
 *     half stops    t, then each time √2 − 1 = 0.41 of the sum so far
 */

export type StripStep = 'whole' | 'half';

export const stripSteps = ['whole', 'half'] as const satisfies readonly StripStep[];

/** One strip alone is no comparison; more than eight are too narrow to be looked at on a sheet. */
export const FEWEST_STRIPS = 2;
export const MOST_STRIPS = 8;

/**
 * What each strip gets, in stops about the middle one: [-1, 0, 1] for three whole ones. Of an even number the middle is
 * the lower one of the two: who plans four of them asks for more room above.
 */
export function stripStops(step: StripStep, count: number): readonly number[] {
  const size = step === 'whole' ? 1 : 0.5;
  const middle = Math.floor((count - 1) / 2);
  return Array.from({ length: count }, (_, index) => (index - middle) * size);
}

/** What is given one exposure after the other, where the strips are to have had these amounts in all: each less the one before. */
export const partialExposures = (totals: readonly number[]): readonly number[] =>
  totals.map((total, index) => total - (totals[index - 1] ?? 0));
