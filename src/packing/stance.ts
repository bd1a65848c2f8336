import type { Box, Point } from '../geometry/path.js';
import type { Blank, Ring } from './shapes.js';
import { coverOf, roomsWithin } from './silhouette.js';

/** A way in which a blank may lie, from the lower left corner of the upright rectangle round it. */
export interface Stance {
  /** Quarter turns anticlockwise. */
  readonly turn: number;
  readonly width: number;
  readonly height: number;
  /** Rectangles that together cover it, four numbers each: left, bottom, right, top. */
  readonly cover: Float64Array;
  readonly windows: readonly Window[];
}

/** A window in which something may lie. */
export interface Window {
  /** Index into the blank's windows. */
  readonly window: number;
  /** Rooms in it, the spacing to its edge taken off; four numbers each as in a cover. */
  readonly rooms: Float64Array;
  /** By kind of piece: where one lies that fits the empty window, though none of its rooms. */
  readonly snug?: ReadonlyMap<number, Snug>;
}

/** A piece's way of lying, by index, and where: from the lower left corner of the rectangle round the window's piece. */
export interface Snug {
  readonly stance: number;
  readonly x: number;
  readonly y: number;
}

/** Rooms of one window that are remembered. */
const MOST_ROOMS = 10;
/** What is cut into a piece less deep than this and the spacing is of no use to its neighbours, mm. */
const SHALLOW = 6;
/** Narrower windows hold nothing that could be cut, mm. */
const NARROWEST = 4;

/**
 * The ways in which each blank may lie that differ for its neighbours: half a turn more of a rectangle is the same
 * rectangle. What they have to offer in their windows is the same then too, turned about.
 */
export function stancesOf(blanks: readonly Blank[], spacing: number): readonly (readonly Stance[])[] {
  const narrowest = Math.min(...blanks.map(({ outline }) => narrowSide(outline)));
  const gaps = { shallow: spacing + Math.min(SHALLOW, narrowest / 2), narrow: narrowest + 2 * spacing };
  const bare = blanks.map(({ outline, turns }) => distinct(turns.map((turn) => bareStance(outline, turn, gaps))));
  const sizes = bare.flat();
  const holdsSome = (b: Box) =>
    sizes.some(({ width, height }) => width <= b.right - b.left + 1e-7 && height <= b.top - b.bottom + 1e-7);
  return blanks.map(({ outline, windows }, i) =>
    (bare[i] as readonly Stance[]).map((stance) => {
      const corner = cornerOf(turned(outline, stance.turn));
      const open = windows.flatMap((ring, window): readonly Window[] => {
        if (narrowSide(ring) < Math.max(NARROWEST, narrowest) + 2 * spacing - 1e-7) return [];
        const rooms = roomsWithin(turned(ring, stance.turn), [], narrowest / 4)
          .map((room) => shrunk(room, spacing, corner))
          .filter(holdsSome)
          .slice(0, MOST_ROOMS);
        return [{ window, rooms: numbersOf(rooms) }];
      });
      return { ...stance, windows: open };
    }),
  );
}

function bareStance(outline: Ring, turn: number, gaps: { shallow: number; narrow: number }): Stance {
  const ring = turned(outline, turn);
  const corner = cornerOf(ring);
  const boxes = coverOf(ring, gaps).map((box) => shrunk(box, 0, corner));
  return {
    turn,
    width: Math.max(...boxes.map(({ right }) => right)),
    height: Math.max(...boxes.map(({ top }) => top)),
    cover: numbersOf(boxes),
    windows: [],
  };
}

function distinct(stances: readonly Stance[]): readonly Stance[] {
  return stances.filter((a, i) => !stances.slice(0, i).some((b) => sameCover(a.cover, b.cover)));
}

const numbersOf = (boxes: readonly Box[]): Float64Array =>
  Float64Array.from(boxes.flatMap(({ left, bottom, right, top }) => [left, bottom, right, top]));

/** Whether two covers are the same to a rounding. */
export function sameCover(a: Float64Array, b: Float64Array): boolean {
  return a.length === b.length && a.every((value, i) => Math.abs(value - (b[i] as number)) < 1e-7);
}

export function turned(ring: Ring, turn: number): Ring {
  const quarter = ({ x, y }: Point): Point =>
    turn === 1 ? { x: -y, y: x } : turn === 2 ? { x: -x, y: -y } : turn === 3 ? { x: y, y: -x } : { x, y };
  return ring.map(quarter);
}

export const cornerOf = (ring: Ring): Point => ({
  x: ring.reduce((least, { x }) => Math.min(least, x), Infinity),
  y: ring.reduce((least, { y }) => Math.min(least, y), Infinity),
});

function narrowSide(ring: Ring): number {
  const xs = ring.map(({ x }) => x);
  const ys = ring.map(({ y }) => y);
  return Math.min(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}

const shrunk = (box: Box, by: number, { x, y }: Point): Box => ({
  left: box.left + by - x,
  bottom: box.bottom + by - y,
  right: box.right - by - x,
  top: box.top - by - y,
});
