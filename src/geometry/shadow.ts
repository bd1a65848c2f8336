import type { ConvexLoop } from './convex-cover.js';
import type { Matrix4, Point3 } from './placement.js';

/**
 * What a convex piece of wood hides of a plane, seen from a point. The rest, what is seen past many pieces, is kept as
 * convex polygons on that plane and cut down piece by piece: exact, no rays. Written for speed: some hundred thousand
 * looks make one proof of a camera.
 */

/** A convex prism where it stands: a loop drawn out along its own z from 0 to `height`. */
export interface Screen {
  readonly loop: ConvexLoop;
  readonly height: number;
  readonly matrix: Matrix4;
  /** Outward normal and offset of each side, in the loop's plane: three numbers each, unit length. */
  readonly sides: readonly number[];
  readonly middle: Point3;
}

export function screenOf(loop: ConvexLoop, height: number, matrix: Matrix4): Screen {
  const sides: number[] = [];
  let [x, y] = [0, 0];
  loop.forEach((a, i) => {
    const b = loop[(i + 1) % loop.length] as { readonly x: number; readonly y: number };
    const long = Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
    const [nx, ny] = [(b.y - a.y) / long, (a.x - b.x) / long];
    sides.push(nx, ny, nx * a.x + ny * a.y);
    x += a.x / loop.length;
    y += a.y / loop.length;
  });
  return { loop, height, matrix, sides, middle: { x, y, z: height / 2 } };
}

/** A convex polygon on the plane: x and y in turn. */
export type Patch = readonly number[];

/** A plane across the optical axis that is looked at, and the eye, in the frame in which the screen stands. */
export interface Look {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** z of the plane. */
  readonly plane: number;
}

/** Nearer to a face than this an eye counts as on it, mm: what floats leave of a coordinate. */
const ON_FACE = 1e-9;

/** Half planes that together make up a shadow: a, b, c each of a·x + b·y + c ≥ 0, x and y from the eye's foot on the plane. */
export interface Shadow {
  readonly count: number;
  readonly planes: Float64Array;
}

/** What a look finds of one screen: it hides everything (the eye is in it), nothing, or what lies within the half planes. */
export type Hidden = 'everything' | 'nothing' | Shadow;

/**
 * A maker of shadows, with room of its own for the half planes of the last one.
 *
 *      eye ----.                      plane       The edges at which the piece's outline is seen from the eye each give a
 *               `--- |##| ---____     |           plane through the eye; what lies on the piece's side of all of them,
 *                    |##|        ```--|           and beyond it, is hidden.
 *                    shadow           |
 *
 * `before` is the shadow of what stands between eye and plane, `behind` that of what stands at the eye's back: a line from
 * a point of the plane through the eye ends there.
 */
export function shadowMaker(): (screen: Screen, look: Look, side: 'before' | 'behind') => Hidden {
  let planes = new Float64Array(3 * 128);
  return (screen, look, side) => {
    const { matrix: m } = screen;
    const [m0, m1, m2] = [m[0] as number, m[1] as number, m[2] as number];
    const [m4, m5, m6] = [m[4] as number, m[5] as number, m[6] as number];
    const [m8, m9, m10] = [m[8] as number, m[9] as number, m[10] as number];
    const [dx, dy, dz] = [look.x - (m[12] as number), look.y - (m[13] as number), look.z - (m[14] as number)];
    const x = m0 * dx + m1 * dy + m2 * dz;
    const y = m4 * dx + m5 * dy + m6 * dz;
    let z = m8 * dx + m9 * dy + m10 * dz;
    let { loop, height, sides, middle } = screen;
    if (side === 'before') {
      // only what stands on the eye's side of the plane can hide it
      const cut = upTo(screen, look.plane, look.z < look.plane);
      if (cut === null) return 'nothing';
      ({ loop, height, sides, middle } = cut.screen);
      z -= cut.raised;
    }
    const n = loop.length;
    if (planes.length < 3 * (n + 4)) planes = new Float64Array(6 * (n + 4));
    const top = z > height + ON_FACE;
    const bottom = z < -ON_FACE;
    const sees = (i: number): boolean =>
      (sides[3 * i] as number) * x + (sides[3 * i + 1] as number) * y - (sides[3 * i + 2] as number) > ON_FACE;
    let count = 0;
    const [cx, cy, cz] = [middle.x - x, middle.y - y, middle.z - z];
    const add = (nx: number, ny: number, nz: number) => {
      // towards the piece, and for what is behind the eye turned about
      const sign = nx * cx + ny * cy + nz * cz < 0 === (side === 'before') ? -1 : 1;
      const a = m0 * nx + m4 * ny + m8 * nz;
      const b = m1 * nx + m5 * ny + m9 * nz;
      const c = (m2 * nx + m6 * ny + m10 * nz) * (look.plane - look.z);
      const scale = sign / (Math.sqrt(a * a + b * b) || Math.abs(c) || 1);
      planes[3 * count] = scale * a;
      planes[3 * count + 1] = scale * b;
      planes[3 * count + 2] = scale * c;
      count++;
    };
    let seen = top || bottom;
    let before = sees(n - 1);
    for (let i = 0; i < n; i++) {
      const here = sees(i);
      if (here) seen = true;
      const a = loop[i] as { readonly x: number; readonly y: number };
      const [ax, ay] = [a.x - x, a.y - y];
      if (here !== before) add(-ay, ax, 0);
      if (top !== here || bottom !== here) {
        const b = loop[i + 1 === n ? 0 : i + 1] as { readonly x: number; readonly y: number };
        const [bx, by] = [b.x - x, b.y - y];
        const turn = ax * by - ay * bx;
        if (top !== here) add((height - z) * (ay - by), (height - z) * (bx - ax), turn);
        if (bottom !== here) add(-z * (ay - by), -z * (bx - ax), turn);
      }
      before = here;
    }
    if (!seen) return 'everything';
    return { count, planes };
  };
}

/**
 * The part of a screen to one side of a plane across the optical axis (`ahead`: towards smaller z), and how far its foot
 * was raised in its own frame; null where nothing of it is, or where it stands so askew that this does not give a prism.
 */
export function upTo(
  screen: Screen,
  plane: number,
  ahead: boolean,
): { readonly screen: Screen; readonly raised: number } | null {
  const { matrix: m, loop, height } = screen;
  const [rx, ry, rz, origin] = [m[2] as number, m[6] as number, m[10] as number, m[14] as number];
  const sign = ahead ? 1 : -1;
  let [least, most] = [Infinity, -Infinity];
  for (const p of loop) {
    const z = rx * p.x + ry * p.y + origin;
    if (z < least) least = z;
    if (z > most) most = z;
  }
  if (rz > 0) most += rz * height;
  else least += rz * height;
  const [near, far] = ahead ? [least, most] : [-most, -least];
  if (far <= sign * plane + ON_FACE) return { screen, raised: 0 };
  if (near >= sign * plane - ON_FACE) return null;
  if (Math.abs(rz) < ON_FACE) {
    const kept = halfOf(loop, -sign * rx, -sign * ry, sign * (plane - origin));
    return kept.length < 3 ? null : { screen: screenOf(kept, height, m), raised: 0 };
  }
  if (Math.abs(rx) + Math.abs(ry) > ON_FACE) return null;
  const at = (plane - origin) / rz;
  return rz > 0 === ahead
    ? { screen: screenOf(loop, at, m), raised: 0 }
    : { screen: screenOf(loop, height - at, m), raised: at };
}

function halfOf(loop: ConvexLoop, a: number, b: number, c: number): ConvexLoop {
  const kept: { x: number; y: number }[] = [];
  loop.forEach((p, i) => {
    const q = loop[(i + 1) % loop.length] as { readonly x: number; readonly y: number };
    const [fp, fq] = [a * p.x + b * p.y + c, a * q.x + b * q.y + c];
    if (fp >= 0) kept.push(p);
    if (fp > 0 === fq > 0 || fp === 0 || fq === 0) return;
    const share = fp / (fp - fq);
    kept.push({ x: p.x + share * (q.x - p.x), y: p.y + share * (q.y - p.y) });
  });
  return kept;
}

/** A polygon that is narrower than this is what rounding leaves along a seam, mm on the plane. */
const SEAM = 2e-6;
/** Nearer to an edge of a shadow than this a corner counts as on it, mm. */
const ON_EDGE = 1e-9;

/**
 * What a shadow leaves of a patch, x and y counted from the eye's foot: the patch itself where it does not touch it, and
 * convex pieces of it where it does.
 */
export function leftOf(patch: Patch, { count, planes }: Shadow): readonly Patch[] | 'all' {
  const n = patch.length;
  // first whether the shadow touches it at all, and which edges cross it: mostly none or one
  let crossing = 0;
  for (let k = 0; k < count; k++) {
    const a = planes[3 * k] as number;
    const b = planes[3 * k + 1] as number;
    const c = planes[3 * k + 2] as number;
    let least = Infinity;
    let most = -Infinity;
    for (let i = 0; i < n; i += 2) {
      const side = a * (patch[i] as number) + b * (patch[i + 1] as number) + c;
      if (side < least) least = side;
      if (side > most) most = side;
    }
    if (most <= ON_EDGE) return 'all';
    if (least < -ON_EDGE) crossing++;
  }
  if (crossing === 0) return NOTHING_LEFT;
  const left: Patch[] = [];
  let rest: Patch = patch;
  for (let k = 0; k < count; k++) {
    const a = planes[3 * k] as number;
    const b = planes[3 * k + 1] as number;
    const c = planes[3 * k + 2] as number;
    const m = rest.length;
    let px = rest[m - 2] as number;
    let py = rest[m - 1] as number;
    let fp = a * px + b * py + c;
    let inside = fp >= -ON_EDGE;
    for (let i = 0; i < m && inside; i += 2)
      if (a * (rest[i] as number) + b * (rest[i + 1] as number) + c < -ON_EDGE) inside = false;
    if (inside) continue;
    const out: number[] = [];
    const kept: number[] = [];
    for (let i = 0; i < m; i += 2) {
      const qx = rest[i] as number;
      const qy = rest[i + 1] as number;
      const fq = a * qx + b * qy + c;
      if (fp < 0 !== fq < 0) {
        const share = fp / (fp - fq);
        const x = px + share * (qx - px);
        const y = py + share * (qy - py);
        out.push(x, y);
        kept.push(x, y);
      }
      if (fq < 0) out.push(qx, qy);
      else kept.push(qx, qy);
      px = qx;
      py = qy;
      fp = fq;
    }
    // a shadow that covers no more than a seam leaves the patch whole: better so than in pieces
    if (!isPatch(kept)) return 'all';
    if (isPatch(out)) left.push(out);
    rest = kept;
  }
  return left;
}

const NOTHING_LEFT: readonly Patch[] = [];

/** Whether a polygon is more than a seam. */
function isPatch(patch: Patch): boolean {
  const n = patch.length;
  if (n < 6) return false;
  const ox = patch[0] as number;
  const oy = patch[1] as number;
  let twice = 0;
  let far = 0;
  for (let i = 2; i < n; i += 2) {
    const ax = (patch[i] as number) - ox;
    const ay = (patch[i + 1] as number) - oy;
    far = Math.max(far, Math.abs(ax) + Math.abs(ay));
    if (i + 2 < n) twice += ax * ((patch[i + 3] as number) - oy) - ay * ((patch[i + 2] as number) - ox);
  }
  return Math.abs(twice) > 2 * SEAM * far;
}

/** Whether a point lies in a screen, or on its skin. */
export function holds({ matrix: m, sides, height }: Screen, { x, y, z }: Point3): boolean {
  const [dx, dy, dz] = [x - (m[12] as number), y - (m[13] as number), z - (m[14] as number)];
  const oz = (m[8] as number) * dx + (m[9] as number) * dy + (m[10] as number) * dz;
  if (oz < -ON_FACE || oz > height + ON_FACE) return false;
  const ox = (m[0] as number) * dx + (m[1] as number) * dy + (m[2] as number) * dz;
  const oy = (m[4] as number) * dx + (m[5] as number) * dy + (m[6] as number) * dz;
  for (let i = 0; i < sides.length; i += 3)
    if ((sides[i] as number) * ox + (sides[i + 1] as number) * oy - (sides[i + 2] as number) > ON_FACE) return false;
  return true;
}
