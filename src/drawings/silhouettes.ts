import type { Point3 } from '../geometry/placement.js';
import { faced } from './faced.js';
import type { Body } from './scene.js';
import { project, type View } from './view.js';

/** A body on squared paper: the squares that it covers, one after another, and how near the eye it is in each. */
interface Silhouette {
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
  /** Counted from `column` and `row`. */
  readonly across: Int32Array;
  readonly up: Int32Array;
  readonly depth: Float64Array;
}

/** Which body is seen in each square; rows grow upwards, as y does. */
export interface Squared {
  /** Side of a square, true mm. */
  readonly side: number;
  /** The first square, counted from the view’s origin. */
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
  /** Place of the body in its list, or -1. */
  readonly owner: Int32Array;
  /** Of the squares that each body covers, the share in which it is seen. */
  readonly shares: readonly number[];
}

/** Bodies at their true places on squared paper, to be shifted about quickly and looked at again. */
export function silhouettes(bodies: readonly Body[], view: View, side: number): (outs: readonly Point3[]) => Squared {
  const own = bodies.map(({ mesh, matrix }) => {
    const { corners, fronts } = faced(mesh, matrix, view);
    return silhouette(corners, fronts, side);
  });
  return (outs) => {
    const placed = own.map((one, i) => {
      const { x, y, depth } = project(view, outs[i] ?? { x: 0, y: 0, z: 0 });
      return { ...one, column: one.column + Math.round(x / side), row: one.row + Math.round(y / side), nearer: depth };
    });
    const column = Math.min(...placed.map((one) => one.column));
    const row = Math.min(...placed.map((one) => one.row));
    const columns = Math.max(...placed.map((one) => one.column + one.columns)) - column;
    const rows = Math.max(...placed.map((one) => one.row + one.rows)) - row;
    const owner = new Int32Array(columns * rows).fill(-1);
    const nearest = new Float64Array(columns * rows).fill(-Infinity);
    placed.forEach(({ across, up, depth, nearer, ...one }, i) => {
      const start = (one.row - row) * columns + one.column - column;
      for (let k = 0; k < depth.length; k++) {
        const square = start + (up[k] as number) * columns + (across[k] as number);
        const near = (depth[k] as number) + nearer;
        if (near <= (nearest[square] as number)) continue;
        nearest[square] = near;
        owner[square] = i;
      }
    });
    const seen = placed.map(() => 0);
    for (const one of owner) if (one >= 0) seen[one] = (seen[one] as number) + 1;
    const shares = placed.map(({ depth }, i) => (depth.length === 0 ? 0 : (seen[i] as number) / depth.length));
    return { side, column, row, columns, rows, owner, shares };
  };
}

function silhouette(corners: Float64Array, fronts: Int32Array, side: number): Silhouette {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < corners.length; i += 3) {
    left = Math.min(left, corners[i] as number);
    right = Math.max(right, corners[i] as number);
    bottom = Math.min(bottom, corners[i + 1] as number);
    top = Math.max(top, corners[i + 1] as number);
  }
  const [column, row] = [Math.floor(left / side), Math.floor(bottom / side)];
  const [columns, rows] = [Math.floor(right / side) - column + 1, Math.floor(top / side) - row + 1];
  const depth = new Float64Array(columns * rows).fill(-Infinity);
  for (let f = 0; f < fronts.length; f += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * (fronts[f + k] as number)) as [number, number, number];
    const [ax, ay, az] = [corners[a] as number, corners[a + 1] as number, corners[a + 2] as number];
    const [bx, by, bz] = [corners[b] as number, corners[b + 1] as number, corners[b + 2] as number];
    const [cx, cy, cz] = [corners[c] as number, corners[c + 1] as number, corners[c + 2] as number];
    const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
    const [low, high] = [Math.floor(Math.min(ay, by, cy) / side), Math.floor(Math.max(ay, by, cy) / side)];
    const [first, last] = [Math.floor(Math.min(ax, bx, cx) / side), Math.floor(Math.max(ax, bx, cx) / side)];
    for (let r = low; r <= high; r++)
      for (let s = first; s <= last; s++) {
        const [x, y] = [(s + 0.5) * side, (r + 0.5) * side];
        const u = ((bx - x) * (cy - y) - (cx - x) * (by - y)) / area;
        const v = ((cx - x) * (ay - y) - (ax - x) * (cy - y)) / area;
        const w = 1 - u - v;
        if (!(u >= 0 && v >= 0 && w >= 0)) continue;
        const i = (r - row) * columns + s - column;
        depth[i] = Math.max(depth[i] as number, u * az + v * bz + w * cz);
      }
  }
  const covered = Int32Array.from(depth.keys()).filter((i) => (depth[i] as number) > -Infinity);
  return {
    column,
    row,
    columns,
    rows,
    across: covered.map((i) => i % columns),
    up: covered.map((i) => Math.floor(i / columns)),
    depth: Float64Array.from(covered, (i) => depth[i] as number),
  };
}
