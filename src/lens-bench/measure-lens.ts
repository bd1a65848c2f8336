import type { BenchFault, BenchReadings, LensDocument, LensPrediction } from '../model/lens-bench.js';
import { reachOf95 } from '../statistics/line-doubt.js';
import { type LineFit, lineAt } from '../statistics/line-fit.js';
import { type BenchLine, benchLine } from './bench-line.js';
import { coverageOf } from './coverage.js';
import { OUTLIER_TEST, type Outliers, outliersOf } from './outliers.js';
import { frontEnlargement, pupilMagnification, widestStop } from './pupils.js';
import { remarksOf } from './remarks.js';
import { withInterval } from './repeated.js';
import { unfit, unlikely } from './sound.js';

/** What is asked of the readings. */
export interface Asked {
  /** Magnifications to predict the distance at. */
  readonly at: readonly number[];
  /** The magnification that the coverage is to be given for; 0 at infinity. */
  readonly coverageAt: number;
}

/** The figures of a lens from its readings, or why there are none. */
export function measureLens(
  bench: BenchReadings,
  { at, coverageAt }: Asked,
): { readonly lens: LensDocument } | { readonly faults: readonly BenchFault[] } {
  const { readings } = bench;
  const hopeless = unfit(readings);
  if (hopeless.length > 0) return { faults: hopeless };
  const line = benchLine(readings);
  const faults = unlikely(readings, line);
  if (faults.length > 0) return { faults };
  const { fit } = line;
  const pupils = pupilMagnification(bench.pupils);
  const covered = coverageOf(
    bench.coverage,
    { focalLength: fit.slope, flangeDistance: fit.intercept, pupils },
    coverageAt,
  );
  if ('faults' in covered) return covered;
  const outliers = outliersOf(readings, line);
  const quantile = reachOf95(fit.freedom);
  const predictions = at.map((magnification): LensPrediction => {
    const { y: distance, standardError } = lineAt(fit, magnification);
    return { magnification, distance, standardError, interval: quantile * standardError };
  });
  const f = { value: fit.slope, standardError: fit.slopeError, freedom: fit.freedom };
  return {
    lens: {
      schema: 1,
      name: bench.name,
      readings: readings.length,
      focalLength: fit.slope,
      flangeDistance: fit.intercept,
      standardErrors: errorsOf(fit),
      intervals: { focalLength: quantile * fit.slopeError, flangeDistance: quantile * fit.interceptError },
      correlation: fit.correlation,
      residualStandardDeviation: fit.deviation,
      weighted: line.weighted,
      residuals: readings.map(({ magnification, distance }, i) => ({
        row: i + 1,
        magnification,
        distance,
        residual: fit.residuals[i] ?? 0,
      })),
      outliers: outliers.found.map(({ row }) => row),
      outlierTest: { name: OUTLIER_TEST, ...outliers, without: lineWithout(bench, outliers) },
      predictions,
      pupilMagnification: pupils === null ? null : withInterval(pupils),
      coverage: covered.circle === null ? null : { ...covered.circle, at: coverageAt },
      maxAperture: widestStop(f, bench),
      frontEnlargement: frontEnlargement(bench),
      remarks: remarksOf(bench, { line, outliers, at, pupils }),
    },
  };
}

const errorsOf = ({ slopeError, interceptError }: LineFit): LensDocument['standardErrors'] => ({
  focalLength: slopeError,
  flangeDistance: interceptError,
});

function lineWithout({ readings }: BenchReadings, { found }: Outliers): LensDocument['outlierTest']['without'] {
  if (found.length === 0) return null;
  const others = readings.filter((_, i) => found.every(({ row }) => row !== i + 1));
  if (unfit(others).length > 0) return null;
  const { fit }: BenchLine = benchLine(others);
  return { focalLength: fit.slope, flangeDistance: fit.intercept, standardErrors: errorsOf(fit) };
}
