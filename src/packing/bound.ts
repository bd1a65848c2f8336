import { grown, type Region } from '../geometry/clip.js';
import { boundsOfPoints } from '../geometry/path.js';
import { dualFeasible, type Sizes } from './dual-feasible.js';
import { innerRectangles } from './inner-rectangles.js';
import type { Bed, Blank, Rectangle, Ring } from './shapes.js';

/**
 * Whole grid lines to the millimetre: what is counted must be free of rounding. Searches for bins count on the same
 * grid.
 */
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
 * Sums of products of dual feasible functions; `dualFeasible` says why they are bounds. With turns each rectangle
 * counts for the less of its two ways, and in a square bin for the mean of f(w)·g(h) and g(w)·f(h), which is a bound
 * as the mean of two bounds and does not change with the turn.
 *
 * @param enough no higher bound is of use: the area is looked at first, which takes no time
 */
export function leastBins({ width, height, items, turns }: BinsGiven, { enough = Infinity } = {}): number {
  const wanted = items.filter(({ count }) => count > 0);
  const bin = { width: Math.round(width * GRID), height: Math.round(height * GRID) };
  const solids = wanted.map((item): Solid => {
    const box = { width: Math.round(item.width * GRID), height: Math.round(item.height * GRID) };
    const ways = turns && box.width !== box.height ? [box, { width: box.height, height: box.width }] : [box];
    return { ways: ways.filter((way) => fits(way, bin)).map((way) => [way]), count: item.count };
  });
  if (solids.length === 0) return 0;
  if (solids.some(({ ways }) => ways.length === 0)) return Infinity;
  const area = solids.reduce((sum, { ways, count }) => sum + areaOfSize(ways[0]?.[0] as Size) * count, 0);
  const byArea = Math.max(1, Math.ceil(area / areaOfSize(bin) - ROUNDING));
  if (byArea >= enough) return byArea;
  const need = weighed(solids, bin, (values) =>
    values.reduce((sum, value, i) => sum + value * (solids[i] as Solid).count, 0),
  );
  return Math.max(byArea, Math.ceil(need - ROUNDING));
}

/**
 * What a drawing in chords may be off its true outline, with the clipping's own roundings, mm: chords stray by 0.01,
 * the clipping's by a tenth of that.
 */
const OFF = 0.015;

interface SheetsGiven {
  readonly blanks: readonly Blank[];
  readonly beds: readonly Bed[];
  /** Least distance between the material of two blanks. */
  readonly spacing: number;
}

/**
 * Fewer sheets than this cannot hold the blanks. Infinity where the beds that there are cannot.
 *
 * Each blank lies either in another's window or clear of all other outlines; there is no third, for its material hangs
 * together. Two bounds:
 *
 * 1. Area. Outlines grown by half the spacing do not overlap and lie on the bed grown by as much. A blank in a window
 *    is no part of this sum, but all those in one window, grown, lie within the window shrunk by half the spacing: so
 *    the windows save no more than their areas, nor more than what could go into them at all.
 * 2. Size. Of each outline a rectangle that lies within it may stand for it. Two of them are the spacing apart in a
 *    straight line, so at least spacing/√2 apart across or along: grown by half of that they do not overlap, and the
 *    bounds for rectangles hold. Here, too, what could lie in windows may be missing from the sum, by area at most
 *    what the windows hold: the most that such pieces could weigh is a knapsack that may be filled with fractions.
 *
 * Where beds differ the second takes the rectangle round all of them for each, the first their areas, the largest
 * first. Every length is taken a little to the safe side, for the chords of what is round.
 */
export function leastSheets({ blanks, beds, spacing }: SheetsGiven): number {
  const wanted = blanks.filter(({ count }) => count > 0);
  if (wanted.length === 0) return 0;
  if (!wanted.every((blank) => beds.some((bed) => bed.count > 0 && waysOn(blank, bed).length > 0))) return Infinity;

  const reach = spacing / 2 - OFF;
  // a sliver may vanish when it is shrunk; it still weighs something for its area
  const gross = wanted.map(({ outline }) => Math.max(1e-9, areaOf(grown([outline], reach, { corners: 'round' }))));
  const { held, room } = windowsOf(wanted, gross, { reach, spacing });
  const total = gross.reduce((sum, area, i) => sum + area * (wanted[i] as Blank).count, 0);
  const byArea = sheetsFor(total - room, beds, spacing);

  const outer = enclosing(beds);
  const apart = spacing / Math.SQRT2;
  const bin = { width: Math.ceil((outer.width + apart) * GRID), height: Math.ceil((outer.height + apart) * GRID) };
  const solids = wanted.map((blank): Solid => {
    const boxes = innerRectangles(blank.outline).map(({ left, right, bottom, top }) => ({
      width: gridded(right - left + apart - 2 * OFF),
      height: gridded(top - bottom + apart - 2 * OFF),
    }));
    const ways = [...new Set(beds.flatMap((bed) => waysOn(blank, bed)))];
    return { ways: ways.map((way) => (way === 'upright' ? boxes : boxes.map(turned))), count: blank.count };
  });
  const byRatio = wanted.map((_, i) => i).filter((i) => held[i] === true);
  const bySize = weighed(solids, bin, (values) => {
    let sum = 0;
    for (let i = 0; i < solids.length; i++) sum += (values[i] as number) * (solids[i] as Solid).count;
    return sum - mostHeld(byRatio, values, gross, wanted, room);
  });
  const most = beds.reduce((sum, { count }) => sum + count, 0);
  const sheets = Math.max(1, byArea, Math.ceil(bySize - ROUNDING));
  return sheets > most ? Infinity : sheets;
}

const gridded = (length: number): number => Math.max(0, Math.floor(length * GRID));
const turned = ({ width, height }: Size): Size => ({ width: height, height: width });

function areaOf(region: Region): number {
  let twice = 0;
  for (const ring of region) {
    ring.forEach((from, i) => {
      const to = ring[(i + 1) % ring.length] as (typeof ring)[number];
      twice += from.x * to.y - to.x * from.y;
    });
  }
  return Math.abs(twice) / 2;
}

function sizeOf(ring: Ring): Size {
  const { left, right, bottom, top } = boundsOfPoints(ring);
  return { width: right - left, height: top - bottom };
}

/** The ways in which the rectangle round a blank fits into the one round a bed. */
function waysOn({ outline, turns }: Blank, bed: Bed): readonly ('upright' | 'turned')[] {
  const blank = sizeOf(outline);
  const { width, height } = sizeOf(bed.outline);
  const clear = { width: width + 2 * OFF, height: height + 2 * OFF };
  const ways: ('upright' | 'turned')[] = [];
  if (turns.some((turn) => turn % 2 === 0) && fits(blank, clear)) ways.push('upright');
  if (turns.some((turn) => turn % 2 === 1) && fits(turned(blank), clear)) ways.push('turned');
  return ways;
}

/** Whether each blank could lie in any window, and the area, grown, that windows could hold in all. */
function windowsOf(
  blanks: readonly Blank[],
  gross: readonly number[],
  { reach, spacing }: { readonly reach: number; readonly spacing: number },
): { readonly held: readonly boolean[]; readonly room: number } {
  const held = blanks.map(() => false);
  const sizes = blanks.map(({ outline }) => sizeOf(outline));
  let room = 0;
  for (const { windows, count } of blanks) {
    for (const window of windows) {
      const clear = 2 * spacing - 4 * OFF;
      const size = sizeOf(window);
      const within = sizes.map((blank) => {
        const box = { width: blank.width + clear, height: blank.height + clear };
        return fits(box, size) || fits(turned(box), size);
      });
      const could = within.reduce(
        (sum, one, i) => sum + (one ? (gross[i] as number) * (blanks[i] as Blank).count : 0),
        0,
      );
      if (could === 0) continue;
      within.forEach((one, i) => {
        if (one) held[i] = true;
      });
      const clearArea = areaOf(grown([[...window].reverse()], -reach, { corners: 'round' }));
      room += Math.min(clearArea * count, could);
    }
  }
  const all = held.reduce((sum, one, i) => sum + (one ? (gross[i] as number) * (blanks[i] as Blank).count : 0), 0);
  return { held, room: Math.min(room, all) };
}

/**
 * The most that pieces in windows can weigh, area being limited: those that weigh most for their area first, the last
 * in part.
 */
function mostHeld(
  held: number[],
  values: Float64Array,
  gross: readonly number[],
  blanks: readonly Blank[],
  room: number,
): number {
  const ratio = (i: number): number => (values[i] as number) / (gross[i] as number);
  held.sort((a, b) => ratio(b) - ratio(a));
  let left = room;
  let weight = 0;
  for (const i of held) {
    if (left <= 0) break;
    const area = Math.min(left, (gross[i] as number) * (blanks[i] as Blank).count);
    weight += area * ratio(i);
    left -= area;
  }
  return weight;
}

/** How many of the largest beds it takes to hold an area. */
function sheetsFor(area: number, beds: readonly Bed[], spacing: number): number {
  const rooms = beds
    .map(({ outline, holes, count }) => ({
      room: areaOf(grown([outline, ...holes], spacing / 2 + OFF, { corners: 'mitred' })),
      count,
    }))
    .sort((a, b) => b.room - a.room);
  let left = area;
  let sheets = 0;
  for (const { room, count } of rooms) {
    const needed = Math.max(0, Math.ceil(left / room - ROUNDING));
    if (needed <= count) return sheets + needed;
    sheets += count;
    left -= room * count;
  }
  return left > 0 ? Infinity : sheets;
}

/** As wide as the widest bed and as high as the highest. */
function enclosing(beds: readonly Bed[]): Size {
  const sizes = beds.filter(({ count }) => count > 0).map(({ outline }) => sizeOf(outline));
  return {
    width: Math.max(...sizes.map(({ width }) => width)),
    height: Math.max(...sizes.map(({ height }) => height)),
  };
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** A piece as a bound sees it. */
interface Solid {
  /**
   * The ways in which it may lie, and for each the upright rectangles that it covers then: any one of them may stand
   * for it.
   */
  readonly ways: readonly (readonly Size[])[];
  readonly count: number;
}

const areaOfSize = ({ width, height }: Size): number => width * height;
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
