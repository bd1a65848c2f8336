import type { Rectangle, RectanglePlace } from './shapes.js';

/** Rectangles to be packed into a strip of a given width, quarter turns allowed where `turns`. */
export interface StripProblem {
  readonly width: number;
  readonly items: readonly Rectangle[];
  readonly turns: boolean;
}

/** A packing of a strip: everything lies between y = 0 and y = height. */
export interface StripPacking {
  readonly height: number;
  readonly places: readonly RectanglePlace[];
}

/**
 * What is to be packed, in whole steps of a fine grid, equal pieces counted together: a search compares lengths for
 * equality all the time (does it fill the gap, is it flush with its neighbour), and 0.1 + 0.2 must be 0.3 then.
 *
 * An option is a kind in one of the ways in which it may lie. Options are in order of width, narrow ones first.
 * Typed arrays, since the innermost loops of the search run over them.
 */
export interface Stock {
  /** Steps of the grid to a unit of length. */
  readonly scale: number;
  readonly width: number;
  /** Of all pieces together, in steps squared. */
  readonly area: number;
  /** No packing is lower. */
  readonly least: number;
  /** How many pieces there are of each kind. */
  readonly counts: Uint16Array;
  readonly pieces: number;
  readonly optionKind: Int32Array;
  readonly optionWidth: Int32Array;
  readonly optionHeight: Int32Array;
  /** The other option of the same kind, or the option itself. */
  readonly optionTwin: Int32Array;
  /** Index into the items of each piece, kind by kind. */
  readonly items: readonly (readonly number[])[];
  /** Of each item as it was given, not turned. */
  readonly itemWidth: Int32Array;
}

/** Lengths as large as this still leave room for sums of two in 32 bits. */
const MOST_STEPS = 2 ** 29;

/** How near a length must be to a step to count as being on it, in steps: what is left of decimals in binary. */
const ON_STEP = 1e-4;

const onGrid = (length: number, scale: number): boolean =>
  Math.abs(length * scale - Math.round(length * scale)) < ON_STEP;

/** Whole steps, rounded up where the length lies between two. */
const steps = (length: number, scale: number): number => Math.ceil(length * scale - ON_STEP);

/**
 * The coarsest decimal grid on which all lengths lie; where there is none, the finest for which there is room, and
 * lengths are rounded up to it: the packing stays valid and loses less than a step a piece.
 */
function gridFor({ width, items }: StripProblem): number {
  const lengths = [width, ...items.flatMap((item) => [item.width, item.height])];
  const total = items.reduce((sum, item) => sum + item.count * Math.max(item.width, item.height), 0);
  const finest = MOST_STEPS / Math.max(width, total, 1);
  for (let scale = 1; scale <= Math.min(finest, 1e6); scale *= 10)
    if (lengths.every((length) => onGrid(length, scale))) return scale;
  return Math.min(finest, 1e6);
}

export function stockOf(problem: StripProblem): Stock {
  const { items, turns } = problem;
  const scale = gridFor(problem);
  const width = Math.floor(problem.width * scale + ON_STEP);
  const itemWidth = new Int32Array(items.length);
  const kinds = new Map<string, { width: number; height: number; items: number[] }>();
  items.forEach((item, index) => {
    // what fits the strip to a hair must not be rounded out of it
    const [across, up] = [item.width, item.height].map((length) =>
      length <= problem.width ? Math.min(steps(length, scale), width) : steps(length, scale),
    ) as [number, number];
    itemWidth[index] = across;
    const [w, h] = turns && across < up ? [up, across] : [across, up];
    const key = `${w} ${h}`;
    const kind = kinds.get(key) ?? { width: w, height: h, items: [] };
    for (let piece = 0; piece < item.count; piece++) kind.items.push(index);
    kinds.set(key, kind);
  });
  const list = [...kinds.values()].filter((kind) => kind.items.length > 0);
  const options = list
    .flatMap(({ width: w, height: h }, kind) =>
      turns && w !== h
        ? [
            { kind, w, h },
            { kind, w: h, h: w },
          ]
        : [{ kind, w, h }],
    )
    .filter(({ w }) => w <= width)
    .sort((a, b) => a.w - b.w || a.h - b.h);
  list.forEach((_, kind) => {
    if (!options.some((option) => option.kind === kind)) throw new Error('a rectangle is wider than the strip');
  });
  const area = list.reduce((sum, kind) => sum + kind.width * kind.height * kind.items.length, 0);
  return {
    scale,
    width,
    area,
    least: leastHeight(list, { width, area, turns }),
    counts: Uint16Array.from(list, (kind) => kind.items.length),
    pieces: list.reduce((sum, kind) => sum + kind.items.length, 0),
    optionKind: Int32Array.from(options, (option) => option.kind),
    optionWidth: Int32Array.from(options, (option) => option.w),
    optionHeight: Int32Array.from(options, (option) => option.h),
    optionTwin: Int32Array.from(options, (option, at) =>
      Math.max(
        at,
        options.findIndex((other, i) => i !== at && other.kind === option.kind),
      ),
    ),
    items: list.map((kind) => kind.items),
    itemWidth,
  };
}

/**
 * No packing is lower than the area allows, than the highest piece, or than the stack of all pieces of which no two
 * fit side by side.
 */
function leastHeight(
  kinds: readonly { readonly width: number; readonly height: number; readonly items: readonly number[] }[],
  { width, area, turns }: { readonly width: number; readonly area: number; readonly turns: boolean },
): number {
  let highest = 0;
  let stacked = 0;
  for (const kind of kinds) {
    // lying down where it may and fits, a kind is at its lowest; standing up, at its narrowest
    const low = turns && kind.width > width ? kind.width : kind.height;
    const narrow = turns ? Math.min(kind.width, kind.height) : kind.width;
    highest = Math.max(highest, low);
    if (2 * narrow > width) stacked += low * kind.items.length;
  }
  return Math.max(Math.ceil(area / width), highest, stacked);
}
