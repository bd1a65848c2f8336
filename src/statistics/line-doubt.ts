import { studentQuantile } from './student-t.js';

/** What is known of how well a line is known, once the points are forgotten. */
export interface KnownLine {
  readonly slopeError: number;
  readonly interceptError: number;
  readonly correlation: number;
  /** Points less two; infinite where the errors themselves are beyond doubt. */
  readonly freedom: number;
}

/** Of both tails together one case in twenty is left out. */
const UPPER = 0.975;

/** Standard errors to either side within which 95 of 100 cases lie: 2.306 with 8 degrees of freedom, 1.960 with very many. */
export const reachOf95 = (freedom: number): number => studentQuantile(UPPER, freedom);

/**
 * Half of the interval that holds the line at x in 95 of 100 cases. u² = u(b)² + x² u(a)² + 2 x r u(a) u(b) for slope a and
 * intercept b (law of propagation, JCGM 100:2008, 5.2.2): the two stray against each other, and far less together.
 */
export function lineDoubt({ slopeError, interceptError, correlation, freedom }: KnownLine, x: number): number {
  const square =
    interceptError * interceptError +
    x * x * slopeError * slopeError +
    2 * x * correlation * slopeError * interceptError;
  return reachOf95(freedom) * Math.sqrt(Math.max(0, square));
}
