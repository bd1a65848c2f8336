/**
 * The upper edge of what lies in a strip, from left to right: level i reaches from x[i] to x[i + 1], the last one to
 * the strip's width, at height y[i]. Neighbouring levels differ in height.
 *
 *             ______
 *      ______|      |       levels: 0 left wall, 1 high, 2 a gap: lower than its neighbours, which are its walls
 *                   |   ___
 *                   |__|
 *
 * Changed in place, in typed arrays: it is rebuilt some thousand times a millisecond.
 */
export interface Skyline {
  readonly width: number;
  readonly x: Int32Array;
  readonly y: Int32Array;
  size: number;
}

/** Higher than anything: what stands at both ends of a strip. */
export const WALL = 2 ** 30;

export const emptySkyline = (width: number, mostLevels: number): Skyline => ({
  width,
  // two more than levels: covering a stretch may split one at both its ends before others are dropped
  x: new Int32Array(mostLevels + 2),
  y: new Int32Array(mostLevels + 2),
  size: 1,
});

export function clearSkyline(sky: Skyline): void {
  sky.size = 1;
  sky.x[0] = 0;
  sky.y[0] = 0;
}

export const leftWall = (sky: Skyline, at: number): number => (at > 0 ? (sky.y[at - 1] as number) : WALL);
export const rightWall = (sky: Skyline, at: number): number => (at + 1 < sky.size ? (sky.y[at + 1] as number) : WALL);
const endOf = (sky: Skyline, at: number): number => (at + 1 < sky.size ? (sky.x[at + 1] as number) : sky.width);
export const levelWidth = (sky: Skyline, at: number): number => endOf(sky, at) - (sky.x[at] as number);

/** The lowest level, the leftmost of several. */
export function lowestGap({ y, size }: Skyline): number {
  let best = 0;
  for (let i = 1; i < size; i++) if ((y[i] as number) < (y[best] as number)) best = i;
  return best;
}

/** The narrowest of the levels that are lower than their neighbours, the leftmost of several. */
export function narrowestGap(sky: Skyline): number {
  const { x, y, size, width } = sky;
  let best = 0;
  let bestWidth = WALL;
  for (let i = 0; i < size; i++) {
    const floor = y[i] as number;
    const end = i + 1 < size ? (x[i + 1] as number) : width;
    const gap = end - (x[i] as number);
    if (gap >= bestWidth) continue;
    if ((i > 0 && (y[i - 1] as number) < floor) || (i + 1 < size && (y[i + 1] as number) < floor)) continue;
    best = i;
    bestWidth = gap;
  }
  return best;
}

function drop(sky: Skyline, at: number): void {
  const { x, y } = sky;
  sky.size--;
  for (let i = at; i < sky.size; i++) {
    x[i] = x[i + 1] as number;
    y[i] = y[i + 1] as number;
  }
}

function insert(sky: Skyline, at: number, left: number, height: number): void {
  const { x, y } = sky;
  for (let i = sky.size; i > at; i--) {
    x[i] = x[i - 1] as number;
    y[i] = y[i - 1] as number;
  }
  x[at] = left;
  y[at] = height;
  sky.size++;
}

/** Lifts a whole level, joining it to neighbours of the new height. */
export function lift(sky: Skyline, at: number, height: number): void {
  sky.y[at] = height;
  if (rightWall(sky, at) === height) drop(sky, at + 1);
  if (leftWall(sky, at) === height) drop(sky, at);
}

/** Lifts the left part of a level, less than the whole of it. */
export function liftLeft(sky: Skyline, at: number, width: number, height: number): void {
  const left = sky.x[at] as number;
  sky.x[at] = left + width;
  if (leftWall(sky, at) !== height) insert(sky, at, left, height);
}

/** Lifts the right part of a level, less than the whole of it. */
export function liftRight(sky: Skyline, at: number, width: number, height: number): void {
  const left = endOf(sky, at) - width;
  if (rightWall(sky, at) === height) sky.x[at + 1] = left;
  else insert(sky, at + 1, left, height);
}

/** Lifts the stretch from left to right, over whatever levels it reaches, to a height that none of them exceeds. */
export function cover(sky: Skyline, left: number, right: number, height: number): void {
  let at = 0;
  while (endOf(sky, at) <= left) at++;
  if ((sky.x[at] as number) < left) insert(sky, ++at, left, sky.y[at - 1] as number);
  while (endOf(sky, at) < right) {
    const next = endOf(sky, at + 1);
    if (next > right) {
      sky.x[at + 1] = right;
      break;
    }
    drop(sky, at + 1);
  }
  if (endOf(sky, at) > right) insert(sky, at + 1, right, sky.y[at] as number);
  lift(sky, at, height);
}
