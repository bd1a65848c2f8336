/** How a thickness is made up of whole plies, perhaps one ply of another sheet, and shims. */
export interface Lamination {
  readonly thickness: number;
  /** Thickness of each ply, the camera's own first. */
  readonly plies: readonly number[];
  /** Thickest first. */
  readonly shims: readonly number[];
  /** Thickness less plies and shims. */
  readonly remainder: number;
}

export interface LaminationGiven {
  readonly thickness: number;
  readonly ply: number;
  readonly shims: readonly number[];
  /** How far the remainder may stray either way: half the register tolerance. */
  readonly within: number;
  /** Thicknesses of other sheets, of which one layer may be used. */
  readonly stock: readonly number[];
}

/** More than so many shims slide about: then one ply of another sheet is tried. */
export const MOST_SHIMS = 4;

/** Three plies of 4.05 mm measured against 12.15 mm must not lose a layer to rounding. */
const ROUNDING = 1e-6;

/**
 * Whole plies first, one more of them where it comes within the limit, then the fewest shims whose remainder is within
 * it; of equals the smallest remainder.
 */
export function laminate(given: LaminationGiven): Lamination {
  const own = layered(given, Math.max(0, Math.floor((given.thickness + given.within + ROUNDING) / given.ply)), []);
  if (own.shims.length <= MOST_SHIMS) return own;
  const others = given.stock.flatMap((other) => {
    const most = Math.floor((given.thickness + given.within + ROUNDING - other) / given.ply);
    return Array.from({ length: most + 1 }, (_, k) => layered(given, most - k, [other]));
  });
  return [own, ...others].reduce((best, next) => (better(next, best, given.within) ? next : best));
}

const better = (a: Lamination, b: Lamination, within: number): boolean => {
  const misses = (l: Lamination) => (Math.abs(l.remainder) > within + ROUNDING ? 1 : 0);
  return misses(a) !== misses(b) ? misses(a) < misses(b) : a.shims.length < b.shims.length;
};

function layered(
  { thickness, ply, shims, within }: LaminationGiven,
  count: number,
  extra: readonly number[],
): Lamination {
  const plies = [...Array.from({ length: count }, () => ply), ...extra];
  const rest = thickness - plies.reduce((sum, t) => sum + t, 0);
  const chosen = fewestShims(rest, shims, within);
  const remainder = rest - chosen.reduce((sum, t) => sum + t, 0);
  return { thickness, plies, shims: chosen, remainder: Math.abs(remainder) < ROUNDING ? 0 : remainder };
}

/** Tries more and more shims; where no number comes within the limit, the nearest from below the thinnest shim. */
function fewestShims(rest: number, sizes: readonly number[], within: number): readonly number[] {
  const [thickest, ...others] = [...new Set(sizes)].sort((a, b) => b - a);
  if (thickest === undefined || Math.abs(rest) <= within + ROUNDING) return [];
  const thinnest = others.at(-1) ?? thickest;
  const most = Math.min(40, Math.ceil((rest + within) / thinnest));
  let nearest: readonly number[] = [];
  let miss = Math.abs(rest);
  // so many of the thickest are too thin by more than the limit, and fewer still are worse
  const tooFew = Math.min(most, Math.ceil((rest - within - ROUNDING) / thickest) - 1);
  for (let count = Math.max(1, tooFew); count <= most; count++) {
    const found = closest(rest, [thickest, ...others], count);
    const off = Math.abs(rest - found.reduce((sum, t) => sum + t, 0));
    if (off < miss - ROUNDING) {
      miss = off;
      nearest = found;
    }
    if (off <= within + ROUNDING) return found;
  }
  return nearest;
}

/** The `count` shims, thickest first, whose sum comes nearest to `rest`. */
function closest(rest: number, [size, ...thinner]: readonly [number, ...number[]], count: number): readonly number[] {
  const [next, ...others] = thinner;
  if (next === undefined) return Array.from({ length: count }, () => size);
  const thinnest = others.at(-1) ?? next;
  // with `most` of the thickest the sum is not below `rest` even where the others are the thinnest, with `least` of them
  // not above it even where the others are the next: beyond these numbers it only gets worse
  const possible = (k: number) => Math.min(count, Math.max(0, k));
  const most = possible(Math.ceil((rest - count * thinnest) / (size - thinnest)));
  const least = possible(Math.floor((rest - count * next) / (size - next)));
  let best: readonly number[] = [];
  let miss = Infinity;
  for (let k = most; k >= least; k--) {
    const found = [...Array.from({ length: k }, () => size), ...closest(rest - k * size, [next, ...others], count - k)];
    const off = Math.abs(rest - found.reduce((sum, t) => sum + t, 0));
    if (off < miss - ROUNDING) {
      miss = off;
      best = found;
    }
  }
  return best;
}

/** What brings a stack of shims nearer to what is wanted. */
export interface Mending {
  readonly add: readonly number[];
  readonly takeOut: readonly number[];
  /** What it lacks then; less than nothing where it is too thick. */
  readonly remainder: number;
}

export interface MendingGiven {
  /** By how much it is too thin; less than nothing where it is too thick. */
  readonly lacks: number;
  /** At hand. */
  readonly shims: readonly number[];
  /** In the stack. */
  readonly inIt: readonly number[];
  readonly within: number;
}

/**
 * The shims to take out, of those that are in it, and to put in: nothing where it is within the limit; else the fewest
 * together that bring it there, the nearest where none do; of equals the smallest remainder.
 */
export function mend({ lacks, shims, inIt, within }: MendingGiven): Mending {
  const none: Mending = { add: [], takeOut: [], remainder: lacks };
  if (Math.abs(lacks) <= within + ROUNDING) return none;
  const ways = subsets(inIt).map((takeOut): Mending => {
    const rest = lacks + takeOut.reduce((sum, own) => sum + own, 0);
    const add = rest > 0 ? fewestShims(rest, shims, within) : [];
    return { add, takeOut, remainder: rest - add.reduce((sum, own) => sum + own, 0) };
  });
  const misses = ({ remainder }: Mending): number =>
    Math.abs(remainder) > within + ROUNDING ? Math.abs(remainder) : 0;
  const pieces = ({ add, takeOut }: Mending): number => add.length + takeOut.length;
  return ways.reduce((best, next) => {
    const by = misses(next) - misses(best) || pieces(next) - pieces(best) || Math.abs(next.remainder) - Math.abs(best.remainder); // biome-ignore format: one line
    return by < -ROUNDING ? next : best;
  }, none);
}

/** What can be taken out of some shims, each way once. */
function subsets(inIt: readonly number[]): readonly (readonly number[])[] {
  const sizes = [...new Set(inIt)].sort((a, b) => b - a);
  return sizes.reduce<readonly (readonly number[])[]>(
    (all, size) => {
      const most = inIt.filter((own) => own === size).length;
      return all.flatMap((out) =>
        Array.from({ length: most + 1 }, (_, k) => [...out, ...Array.from({ length: k }, () => size)]),
      );
    },
    [[]],
  );
}
