import { type Box, boundsOfPoints, type ClosedPath, flatten, inside, type Point } from '../geometry/path.js';

/** Windows narrower than this are left alone: no part of a camera is. */
const NARROWEST = 10;
/** Coarse chords are enough for a circle: they only give away this much of it. */
const CHORD = 0.5;
/** Where an edge bulges into the window its chord lies in the part, by this much at most. */
const FINE_CHORD = 0.02;
const MOST_ROOMS = 12;

/**
 * The upright rectangles in a window that cannot grow to any side, largest first: where small parts may lie.
 *
 * The corners of the loop span a grid; a cell is free where its middle lies inside and no slanted edge crosses it.
 */
export function windowRooms(window: ClosedPath): readonly Box[] {
  const intrudes = window.some(({ bulge }) => bulge > 0);
  const points = flatten(window, intrudes ? FINE_CHORD : CHORD);
  const all = boundsOfPoints(points);
  if (all.right - all.left < NARROWEST || all.top - all.bottom < NARROWEST) return [];
  const xs = lines(points.map(({ x }) => x));
  const ys = lines(points.map(({ y }) => y));
  const free = freeCells(points, xs, ys);
  const rows = ys.length - 1;
  const rooms: Box[] = [];
  for (let low = 0; low < rows; low++) {
    let open = new Array<boolean>(xs.length - 1).fill(true);
    for (let high = low; high < rows; high++) {
      open = open.map((o, column) => o && free(column, high));
      for (const [first, last] of runs(open)) {
        const grows = (row: number) => row >= 0 && row < rows && throughout(first, last, (column) => free(column, row));
        if (grows(low - 1) || grows(high + 1)) continue;
        const slack = intrudes ? FINE_CHORD : 0;
        rooms.push({
          left: (xs[first] as number) + slack,
          bottom: (ys[low] as number) + slack,
          right: (xs[last + 1] as number) - slack,
          top: (ys[high + 1] as number) - slack,
        });
      }
    }
  }
  const size = (b: Box) => (b.right - b.left) * (b.top - b.bottom);
  return rooms
    .filter((b) => b.right - b.left >= NARROWEST && b.top - b.bottom >= NARROWEST)
    .sort((a, b) => size(b) - size(a) || a.left - b.left || a.bottom - b.bottom)
    .slice(0, MOST_ROOMS);
}

/** Coordinates in rising order, those closer than a micrometre taken as one. */
function lines(values: readonly number[]): readonly number[] {
  const rising = [...values].sort((a, b) => a - b);
  return rising.filter((v, i) => i === 0 || v - (rising[i - 1] as number) > 1e-3);
}

function freeCells(points: readonly Point[], xs: readonly number[], ys: readonly number[]) {
  const columns = xs.length - 1;
  const cells: boolean[] = [];
  for (let row = 0; row + 1 < ys.length; row++) {
    for (let column = 0; column < columns; column++) {
      const cell = {
        left: xs[column] as number,
        right: xs[column + 1] as number,
        bottom: ys[row] as number,
        top: ys[row + 1] as number,
      };
      const middle = { x: (cell.left + cell.right) / 2, y: (cell.bottom + cell.top) / 2 };
      const crossed = points.some((a, i) => slants(a, points[(i + 1) % points.length] as Point, cell));
      cells.push(!crossed && inside(points, middle));
    }
  }
  return (column: number, row: number): boolean => cells[row * columns + column] as boolean;
}

/** Whether a slanted edge passes through the open cell. Upright and level edges lie on the grid's lines. */
function slants(a: Point, b: Point, { left, right, bottom, top }: Box): boolean {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  if (Math.abs(dx) < 1e-3 || Math.abs(dy) < 1e-3) return false;
  const [s, t] = [(left - a.x) / dx, (right - a.x) / dx];
  const [u, v] = [(bottom - a.y) / dy, (top - a.y) / dy];
  const enters = Math.max(0, Math.min(s, t), Math.min(u, v));
  const leaves = Math.min(1, Math.max(s, t), Math.max(u, v));
  return leaves - enters > 1e-9;
}

/** Stretches of open columns, first and last of each. */
function* runs(open: readonly boolean[]): Generator<readonly [number, number]> {
  let first = -1;
  for (let i = 0; i <= open.length; i++) {
    if (open[i] === true && first < 0) first = i;
    if (open[i] !== true && first >= 0) {
      yield [first, i - 1];
      first = -1;
    }
  }
}

function throughout(first: number, last: number, holds: (i: number) => boolean): boolean {
  for (let i = first; i <= last; i++) if (!holds(i)) return false;
  return true;
}
