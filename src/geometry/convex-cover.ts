import { type ClosedPath, flatten, type Point } from './path.js';

/** Convex, anticlockwise. */
export type ConvexLoop = readonly Point[];

/** Coordinates nearer than this are one line of the grid, mm. */
const SAME = 1e-7;

/**
 * Convex pieces that together cover a plate exactly (its arcs cut into chords): what is in the outline and in no hole. They may overlap: a few large pieces
 * are worth more than a tidy division, since each is looked at from far away as one screen.
 *
 * The plate's upright and level edges are drawn right across it, as are the lines at the ends of everything that
 * slants or curves. Cells wholly of wood are gathered into rectangles, each the largest that grows from its cell; the few
 * cells that a slanted edge crosses are divided into trapezoids.
 */
export function convexCover(outline: ClosedPath, holes: readonly ClosedPath[], sagitta: number): readonly ConvexLoop[] {
  const loops = [outline, ...holes].map((loop) => flatten(loop, sagitta));
  const edges = loops.flatMap((points, loop) =>
    points.map((a, i) => edgeOf(a, points[(i + 1) % points.length] as Point, loop)),
  );
  const xs = gridLines(loops, 'x');
  const ys = gridLines(loops, 'y');
  const cells = cellsOf(edges, xs, ys);
  return [...rectanglesOf(cells, xs, ys), ...slantedOf(cells, edges, xs, ys)];
}

interface Edge {
  /** 0 the outline, then the holes. */
  readonly loop: number;
  readonly low: Point;
  readonly high: Point;
  readonly level: boolean;
  readonly upright: boolean;
}

function edgeOf(a: Point, b: Point, loop: number): Edge {
  const [low, high] = a.y <= b.y ? [a, b] : [b, a];
  return { loop, low, high, level: high.y - low.y < SAME, upright: Math.abs(high.x - low.x) < SAME };
}

/** Where a line of the grid runs: at every edge along it, and at both ends of each stretch of slanted ones. */
function gridLines(loops: readonly (readonly Point[])[], axis: 'x' | 'y'): readonly number[] {
  const found: number[] = [];
  for (const points of loops) {
    const slants = points.map((a, i) => {
      const b = points[(i + 1) % points.length] as Point;
      return Math.abs(a.x - b.x) >= SAME && Math.abs(a.y - b.y) >= SAME;
    });
    const first = slants.indexOf(false);
    if (first < 0) {
      // a whole round hole: only the square round it
      found.push(Math.min(...points.map((p) => p[axis])), Math.max(...points.map((p) => p[axis])));
      continue;
    }
    let [least, most] = [Infinity, -Infinity];
    for (let k = 0; k <= points.length; k++) {
      const i = (first + k) % points.length;
      const a = points[i] as Point;
      const b = points[(i + 1) % points.length] as Point;
      if (slants[i]) {
        least = Math.min(least, a[axis], b[axis]);
        most = Math.max(most, a[axis], b[axis]);
        continue;
      }
      if (least < most) found.push(least, most);
      [least, most] = [Infinity, -Infinity];
      if (Math.abs(a[axis] - b[axis]) < SAME) found.push(a[axis]);
    }
  }
  return found.sort((a, b) => a - b).filter((v, i, all) => i === 0 || v - (all[i - 1] as number) > SAME);
}

interface Cells {
  readonly columns: number;
  readonly rows: number;
  /** 0 air, 1 wood, 2 crossed by a slanted edge; row by row. */
  readonly kind: Uint8Array;
}

function cellsOf(edges: readonly Edge[], xs: readonly number[], ys: readonly number[]): Cells {
  const [columns, rows] = [xs.length - 1, ys.length - 1];
  const kind = new Uint8Array(columns * rows);
  const slanted = edges.filter((e) => !e.level && !e.upright);
  for (let row = 0; row < rows; row++) {
    const [bottom, top] = [ys[row] as number, ys[row + 1] as number];
    const middle = (bottom + top) / 2;
    const wood = woodAlong(edges, middle);
    const here = slanted.filter((e) => e.low.y < top - SAME && e.high.y > bottom + SAME);
    let passed = 0;
    for (let column = 0; column < columns; column++) {
      const [left, right] = [xs[column] as number, xs[column + 1] as number];
      const x = (left + right) / 2;
      while (passed < wood.length && xAt((wood[passed] as Stretch)[1], middle) < x) passed++;
      const stretch = wood[passed];
      const crossed = here.some(
        (e) => Math.min(e.low.x, e.high.x) < right - SAME && Math.max(e.low.x, e.high.x) > left + SAME,
      );
      kind[row * columns + column] = crossed ? 2 : stretch && xAt(stretch[0], middle) < x ? 1 : 0;
    }
  }
  return { columns, rows, kind };
}

/** From one edge to the next, wood between them. */
type Stretch = readonly [left: Edge, right: Edge];

/** Where a level line runs in wood: in the outline and in none of the holes, even where these run out of it or into each other. */
function woodAlong(edges: readonly Edge[], y: number): readonly Stretch[] {
  const crossed = edges
    .filter((e) => e.low.y <= y && e.high.y > y)
    .map((edge) => ({ edge, x: xAt(edge, y) }))
    .sort((a, b) => a.x - b.x);
  const found: Stretch[] = [];
  const open = new Set<number>();
  let left: Edge | null = null;
  for (const { edge } of crossed) {
    if (!open.delete(edge.loop)) open.add(edge.loop);
    const wood = open.size === 1 && open.has(0);
    if (left !== null && !wood) found.push([left, edge]);
    if (wood !== (left !== null)) left = wood ? edge : null;
  }
  return found;
}

const xAt = ({ low, high }: Edge, y: number): number => low.x + ((high.x - low.x) * (y - low.y)) / (high.y - low.y);

/** Rectangles over all cells of wood; each grows from a cell that none has covered yet, up first or across first. */
function rectanglesOf(cells: Cells, xs: readonly number[], ys: readonly number[]): readonly ConvexLoop[] {
  const { columns, rows, kind } = cells;
  const covered = new Uint8Array(kind.length);
  const wood = (c0: number, c1: number, r0: number, r1: number): boolean => {
    for (let r = r0; r <= r1; r++) for (let c = c0; c <= c1; c++) if (kind[r * columns + c] !== 1) return false;
    return true;
  };
  const grow = (column: number, row: number, upFirst: boolean) => {
    let [c0, c1, r0, r1] = [column, column, row, row];
    for (const up of upFirst ? [true, false] : [false, true]) {
      if (up) {
        while (r0 > 0 && wood(c0, c1, r0 - 1, r0 - 1)) r0--;
        while (r1 < rows - 1 && wood(c0, c1, r1 + 1, r1 + 1)) r1++;
      } else {
        while (c0 > 0 && wood(c0 - 1, c0 - 1, r0, r1)) c0--;
        while (c1 < columns - 1 && wood(c1 + 1, c1 + 1, r0, r1)) c1++;
      }
    }
    const [left, right, bottom, top] = [xs[c0], xs[c1 + 1], ys[r0], ys[r1 + 1]] as [number, number, number, number];
    return { c0, c1, r0, r1, left, right, bottom, top, area: (right - left) * (top - bottom) };
  };
  const size = (cell: number) => {
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    return ((xs[column + 1] as number) - (xs[column] as number)) * ((ys[row + 1] as number) - (ys[row] as number));
  };
  const order = [...kind.keys()].filter((cell) => kind[cell] === 1).sort((a, b) => size(b) - size(a) || a - b);
  const found: ConvexLoop[] = [];
  for (const cell of order) {
    if (covered[cell]) continue;
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    const [up, across] = [grow(column, row, true), grow(column, row, false)];
    const { c0, c1, r0, r1, left, right, bottom, top } = up.area >= across.area ? up : across;
    for (let r = r0; r <= r1; r++) covered.fill(1, r * columns + c0, r * columns + c1 + 1);
    found.push([
      { x: left, y: bottom },
      { x: right, y: bottom },
      { x: right, y: top },
      { x: left, y: top },
    ]);
  }
  return found;
}

/** Trapezoids in the cells that slanted edges cross, joined where two on top of each other stay convex. */
function slantedOf(
  { columns, kind }: Cells,
  edges: readonly Edge[],
  xs: readonly number[],
  ys: readonly number[],
): readonly ConvexLoop[] {
  const rising = edges.filter((e) => !e.level);
  const found: ConvexLoop[] = [];
  kind.forEach((what, cell) => {
    if (what !== 2) return;
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    const [left, right, bottom, top] = [xs[column], xs[column + 1], ys[row], ys[row + 1]] as [
      number,
      number,
      number,
      number,
    ];
    const near = rising.filter((e) => e.low.y < top && e.high.y > bottom);
    found.push(...trapezoids(near, { left, right, bottom, top }));
  });
  return found;
}

interface Trapezoid {
  readonly bottom: number;
  readonly top: number;
  /** x at the bottom and at the top. */
  readonly left: readonly [number, number];
  readonly right: readonly [number, number];
}

function trapezoids(
  edges: readonly Edge[],
  cell: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number },
): readonly ConvexLoop[] {
  const levels = [cell.bottom, cell.top];
  for (const e of edges) {
    for (const y of [e.low.y, e.high.y]) if (y > cell.bottom + SAME && y < cell.top - SAME) levels.push(y);
    if (e.upright) continue;
    for (const x of [cell.left, cell.right]) {
      const y = e.low.y + ((x - e.low.x) * (e.high.y - e.low.y)) / (e.high.x - e.low.x);
      if (y > Math.max(cell.bottom, e.low.y) + SAME && y < Math.min(cell.top, e.high.y) - SAME) levels.push(y);
    }
  }
  for (const [i, e] of edges.entries())
    for (const other of edges.slice(i + 1)) {
      const y = e.loop === other.loop ? null : crossing(e, other);
      if (y !== null && y > cell.bottom + SAME && y < cell.top - SAME) levels.push(y);
    }
  levels.sort((a, b) => a - b);
  const done: ConvexLoop[] = [];
  let open: Stack[] = [];
  for (let k = 1; k < levels.length; k++) {
    const [bottom, top] = [levels[k - 1], levels[k]] as [number, number];
    if (top - bottom < SAME) continue;
    const middle = (bottom + top) / 2;
    const slabs: Trapezoid[] = [];
    for (const [l, r] of woodAlong(edges, middle)) {
      if (xAt(r, middle) <= cell.left + SAME || xAt(l, middle) >= cell.right - SAME) continue;
      const within = (x: number) => Math.min(cell.right, Math.max(cell.left, x));
      slabs.push({
        bottom,
        top,
        left: [within(xAt(l, bottom)), within(xAt(l, top))],
        right: [within(xAt(r, bottom)), within(xAt(r, top))],
      });
    }
    const next: Stack[] = [];
    for (const slab of slabs) {
      const under = open.findIndex((stack) => fits(stack, slab));
      if (under < 0)
        next.push({
          left: [corner(slab, 'left', 0), corner(slab, 'left', 1)],
          right: [corner(slab, 'right', 0), corner(slab, 'right', 1)],
        });
      else next.push(...open.splice(under, 1).map((stack) => raised(stack, slab)));
    }
    done.push(...open.map(loopOf));
    open = next;
  }
  return [...done, ...open.map(loopOf)];
}

/** y at which two edges cross; null where they do not. */
function crossing(a: Edge, b: Edge): number | null {
  const [low, high] = [Math.max(a.low.y, b.low.y), Math.min(a.high.y, b.high.y)];
  if (high - low < SAME) return null;
  const [below, above] = [xAt(a, low) - xAt(b, low), xAt(a, high) - xAt(b, high)];
  return below * above < 0 ? low + ((high - low) * below) / (below - above) : null;
}

/** Trapezoids on top of one another: their left and their right corners, upwards. */
interface Stack {
  readonly left: readonly Point[];
  readonly right: readonly Point[];
}

const corner = (slab: Trapezoid, side: 'left' | 'right', end: 0 | 1): Point => ({
  x: slab[side][end],
  y: end === 0 ? slab.bottom : slab.top,
});

/** Whether a slab has the top of a stack as its bottom, and its sides bend inwards from the stack's. */
function fits({ left, right }: Stack, slab: Trapezoid): boolean {
  const [l0, l1, r0, r1] = [left.at(-2), left.at(-1), right.at(-2), right.at(-1)] as [Point, Point, Point, Point];
  if (Math.abs(l1.y - slab.bottom) > SAME) return false;
  if (Math.abs(l1.x - slab.left[0]) > SAME || Math.abs(r1.x - slab.right[0]) > SAME) return false;
  return cross(l0, l1, corner(slab, 'left', 1)) <= 0 && cross(r0, r1, corner(slab, 'right', 1)) >= 0;
}

const raised = ({ left, right }: Stack, slab: Trapezoid): Stack => ({
  left: [...left, corner(slab, 'left', 1)],
  right: [...right, corner(slab, 'right', 1)],
});

/** Above 0 where the way from a over b to c turns left. */
const cross = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);

const loopOf = ({ left, right }: Stack): ConvexLoop => distinct([...right, ...[...left].reverse()]);

const distinct = (loop: readonly Point[]): ConvexLoop =>
  loop.filter((p, i) => {
    const before = loop[(i + loop.length - 1) % loop.length] as Point;
    return Math.abs(p.x - before.x) > SAME || Math.abs(p.y - before.y) > SAME;
  });
