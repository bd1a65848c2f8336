import type { Shift } from '../assembly/bodies.js';
import type { Extent } from '../assembly/extent.js';
import type { Opaque } from '../assembly/screens.js';
import { apply, type Point3 } from '../geometry/placement.js';
import type { Screen } from '../geometry/shadow.js';

/** The gap that a line of light comes through: where wood is nearest to it on two opposite sides. */
export interface Gap {
  /** From wood to wood, across the line, mm. */
  readonly width: number;
  /** The two solids, by number; the same where it is a hole in one. */
  readonly between: readonly [number, number];
  /** Where on the line. */
  readonly at: Point3;
  /** Across the gap, unit length. */
  readonly across: Point3;
}

/** So many directions across the line are tried, 10° apart. */
const HALF_TURN = 18;
/** Wood farther from the line than this is no side of a gap, mm. */
const REACH = 8;
/** Places along the line nearer to each other than this are one, mm; and so far within the ends of a piece it is looked. */
const STEP = 0.02;

/**
 * Goes along a line of light, straight as it is, and measures at the beginning, the middle and the end of every piece
 * beside it how far wood is away on two opposite sides. The least of these is the gap.
 *
 * @param gate where the line ends on the gate
 * @param towards along the line, outwards; any length
 */
export function gapAlong(
  solids: readonly Opaque[],
  cast: Uint8Array,
  shifts: readonly Shift[],
  { gate, towards }: { readonly gate: Point3; readonly towards: Point3 },
): Gap | null {
  const w = unit(towards);
  const u = unit(Math.abs(w.y) < 0.9 ? { x: w.z, y: 0, z: -w.x } : { x: 0, y: -w.z, z: w.y });
  const v = { x: w.y * u.z - w.z * u.y, y: w.z * u.x - w.x * u.z, z: w.x * u.y - w.y * u.x };
  const beside = besideLine(solids, cast, shifts, gate, w);
  const places = new Set<number>();
  for (const { from, to } of beside)
    for (const along of [from + STEP, (from + to) / 2, to - STEP]) if (along > 0) places.add(Math.round(along / STEP));
  let best: Gap | null = null;
  for (const place of [...places].sort((a, b) => a - b)) {
    const along = place * STEP;
    const at = { x: gate.x + along * w.x, y: gate.y + along * w.y, z: gate.z + along * w.z };
    const here = beside.filter(({ from, to }) => from <= along && along <= to);
    for (let i = 0; i < HALF_TURN; i++) {
      const turn = (Math.PI * i) / HALF_TURN;
      const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
      const across = { x: cos * u.x + sin * v.x, y: cos * u.y + sin * v.y, z: cos * u.z + sin * v.z };
      const one = nearest(here, at, across, best?.width ?? REACH);
      if (one === null) continue;
      const other = nearest(here, at, { x: -across.x, y: -across.y, z: -across.z }, (best?.width ?? REACH) - one.away);
      if (other === null) continue;
      best = { width: one.away + other.away, between: [one.solid, other.solid], at, across };
    }
  }
  return best;
}

/** A screen beside the line, moved to where it stands, and the stretch of the line that it accompanies. */
interface Beside {
  readonly solid: number;
  readonly screen: Screen;
  readonly shift: Shift;
  readonly from: number;
  readonly to: number;
}

function besideLine(
  solids: readonly Opaque[],
  cast: Uint8Array,
  shifts: readonly Shift[],
  gate: Point3,
  w: Point3,
): readonly Beside[] {
  return solids.flatMap((solid, k) => {
    if (cast[k] !== 1) return [];
    const shift = shifts[solid.body] ?? ([0, 0, 0] as const);
    if (!passes(solid.piece.extent, shift, gate, w)) return [];
    return solid.screens.flatMap((screen, s) => {
      if (!passes(solid.boxes[s] as Extent, shift, gate, w)) return [];
      let [from, to] = [Infinity, -Infinity];
      for (const { x, y } of screen.loop)
        for (const z of [0, screen.height]) {
          const p = apply(screen.matrix, { x, y, z });
          const along = dot({ x: p.x + shift[0] - gate.x, y: p.y + shift[1] - gate.y, z: p.z + shift[2] - gate.z }, w);
          from = Math.min(from, along);
          to = Math.max(to, along);
        }
      return [{ solid: k, screen, shift, from, to }];
    });
  });
}

/** Whether the line passes a box, from the gate outwards, within reach. */
function passes({ x, y, z }: Extent, shift: Shift, gate: Point3, w: Point3): boolean {
  let [enters, leaves] = [0, Infinity];
  for (const [[low, high], by, from, way] of [
    [x, shift[0], gate.x, w.x],
    [y, shift[1], gate.y, w.y],
    [z, shift[2], gate.z, w.z],
  ] as const) {
    const [a, b] = [low + by - REACH - from, high + by + REACH - from];
    if (Math.abs(way) < 1e-12) {
      if (a > 0 || b < 0) return false;
      continue;
    }
    enters = Math.max(enters, Math.min(a / way, b / way));
    leaves = Math.min(leaves, Math.max(a / way, b / way));
  }
  return enters <= leaves;
}

/** The nearest wood in a direction, no farther than `within`. */
function nearest(
  beside: readonly Beside[],
  at: Point3,
  across: Point3,
  within: number,
): { readonly away: number; readonly solid: number } | null {
  let found: { away: number; solid: number } | null = null;
  for (const { solid, screen, shift } of beside) {
    const away = distanceTo(screen, { x: at.x - shift[0], y: at.y - shift[1], z: at.z - shift[2] }, across);
    if (away < (found?.away ?? within)) found = { away, solid };
  }
  return found;
}

/** How far a straight way runs until it enters a screen; infinite where it never does. */
function distanceTo({ matrix: m, sides, height }: Screen, from: Point3, way: Point3): number {
  const at = (k: number) => m[k] as number;
  const [dx, dy, dz] = [from.x - at(12), from.y - at(13), from.z - at(14)];
  const own = (k: number) => at(k) * dx + at(k + 1) * dy + at(k + 2) * dz;
  const ownWay = (k: number) => at(k) * way.x + at(k + 1) * way.y + at(k + 2) * way.z;
  const [x, y, z] = [own(0), own(4), own(8)];
  const [wx, wy, wz] = [ownWay(0), ownWay(4), ownWay(8)];
  let [enters, leaves] = [0, Infinity];
  // into each half space in turn: `out` is how far outside it one stands, `out` grows by `way` for each mm
  const pass = (out: number, grows: number): void => {
    if (Math.abs(grows) < 1e-12) {
      if (out > 0) leaves = -1;
    } else if (grows < 0) enters = Math.max(enters, -out / grows);
    else leaves = Math.min(leaves, -out / grows);
  };
  pass(z - height, wz);
  pass(-z, -wz);
  for (let i = 0; i < sides.length && enters <= leaves; i += 3) {
    const [nx, ny, c] = [sides[i] as number, sides[i + 1] as number, sides[i + 2] as number];
    pass(nx * x + ny * y - c, nx * wx + ny * wy);
  }
  return enters <= leaves ? enters : Infinity;
}

const dot = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;

const unit = (a: Point3): Point3 => {
  const long = Math.sqrt(dot(a, a));
  return { x: a.x / long, y: a.y / long, z: a.z / long };
};
