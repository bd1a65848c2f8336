import type { BenchReading, LensOutlier } from '../model/lens-bench.js';
import { studentQuantile } from '../statistics/student-t.js';
import { inch } from '../units/length.js';
import { type BenchLine, benchLine } from './bench-line.js';

/** In one bench of twenty without a fault the test points at a reading all the same. */
const LEVEL = 0.05;

/** A reading that the line follows so far has no residual to be judged by. */
const PULLS_ALL = 1 - 1e-9;

/** Of the largest distance: what the arithmetic leaves of readings that were worked out and lie on the line exactly. */
const ARITHMETIC = 1e-9;

/** Steps in which a rule or a calliper is read, the coarsest first, mm: tenths and their like, and fractions of an inch. */
const STEPS = [1, 0.5, 0.25, 0.1, 0.05, 0.02, 0.01, ...[8, 16, 32, 64].map((part) => inch / part)].sort(
  (a, b) => b - a,
);

/** A reading is taken to be turned over where that brings it ten times nearer to the line of the others. */
const MUCH_NEARER = 10;

export const OUTLIER_TEST = 'externally studentised residuals, Bonferroni, 5 %';

export interface Outliers {
  /** What a studentised residual may be at most; null with fewer than four readings, which judge nothing. */
  readonly critical: number | null;
  readonly found: readonly LensOutlier[];
}

/**
 * The step in which the distances were read, the coarsest that all of them are multiples of; nothing where there is none.
 * Readings that lie on a line more closely than that do so by chance.
 */
function grainOf(readings: readonly BenchReading[]): number {
  const isOf = (step: number) =>
    readings.every(({ distance }) => Math.abs(distance / step - Math.round(distance / step)) <= ON_THE_STEP);
  return STEPS.find(isOf) ?? 0;
}

/** Of a step: what the arithmetic leaves of a decimal or an inch. */
const ON_THE_STEP = 1e-6;

/**
 * Readings that do not belong to the line of the others. Each residual is measured in standard errors of the line through
 * all but this reading (externally studentised: Student's t with n − 3 degrees of freedom), and the largest of n may be as
 * large as t at 5 % shared among them (Bonferroni). The others are not taken to scatter by less than the step in which they
 * were read makes them, a/√3 with a half of it (JCGM 100:2008, 4.3.7). Readings are flagged by it, never dropped.
 */
export function outliersOf(readings: readonly BenchReading[], { fit }: BenchLine): Outliers {
  const n = readings.length;
  if (n < 4) return { critical: null, found: [] };
  const critical = studentQuantile(1 - LEVEL / (2 * n), n - 3);
  const arithmetic = ARITHMETIC * Math.max(...readings.map(({ distance }) => distance));
  const floor = Math.max(arithmetic, grainOf(readings) / 2 / Math.sqrt(3));
  const left = fit.deviation * fit.deviation * fit.freedom;
  const found = readings.flatMap((reading, i): readonly LensOutlier[] => {
    const [residual = 0, leverage = 1, weight = 1] = [fit.residuals[i], fit.leverages[i], fit.weights[i]];
    if (leverage > PULLS_ALL) return [];
    const own = (weight * residual * residual) / (1 - leverage);
    const ofOthers = Math.sqrt(Math.max((left - own) / (n - 3), floor * floor));
    const studentised = (Math.sign(residual) * Math.sqrt(own)) / ofOthers;
    if (Math.abs(studentised) <= critical) return [];
    return [{ row: i + 1, residual, studentised, critical, turnedOver: isTurnedOver(readings, i, reading) }];
  });
  return { critical, found };
}

function isTurnedOver(
  readings: readonly BenchReading[],
  i: number,
  { magnification: m, distance }: BenchReading,
): boolean {
  const { fit } = benchLine(readings.filter((_, at) => at !== i));
  const off = (at: number) => Math.abs(distance - fit.intercept - fit.slope * at);
  return m > 0 && off(1 / m) * MUCH_NEARER < off(m);
}
