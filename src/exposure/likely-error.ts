import { studentShare } from '../statistics/student-t.js';

/*
 * How far a series of sheets was off, from what an eye made of them. An eye judges in half stops, and on a scale of its
 * own: with a hard paper one stop looks like more than one, with a soft one like less. Neither the error nor the scale is
 * known, so both are: every pair of them is weighed by how well it explains what was seen (Bayes' rule on a grid).
 *
 *     asked for = scale · (right − given) ± noise, rounded to half stops
 */

/** One sheet that an eye has judged. All in stops, more exposure positive. */
export interface SeenSheet {
  /** What it was given more than the first sheet of the series. */
  readonly given: number;
  /** What it seemed to ask for more lies between these two; infinite where only one side is known. */
  readonly asks: readonly [least: number, most: number];
}

/** How likely each error of the series is; the shares sum to 1. */
export interface LikelyError {
  /** What the first sheet would have needed more, stops: the middles of cells of even width. */
  readonly errors: readonly number[];
  readonly shares: readonly number[];
  /** How likely the scale is none of those that are expected, 0 to 1, and the mean of those others. */
  readonly unexpected: { readonly share: number; readonly scale: number };
}

/** Width of a cell, stops: an eighth of the third that is aimed for. */
const CELL = 1 / 24;

/** A reckoning that starts from a meter or a tested flash is off by two stops at most, all of them as likely. */
const EXPECTED_ERROR = 2;
/** What is further off is there, and rare: each so many stops beyond make it 2.7 times rarer. It is found, only later. */
const ERROR_TAIL = 0.3;
const FARTHEST_ERROR = 7;

/** A stop looks like 0.7 to 1.3 stops: the contrast of paper and eye; beyond that rarer, as above. */
const EXPECTED_SCALE = [0.7, 1.3] as const;
const SCALE_TAIL = 0.05;
export const FLATTEST_SCALE = 0.4;
export const STEEPEST_SCALE = 2;
const SCALE_STEPS = 32;
const SCALES = Array.from(
  { length: SCALE_STEPS + 1 },
  (_, index) => FLATTEST_SCALE + (index * (STEEPEST_SCALE - FLATTEST_SCALE)) / SCALE_STEPS,
);

/** Standard deviation of a judgement before it is rounded, stops. */
const NOISE = 0.1;

/** Nobody is always right: a slip of any size has at least this share, so that one sheet never settles against all others. */
const SLIP = 1e-4;

/** So many standard deviations out the share is 0 or 1 to anything that matters here. */
const FAR = 6;

const errors = Array.from(
  { length: Math.round((2 * FARTHEST_ERROR) / CELL) },
  (_, index) => -FARTHEST_ERROR + (index + 0.5) * CELL,
);

/** The scales are steps of a twentieth: their ends are meant, whatever floating point makes of them. */
const expected = (scale: number): boolean =>
  scale > EXPECTED_SCALE[0] - CELL / 2 && scale < EXPECTED_SCALE[1] + CELL / 2;

const fading = (beyond: number, tail: number): number => (beyond <= 0 ? 1 : Math.exp(-beyond / tail));

/** How well each pair explains what was seen: for each error a list by scale. */
const weigh = (sheets: readonly SeenSheet[]): readonly (readonly number[])[] =>
  errors.map((error) =>
    SCALES.map((scale) => {
      let weight = fading(Math.max(EXPECTED_SCALE[0] - scale, scale - EXPECTED_SCALE[1]), SCALE_TAIL);
      for (const { given, asks } of sheets) {
        const seen = scale * (error - given);
        weight *= shareBelow((asks[1] - seen) / NOISE) - shareBelow((asks[0] - seen) / NOISE) + SLIP;
      }
      return weight * fading(Math.abs(error) - EXPECTED_ERROR, ERROR_TAIL);
    }),
  );

export function likelyError(sheets: readonly SeenSheet[]): LikelyError {
  const pairs = weigh(sheets);
  const weights = pairs.map((row) => row.reduce((sum, weight) => sum + weight, 0));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const strange = SCALES.map((scale, column) => ({ scale, column }))
    .filter(({ scale }) => !expected(scale))
    .map(({ scale, column }) => ({ scale, share: pairs.reduce((sum, row) => sum + (row[column] ?? 0), 0) / total }));
  const share = strange.reduce((sum, one) => sum + one.share, 0);
  return {
    errors,
    shares: weights.map((weight) => weight / total),
    unexpected: { share, scale: strange.reduce((sum, one) => sum + one.scale * one.share, 0) / share },
  };
}

const shareBelow = (deviations: number): number =>
  deviations <= -FAR ? 0 : deviations >= FAR ? 1 : studentShare(deviations, Number.POSITIVE_INFINITY);

/** How sure it is that a sheet that is given so much more than the first comes within so many stops of the right exposure. */
export const chanceWithin = ({ errors, shares }: LikelyError, given: number, within: number): number =>
  shares.reduce((sum, share, index) => sum + share * overlap(errors[index] ?? 0, given, within), 0);

/** The part of a cell that lies inside. */
const overlap = (middle: number, given: number, within: number): number => {
  const inside = Math.min(middle + CELL / 2, given + within) - Math.max(middle - CELL / 2, given - within);
  return Math.max(0, Math.min(1, inside / CELL));
};

/** Settings as good as the best to this share are the same to us; the one nearest the mean error is taken. */
const AS_GOOD = 0.002;

/**
 * The setting, in stops more than the first sheet, that most likely comes within so many stops of the right exposure.
 *
 * @param reach least and most that may be given
 */
export function likeliestSetting(
  likely: LikelyError,
  within: number,
  reach: readonly [least: number, most: number],
): { readonly given: number; readonly chance: number } {
  const mean = likely.errors.reduce((sum, error, index) => sum + error * (likely.shares[index] ?? 0), 0);
  const steps = Math.round((reach[1] - reach[0]) / CELL);
  const settings = Array.from({ length: steps + 1 }, (_, index) => {
    const given = reach[0] + index * CELL;
    return { given, chance: chanceWithin(likely, given, within) };
  });
  const best = Math.max(...settings.map(({ chance }) => chance));
  const good = settings.filter(({ chance }) => chance >= best - AS_GOOD);
  return good.reduce((kept, one) => (Math.abs(one.given - mean) < Math.abs(kept.given - mean) ? one : kept));
}

/** The stretch of errors that holds so much of all likelihood, as much left out at one end as at the other. */
export function likelyStretch({ errors, shares }: LikelyError, share: number): readonly [least: number, most: number] {
  const quantile = (wanted: number) => {
    let sum = 0;
    for (const [index, error] of errors.entries()) {
      sum += shares[index] ?? 0;
      if (sum >= wanted) return error;
    }
    return FARTHEST_ERROR;
  };
  return [quantile((1 - share) / 2), quantile((1 + share) / 2)];
}
