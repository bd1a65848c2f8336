import { isFelt, type Shift } from '../assembly/bodies.js';
import type { Extent } from '../assembly/extent.js';
import type { Opaque } from '../assembly/screens.js';
import { apply, type Point3 } from '../geometry/placement.js';
import type { Screen } from '../geometry/shadow.js';
import type { Scene, Stance } from './light-scene.js';

/** A plane through the camera: a point of it, and two level or upright unit vectors that it is drawn in. */
export interface Cut {
  readonly origin: Point3;
  readonly right: Point3;
  readonly up: Point3;
}

/** A point of a section, from its origin. */
export interface Drawn {
  readonly r: number;
  readonly h: number;
}

/** One solid cut through: the rectangles of its screens. */
export interface CutSolid {
  readonly solid: Opaque;
  readonly rectangles: readonly Rectangle[];
}

export interface Rectangle {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** A section through everything that stands in a stance, as far as it comes into a window; without felt where it is asked for. */
export function sectionOf(
  scene: Scene,
  stance: Stance,
  cut: Cut,
  window: Rectangle,
  felt: boolean,
): readonly CutSolid[] {
  const shifts = scene.shifts(stance);
  const cast = scene.standing(stance.setup, stance.push).all;
  return scene.solids.flatMap((solid, k) => {
    if (cast[k] !== 1 || (!felt && isFelt(solid.piece.part))) return [];
    const shift = shifts[solid.body] ?? ([0, 0, 0] as const);
    if (!crosses(solid.piece.extent, shift, cut) || !near(solid.piece.extent, shift, cut, window)) return [];
    const rectangles = solid.screens.flatMap((screen, i) => {
      const box = solid.boxes[i] as Extent;
      if (!crosses(box, shift, cut) || !near(box, shift, cut, window)) return [];
      const one = slice(screen, shift, cut);
      if (one === null) return [];
      const out =
        one.right < window.left || one.left > window.right || one.top < window.bottom || one.bottom > window.top;
      return out ? [] : [one];
    });
    return rectangles.length === 0 ? [] : [{ solid, rectangles }];
  });
}

const dot = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;

const normalOf = ({ right: a, up: b }: Cut): Point3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

function crosses({ x, y, z }: Extent, [sx, sy, sz]: Shift, cut: Cut): boolean {
  const n = normalOf(cut);
  const middle = { x: (x[0] + x[1]) / 2 + sx, y: (y[0] + y[1]) / 2 + sy, z: (z[0] + z[1]) / 2 + sz };
  const reach = (Math.abs(n.x) * (x[1] - x[0]) + Math.abs(n.y) * (y[1] - y[0]) + Math.abs(n.z) * (z[1] - z[0])) / 2;
  return Math.abs(dot(n, middle) - dot(n, cut.origin)) < reach;
}

/** Whether a box comes into the window, seen square to the plane. */
function near({ x, y, z }: Extent, [sx, sy, sz]: Shift, { origin, right, up }: Cut, window: Rectangle): boolean {
  const middle = {
    x: (x[0] + x[1]) / 2 + sx - origin.x,
    y: (y[0] + y[1]) / 2 + sy - origin.y,
    z: (z[0] + z[1]) / 2 + sz - origin.z,
  };
  const reach = (a: Point3) =>
    (Math.abs(a.x) * (x[1] - x[0]) + Math.abs(a.y) * (y[1] - y[0]) + Math.abs(a.z) * (z[1] - z[0])) / 2;
  const [r, h] = [dot(middle, right), dot(middle, up)];
  const [dr, dh] = [reach(right), reach(up)];
  return r + dr >= window.left && r - dr <= window.right && h + dh >= window.bottom && h - dh <= window.top;
}

/** The upright rectangle round the section of a screen; the section itself, for what stands square to the plane. */
function slice({ loop, height, matrix }: Screen, [sx, sy, sz]: Shift, cut: Cut): Rectangle | null {
  const n = normalOf(cut);
  const from = ({ x, y, z }: Point3) => ({
    x: x + sx - cut.origin.x,
    y: y + sy - cut.origin.y,
    z: z + sz - cut.origin.z,
  });
  const low = loop.map(({ x, y }) => from(apply(matrix, { x, y, z: 0 })));
  const high = loop.map(({ x, y }) => from(apply(matrix, { x, y, z: height })));
  const edges = low.flatMap((a, i) => {
    const next = (i + 1) % low.length;
    return [
      [a, low[next] as Point3],
      [high[i] as Point3, high[next] as Point3],
      [a, high[i] as Point3],
    ] as const;
  });
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [a, b] of edges) {
    const [da, db] = [dot(n, a), dot(n, b)];
    if (da * db > 0 || da === db) continue;
    const share = da / (da - db);
    const p = { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y), z: a.z + share * (b.z - a.z) };
    const [r, h] = [dot(p, cut.right), dot(p, cut.up)];
    left = Math.min(left, r);
    right = Math.max(right, r);
    bottom = Math.min(bottom, h);
    top = Math.max(top, h);
  }
  return left < right && bottom < top ? { left, right, bottom, top } : null;
}

/** The way with the fewest turns from one point of a section to another. */
export interface LightWay {
  /** Straight stretches between wood and wood, each with its length: light must turn at the end of each. */
  readonly stretches: readonly { readonly length: number; readonly along: 'r' | 'h'; readonly sign: 1 | -1 }[];
  /** Whether light from outside shines straight along the first of them, past everything that stands before it. */
  readonly straightIn: boolean;
  /** Where it comes out of the last one. */
  readonly end: Drawn;
  /** The solids on either side of it. */
  readonly between: readonly Opaque[];
}

/** So much every piece is made smaller all round, mm: faces that touch part, and light finds its way along glue lines too. */
const PARTED = 0.05;
/** A way narrower than this is a passage, mm; in what is wider light goes as it likes. */
const NARROW = 4.5;
/** Lines of the grid nearer to each other than this are one, mm. */
const SAME = 1e-4;

/**
 * Looks for the way with the fewest straight stretches, and of those for the shortest. The section is divided at every
 * edge, so that each cell is either wood or air; from cell to cell light goes left, right, up or down, at no cost in the
 * open; a new stretch begins where it enters a passage, and wherever it turns in one. Null where there is no way at all.
 * Glue lines are tight, or light finds its way along them as well.
 */
export function fewestTurns(
  solids: readonly CutSolid[],
  window: Rectangle,
  { from, to, glued }: { readonly from: Drawn; readonly to: Drawn; readonly glued: 'tight' | 'parted' },
): LightWay | null {
  const rs = linesOf(
    solids.flatMap((s) => s.rectangles.flatMap((q) => [q.left, q.right])),
    window.left,
    window.right,
  );
  const hs = linesOf(
    solids.flatMap((s) => s.rectangles.flatMap((q) => [q.bottom, q.top])),
    window.bottom,
    window.top,
  );
  const [columns, rows] = [rs.length - 1, hs.length - 1];
  const wood = new Int16Array(columns * rows).fill(-1);
  const bodies = new Map<number, number[]>();
  solids.forEach(({ solid: { body } }, k) => {
    const key = glued === 'tight' ? body : k;
    bodies.set(key, [...(bodies.get(key) ?? []), k]);
  });
  for (const members of bodies.values()) {
    const whole = erode(
      members.flatMap((k) => solids[k]?.rectangles ?? []),
      rs,
      hs,
    );
    for (const k of members) {
      const own = covered(solids[k]?.rectangles ?? [], rs, hs);
      whole.forEach((is, cell) => {
        if (is && own[cell]) wood[cell] = k;
      });
    }
  }
  const width = (cell: number, step: number, count: number, at: number, lines: readonly number[]): number => {
    let [a, b] = [at, at];
    while (a > 0 && wood[cell - (at - a + 1) * step] === -1) a--;
    while (b < count - 1 && wood[cell + (b - at + 1) * step] === -1) b++;
    return (lines[b + 1] as number) - (lines[a] as number);
  };
  const across = { r: new Float64Array(wood.length), h: new Float64Array(wood.length) };
  for (let cell = 0; cell < wood.length; cell++) {
    if (wood[cell] !== -1) continue;
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    // what bounds a way along r is how far apart wood is along h
    across.r[cell] = width(cell, columns, rows, row, hs);
    across.h[cell] = width(cell, 1, columns, column, rs);
  }
  const cellAt = ({ r, h }: Drawn): number => {
    const column = Math.max(0, Math.min(columns - 1, rs.findIndex((line) => line > r) - 1));
    const row = Math.max(0, Math.min(rows - 1, hs.findIndex((line) => line > h) - 1));
    return row * columns + column;
  };
  const [start, goal] = [cellAt(from), cellAt(to)];
  if (wood[start] !== -1 || wood[goal] !== -1) return null;

  // states: a cell, in the open or in a passage in one of four directions
  const cost = new Float64Array(5 * wood.length).fill(Infinity);
  const came = new Int32Array(5 * wood.length).fill(-1);
  const heap = new Heap();
  cost[5 * start] = 0;
  heap.push(0, 5 * start);
  let reached = -1;
  for (let next = heap.pop(); next !== null; next = heap.pop()) {
    const { state, at } = next;
    if (at > (cost[state] as number)) continue;
    const [cell, kind] = [Math.floor(state / 5), state % 5];
    if (cell === goal) {
      reached = state;
      break;
    }
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    for (const [k, [dc, dr]] of STEPS.entries()) {
      const [c, r] = [column + dc, row + dr];
      if (c < 0 || c >= columns || r < 0 || r >= rows) continue;
      const other = r * columns + c;
      if (wood[other] !== -1) continue;
      const passage = ((dc !== 0 ? across.r : across.h)[other] as number) < NARROW;
      const long = dc !== 0 ? (rs[c + 1] as number) - (rs[c] as number) : (hs[r + 1] as number) - (hs[r] as number);
      const turns = passage && kind !== k + 1 ? TURN : 0;
      // straight on through the open is no turn
      const then = 5 * other + (passage || kind === k + 1 ? k + 1 : 0);
      const total = at + turns + long;
      if (total >= (cost[then] as number)) continue;
      cost[then] = total;
      came[then] = state;
      heap.push(total, then);
    }
  }
  if (reached === -1) return null;
  return wayBack(reached, came, { columns, rs, hs, wood, solids, across });
}

/** A turn outweighs any length, mm. */
const TURN = 1e5;

const STEPS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

interface Grid {
  readonly columns: number;
  readonly rs: readonly number[];
  readonly hs: readonly number[];
  readonly wood: Int16Array;
  readonly solids: readonly CutSolid[];
  /** How far apart wood is across a way along either axis, cell by cell. */
  readonly across: { readonly r: Float64Array; readonly h: Float64Array };
}

function wayBack(reached: number, came: Int32Array, { columns, rs, hs, wood, solids, across }: Grid): LightWay {
  const states: number[] = [];
  for (let state = reached; state !== -1; state = came[state] as number) states.unshift(state);
  const stretches: { length: number; along: 'r' | 'h'; sign: 1 | -1 }[] = [];
  const beside = new Set<Opaque>();
  let end: Drawn = { r: 0, h: 0 };
  let kind = 0;
  let straightIn = true;
  for (const state of states) {
    const [cell, now] = [Math.floor(state / 5), state % 5];
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    const level = now <= 2;
    if (now > 0 && ((level ? across.r : across.h)[cell] as number) < NARROW) {
      const [from, to] = level ? [rs[column], rs[column + 1]] : [hs[row], hs[row + 1]];
      const long = (to as number) - (from as number);
      const last = stretches.at(-1);
      if (last && now === kind) last.length += long;
      else {
        if (stretches.length === 0) {
          // back along the first stretch, out of the joint
          const back = (level ? 1 : columns) * (now % 2 === 1 ? -1 : 1);
          let at = cell;
          const border = (c: number) =>
            level ? c % columns === 0 || c % columns === columns - 1 : c < columns || c >= wood.length - columns;
          while (!border(at) && wood[at] === -1) at += back;
          straightIn = wood[at] === -1;
        }
        stretches.push({ length: long, along: level ? 'r' : 'h', sign: now % 2 === 1 ? 1 : -1 });
      }
      end = {
        r: ((rs[column] as number) + (rs[column + 1] as number)) / 2,
        h: ((hs[row] as number) + (hs[row + 1] as number)) / 2,
      };
      for (const step of level ? [columns, -columns] : [1, -1]) {
        let at = cell + step;
        while (wood[at] === -1 && (level || Math.floor(at / columns) === row)) at += step;
        const solid = solids[wood[at] ?? -1]?.solid;
        if (solid && !(Math.floor(at / columns) !== row && !level)) beside.add(solid);
      }
    }
    kind = now;
  }
  // both ends of a stretch lie at edges that were made smaller
  for (const stretch of stretches) stretch.length += 2 * PARTED;
  return { stretches, straightIn, end, between: [...beside] };
}

function linesOf(edges: readonly number[], least: number, most: number): readonly number[] {
  const lines = edges.flatMap((at) => [at - PARTED, at, at + PARTED]).filter((at) => at > least && at < most);
  return [least, ...lines, most]
    .sort((a, b) => a - b)
    .filter((at, i, all) => i === 0 || at - (all[i - 1] as number) > SAME);
}

/** Which cells lie in a union of rectangles. */
function covered(rectangles: readonly Rectangle[], rs: readonly number[], hs: readonly number[]): Uint8Array {
  const [columns, rows] = [rs.length - 1, hs.length - 1];
  const cells = new Uint8Array(columns * rows);
  const middle = (lines: readonly number[], i: number) => ((lines[i] as number) + (lines[i + 1] as number)) / 2;
  for (const { left, right, bottom, top } of rectangles)
    for (let row = 0; row < rows; row++) {
      const h = middle(hs, row);
      if (h < bottom || h > top) continue;
      for (let column = 0; column < columns; column++) {
        const r = middle(rs, column);
        if (r > left && r < right) cells[row * columns + column] = 1;
      }
    }
  return cells;
}

/** Which cells lie in a union of rectangles, and all round so much in it as it is made smaller. */
function erode(rectangles: readonly Rectangle[], rs: readonly number[], hs: readonly number[]): Uint8Array {
  const [columns, rows] = [rs.length - 1, hs.length - 1];
  const cells = covered(rectangles, rs, hs);
  const reach = (lines: readonly number[], i: number): readonly [number, number] => {
    let [a, b] = [i, i];
    while (a > 0 && (lines[i] as number) - (lines[a] as number) < PARTED - SAME) a--;
    while (b < lines.length - 2 && (lines[b + 1] as number) - (lines[i + 1] as number) < PARTED - SAME) b++;
    return [a, b];
  };
  const left = new Uint8Array(cells.length);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      if (cells[row * columns + column] === 0) continue;
      const [c0, c1] = reach(rs, column);
      const [r0, r1] = reach(hs, row);
      let whole = 1;
      for (let r = r0; r <= r1 && whole; r++)
        for (let c = c0; c <= c1 && whole; c++) if (cells[r * columns + c] === 0) whole = 0;
      left[row * columns + column] = whole;
    }
  return left;
}

/** A binary heap: the growing buffer is its point. */
class Heap {
  readonly #items: { readonly at: number; readonly state: number }[] = [];

  push(at: number, state: number): void {
    const items = this.#items;
    let i = items.push({ at, state }) - 1;
    while (i > 0) {
      const up = (i - 1) >> 1;
      if ((items[up]?.at ?? 0) <= at) break;
      [items[i], items[up]] = [items[up] as (typeof items)[0], items[i] as (typeof items)[0]];
      i = up;
    }
  }

  pop(): { readonly at: number; readonly state: number } | null {
    const items = this.#items;
    const first = items[0];
    const last = items.pop();
    if (first === undefined || last === undefined) return null;
    if (items.length === 0) return first;
    items[0] = last;
    for (let i = 0; ; ) {
      const [l, r] = [2 * i + 1, 2 * i + 2];
      let least = i;
      if (l < items.length && (items[l]?.at ?? 0) < (items[least]?.at ?? 0)) least = l;
      if (r < items.length && (items[r]?.at ?? 0) < (items[least]?.at ?? 0)) least = r;
      if (least === i) return first;
      [items[i], items[least]] = [items[least] as (typeof items)[0], items[i] as (typeof items)[0]];
      i = least;
    }
  }
}
