import { fitLine } from '../statistics/line-fit.js';

/*
 * How density follows exposure, learned from strips and sheets that were measured: a straight line of density on the
 * logarithm of exposure, through the straight part of the curve alone.
 */

/** One place of a sheet that was measured. */
export interface DensityPoint {
  /** More exposure than the reckoning, stops. */
  readonly given: number;
  readonly density: number;
}

/** One stop, as a logarithm of exposure. */
export const LOG_STOP = Math.log10(2);

export type DensitySlope =
  | {
      /** Density for each tenfold of exposure, and its standard error; negative where exposure makes lighter. */
      readonly slope: number;
      readonly error: number;
      readonly points: number;
    }
  | { readonly refused: string; readonly wrongWay: boolean };

/** Closer together the readings' own error makes the slope, stops. */
const LEAST_SPREAD = 0.25;

/** What a densitometer, or an eye beside a step wedge, is good for: the least scatter that is believed. */
export const READING_ERROR = 0.02;

/** Below this no material is used, density for each tenfold: such readings lie on the toe or the shoulder. */
const FLAT = 0.25;

/** A piece less than half as steep as the steepest has left the straight part. */
const STRAIGHT = 0.5;

/**
 * The slope of a material whose density goes the given way with exposure: 1 on a negative, -1 by reversal. Refused with
 * the reason where too little is known, where all of it lies on toe or shoulder, or where density goes the other way.
 */
export function densitySlope(points: readonly DensityPoint[], direction: 1 | -1): DensitySlope {
  const sorted = merged(points);
  const refuse = (refused: string, wrongWay = false): DensitySlope => ({ refused, wrongWay });
  if (sorted.length < 2) return refuse('one exposure alone has no slope');
  const pieces = sorted.slice(1).map((point, index) => {
    const before = sorted[index] ?? point;
    return ((point.density - before.density) / ((point.given - before.given) * LOG_STOP)) * direction;
  });
  const steepest = Math.max(...pieces);
  const steepestBack = Math.min(...pieces);
  if (-steepestBack > Math.max(steepest, FLAT)) return refuse('density goes the wrong way with exposure', true);
  if (steepest < FLAT)
    return refuse(
      'the density hardly changes with exposure: these readings lie on the toe or the shoulder of the curve',
    );
  const peak = pieces.indexOf(steepest);
  let first = peak;
  let last = peak;
  while ((pieces[first - 1] ?? 0) >= STRAIGHT * steepest) first -= 1;
  while ((pieces[last + 1] ?? 0) >= STRAIGHT * steepest) last += 1;
  const straight = sorted.slice(first, last + 2);
  const fit = fitLine(straight.map(({ given, density }) => ({ x: given * LOG_STOP, y: density })));
  const scatter = Math.max(READING_ERROR, Number.isFinite(fit.deviation) ? fit.deviation : 0);
  return { slope: fit.slope, error: scatter * fit.unitErrors.slope, points: straight.length };
}

/** In the order of exposure; those too close to tell apart as their mean. */
function merged(points: readonly DensityPoint[]): readonly DensityPoint[] {
  const groups: DensityPoint[][] = [];
  for (const point of [...points].sort((a, b) => a.given - b.given)) {
    const group = groups.at(-1);
    if (group !== undefined && point.given - (group[0]?.given ?? 0) < LEAST_SPREAD) group.push(point);
    else groups.push([point]);
  }
  const mean = (group: readonly DensityPoint[], key: keyof DensityPoint) =>
    group.reduce((sum, point) => sum + point[key], 0) / group.length;
  return groups.map((group) => ({ given: mean(group, 'given'), density: mean(group, 'density') }));
}
