/**
 * The arithmetic of a budget of errors, on plain numbers: a sum of what is drawn and of what strays from it. All spreads
 * are symmetric about their middles, so that the sum is too.
 */

/**
 * How what is known only by its limits is taken to lie between them: evenly; more often near the middle (the sum of two
 * even ones of half the width); or as readings do, a normal of which the limits are so many sigmas, and beyond which a
 * reading would be taken again.
 */
type Spread = 'uniform' | 'triangular' | { readonly normal: number };

/** What strays, mm. */
export interface Contributor {
  readonly name: string;
  /** From the drawn size to the middle of the spread, of one piece. */
  readonly shift: number;
  /** From the middle of the spread to its limit, of one piece. */
  readonly half: number;
  readonly spread: Spread;
  /** How much of one piece's error reaches the sum, with its sign. */
  readonly sensitivity: number;
  /** Pieces of which each strays for itself. */
  readonly count: number;
}

export type Interval = readonly [low: number, high: number];

/** Limits of the sum where everything strays the same way: nominal and shifts, plus and minus all half ranges. */
export function worstCase(nominal: number, contributors: readonly Contributor[]): Interval {
  const middle = middleOf(nominal, contributors);
  const half = contributors.reduce((sum, one) => sum + halfOf(one), 0);
  return [middle - half, middle + half];
}

/** Of all pieces of a contributor together, in the worst case. */
export const halfOf = ({ half, sensitivity, count }: Contributor): number => count * Math.abs(sensitivity) * half;

const middleOf = (nominal: number, contributors: readonly Contributor[]): number =>
  contributors.reduce((sum, { shift, sensitivity, count }) => sum + count * sensitivity * shift, nominal);

/** Of all pieces of a contributor together: a²/3 of an even spread, a²/6 of a triangle. */
export function varianceOf({ half, sensitivity, count, spread }: Contributor): number {
  const limit = sensitivity * half;
  const squared = limit * limit;
  if (spread === 'uniform') return (count * squared) / 3;
  if (spread === 'triangular') return (count * squared) / 6;
  const ofSlice = 1 / (3 * SLICES * SLICES);
  return count * squared * slicesOf(spread.normal).reduce((sum, { at, weight }) => sum + weight * at * at, ofSlice);
}

/** The share of each contributor in the variance and in the worst case, from 0 to 1. */
export function sharesOf(contributors: readonly Contributor[]): readonly Share[] {
  const variance = contributors.reduce((sum, one) => sum + varianceOf(one), 0);
  const worst = contributors.reduce((sum, one) => sum + halfOf(one), 0);
  return contributors.map((one) => ({
    variance: variance > 0 ? varianceOf(one) / variance : 0,
    worst: worst > 0 ? halfOf(one) / worst : 0,
  }));
}

interface Share {
  readonly variance: number;
  readonly worst: number;
}

/**
 * The central part of the sum's distribution. A normal of the same variance would be wrong where few even spreads
 * dominate (too wide, beyond the worst case even), so the distribution itself is taken: it lies between the limits of the
 * worst case, and on such a stretch its Fourier coefficients are the products of those of its contributors.
 *
 * @param probability of lying within, 0.95 where nothing is said
 */
export function intervalOf(nominal: number, contributors: readonly Contributor[], probability = 0.95): Interval {
  const middle = middleOf(nominal, contributors);
  const limit = contributors.reduce((sum, one) => sum + halfOf(one), 0);
  if (limit < NOTHING) return [middle, middle];
  const own = contributors.map(characteristicOf);
  const waves = Array.from({ length: TERMS }, (_, i) => {
    const t = ((i + 1) * Math.PI) / limit;
    return own.reduce((product, meanCosine) => product * meanCosine(t), 1);
  });
  // P(|X| ≤ x), the integral of the density's series from −x to x
  const within = (x: number) =>
    waves.reduce((sum, wave, i) => {
      const k = (i + 1) * Math.PI;
      return sum + (2 * wave * Math.sin((k * x) / limit)) / k;
    }, x / limit);
  const reach = smallest(within, probability, limit);
  return [middle - reach, middle + reach];
}

/** Below this nothing strays, mm. */
const NOTHING = 1e-9;

/** Terms of the series: they fall at least as the square of their number, so that some hundred-thousandths are left out. */
const TERMS = 200;

/** Mean of cos tx over all that a contributor can be, its pieces each for itself, as a function of t. */
function characteristicOf({ half, sensitivity, count, spread }: Contributor): (t: number) => number {
  const reach = Math.abs(sensitivity) * half;
  if (spread === 'uniform') return (t) => sinc(t * reach) ** count;
  if (spread === 'triangular') return (t) => sinc((t * reach) / 2) ** (2 * count);
  const slices = slicesOf(spread.normal);
  return (t) => {
    const between = slices.reduce((sum, { at, weight }) => sum + weight * Math.cos(t * reach * at), 0);
    return (sinc((t * reach) / SLICES) * between) ** count;
  };
}

const sinc = (x: number): number => (Math.abs(x) < 1e-8 ? 1 : Math.sin(x) / x);

const SLICES = 64;

/**
 * A normal cut off at so many sigmas, in even slices of its half range whose variance is that of the whole. Only those above
 * the middle: each stands for its mirror image too.
 */
function slicesOf(sigmas: number): readonly { readonly at: number; readonly weight: number }[] {
  const bell = (at: number) => Math.exp(-((sigmas * at) ** 2) / 2);
  const slices = Array.from({ length: SLICES / 2 }, (_, i) => {
    const at = (2 * i + 1) / SLICES;
    const [left, right] = [at - 1 / SLICES, at + 1 / SLICES];
    // Simpson's rule over the slice
    const weight = bell(left) + 4 * bell(at) + bell(right);
    const squares = bell(left) * left * left + 4 * bell(at) * at * at + bell(right) * right * right;
    return { at, weight, squares };
  });
  const whole = slices.reduce((sum, { weight }) => sum + weight, 0);
  const variance = slices.reduce((sum, { squares }) => sum + squares, 0) / whole;
  const own = slices.reduce((sum, { at, weight }) => sum + weight * at * at, 0) / whole;
  // an even slice has a variance of its own, which its place must make good
  const closer = Math.sqrt((variance - 1 / (3 * SLICES * SLICES)) / own);
  return slices.map(({ at, weight }) => ({ at: at * closer, weight: weight / whole }));
}

/** The smallest x from 0 to `limit` at which a rising function reaches a value, by halving. */
function smallest(rising: (x: number) => number, value: number, limit: number): number {
  let [low, high] = [0, limit];
  while (high - low > limit * 1e-7) {
    const middle = (low + high) / 2;
    if (rising(middle) < value) low = middle;
    else high = middle;
  }
  return high;
}
