import { type Box, boundsOfPoints, inside } from '../geometry/path.js';
import type { Ring } from './shapes.js';

/** Lines of a grid across and up: along slants and curves only so many are taken in each direction. */
const MOST_LINES = 24;
/** Of a piece's cover fewer: each step makes every search for a place longer. */
const MOST_STEPS = 10;
/** Lines closer together than this are one, mm: a micrometre of material more or less lies below every tolerance. */
const SAME_LINE = 1e-6;

/**
 * Upright rectangles that together cover a piece: exactly where its edges are upright and level, in steps round what is
 * slanted or round. What is cut into the outline less deep than `shallow`, or leaves a gap less wide than `narrow`, is
 * covered too: into the gaps of a finger joint nothing enters, so a panel is one rectangle.
 */
export function coverOf(outline: Ring, { shallow, narrow }: { shallow: number; narrow: number }): readonly Box[] {
  const box = boundsOfPoints(outline);
  const whole = [box];
  const deep = edgesOf(outline).filter((edge) => !isShallow(edge, box, shallow));
  if (deep.length === 0) return whole;
  const xs = linesOf(deep, 'x', box.left, box.right, shallow, MOST_STEPS);
  const ys = linesOf(deep, 'y', box.bottom, box.top, shallow, MOST_STEPS);
  if (xs.length === 2 && ys.length === 2) return whole;
  const cells = cellsOf(xs, ys, [outline]);
  const covered = cells.map((kind) => (kind === OUTSIDE ? 0 : 1));
  closeGaps(covered, xs, ys, narrow);
  return fewest(largestIn(xs, ys, covered));
}

/** The largest upright rectangles that lie within the first ring and outside the others, biggest first. */
export function roomsWithin(outline: Ring, holes: readonly Ring[], finest: number): readonly Box[] {
  const box = boundsOfPoints(outline);
  const edges = [outline, ...holes].flatMap(edgesOf);
  const xs = linesOf(edges, 'x', box.left, box.right, finest, MOST_LINES);
  const ys = linesOf(edges, 'y', box.bottom, box.top, finest, MOST_LINES);
  const cells = cellsOf(xs, ys, [outline, ...holes]);
  return largestIn(
    xs,
    ys,
    cells.map((kind) => (kind === INSIDE ? 1 : 0)),
  );
}

interface Edge {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

const edgesOf = (ring: Ring): readonly Edge[] =>
  ring.map((a, i) => {
    const b = ring[(i + 1) % ring.length] as (typeof ring)[number];
    return { ax: a.x, ay: a.y, bx: b.x, by: b.y };
  });

const isShallow = ({ ax, ay, bx, by }: Edge, { left, bottom, right, top }: Box, shallow: number): boolean =>
  Math.max(ax, bx) < left + shallow ||
  Math.min(ax, bx) > right - shallow ||
  Math.max(ay, by) < bottom + shallow ||
  Math.min(ay, by) > top - shallow;

/**
 * Where a grid is divided in one direction: at upright (or level) edges first of all, for these are then met exactly,
 * then at ends of the others and at steps along them, about evenly over the whole.
 */
function linesOf(edges: readonly Edge[], axis: 'x' | 'y', low: number, high: number, finest: number, most: number) {
  const exact: number[] = [];
  const others: number[] = [];
  for (const { ax, ay, bx, by } of edges) {
    const [from, to, rise] = axis === 'x' ? [ax, bx, by - ay] : [ay, by, bx - ax];
    if (Math.abs(to - from) < SAME_LINE) exact.push(from);
    else if (Math.abs(rise) >= SAME_LINE) {
      const steps = Math.min(most, Math.ceil(Math.min(Math.abs(to - from), Math.abs(rise)) / finest));
      for (let k = 0; k <= steps; k++) others.push(from + ((to - from) * k) / steps);
    }
  }
  const lines = [low, high];
  const apart = (value: number, least: number) => lines.every((line) => Math.abs(line - value) >= least);
  for (const value of exact) if (apart(value, SAME_LINE)) lines.push(value);
  const count = Math.min(most, Math.floor((high - low) / finest));
  const step = (high - low) / count;
  for (let k = 1; k < count; k++) {
    const even = low + k * step;
    const near = others.reduce((best, v) => (Math.abs(v - even) < Math.abs(best - even) ? v : best), Infinity);
    if (Math.abs(near - even) <= step / 2 && apart(near, step / 2)) lines.push(near);
  }
  return lines.sort((a, b) => a - b);
}

const OUTSIDE = 0;
const CROSSED = 1;
const INSIDE = 2;

/** What each cell of a grid is, row by row: crossed by an edge, or its middle within the rings (even-odd), or not. */
function cellsOf(xs: readonly number[], ys: readonly number[], rings: readonly Ring[]): Uint8Array {
  const columns = xs.length - 1;
  const rows = ys.length - 1;
  const cells = new Uint8Array(columns * rows);
  for (const edge of rings.flatMap(edgesOf)) {
    const [low, high] = [Math.min(edge.ay, edge.by), Math.max(edge.ay, edge.by)];
    const [left, right] = [Math.min(edge.ax, edge.bx), Math.max(edge.ax, edge.bx)];
    for (let row = 0; row < rows; row++) {
      const bottom = ys[row] as number;
      const top = ys[row + 1] as number;
      if (top <= low || bottom >= high) continue;
      for (let column = 0; column < columns; column++) {
        const cell = { left: xs[column] as number, bottom, right: xs[column + 1] as number, top };
        if (cell.right < left || cell.left > right || cells[row * columns + column] === CROSSED) continue;
        if (crosses(edge, cell)) cells[row * columns + column] = CROSSED;
      }
    }
  }
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      if (cells[row * columns + column] === CROSSED) continue;
      const middle = {
        x: ((xs[column] as number) + (xs[column + 1] as number)) / 2,
        y: ((ys[row] as number) + (ys[row + 1] as number)) / 2,
      };
      const within = rings.filter((ring) => inside(ring, middle)).length % 2 === 1;
      cells[row * columns + column] = within ? INSIDE : OUTSIDE;
    }
  }
  return cells;
}

/** Covers what lies between two covered cells of a row or column and is too narrow for anything to lie in. */
function closeGaps(covered: Uint8Array, xs: readonly number[], ys: readonly number[], narrow: number): void {
  const columns = xs.length - 1;
  const rows = ys.length - 1;
  const close = (lines: readonly number[], at: (i: number) => number) => {
    let last = -1;
    for (let i = 0; i + 1 < lines.length; i++) {
      if (covered[at(i)] === 0) continue;
      if (last >= 0 && (lines[i] as number) - (lines[last + 1] as number) < narrow)
        for (let k = last + 1; k < i; k++) covered[at(k)] = 1;
      last = i;
    }
  };
  for (let row = 0; row < rows; row++) close(xs, (column) => row * columns + column);
  for (let column = 0; column < columns; column++) close(ys, (row) => row * columns + column);
}

/** Whether an edge passes through the open cell. */
function crosses({ ax, ay, bx, by }: Edge, { left, bottom, right, top }: Box): boolean {
  const [dx, dy] = [bx - ax, by - ay];
  let enters = 0;
  let leaves = 1;
  for (const [from, along, low, high] of [
    [ax, dx, left, right],
    [ay, dy, bottom, top],
  ] as const) {
    if (Math.abs(along) < SAME_LINE) {
      if (from <= low + SAME_LINE || from >= high - SAME_LINE) return false;
      continue;
    }
    const [s, t] = [(low - from) / along, (high - from) / along];
    enters = Math.max(enters, Math.min(s, t));
    leaves = Math.min(leaves, Math.max(s, t));
  }
  return leaves - enters > 1e-9;
}

/** All largest rectangles of cells that are marked, biggest first. */
function largestIn(xs: readonly number[], ys: readonly number[], cells: Uint8Array): readonly Box[] {
  const [columns, rows] = [xs.length - 1, ys.length - 1];
  const full = (first: number, last: number, row: number) => {
    if (row < 0 || row >= rows) return false;
    for (let column = first; column <= last; column++) if (cells[row * columns + column] === 0) return false;
    return true;
  };
  const found: Box[] = [];
  for (let low = 0; low < rows; low++) {
    const open = new Uint8Array(columns).fill(1);
    for (let high = low; high < rows; high++) {
      for (let column = 0; column < columns; column++)
        open[column] = (open[column] as number) & (cells[high * columns + column] as number);
      for (let first = 0; first < columns; first++) {
        if (open[first] === 0) continue;
        let last = first;
        while (last + 1 < columns && open[last + 1] === 1) last++;
        if (!full(first, last, low - 1) && !full(first, last, high + 1)) {
          found.push({
            left: xs[first] as number,
            bottom: ys[low] as number,
            right: xs[last + 1] as number,
            top: ys[high + 1] as number,
          });
        }
        first = last;
      }
    }
  }
  const size = (b: Box) => (b.right - b.left) * (b.top - b.bottom);
  return found.sort((a, b) => size(b) - size(a) || a.left - b.left || a.bottom - b.bottom);
}

/** A few of the rectangles that cover as much as all do: a smallest one that the others cover goes, again and again. */
function fewest(boxes: readonly Box[]): readonly Box[] {
  const kept = [...boxes];
  for (let i = kept.length - 1; i >= 0; i--) {
    const others = kept.filter((_, k) => k !== i);
    if (isCovered(kept[i] as Box, others)) kept.splice(i, 1);
  }
  return kept;
}

function isCovered(box: Box, by: readonly Box[]): boolean {
  const [first, ...rest] = by;
  if (box.right - box.left < SAME_LINE || box.top - box.bottom < SAME_LINE) return true;
  if (first === undefined) return false;
  const left = Math.max(box.left, first.left);
  const right = Math.min(box.right, first.right);
  const bottom = Math.max(box.bottom, first.bottom);
  const top = Math.min(box.top, first.top);
  if (left >= right || bottom >= top) return isCovered(box, rest);
  return (
    isCovered({ ...box, right: left }, rest) &&
    isCovered({ ...box, left: right }, rest) &&
    isCovered({ left, right, bottom: box.bottom, top: bottom }, rest) &&
    isCovered({ left, right, bottom: top, top: box.top }, rest)
  );
}
