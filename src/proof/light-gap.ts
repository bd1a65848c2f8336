import type { Shift } from '../assembly/bodies.js';
import type { Extent } from '../assembly/extent.js';
import type { Opaque } from '../assembly/screens.js';
import type { Point3 } from '../geometry/placement.js';
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
/** Wood is a side of the gap where it faces it, at 40° at most: the chord across a square corner is no gap. */
const FACING = 0.77;
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
      if (one === null || one.facing < FACING) continue;
      const other = nearest(here, at, { x: -across.x, y: -across.y, z: -across.z }, (best?.width ?? REACH) - one.away);
      if (other === null || other.facing < FACING) continue;
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
      const stretch = alongside(screen, { x: gate.x - shift[0], y: gate.y - shift[1], z: gate.z - shift[2] }, w);
      if (stretch === null) return [];
      const [from, to] = stretch;
      return [{ solid: k, screen, shift, from, to }];
    });
  });
}

/** Faces that the line crosses end the stretch where it does; to those that it runs along, at less than this sine, it has reach. */
const ALONG = 0.3;

/** From where to where a line accompanies a screen, within reach; null where it does not. */
function alongside(screen: Screen, from: Point3, w: Point3): readonly [number, number] | null {
  let [enters, leaves] = [0, Infinity];
  eachFace(screen, from, w, (out, grows) => {
    const away = Math.abs(grows) < ALONG ? out - REACH : out;
    if (Math.abs(grows) < 1e-12) {
      if (away > 0) leaves = -1;
    } else if (grows > 0) leaves = Math.min(leaves, -away / grows);
    else enters = Math.max(enters, -away / grows);
  });
  return enters < leaves ? [enters, leaves] : null;
}

/** Tells of each face of a screen how far outside it a point is, and how that grows along a way of unit length. */
function eachFace(
  { matrix: m, sides, height }: Screen,
  from: Point3,
  way: Point3,
  tell: (out: number, grows: number) => void,
): void {
  const at = (k: number) => m[k] as number;
  const [dx, dy, dz] = [from.x - at(12), from.y - at(13), from.z - at(14)];
  const own = (k: number) => at(k) * dx + at(k + 1) * dy + at(k + 2) * dz;
  const ownWay = (k: number) => at(k) * way.x + at(k + 1) * way.y + at(k + 2) * way.z;
  const [x, y, z] = [own(0), own(4), own(8)];
  const [wx, wy, wz] = [ownWay(0), ownWay(4), ownWay(8)];
  tell(z - height, wz);
  tell(-z, -wz);
  for (let i = 0; i < sides.length; i += 3) {
    const [nx, ny, c] = [sides[i] as number, sides[i + 1] as number, sides[i + 2] as number];
    tell(nx * x + ny * y - c, nx * wx + ny * wy);
  }
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

interface Nearest {
  readonly away: number;
  readonly solid: number;
  /** Cosine of the angle at which the way meets the wood. */
  readonly facing: number;
}

/** The nearest wood in a direction, no farther than `within`. */
function nearest(beside: readonly Beside[], at: Point3, across: Point3, within: number): Nearest | null {
  let found: Nearest | null = null;
  for (const { solid, screen, shift } of beside) {
    const met = wayTo(screen, { x: at.x - shift[0], y: at.y - shift[1], z: at.z - shift[2] }, across);
    if (met !== null && met.away < (found?.away ?? within)) found = { ...met, solid };
  }
  return found;
}

/** How far a straight way (of unit length) runs until it enters a screen, and how squarely; null where it never does. */
function wayTo(screen: Screen, from: Point3, way: Point3): Omit<Nearest, 'solid'> | null {
  let [enters, leaves, facing] = [0, Infinity, 1];
  eachFace(screen, from, way, (out, grows) => {
    if (Math.abs(grows) < 1e-12) {
      if (out > 0) leaves = -1;
      return;
    }
    const meets = -out / grows;
    if (grows > 0) leaves = Math.min(leaves, meets);
    else if (meets > enters) [enters, facing] = [meets, -grows];
  });
  return enters <= leaves ? { away: enters, facing } : null;
}

const dot = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;

const unit = (a: Point3): Point3 => {
  const long = Math.sqrt(dot(a, a));
  return { x: a.x / long, y: a.y / long, z: a.z / long };
};
