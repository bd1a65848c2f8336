/**
 * The upper edge of what lies in a strip, from left to right: level i reaches from x[i] to x[i + 1] (the last one to
 * the strip's width) at height y[i]. Neighbouring levels differ in height. Changed in place, in typed arrays: it is
 * rebuilt some thousand times a millisecond.
 */
export interface Skyline {
  readonly width: number;
  readonly x: Int32Array;
  readonly y: Int32Array;
  size: number;
}

/** Higher than any wall: what stands at both ends of a strip. */
export const WALL = 2 ** 30;

export function emptySkyline(width: number, mostLevels: number): Skyline {
  return { width, x: new Int32Array(mostLevels + 2), y: new Int32Array(mostLevels + 2), size: 1 };
}

export function clear(sky: Skyline): void {
  sky.size = 1;
  sky.x[0] = 0;
  sky.y[0] = 0;
}

/** The lowest level, the leftmost of several. */
export function lowest(sky: Skyline): number {
  const { y, size } = sky;
  let best = 0;
  let height = y[0] as number;
  for (let i = 1; i < size; i++) {
    const here = y[i] as number;
    if (here < height) {
      height = here;
      best = i;
    }
  }
  return best;
}

export const leftWall = (sky: Skyline, at: number): number => (at > 0 ? (sky.y[at - 1] as number) : WALL);
export const rightWall = (sky: Skyline, at: number): number => (at + 1 < sky.size ? (sky.y[at + 1] as number) : WALL);
export const levelWidth = (sky: Skyline, at: number): number =>
  (at + 1 < sky.size ? (sky.x[at + 1] as number) : sky.width) - (sky.x[at] as number);

function remove(sky: Skyline, at: number, count: number): void {
  sky.x.copyWithin(at, at + count, sky.size);
  sky.y.copyWithin(at, at + count, sky.size);
  sky.size -= count;
}

/** Lifts a whole level to a height, joining it to neighbours of that height. */
export function lift(sky: Skyline, at: number, height: number): void {
  const left = at > 0 && sky.y[at - 1] === height;
  const right = at + 1 < sky.size && sky.y[at + 1] === height;
  sky.y[at] = height;
  if (right) remove(sky, at + 1, 1);
  if (left) remove(sky, at, 1);
}

/** Lifts the left part of a level, less than the whole of it. */
export function liftLeft(sky: Skyline, at: number, width: number, height: number): void {
  if (at > 0 && sky.y[at - 1] === height) {
    sky.x[at] = (sky.x[at] as number) + width;
    return;
  }
  sky.x.copyWithin(at + 1, at, sky.size);
  sky.y.copyWithin(at + 1, at, sky.size);
  sky.size++;
  sky.y[at] = height;
  sky.x[at + 1] = (sky.x[at] as number) + width;
}

/** Lifts the right part of a level, less than the whole of it. */
export function liftRight(sky: Skyline, at: number, width: number, height: number): void {
  const end = at + 1 < sky.size ? (sky.x[at + 1] as number) : sky.width;
  if (at + 1 < sky.size && sky.y[at + 1] === height) {
    sky.x[at + 1] = end - width;
    return;
  }
  sky.x.copyWithin(at + 2, at + 1, sky.size);
  sky.y.copyWithin(at + 2, at + 1, sky.size);
  sky.size++;
  sky.x[at + 1] = end - width;
  sky.y[at + 1] = height;
}
