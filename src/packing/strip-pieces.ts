import type { Rectangle, RectanglePlace } from './shapes.js';

/** Rectangles to be packed into a strip of a given width, quarter turns allowed where `turns`. */
export interface StripProblem {
  readonly width: number;
  readonly items: readonly Rectangle[];
  readonly turns: boolean;
}

/** Everything lies between y = 0 and y = height. */
export interface StripPacking {
  readonly height: number;
  readonly places: readonly RectanglePlace[];
}

/**
 * The ways in which pieces may lie: option 2k is kind k with its short side across the strip, 2k + 1 with its long one.
 * A kind that may lie in one way only has it at 2k, and NEVER as the width of the other. Kinds are in order of the
 * width of their first option, narrow ones first.
 *
 * Typed arrays here and in what follows, since the innermost loops of the search run over them; an index into one of
 * them stays within it by construction.
 */
export interface Options {
  readonly width: Int32Array;
  readonly height: Int32Array;
}

/** Wider than any gap. */
export const NEVER = 2 ** 30;

/**
 * What is to be packed, in whole steps of a fine grid, equal pieces counted together: the search compares lengths for
 * equality all the time (does it fill the gap, is it flush with its neighbour), and 0.1 + 0.2 must be 0.3 then.
 */
export interface Pieces {
  /** Steps of the grid to a unit of length. */
  readonly scale: number;
  /** Of the strip. */
  readonly width: number;
  /** How many pieces there are of each kind. */
  readonly counts: Int32Array;
  readonly total: number;
  /** Of all pieces together, steps squared. */
  readonly area: number;
  /** No packing is lower. */
  readonly least: number;
  readonly options: Options;
  /** Index into the items of each piece of a kind. */
  readonly items: readonly (readonly number[])[];
  /** Width of each item as it was given. */
  readonly itemWidth: Int32Array;
}

/** Where pieces were laid, and how wide and high they lie there. */
export interface Laid {
  readonly kind: Int32Array;
  readonly x: Int32Array;
  readonly y: Int32Array;
  readonly width: Int32Array;
  readonly height: Int32Array;
  size: number;
}

export const nothingLaid = (pieces: number): Laid => ({
  kind: new Int32Array(pieces),
  x: new Int32Array(pieces),
  y: new Int32Array(pieces),
  width: new Int32Array(pieces),
  height: new Int32Array(pieces),
  size: 0,
});

/** Lays a piece down as the option says. */
export function lay(laid: Laid, { width, height }: Options, option: number, x: number, y: number): void {
  laid.kind[laid.size] = option >> 1;
  laid.x[laid.size] = x;
  laid.y[laid.size] = y;
  laid.width[laid.size] = width[option] as number;
  laid.height[laid.size] = height[option] as number;
  laid.size++;
}

export function copyLaid(from: Laid, to: Laid): void {
  to.kind.set(from.kind);
  to.x.set(from.x);
  to.y.set(from.y);
  to.width.set(from.width);
  to.height.set(from.height);
  to.size = from.size;
}

/** What was laid, mirrored in the diagonal: x and y, width and height changed over. */
export const overDiagonal = (laid: Laid): Laid => ({
  ...laid,
  x: laid.y,
  y: laid.x,
  width: laid.height,
  height: laid.width,
});

export function topOf({ y, height, size }: Laid): number {
  let top = 0;
  for (let i = 0; i < size; i++) top = Math.max(top, (y[i] as number) + (height[i] as number));
  return top;
}

/** Lengths as large as this still leave room in 32 bits. */
const MOST_STEPS = 2 ** 29;

/** Finer than any laser; finer would be noise. */
const FINEST = 1e6;

/** How near a length must be to a step to count as lying on it, in steps: what decimals lose in binary. */
const ON_STEP = 1e-4;

/**
 * The coarsest decimal grid on which all lengths lie. Where there is none, the finest for which there is room: lengths
 * are rounded up to it, so that the packing stays valid and loses less than a step a piece.
 */
function gridFor({ width, items }: StripProblem): number {
  const lengths = [width, ...items.flatMap((item) => [item.width, item.height])];
  const total = items.reduce((sum, item) => sum + item.count * Math.max(item.width, item.height), 0);
  const finest = Math.min(FINEST, MOST_STEPS / Math.max(width, total));
  for (let scale = 1; scale <= finest; scale *= 10)
    if (lengths.every((length) => Math.abs(length * scale - Math.round(length * scale)) < ON_STEP)) return scale;
  return finest;
}

/** With turns, the longer side is the width. */
interface Kind {
  readonly width: number;
  readonly height: number;
  readonly items: number[];
}

export function piecesOf(problem: StripProblem): Pieces {
  const { items, turns } = problem;
  const scale = gridFor(problem);
  const width = Math.floor(problem.width * scale + ON_STEP);
  const steps = (length: number): number => {
    const up = Math.ceil(length * scale - ON_STEP);
    // what fits the strip to a hair must not be rounded out of it
    return length <= problem.width ? Math.min(up, width) : up;
  };
  const kinds = new Map<string, Kind>();
  items.forEach((item, index) => {
    const [across, up] = [steps(item.width), steps(item.height)];
    const [w, h] = turns && across < up ? [up, across] : [across, up];
    if ((turns ? h : w) > width) throw new Error(`rectangle ${index} is wider than the strip`);
    const kind = kinds.get(`${w} ${h}`) ?? { width: w, height: h, items: [] };
    for (let piece = 0; piece < item.count; piece++) kind.items.push(index);
    if (item.count > 0) kinds.set(`${w} ${h}`, kind);
  });
  const list = [...kinds.values()].sort((a, b) =>
    turns ? a.height - b.height || a.width - b.width : a.width - b.width || a.height - b.height,
  );
  const area = list.reduce((sum, kind) => sum + kind.width * kind.height * kind.items.length, 0);
  return {
    scale,
    width,
    counts: Int32Array.from(list, (kind) => kind.items.length),
    total: list.reduce((sum, kind) => sum + kind.items.length, 0),
    area,
    least: leastHeight(list, { width, area, turns }),
    options: optionsOf(list, turns),
    items: list.map((kind) => kind.items),
    itemWidth: Int32Array.from(items, (item) => steps(item.width)),
  };
}

function optionsOf(kinds: readonly Kind[], turns: boolean): Options {
  const width = new Int32Array(2 * kinds.length).fill(NEVER);
  const height = new Int32Array(2 * kinds.length);
  kinds.forEach((kind, k) => {
    width[2 * k] = turns ? kind.height : kind.width;
    height[2 * k] = turns ? kind.width : kind.height;
    if (!turns || kind.width === kind.height) return;
    width[2 * k + 1] = kind.width;
    height[2 * k + 1] = kind.height;
  });
  return { width, height };
}

/**
 * No packing is lower than the area allows, than the highest piece, or than the stack of all pieces of which no two
 * fit side by side.
 */
function leastHeight(
  kinds: readonly Kind[],
  given: { readonly width: number; readonly area: number; readonly turns: boolean },
): number {
  const { width, area, turns } = given;
  let highest = 0;
  let stacked = 0;
  for (const kind of kinds) {
    // lying down, where it fits so, a kind is at its lowest; standing up, at its narrowest
    const low = turns && kind.width > width ? kind.width : kind.height;
    const narrow = turns ? kind.height : kind.width;
    highest = Math.max(highest, low);
    if (2 * narrow > width) stacked += low * kind.items.length;
  }
  return Math.max(Math.ceil(area / width), highest, stacked);
}

/** The packing in the lengths of the problem; pieces of a kind go to its items in their order. */
export function packingOf({ items }: StripProblem, pieces: Pieces, laid: Laid): StripPacking {
  const used = pieces.items.map(() => 0);
  let height = 0;
  const places = Array.from({ length: laid.size }, (_, i): RectanglePlace => {
    const kind = laid.kind[i] as number;
    const item = pieces.items[kind]?.[used[kind] as number] as number;
    used[kind] = (used[kind] as number) + 1;
    const { width: across, height: up } = items[item] as Rectangle;
    const turned = laid.width[i] !== pieces.itemWidth[item];
    const y = (laid.y[i] as number) / pieces.scale;
    height = Math.max(height, y + (turned ? across : up));
    return { item, x: (laid.x[i] as number) / pieces.scale, y, turned };
  });
  return { height, places };
}
