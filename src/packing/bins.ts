import { type BinFiller, binFiller, type Pieces } from './bin-filler.js';
import { GRID, leastBins } from './bound.js';
import { RULES } from './free-rooms.js';
import { type Random, seeded } from './random.js';
import type { Search } from './search.js';
import type { Rectangle, RectanglePlace } from './shapes.js';

export interface BinPacking {
  readonly bins: readonly (readonly RectanglePlace[])[];
}

interface BinsGiven {
  readonly width: number;
  readonly height: number;
  /** Each fits into an empty bin. */
  readonly items: readonly Rectangle[];
  /** Whether quarter turns are allowed. */
  readonly turns: boolean;
}

/**
 * Rectangles into the fewest bins.
 *
 * First the pieces are put in by size, by several measures of size. Then one bin fewer is tried, again and again: what
 * lay in the emptiest lies loose, and one to three bins are emptied and filled anew from their pieces and the loose
 * ones, in a random order near one by size. A filling is kept where no more is left loose than before, measured by
 * area; what lies loose for long counts more and more (the weights of a breakout search, Morris 1993), so that pieces
 * that are hard to place get in and others come out. Ends at the lower bound.
 */
export function* searchBins(given: BinsGiven, seed: number): Search<BinPacking> {
  const { items, turns } = given;
  const bin = { width: Math.round(given.width * GRID), height: Math.round(given.height * GRID) };
  const kinds = items.flatMap(({ count }, item) => new Array<number>(count).fill(item));
  const along = (of: (item: Rectangle) => number) =>
    Float64Array.from(kinds, (item) => Math.round(of(items[item] as Rectangle) * GRID));
  const pieces: Pieces = { width: along((item) => item.width), height: along((item) => item.height), turns };
  const sizes = sizesOf(pieces, bin);
  const filler = binFiller(pieces, bin.width, bin.height);

  let best: Packing | null = null;
  let found: BinPacking = { bins: [] };
  let least = Infinity;
  let bound = 0;
  for (const size of sizes) {
    for (let rule = 0; rule < RULES; rule++) {
      const packing = filled(filler, size, rule);
      const cost = costOf(packing, sizes[0] as Float64Array);
      if (best === null || cost < least) {
        best = packing;
        least = cost;
        found = described(best, kinds);
      }
      if (best.bins.length <= bound) return found;
      yield found;
      // only now: the first answer should not have to wait for it
      if (bound === 0) bound = leastBins(given, { enough: best.bins.length });
    }
  }

  const random = seeded(seed);
  while (best !== null && best.bins.length > bound) {
    const step = oneFewer(best, filler, sizes, random);
    let fewer = step();
    while (fewer === null) {
      yield found;
      fewer = step();
    }
    best = fewer;
    found = described(best, kinds);
  }
  return found;
}

/** Pieces tried in one step of the search: about a millisecond. */
const STEP = 4000;

/** How often one, two and three bins are filled anew at once: found by trial. */
const ONE = 0.2;
const TWO = 0.6;

/**
 * After so many fillings for each bin that gained nothing, what lies loose counts more: by so much of its area. Little
 * by little does best; to let the weights fade again, or to put up with something worse now and then, was tried and
 * did harm.
 */
const PATIENCE = 4;
const MORE = 0.04;

/** A tie: a billionth of a bin. */
const TIE = 1e-9;

interface Packing {
  readonly bins: readonly (readonly number[])[];
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly turned: Uint8Array;
}

/** Measures by which pieces may be called large, each against the bin. The first is the area. */
function sizesOf({ width, height }: Pieces, bin: { width: number; height: number }): readonly Float64Array[] {
  const measures: readonly ((w: number, h: number) => number)[] = [
    (w, h) => w * h,
    (w, h) => Math.max(w, h),
    (w, h) => w + h,
    (_, h) => h,
    (w) => w,
    (w, h) => Math.min(w, h),
  ];
  return measures.map((of) => width.map((w, i) => of(w / bin.width, (height[i] as number) / bin.height)));
}

/** Bin after bin filled, the largest pieces first. */
function filled(filler: BinFiller, size: Float64Array, rule: number): Packing {
  for (let piece = 0; piece < size.length; piece++) filler.row[piece] = piece;
  filler.row.sort((a, b) => (size[b] as number) - (size[a] as number) || a - b);
  filler.waiting = size.length;
  const bins: (readonly number[])[] = [];
  while (filler.waiting > 0) {
    const taken = filler.fill(rule, Infinity, size) ?? [];
    if (taken.length === 0) throw new Error('a rectangle is larger than the bin');
    bins.push(taken);
  }
  const { x, y, turned } = filler;
  return { bins, x: x.slice(), y: y.slice(), turned: turned.slice() };
}

/**
 * Bins, of which the emptiest counts only for what lies in it: so the packing is chosen that comes nearest to one
 * fewer.
 */
function costOf({ bins }: Packing, area: Float64Array): number {
  return bins.length - 1 + Math.min(...bins.map((bin) => sum(bin, area)));
}

/**
 * The search for a packing with one bin fewer.
 * @returns to be called again and again: one step, and the packing where it has been found
 */
function oneFewer(
  from: Packing,
  filler: BinFiller,
  sizes: readonly Float64Array[],
  random: Random,
): () => Packing | null {
  const area = sizes[0] as Float64Array;
  const below = (n: number): number => Math.floor(random() * n);
  const { row } = filler;
  const [x, y, turned] = [from.x.slice(), from.y.slice(), from.turned.slice()];
  const fullness = from.bins.map((bin) => sum(bin, area));
  const emptiest = fullness.indexOf(Math.min(...fullness));
  const bins = from.bins.filter((_, i) => i !== emptiest);
  let loose = from.bins[emptiest] as readonly number[];
  const costs = area.slice();
  let cost = sum(loose, costs);
  let idle = 0;
  // where each piece stands in a row: the larger, the earlier
  const rank = new Float64Array(area.length);

  return () => {
    let work = 0;
    while (work < STEP && loose.length > 0) work += refill();
    return loose.length > 0 ? null : { bins, x, y, turned };
  };

  /** One try. Returns how many pieces took part. */
  function refill(): number {
    const chosen = choose();
    lineUp(chosen);
    const tried = filler.waiting;
    const rule = below(RULES);
    const fillings: (readonly number[])[] = [];
    for (let after = chosen.length - 1; after >= 0; after--) {
      // before the last bin it is too much only where all the bins to come, quite full, would not hold it
      const filling = filler.fill(rule, cost + after, after === 0 ? costs : area);
      if (filling === null) break;
      fillings.push(filling);
    }
    idle++;
    if (fillings.length === chosen.length) keep(chosen, fillings);
    if (idle > PATIENCE * bins.length) {
      idle = 0;
      for (const piece of loose) costs[piece] = (costs[piece] as number) + MORE * (area[piece] as number);
      cost = sum(loose, costs);
    }
    return tried;
  }

  function choose(): readonly number[] {
    const draw = random();
    const many = Math.min(bins.length, draw < ONE ? 1 : draw < ONE + TWO ? 2 : 3);
    const chosen: number[] = [];
    while (chosen.length < many) {
      const bin = below(bins.length);
      if (!chosen.includes(bin)) chosen.push(bin);
    }
    return chosen;
  }

  /** The chosen bins' pieces and the loose ones in a row, the larger ones more or less first. */
  function lineUp(chosen: readonly number[]): void {
    const size = sizes[below(sizes.length)] as Float64Array;
    // mostly near the order by size
    const chance = random();
    const disorder = chance * chance * chance;
    let count = loose.length;
    for (let i = 0; i < count; i++) row[i] = loose[i] as number;
    for (let b = 0; b < chosen.length; b++) {
      const bin = bins[chosen[b] as number] as readonly number[];
      for (let i = 0; i < bin.length; i++) row[count++] = bin[i] as number;
    }
    for (let i = 0; i < count; i++) {
      const piece = row[i] as number;
      const mine = (size[piece] as number) * (1 - disorder * random());
      rank[piece] = mine;
      let at = i;
      for (; at > 0 && (rank[row[at - 1] as number] as number) < mine; at--) row[at] = row[at - 1] as number;
      row[at] = piece;
    }
    filler.waiting = count;
  }

  function keep(chosen: readonly number[], fillings: readonly (readonly number[])[]): void {
    chosen.forEach((bin, k) => {
      const filling = fillings[k] as readonly number[];
      bins[bin] = filling;
      for (const piece of filling) {
        x[piece] = filler.x[piece] as number;
        y[piece] = filler.y[piece] as number;
        turned[piece] = filler.turned[piece] as number;
      }
    });
    loose = Array.from(row.subarray(0, filler.waiting));
    const now = sum(loose, costs);
    if (now < cost - TIE) idle = 0;
    cost = now;
  }
}

function sum(pieces: readonly number[], of: Float64Array): number {
  let total = 0;
  for (const piece of pieces) total += of[piece] as number;
  return total;
}

function described({ bins, x, y, turned }: Packing, kinds: readonly number[]): BinPacking {
  const place = (piece: number): RectanglePlace => ({
    item: kinds[piece] as number,
    x: (x[piece] as number) / GRID,
    y: (y[piece] as number) / GRID,
    turned: turned[piece] === 1,
  });
  return { bins: bins.map((bin) => bin.map(place)) };
}
