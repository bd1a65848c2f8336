/*
 * The straight line y = intercept + slope·x through points with y in doubt, by least squares. All sums are taken about the
 * means: uncentred ones lose half their digits where x is far from nothing and close together.
 *
 * Formulas of any text on linear regression; the names of errors as in NIST/SEMATECH e-Handbook of Statistical Methods,
 * 4.1.4.1: u(slope) = s/√Sxx, u(intercept) = s √(1/W + x̄²/Sxx), cov = −x̄ s²/Sxx, with Sxx = Σ w (x − x̄)².
 */

export interface LinePoint {
  readonly x: number;
  readonly y: number;
  /** How much it counts, one over the square of its uncertainty in some unit; 1 where left out. */
  readonly weight?: number;
}

export interface LineFit {
  readonly slope: number;
  readonly intercept: number;
  /** Readings less two. */
  readonly freedom: number;
  /** s: the scatter of a point of weight 1 about the line, from the residuals; not a number with only two points. */
  readonly deviation: number;
  readonly slopeError: number;
  readonly interceptError: number;
  readonly covariance: number;
  /** Of intercept and slope. */
  readonly correlation: number;
  /** R²: the share of the spread of y that the line explains. */
  readonly determination: number;
  /** y less the line, in the order of the points. */
  readonly residuals: readonly number[];
  /** In the order of the points. */
  readonly weights: readonly number[];
  /** How much a point pulls the line towards itself, from 0 to 1; all together 2. */
  readonly leverages: readonly number[];
  /** What the standard errors would be with s = 1: times an s that is known from elsewhere, they are the errors with that. */
  readonly unitErrors: { readonly slope: number; readonly intercept: number };
  /** Weights taken together, the mean of x, and Sxx. */
  readonly spread: { readonly weight: number; readonly mean: number; readonly square: number };
}

/** The line through at least two points with two different x. */
export function fitLine(points: readonly LinePoint[]): LineFit {
  const weight = total(points, () => 1);
  const meanX = total(points, ({ x }) => x) / weight;
  const meanY = total(points, ({ y }) => y) / weight;
  const squareX = total(points, ({ x }) => (x - meanX) * (x - meanX));
  const squareY = total(points, ({ y }) => (y - meanY) * (y - meanY));
  const slope = total(points, ({ x, y }) => (x - meanX) * (y - meanY)) / squareX;
  const residuals = points.map(({ x, y }) => y - meanY - slope * (x - meanX));
  const left = points.reduce((sum, { weight: own = 1 }, i) => sum + own * (residuals[i] ?? 0) ** 2, 0);
  const freedom = points.length - 2;
  const deviation = Math.sqrt(left / freedom);
  const unitErrors = {
    slope: Math.sqrt(1 / squareX),
    intercept: Math.sqrt(1 / weight + (meanX * meanX) / squareX),
  };
  return {
    slope,
    intercept: meanY - slope * meanX,
    freedom,
    deviation,
    slopeError: deviation * unitErrors.slope,
    interceptError: deviation * unitErrors.intercept,
    covariance: (-meanX * deviation * deviation) / squareX,
    correlation: -meanX / squareX / (unitErrors.slope * unitErrors.intercept),
    determination: 1 - left / squareY,
    residuals,
    weights: points.map(({ weight: own = 1 }) => own),
    leverages: points.map(({ x, weight: own = 1 }) => own * (1 / weight + (x - meanX) ** 2 / squareX)),
    unitErrors,
    spread: { weight, mean: meanX, square: squareX },
  };
}

/** Height of the line at an x, and the standard error of that height: s √(1/W + (x − x̄)²/Sxx). */
export function lineAt(
  { slope, intercept, deviation, spread }: LineFit,
  x: number,
): { readonly y: number; readonly standardError: number } {
  const away = x - spread.mean;
  return {
    y: intercept + slope * x,
    standardError: deviation * Math.sqrt(1 / spread.weight + (away * away) / spread.square),
  };
}

const total = (points: readonly LinePoint[], of: (point: LinePoint) => number): number =>
  points.reduce((sum, point) => sum + (point.weight ?? 1) * of(point), 0);
