import { continuedFraction } from './continued-fraction.js';
import { logGammaOfHalf, lowerGammaOfHalf } from './gamma.js';

/*
 * Student's t: how far a mean of few readings strays, in standard errors that were estimated from the same readings. With
 * infinitely many degrees of freedom it is the normal distribution.
 */

/** Share of cases below t. `freedom` is a positive whole number, or infinite. */
export function studentShare(t: number, freedom: number): number {
  const beyond = bothTails(t * t, freedom) / 2;
  return t < 0 ? beyond : 1 - beyond;
}

/**
 * The t that a share of cases stays below: 2.306 for 0.975 with 8 degrees of freedom, 1.960 with infinitely many.
 * Halving an interval is slow and always right.
 *
 * @param share between 0 and 1, both excluded
 */
export function studentQuantile(share: number, freedom: number): number {
  if (share < 0.5) return -studentQuantile(1 - share, freedom);
  const tails = 2 * (1 - share);
  let [low, high] = [0, 1];
  while (bothTails(high * high, freedom) > tails) [low, high] = [high, 2 * high];
  for (;;) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) return middle;
    if (bothTails(middle * middle, freedom) > tails) low = middle;
    else high = middle;
  }
}

/** Share of cases with t² beyond a square: I_x(ν/2, 1/2) at x = ν/(ν + t²) (Abramowitz and Stegun 26.5.27, 26.7.1). */
const bothTails = (square: number, freedom: number): number =>
  freedom === Number.POSITIVE_INFINITY
    ? 1 - lowerGammaOfHalf(1, square / 2)
    : regularBeta({ part: freedom / (freedom + square), rest: square / (freedom + square) }, [freedom, 1]);

/** x and 1 − x, each worked out for itself, so that neither loses its digits. */
interface Parted {
  readonly part: number;
  readonly rest: number;
}

/** I_x(n/2, k/2) for whole n and k, by its continued fraction (Abramowitz and Stegun 26.5.8) from the side where it settles soon. */
function regularBeta({ part: x, rest }: Parted, [n, k]: readonly [number, number]): number {
  if (x === 0 || rest === 0) return rest === 0 ? 1 : 0;
  const [a, b] = [n / 2, k / 2];
  if (x > (a + 1) / (a + b + 2)) return 1 - regularBeta({ part: rest, rest: x }, [k, n]);
  const gammas = logGammaOfHalf(n + k) - logGammaOfHalf(n) - logGammaOfHalf(k);
  const front = Math.exp(gammas + a * Math.log(x) + b * Math.log(rest)) / a;
  return (
    front /
    continuedFraction(1, (step) => {
      const m = Math.floor(step / 2);
      const over =
        step % 2 === 0
          ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
          : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
      return { over, under: 1 };
    })
  );
}
