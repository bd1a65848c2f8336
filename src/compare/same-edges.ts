import { inside, type Point } from '../geometry/path.js';
import type { Edges } from '../model/built-camera.js';

/**
 * Edges and thicknesses that agree so far are the same: a laser repeats no cut and a caliper no reading of wood more exactly
 * (the default of laser.kerfUncertainty, common practice). A press fit, the closest of all, is 0.02 tight; two parts that each
 * stray by so much still go together.
 */
export const SAME = 0.02;

/** Rounding of what was read from a file must not decide. */
const ROUNDING = 1e-6;

/** Whether no edge of one stands farther than `SAME` from an edge of the other, wherever they lie in their own frames. */
export function sameEdges(a: Edges, b: Edges): boolean {
  if (a.holes.length !== b.holes.length) return false;
  const [first, second] = [fromCorner(a), fromCorner(b)];
  if (!sameLoop(first.outline, second.outline)) return false;
  const left = [...second.holes];
  return first.holes.every((hole) => {
    const i = left.findIndex((other) => sameLoop(hole, other));
    if (i >= 0) left.splice(i, 1);
    return i >= 0;
  });
}

/** The hole that is wider in a later part, and the same in the earlier one, where nothing else differs; null else. */
export function widerHole(later: Edges, earlier: Edges): { readonly is: Loop; readonly was: Loop } | null {
  if (later.holes.length !== earlier.holes.length) return null;
  const [a, b] = [fromCorner(later), fromCorner(earlier)];
  if (!sameLoop(a.outline, b.outline)) return null;
  const [is, ...others] = a.holes.filter((hole) => !b.holes.some((other) => sameLoop(hole, other)));
  const [was, ...more] = b.holes.filter((hole) => !a.holes.some((other) => sameLoop(hole, other)));
  if (is === undefined || was === undefined || others.length + more.length > 0) return null;
  return was.every((point) => inside(is, point)) ? { is, was } : null;
}

type Loop = Edges['outline'];

/** From the lower left corner of the outline. */
function fromCorner({ outline, holes }: Edges): Edges {
  const [left, bottom] = [least(outline, 'x'), least(outline, 'y')];
  const moved = (loop: readonly Point[]) => loop.map(({ x, y }) => ({ x: x - left, y: y - bottom }));
  return { outline: moved(outline), holes: holes.map(moved) };
}

const least = (points: readonly Point[], axis: 'x' | 'y'): number =>
  points.reduce((low, point) => Math.min(low, point[axis]), Infinity);

const sameLoop = (a: readonly Point[], b: readonly Point[]): boolean => lieOn(a, b) && lieOn(b, a);

const lieOn = (points: readonly Point[], loop: readonly Point[]): boolean =>
  points.every((point) =>
    loop.some((from, i) => distance(point, from, loop[(i + 1) % loop.length] ?? from) <= SAME + ROUNDING),
  );

function distance(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const long = dx * dx + dy * dy;
  const along = long === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / long));
  const [x, y] = [p.x - a.x - along * dx, p.y - a.y - along * dy];
  return Math.sqrt(x * x + y * y);
}
