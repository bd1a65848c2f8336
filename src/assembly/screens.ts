import { type ConvexLoop, convexCover } from '../geometry/convex-cover.js';
import { arcOf, boundsOfPoints, type ClosedPath, flatten, type Point } from '../geometry/path.js';
import { apply, compose, type Matrix4, type Point3 } from '../geometry/placement.js';
import { type Screen, screenOf } from '../geometry/shadow.js';
import { circle } from '../geometry/shapes.js';
import { type Prism, scaleAt } from '../geometry/solid.js';
import type { Part, PrintedPart } from '../model/part.js';
import type { Bodies } from './bodies.js';
import type { Extent } from './extent.js';
import type { Piece } from './pieces.js';

/** A piece as light meets it: convex prisms that together fill it, where it stands at the closest station. */
export interface Opaque {
  readonly piece: Piece;
  readonly body: number;
  readonly screens: readonly Screen[];
  /** The upright box round each screen. */
  readonly boxes: readonly Extent[];
}

/** How far a chord may stray from its arc, mm: far less than any gap that counts. */
const STRAY = 0.02;
/** A pin that leaves less than this all round closes its hole, mm: a straight slit worth the name does not go through there. */
const CLOSED = 0.25;
/** So much a pin may end short of the hole's mouth, mm. */
const SHORT = 0.05;

/**
 * Every piece as prisms. A hole that a pin, screw, barrel or nut of the same body goes through is as good as wood; the
 * glass counts as an opaque rectangle, its corners whole, for what comes in there is wanted.
 */
export function opaque(pieces: readonly Piece[], bodies: Bodies): readonly Opaque[] {
  const pins = pieces.flatMap((piece) => pinsOf(piece, bodies.of(piece.part.id)));
  const covers = new Map<string, readonly Slab[]>();
  return pieces.map((piece) => {
    const { part, placement } = piece;
    const body = bodies.of(part.id);
    const near = pins.filter((pin) => pin.body === body && pin.part !== part);
    const filled = prismsOf(part).map((prism) => ({
      prism,
      holes: prism.holes.map((hole) => isFilled(hole, prism, [0, prism.height], placement.matrix, near)),
    }));
    const key = `${part.id} ${filled.map(({ holes }) => holes.join()).join(' ')}`;
    const slabs =
      covers.get(key) ?? filled.flatMap(({ prism, holes }) => slabsOf(part, prism, holes, placement.matrix, near));
    covers.set(key, slabs);
    const screens = slabs.map(({ loop, height, matrix }) => screenOf(loop, height, compose(placement.matrix, matrix)));
    return { piece, body, screens, boxes: screens.map(boxRound) };
  });
}

/** A convex loop drawn out in the part's own frame. */
interface Slab {
  readonly loop: ConvexLoop;
  readonly height: number;
  readonly matrix: Matrix4;
}

const OWN: Matrix4 = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];

/** What a part is made of, in its own frame. The holes for pins in a holder's stand-in are blind in the holder itself. */
export function prismsOf(part: Part): readonly Prism[] {
  if (part.kind === 'printed') return part.solid.add;
  if (part.kind === 'flat') return [{ profile: part.outline, holes: part.holes, height: part.thickness, matrix: OWN }];
  const { shape } = part;
  if (shape.form === 'cylinder')
    return [{ profile: circle(0, 0, shape.diameter), holes: [], height: shape.length, matrix: OWN }];
  const profile = part.role === 'ground-glass' ? squared(shape.outline) : shape.outline;
  const holes = part.role === 'holder' ? [] : shape.holes;
  return [{ profile, holes, height: shape.thickness, matrix: OWN }];
}

function squared(outline: ClosedPath): ClosedPath {
  const { left, bottom, right, top } = boundsOfPoints(outline);
  const corners = [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ] as const;
  return corners.map(([x, y]) => ({ x, y, bulge: 0 }));
}

function slabsOf(
  part: Part,
  { profile, holes, height, matrix, taper = 1 }: Prism,
  filled: readonly boolean[],
  placed: Matrix4,
  pins: readonly Pin[],
): readonly Slab[] {
  const open = holes.filter((_, i) => !filled[i]);
  // what tapers is as thin throughout as at its thinner end: never more wood than there is
  const least = Math.min(1, taper);
  const whole = convexCover(profile, open, STRAY).map((loop) => ({ loop: scaled(loop, least), height, matrix }));
  if (part.kind !== 'printed') return whole;
  const cuts = part.solid.cut.filter((cut) => !isFilled(cut.profile, cut, within(part, cut), placed, pins));
  return cuts.reduce<readonly Slab[]>((slabs, cut) => slabs.flatMap((slab) => without(slab, cut)), whole);
}

/** A slab less the upright box, in the slab's own frame, round a cut: never more wood than there is. */
function without({ loop, height, matrix }: Slab, cut: Prism): readonly Slab[] {
  const away = boxIn(cut, matrix);
  const [low, high] = [Math.max(0, away.z[0]), Math.min(height, away.z[1])];
  const { left, right, bottom, top } = boundsOfPoints(loop);
  const misses = low >= high || away.x[0] >= right || away.x[1] <= left || away.y[0] >= top || away.y[1] <= bottom;
  if (misses) return [{ loop, height, matrix }];
  const level = (from: number, to: number, loops: readonly ConvexLoop[]): readonly Slab[] =>
    to - from < 1e-9
      ? []
      : loops.map((one) => ({
          loop: one,
          height: to - from,
          matrix: compose(matrix, [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, from, 1]),
        }));
  const beside: readonly [number, number, number][] = [
    [-1, 0, away.x[0]],
    [1, 0, -away.x[1]],
    [0, -1, away.y[0]],
    [0, 1, -away.y[1]],
  ];
  const rest: ConvexLoop[] = [];
  for (const [a, b, c] of beside) {
    const kept = clipped(loop, a, b, c);
    if (kept.length >= 3) rest.push(kept);
  }
  return [...level(0, low, [loop]), ...level(low, high, rest), ...level(high, height, [loop])];
}

function clipped(loop: ConvexLoop, a: number, b: number, c: number): ConvexLoop {
  const kept: Point[] = [];
  loop.forEach((p, i) => {
    const q = loop[(i + 1) % loop.length] as Point;
    const [fp, fq] = [a * p.x + b * p.y + c, a * q.x + b * q.y + c];
    if (fp > 0) kept.push(p);
    if (fp > 0 !== fq > 0) {
      const share = fp / (fp - fq);
      kept.push({ x: p.x + share * (q.x - p.x), y: p.y + share * (q.y - p.y) });
    }
  });
  return kept.filter((p, i) => {
    const before = kept[(i + kept.length - 1) % kept.length] as Point;
    return Math.abs(p.x - before.x) + Math.abs(p.y - before.y) > 1e-9;
  });
}

/** The box round a prism in the frame of another, both in the part's own frame. */
function boxIn(prism: Prism, frame: Matrix4): Extent {
  const m = compose(inverse(frame), prism.matrix);
  const loop = flatten(prism.profile, STRAY);
  const corners = [0, prism.height].flatMap((z) => scaled(loop, scaleAt(prism, z)).map((p) => apply(m, { ...p, z })));
  return boxOfPoints(corners);
}

const scaled = (loop: readonly Point[], by: number): readonly Point[] =>
  by === 1 ? loop : loop.map(({ x, y }) => ({ x: by * x, y: by * y }));

/** Of a rigid motion. */
export function inverse(m: Matrix4): Matrix4 {
  const at = (i: number) => m[i] as number;
  const [x, y, z] = [at(12), at(13), at(14)];
  // biome-ignore format: a column of the matrix on each line
  return [
    at(0), at(4), at(8), 0,
    at(1), at(5), at(9), 0,
    at(2), at(6), at(10), 0,
    -(at(0) * x + at(1) * y + at(2) * z), -(at(4) * x + at(5) * y + at(6) * z), -(at(8) * x + at(9) * y + at(10) * z), 1,
  ];
}

function boxRound({ loop, height, matrix }: Screen): Extent {
  return boxOfPoints(loop.flatMap(({ x, y }) => [apply(matrix, { x, y, z: 0 }), apply(matrix, { x, y, z: height })]));
}

function boxOfPoints(points: readonly Point3[]): Extent {
  const axis = (k: 'x' | 'y' | 'z'): readonly [number, number] => {
    let [least, most] = [Infinity, -Infinity];
    for (const p of points) {
      if (p[k] < least) least = p[k];
      if (p[k] > most) most = p[k];
    }
    return [least, most];
  };
  return { x: axis('x'), y: axis('y'), z: axis('z') };
}

/** A round or regular bought thing along an axis: what it fills is a cylinder. */
interface Pin {
  readonly part: Part;
  readonly body: number;
  readonly radius: number;
  readonly from: Point3;
  readonly to: Point3;
}

function pinsOf({ part, placement }: Piece, body: number): readonly Pin[] {
  if (part.kind !== 'bought') return [];
  const { shape } = part;
  const at = (x: number, y: number, z: number) => apply(placement.matrix, { x, y, z });
  if (shape.form === 'cylinder')
    return [{ part, body, radius: shape.diameter / 2, from: at(0, 0, 0), to: at(0, 0, shape.length) }];
  const ring = roundOf(shape.outline);
  if (ring === null) return [];
  const { x, y, radius } = ring;
  return [{ part, body, radius, from: at(x, y, 0), to: at(x, y, shape.thickness) }];
}

/** Middle and radius of a loop that is a whole circle; null where it is none. */
function roundOf(loop: ClosedPath): (Point & { readonly radius: number }) | null {
  if (loop.some(({ bulge }) => bulge === 0)) return null;
  const arcs = loop.map((from, i) => arcOf(from, loop[(i + 1) % loop.length] as Point));
  const [first] = arcs as [(typeof arcs)[0]];
  const { centre, radius } = first;
  const apart = (a: (typeof arcs)[0]) =>
    Math.abs(a.centre.x - centre.x) + Math.abs(a.centre.y - centre.y) + Math.abs(a.radius - radius);
  return arcs.every((arc) => apart(arc) < STRAY) ? { ...centre, radius } : null;
}

/** The stretch of a cut along its own axis that can lie in the part at all. */
function within(part: PrintedPart, cut: Prism): readonly [number, number] {
  const [w, d, h] = part.size;
  const corners = [-w / 2, w / 2].flatMap((x) =>
    [-d / 2, d / 2].flatMap((y) => [0, h].map((z) => apply(inverse(cut.matrix), { x, y, z }).z)),
  );
  return [Math.max(0, Math.min(...corners)), Math.min(cut.height, Math.max(...corners))];
}

/** A hole as narrow as this, mm across, is the pilot of a wood screw, which has no stand-in: it is full of the screw. */
const PILOT = 2.2;

/** Whether a pin of the same body goes through a hole over a stretch of its length and leaves no more than a thin ring. */
function isFilled(
  hole: ClosedPath,
  prism: Prism,
  [low, high]: readonly [number, number],
  placed: Matrix4,
  pins: readonly Pin[],
): boolean {
  const round = roundOf(hole);
  if (round === null) return false;
  if (2 * round.radius <= PILOT) return true;
  const own = inverse(compose(placed, prism.matrix));
  return pins.some((pin) => {
    const [a, b] = [apply(own, pin.from), apply(own, pin.to)];
    const aside = Math.max(
      Math.abs(a.x - round.x) + Math.abs(a.y - round.y),
      Math.abs(b.x - round.x) + Math.abs(b.y - round.y),
    );
    return (
      pin.radius + CLOSED >= round.radius + aside &&
      Math.min(a.z, b.z) <= low + SHORT &&
      Math.max(a.z, b.z) >= high - SHORT
    );
  });
}
