import { common, joinedLess, type Region } from './clip.js';
import { type ClosedPath, flatten, type Point } from './path.js';
import { apply, compose, type Matrix4 } from './placement.js';
import { type Prism, type SolidRecipe, scaleAt } from './solid.js';

/** So little a plane leans in a prism's own frame, or lies beside one of its ends, and does neither. */
const NIL = 1e-9;

/**
 * The face that a saw along the plane x = 0 leaves on a prism, z to the right and y up. One whose end just touches the
 * plane is not cut.
 *
 * Seen from the prism the plane is a·u + b·v + c·w + d = 0. Where c is 0 it stands upright on the profile and cuts it along a
 * line: each stretch of it inside gives an oblong. Else it cuts each point of the profile once, at w(u, v), and the face is
 * what of the profile has that w between both ends. One that tapers is looked at from its tip, see `sawnTaper`.
 */
export function sawnPrism(prism: Prism): Region {
  const { profile, holes, height, matrix, taper = 1 } = prism;
  if (taper !== 1) return sawnTaper(prism, taper);
  const [a, b, c, d] = [matrix[0], matrix[4], matrix[8], matrix[12]] as [number, number, number, number];
  const loops = [profile, ...holes].map((loop) => flatten(loop));
  const place = (u: number, v: number, w: number): Point => fromSide(matrix, u, v, w);
  if (Math.abs(c) < NIL)
    return stretches(loops, a, b, d).map(([from, to]) => [
      place(from.x, from.y, 0),
      place(to.x, to.y, 0),
      place(to.x, to.y, height),
      place(from.x, from.y, height),
    ]);
  const at = ({ x, y }: Point): Point => place(x, y, -(d + a * x + b * y) / c);
  if (Math.abs(a) < NIL && Math.abs(b) < NIL) {
    const w = -d / c;
    return w > NIL && w < height - NIL ? loops.map((loop) => loop.map(at)) : [];
  }
  return common(loops, [strip(profile, { a, b, from: -d, to: -d - c * height })]).map((loop) => loop.map(at));
}

/** The same of all that a solid is made of, less what is taken away from it: the wood in the plane. */
export function sawnSolid({ add, cut }: SolidRecipe, matrix: Matrix4): Region {
  const faceOf = (prism: Prism) => sawnPrism({ ...prism, matrix: compose(matrix, prism.matrix) });
  return joinedLess(add.map(faceOf), cut.map(faceOf));
}

/**
 * Seen from its tip a prism that tapers is its profile, each point of it s times as far out at the height (s − 1)/k, where k is
 * what s grows by with each millimetre. The plane cuts it there where s·(a·u + b·v + c/k) = c/k − d: once, at a scale that is
 * to lie between 1 and the taper. A plane through the tip (c/k = d) cuts the profile along a line, at all scales.
 */
function sawnTaper({ profile, holes, height, matrix }: Prism, taper: number): Region {
  const [a, b, c, d] = [matrix[0], matrix[4], matrix[8], matrix[12]] as [number, number, number, number];
  const loops = [profile, ...holes].map((loop) => flatten(loop));
  const perHeight = (taper - 1) / height;
  const tip = c / perHeight;
  const place = ({ x, y }: Point, scale: number): Point =>
    fromSide(matrix, scale * x, scale * y, (scale - 1) / perHeight);
  const reach = tip - d;
  if (Math.abs(reach) < NIL)
    return stretches(loops, a, b, tip).map(([from, to]) => [
      place(from, 1),
      place(to, 1),
      place(to, taper),
      place(from, taper),
    ]);
  if (Math.abs(a) < NIL && Math.abs(b) < NIL) {
    const w = -d / c;
    return w > NIL && w < height - NIL ? loops.map((loop) => loop.map((p) => place(p, 1 + perHeight * w))) : [];
  }
  const within = common(loops, [strip(profile, { a, b, from: reach - tip, to: reach / taper - tip })]);
  return within.map((loop) => loop.map((p) => place(p, reach / (a * p.x + b * p.y + tip))));
}

/** The stretches of the line a·u + b·v + d = 0 that lie inside loops (even-odd). */
function stretches(
  loops: readonly (readonly Point[])[],
  a: number,
  b: number,
  d: number,
): readonly (readonly [Point, Point])[] {
  const crossings: Point[] = [];
  for (const loop of loops)
    loop.forEach((from, i) => {
      const to = loop[(i + 1) % loop.length] as Point;
      const [before, after] = [from, to].map(({ x, y }) => a * x + b * y + d) as [number, number];
      // half open, so that a corner on the line counts once
      if (before >= 0 === after >= 0) return;
      const t = before / (before - after);
      crossings.push({ x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) });
    });
  crossings.sort((p, q) => b * (p.x - q.x) - a * (p.y - q.y));
  const found: [Point, Point][] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) found.push([crossings[i] as Point, crossings[i + 1] as Point]);
  return found;
}

/** All points round a profile whose a·u + b·v lies between two figures. */
function strip(
  profile: ClosedPath,
  { a, b, from, to }: { readonly a: number; readonly b: number; readonly from: number; readonly to: number },
): readonly Point[] {
  const size = a * a + b * b;
  // farther along the strip than any corner lies; arcs reach past their corners by less than all corners lie apart
  const far = 4 * Math.max(...profile.map(({ x, y }) => Math.abs(x) + Math.abs(y)));
  const at = (across: number, along: number): Point => {
    const scale = along / Math.sqrt(size);
    return { x: (across / size) * a - scale * b, y: (across / size) * b + scale * a };
  };
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  return [at(low, -far), at(high, -far), at(high, far), at(low, far)];
}

/**
 * What is seen of a prism along x, z to the right and y up: its profile where that lies flat to the eye, with the holes that
 * one sees through; else the hull of its corners.
 */
export function outlineFromSide({ profile, holes, height, matrix, taper = 1 }: Prism): Region {
  const isFlat = Math.abs(matrix[0] as number) < NIL && Math.abs(matrix[4] as number) < NIL;
  const widest = Math.max(1, taper);
  if (isFlat)
    return [profile, ...holes].map((loop) =>
      flatten(loop).map(({ x, y }) => fromSide(matrix, widest * x, widest * y, 0)),
    );
  const ends = [0, height].map((w) => ({ w, s: scaleAt({ taper, height }, w) }));
  return [hull(flatten(profile).flatMap(({ x, y }) => ends.map(({ w, s }) => fromSide(matrix, s * x, s * y, w))))];
}

/** The corners of the least convex loop round some points, anticlockwise: from the left along the bottom, and back along the top. */
function hull(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((p, q) => p.x - q.x || p.y - q.y);
  const half = (list: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of list) {
      while (chain.length > 1 && turn(chain.at(-2) as Point, chain.at(-1) as Point, p) <= NIL) chain.pop();
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** A point of a part as it is seen along x: z to the right, y up. */
function fromSide(matrix: Matrix4, u: number, v: number, w: number): Point {
  const { z, y } = apply(matrix, { x: u, y: v, z: w });
  return { x: z, y };
}

const turn = (o: Point, p: Point, q: Point): number => (p.x - o.x) * (q.y - o.y) - (p.y - o.y) * (q.x - o.x);
