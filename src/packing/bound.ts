import { dualFeasible, type Sizes } from './dual-feasible.js';
import type { Rectangle } from './shapes.js';

/** Whole grid lines to the millimetre: what is counted must be free of rounding. Searches for bins count on the same grid. */
export const GRID = 1e7;

/** A sum of products of fractions may come out so much too large, in bins: less is no reason for one more. */
const ROUNDING = 1e-6;

/** Work that one bound may be, in products: some milliseconds. */
const WORK = 6e5;

interface BinsGiven {
  readonly width: number;
  readonly height: number;
  readonly items: readonly Rectangle[];
  /** Whether quarter turns are allowed. */
  readonly turns: boolean;
}

/**
 * Fewer bins than this cannot hold the rectangles. Infinity where one is larger than the bin.
 *
 * Sums of products of dual feasible functions; `dualFeasible` says why they are bounds. With turns each rectangle counts for the
 * less of its two ways, and in a square bin for the mean of f(w)·g(h) and g(w)·f(h), which is a bound as the mean of two
 * bounds and does not change with the turn.
 */
export function leastBins({ width, height, items, turns }: BinsGiven): number {
  const bin = { width: Math.round(width * GRID), height: Math.round(height * GRID) };
  const solids = items.map((item): Solid => {
    const box = { width: Math.round(item.width * GRID), height: Math.round(item.height * GRID) };
    const ways = turns && box.width !== box.height ? [box, { width: box.height, height: box.width }] : [box];
    return { ways: ways.filter((way) => fits(way, bin)).map((way) => [way]), count: item.count };
  });
  if (solids.some(({ ways, count }) => count > 0 && ways.length === 0)) return Infinity;
  const need = weighed(solids, bin, (values) =>
    values.reduce((sum, value, i) => sum + value * (solids[i] as Solid).count, 0),
  );
  return Math.ceil(need - ROUNDING);
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** A piece as a bound sees it. */
interface Solid {
  /** The ways in which it may lie, and for each the upright rectangles that it covers then: any one of them may stand for it. */
  readonly ways: readonly (readonly Size[])[];
  readonly count: number;
}

const fits = (box: Size, bin: Size): boolean => box.width <= bin.width && box.height <= bin.height;

/** The most that `sum` makes of the pieces' values, over all pairs of functions; in bins. */
function weighed(solids: readonly Solid[], bin: Size, sum: (values: Float64Array) => number): number {
  const boxes = solids.flatMap(({ ways }) => ways.flat());
  // as many functions as the work allows: about 4 families, each along both sides
  const most = Math.max(4, Math.floor(Math.sqrt(WORK / Math.max(1, boxes.length)) / 3.5));
  const square = bin.width === bin.height;
  const along = (of: (box: Size) => number): Sizes[] =>
    solids.map(({ ways, count }) => ({ sizes: ways.flatMap((way) => way.map(of)), count }));
  const widths = along((box) => box.width);
  const heights = along((box) => box.height);
  const both = solids.map((_, i) => ({
    sizes: [...(widths[i] as Sizes).sizes, ...(heights[i] as Sizes).sizes],
    count: (solids[i] as Solid).count,
  }));
  const across = dualFeasible(bin.width, square ? both : widths, most);
  const up = square ? across : dualFeasible(bin.height, heights, most);
  const table = (functions: readonly ((size: number) => number)[], of: (box: Size) => number) =>
    functions.map((f) => Float64Array.from(boxes, (box) => f(of(box))));
  const byWidth = table(across, (box) => box.width);
  const byHeight = table(up, (box) => box.height);
  const values = new Float64Array(solids.length);
  let best = 0;
  const turning = square && solids.some(({ ways }) => ways.length > 1);
  for (let a = 0; a < across.length; a++) {
    for (let b = 0; b < up.length; b++) {
      const f = byWidth[a] as Float64Array;
      const g = byHeight[b] as Float64Array;
      weigh((k) => (f[k] as number) * (g[k] as number));
      best = Math.max(best, sum(values));
      if (turning && b > a) {
        const fTurned = byHeight[a] as Float64Array;
        const gTurned = byWidth[b] as Float64Array;
        weigh((k) => ((f[k] as number) * (g[k] as number) + (fTurned[k] as number) * (gTurned[k] as number)) / 2);
        best = Math.max(best, sum(values));
      }
    }
  }
  return best;

  function weigh(of: (box: number) => number): void {
    let k = 0;
    for (let i = 0; i < solids.length; i++) {
      let least = Infinity;
      for (const way of (solids[i] as Solid).ways) {
        let most = 0;
        for (let end = k + way.length; k < end; k++) most = Math.max(most, of(k));
        least = Math.min(least, most);
      }
      values[i] = least;
    }
  }
}
