import { arcOf, type ClosedPath } from '../geometry/path.js';
import { apply, compose, type Matrix4, type Point3 } from '../geometry/placement.js';
import { type Prism, scaleAt } from '../geometry/solid.js';
import type { Shift } from './bodies.js';
import type { Piece } from './pieces.js';
import { inverse, prismsOf } from './screens.js';

/** A straight line with a beginning and a direction (of any length but 0), and no end. */
export interface SightLine {
  readonly from: Point3;
  readonly towards: Point3;
}

/** A piece with how far it stands from its place as drawn. */
export interface Standing {
  readonly piece: Piece;
  readonly shift: Shift;
}

/** Where a line meets a piece first: so many times the direction from its beginning. */
export interface Met {
  readonly piece: Piece;
  readonly at: number;
}

/** A stretch shorter than this is a line that touches an edge, in lengths of the direction. */
const TOUCHING = 1e-9;

/**
 * What stops a line first; null where nothing does. Each prism by itself: the line goes into its frame, there it is in the
 * wood between the two faces wherever an odd number of edges lies to one side of it. Arcs are true arcs. This shares
 * nothing with the search for light but what a part is made of.
 */
export function firstMet(line: SightLine, standing: readonly Standing[]): Met | null {
  let first: Met | null = null;
  for (const { piece, shift } of standing) {
    const from = { x: line.from.x - shift[0], y: line.from.y - shift[1], z: line.from.z - shift[2] };
    const [met] = woodAlong({ from, towards: line.towards }, piece);
    if (met && (first === null || met[0] < first.at)) first = { piece, at: met[0] };
  }
  return first;
}

/** The stretches of a line, ahead of its beginning, that lie in a piece where it is drawn. */
export function woodAlong(line: SightLine, piece: Piece): readonly Stretch[] {
  if (!mayMeet(line.from, line.towards, piece)) return [];
  const { wood, cuts } = framed(piece);
  const through = joined(wood.flatMap((prism) => stretchesIn(prism, line)));
  const air = through.length === 0 ? [] : joined(cuts.flatMap((cut) => stretchesIn(cut, line)));
  return without(through, air);
}

/** A prism and the way from the camera's frame into its own. */
interface Framed {
  readonly prism: Prism;
  readonly own: Matrix4;
}

interface FramedPiece {
  readonly wood: readonly Framed[];
  readonly cuts: readonly Framed[];
}

/** Worked out once for each piece, which never changes: thousands of lines meet the same few. */
const known = new WeakMap<Piece, FramedPiece>();

function framed(piece: Piece): FramedPiece {
  const { part, placement } = piece;
  const before = known.get(piece);
  if (before) return before;
  const inFrame = (prism: Prism): Framed => ({ prism, own: inverse(compose(placement.matrix, prism.matrix)) });
  const made = {
    wood: prismsOf(part).map(inFrame),
    cuts: part.kind === 'printed' ? part.solid.cut.map(inFrame) : [],
  };
  known.set(piece, made);
  return made;
}

/** A point is looked at a hair beside itself, mm: on a corner's height or a chord it would fall to no side. */
const ASIDE = { x: 1.1e-8, y: 1.7e-8 };

/** In lengths of the line's direction. */
type Stretch = readonly [from: number, to: number];

/** Whether the line comes into the box round a piece at all. */
function mayMeet(from: Point3, towards: Point3, { extent }: Piece): boolean {
  let [least, most] = [0, Infinity];
  for (const axis of ['x', 'y', 'z'] as const) {
    const [low, high] = extent[axis];
    if (Math.abs(towards[axis]) < 1e-12) {
      if (from[axis] < low || from[axis] > high) return false;
      continue;
    }
    const ends = [(low - from[axis]) / towards[axis], (high - from[axis]) / towards[axis]];
    least = Math.max(least, Math.min(...ends));
    most = Math.min(most, Math.max(...ends));
  }
  return most - least > TOUCHING;
}

/** Where the line is in a prism, ahead of its beginning. */
function stretchesIn({ prism, own }: Framed, { from, towards }: SightLine): readonly Stretch[] {
  const a = apply(own, from);
  const tip = apply(own, { x: from.x + towards.x, y: from.y + towards.y, z: from.z + towards.z });
  const d = { x: tip.x - a.x, y: tip.y - a.y, z: tip.z - a.z };
  let [least, most] = [0, Infinity];
  if (Math.abs(d.z) < 1e-12) {
    if (a.z <= 0 || a.z >= prism.height) return [];
  } else {
    const ends = [-a.z / d.z, (prism.height - a.z) / d.z];
    least = Math.max(least, Math.min(...ends));
    most = Math.min(most, Math.max(...ends));
  }
  if (most - least <= TOUCHING) return [];
  const crossings = [least, most];
  const scale: Scale = { at: scaleAt(prism, a.z), grows: (((prism.taper ?? 1) - 1) * d.z) / prism.height };
  for (const loop of [prism.profile, ...prism.holes])
    for (const t of crossed(loop, a, d, scale)) if (t > least && t < most) crossings.push(t);
  crossings.sort((s, t) => s - t);
  const found: Stretch[] = [];
  for (let k = 1; k < crossings.length; k++) {
    const [s, t] = [crossings[k - 1], crossings[k]] as [number, number];
    if (t - s <= TOUCHING) continue;
    const middle = t === Infinity ? s + 1 : (s + t) / 2;
    const size = scale.at + middle * scale.grows;
    const point = { x: (a.x + middle * d.x) / size + ASIDE.x, y: (a.y + middle * d.y) / size + ASIDE.y };
    if (isIn(prism.profile, point) && !prism.holes.some((hole) => isIn(hole, point))) found.push([s, t]);
  }
  return joined(found);
}

interface Level {
  readonly x: number;
  readonly y: number;
}

/** How many times its profile a prism is where a line begins, and how much more with each length of the line's direction. */
interface Scale {
  readonly at: number;
  readonly grows: number;
}

/** Where a line, seen along the prism, crosses the edges of a loop that grows as the line goes up. */
function crossed(loop: ClosedPath, a: Level, d: Level, { at, grows }: Scale): readonly number[] {
  const found: number[] = [];
  /** The line as seen from a point that moves outwards with the loop. */
  const from = ({ x, y }: Level) => [a.x - at * x, a.y - at * y, d.x - grows * x, d.y - grows * y] as const;
  loop.forEach((p, i) => {
    const q = loop[(i + 1) % loop.length] as Level;
    if (p.bulge === 0) {
      const [ex, ey] = [q.x - p.x, q.y - p.y];
      const [ax, ay, dx, dy] = from(p);
      const across = dx * ey - dy * ex;
      if (Math.abs(across) > 1e-12) found.push((ay * ex - ax * ey) / across);
      return;
    }
    const { centre, radius } = arcOf(p, q);
    const [cx, cy, dx, dy] = from(centre);
    const [r, widens] = [radius * at, radius * grows];
    const [aa, b, c] = [dx * dx + dy * dy - widens * widens, cx * dx + cy * dy - r * widens, cx * cx + cy * cy - r * r];
    const root = b * b - aa * c;
    // on the rest of the circle it crosses nothing, and a cut there too many divides a stretch without harm
    if (Math.abs(aa) < 1e-12) {
      if (b !== 0) found.push(-c / (2 * b));
    } else if (root > 0) found.push((-b - Math.sqrt(root)) / aa, (-b + Math.sqrt(root)) / aa);
  });
  return found;
}

/** Whether a point lies in a loop of straight edges and arcs: in the polygon of its corners, give or take the segments. */
function isIn(loop: ClosedPath, { x, y }: Level): boolean {
  let within = false;
  loop.forEach((p, i) => {
    const q = loop[(i + 1) % loop.length] as Level;
    if (p.y > y !== q.y > y && x < ((q.x - p.x) * (y - p.y)) / (q.y - p.y) + p.x) within = !within;
    if (p.bulge === 0) return;
    const { centre, radius } = arcOf(p, q);
    const near = (x - centre.x) ** 2 + (y - centre.y) ** 2 < radius * radius;
    // to the right of the chord lies the segment of an arc that turns left
    const right = (q.x - p.x) * (y - p.y) - (q.y - p.y) * (x - p.x) < 0;
    if (near && right === p.bulge > 0) within = !within;
  });
  return within;
}

function joined(stretches: readonly Stretch[]): readonly Stretch[] {
  const sorted = [...stretches].sort((a, b) => a[0] - b[0]);
  const whole: [number, number][] = [];
  for (const [from, to] of sorted) {
    const last = whole.at(-1);
    if (last && from <= last[1] + TOUCHING) last[1] = Math.max(last[1], to);
    else whole.push([from, to]);
  }
  return whole;
}

function without(wood: readonly Stretch[], air: readonly Stretch[]): readonly Stretch[] {
  let left = wood;
  for (const [from, to] of air)
    left = left.flatMap(([s, t]) => {
      const rest: Stretch[] = [];
      if (Math.min(t, from) - s > TOUCHING) rest.push([s, Math.min(t, from)]);
      if (t - Math.max(s, to) > TOUCHING) rest.push([Math.max(s, to), t]);
      return rest;
    });
  return left;
}
