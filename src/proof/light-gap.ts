import type { Shift } from '../assembly/bodies.js';
import type { Opaque } from '../assembly/screens.js';
import { apply, type Point3 } from '../geometry/placement.js';
import { upTo } from '../geometry/shadow.js';
import type { Gate } from './light-scene.js';

/** The gap that a line of light comes through: what bounds it on both sides where it is narrowest. */
export interface Gap {
  /** mm */
  readonly width: number;
  /** The two solids, by number; the same where it is a hole in one. Null on a side that is open. */
  readonly between: readonly [number, number];
  /** Where on the line the gap is narrowest. */
  readonly at: Point3;
  /** Across the gap, unit length. */
  readonly across: Point3;
}

/** So many directions round the line are tried: 2.5° apart, the width is right to a thousandth. */
const DIRECTIONS = 144;
/** Beyond this nothing bounds the light, mm. */
const OPEN = 1e3;

/** A line from the gate out, past an eye; the gate itself bounds it too, and its edges are those of the solid `back`. */
interface Line {
  readonly from: Point3;
  readonly eye: Point3;
  readonly gate: Gate;
  readonly back: number;
}

/**
 * Pushes a line of light sideways, straight as it is, until it meets wood: in all directions round it, and the least way
 * from wood to wood is the width of the gap. Each screen is drawn as seen along the line, where it is a convex polygon and
 * the line a point.
 */
export function gapAround(
  solids: readonly Opaque[],
  cast: Uint8Array,
  shifts: readonly Shift[],
  { from, eye, gate, back }: Line,
): Gap | null {
  const long = Math.hypot(eye.x - from.x, eye.y - from.y, eye.z - from.z);
  const w = { x: (eye.x - from.x) / long, y: (eye.y - from.y) / long, z: (eye.z - from.z) / long };
  const u = unit(Math.abs(w.y) < 0.9 ? { x: w.z, y: 0, z: -w.x } : { x: 0, y: -w.z, z: w.y });
  const v = { x: w.y * u.z - w.z * u.y, y: w.z * u.x - w.x * u.z, z: w.x * u.y - w.y * u.x };
  const out = Math.sign(w.z) || 1;
  const nearest = Array.from({ length: DIRECTIONS }, () => ({ away: OPEN, solid: -1, along: 0 }));
  const onLine = (p: Point3): Seen => ({ x: dot(p, u), y: dot(p, v), along: dot(p, w) });
  const rim = cornersOf(gate).map(({ x, y }) => onLine({ x: x - from.x, y: y - from.y, z: 0 }));
  rim.forEach((p, i) => {
    bound(nearest, p, rim[(i + 1) % rim.length] as Seen, back);
  });
  solids.forEach((solid, k) => {
    if (cast[k] !== 1) return;
    const shift = shifts[solid.body] ?? [0, 0, 0];
    for (const whole of solid.screens) {
      // what lies behind the gate bounds nothing
      const cut = upTo(whole, from.z - shift[2], out < 0);
      if (cut === null) continue;
      const { loop, height, matrix } = cut.screen;
      const seen = loop.flatMap(({ x, y }) =>
        [cut.raised, cut.raised + height].map((z): Seen => {
          const corner = apply(matrix, { x, y, z });
          return onLine({
            x: corner.x + shift[0] - from.x,
            y: corner.y + shift[1] - from.y,
            z: corner.z + shift[2] - from.z,
          });
        }),
      );
      const hull = hullOf(seen);
      for (let i = 0; i < hull.length; i++) bound(nearest, hull[i] as Seen, hull[(i + 1) % hull.length] as Seen, k);
    }
  });
  let best: { width: number; i: number } | null = null;
  for (let i = 0; i < DIRECTIONS / 2; i++) {
    const width = (nearest[i]?.away ?? OPEN) + (nearest[i + DIRECTIONS / 2]?.away ?? OPEN);
    if (best === null || width < best.width) best = { width, i };
  }
  if (best === null || best.width >= OPEN) return null;
  const [a, b] = [nearest[best.i], nearest[best.i + DIRECTIONS / 2]] as [Bound, Bound];
  const turn = (2 * Math.PI * best.i) / DIRECTIONS;
  const along = (a.along + b.along) / 2;
  return {
    width: best.width,
    between: [a.solid, b.solid],
    at: { x: from.x + along * w.x, y: from.y + along * w.y, z: from.z + along * w.z },
    across: {
      x: Math.cos(turn) * u.x + Math.sin(turn) * v.x,
      y: Math.cos(turn) * u.y + Math.sin(turn) * v.y,
      z: Math.cos(turn) * u.z + Math.sin(turn) * v.z,
    },
  };
}

const cornersOf = ({ left, right, bottom, top }: Gate) => [
  { x: left, y: bottom },
  { x: right, y: bottom },
  { x: right, y: top },
  { x: left, y: top },
];

/** A corner as seen along the line, and how far along it. */
interface Seen {
  readonly x: number;
  readonly y: number;
  readonly along: number;
}

interface Bound {
  away: number;
  solid: number;
  along: number;
}

/** Enters an edge of a silhouette wherever it is the nearest to the line. */
function bound(nearest: readonly Bound[], p: Seen, q: Seen, solid: number): void {
  const [ex, ey] = [q.x - p.x, q.y - p.y];
  nearest.forEach((known, i) => {
    const turn = (2 * Math.PI * i) / DIRECTIONS;
    const [dx, dy] = [Math.cos(turn), Math.sin(turn)];
    const across = dx * ey - dy * ex;
    if (Math.abs(across) < 1e-12) return;
    const away = (p.x * ey - p.y * ex) / across;
    const share = (p.x * dy - p.y * dx) / across;
    if (away < 0 || share < 0 || share > 1 || away >= known.away) return;
    known.away = away;
    known.solid = solid;
    known.along = p.along + share * (q.along - p.along);
  });
}

/** Convex hull, anticlockwise (Andrew's monotone chain). */
function hullOf(points: readonly Seen[]): readonly Seen[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (list: readonly Seen[]) => {
    const chain: Seen[] = [];
    for (const p of list) {
      while (chain.length >= 2) {
        const [a, b] = [chain.at(-2), chain.at(-1)] as [Seen, Seen];
        if ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  return [...half(sorted), ...half([...sorted].reverse())];
}

const dot = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;

const unit = (a: Point3): Point3 => {
  const long = Math.sqrt(dot(a, a));
  return { x: a.x / long, y: a.y / long, z: a.z / long };
};
