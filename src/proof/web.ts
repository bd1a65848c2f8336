import type { Build } from '../assembly/build.js';
import { ROUNDING } from '../assembly/limit.js';
import {
  AXIS,
  boxOf,
  holeRound,
  type Loop,
  leastBetween,
  platesIn,
  type StandingPlate,
  sidesOf,
} from '../assembly/measure.js';
import type { Design } from '../design/design.js';
import { inside, type Point } from '../geometry/path.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart } from '../model/part.js';
import { mm, plainNumber, tenth } from '../units/print.js';

/** Solid between two cuts; thinner wood breaks on the bed or under the thumb. Common practice, no source. */
const LEAST_WEB = 3;
/** Beside the pilot hole of a wood screw, which is no wider than its core; common practice, no source. */
const LEAST_AT_PILOT = 1;
const PILOT = 2;

/**
 * web-least: the least solid of every piece of sheet, as it is cut: between two holes, between a hole and the outline,
 * and where an outline, or a hole with steps, comes near to itself. One finding a part, for its thinnest place.
 */
export const webLeast = (design: Design, { parts }: Build): readonly Finding[] =>
  parts.flatMap((part) => (part.kind === 'flat' ? told(design, part) : []));

function told(design: Design, part: FlatPart): readonly Finding[] {
  const [plate] = platesIn(part);
  if (plate === undefined) return [];
  const thin = websOf(plate).filter(({ value, limit }) => value < limit - ROUNDING);
  if (thin.length === 0) return [];
  const { value, limit, cuts } = thin.reduce((worst, one) =>
    one.value - one.limit < worst.value - worst.limit ? one : worst,
  );
  const [a, b] = cuts.map((cut) => wordsFor(plate, cut));
  const where = `${part.name} (${part.id})`;
  return [
    {
      rule: 'web-least',
      level: 'error',
      value,
      limit,
      unit: 'mm',
      message:
        value <= ROUNDING
          ? `In the ${where}, ${a} and ${b} run into each other.`
          : a === b
            ? `The ${where} is ${hundredth(value)} wide at its narrowest, and breaks there; it needs ${mm(limit)}.`
            : `In the ${where} ${hundredth(value)} of wood are left between ${a} and ${b}; it breaks there, and needs ${mm(limit)}.`,
      ...cureOf(design, plate, cuts, limit - value),
    },
  ];
}

interface Web {
  readonly value: number;
  readonly limit: number;
  /** Both the same where a loop comes near to itself. */
  readonly cuts: readonly [Loop, Loop];
}

/** Every solid that might be too thin, with what it lies between; what is wider than the limit may be left out. */
function websOf({ outline, holes }: StandingPlate): readonly Web[] {
  const loops = [outline, ...holes];
  return loops.flatMap((a, i) => [
    ...necksOf(loops, a),
    ...loops.slice(i + 1).flatMap((b): readonly Web[] => {
      if (i > 0 && !near(a, b)) return [];
      const gap = leastBetween(a, b);
      const cuts = [a, b] as const;
      // a hole in another one, or beyond the edge, leaves nothing at all
      const lost = i === 0 ? !inside(a, b[0] ?? AXIS) : inside(a, b[0] ?? AXIS) || inside(b, a[0] ?? AXIS);
      return [{ value: lost ? 0 - gap : gap, limit: cuts.some(isPilot) ? LEAST_AT_PILOT : LEAST_WEB, cuts }];
    }),
  ]);
}

/** Upright boxes that are further apart than the limit spare the search along the edges. */
function near(a: Loop, b: Loop): boolean {
  const [p, q] = [boxOf(a), boxOf(b)];
  const apart = Math.max(q.left - p.right, p.left - q.right, q.bottom - p.top, p.bottom - q.top);
  return apart < LEAST_WEB;
}

/** A way round along the edge that is so many times the way across tells a neck from a corner; a half circle has π/2. */
const ROUND_ABOUT = 2;

/** Where a loop comes near to itself with wood between: the neck of an outline, the tooth between two notches. */
function necksOf(loops: readonly Loop[], loop: Loop): readonly Web[] {
  const run = [0];
  for (const [i, from] of loop.entries()) run.push((run[i] ?? 0) + distance(from, next(loop, i)));
  const whole = run.at(-1) ?? 0;
  const necks: Web[] = [];
  for (let i = 0; i < loop.length; i++)
    for (let k = i + 2; k < loop.length; k++) {
      const [a, b, c, d] = [loop[i], next(loop, i), loop[k], next(loop, k)] as const;
      if (a === undefined || c === undefined || apartByMore(a, b, c, d)) continue;
      for (const [from, to] of facing(a, b, c, d)) {
        const value = distance(from, to);
        const along = (run[k] ?? 0) + distance(c, to) - (run[i] ?? 0) - distance(a, from);
        if (value >= LEAST_WEB || value < ROUNDING || Math.min(along, whole - along) < ROUND_ABOUT * value) continue;
        if (solid(loops, middle(from, to))) necks.push({ value, limit: LEAST_WEB, cuts: [loop, loop] });
      }
    }
  return necks;
}

const next = (loop: Loop, i: number): Point => loop[(i + 1) % loop.length] as Point;
const distance = (a: Point, b: Point): number => Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2);

const apartByMore = (a: Point, b: Point, c: Point, d: Point): boolean =>
  Math.min(c.x, d.x) - Math.max(a.x, b.x) >= LEAST_WEB ||
  Math.min(a.x, b.x) - Math.max(c.x, d.x) >= LEAST_WEB ||
  Math.min(c.y, d.y) - Math.max(a.y, b.y) >= LEAST_WEB ||
  Math.min(a.y, b.y) - Math.max(c.y, d.y) >= LEAST_WEB;

/**
 * The ends and the middle of each edge, and the place of the other that is nearest to them. Among the ends is the least
 * way across; where they lie at the corners of a strip, the middle tells that it is one.
 */
const facing = (a: Point, b: Point, c: Point, d: Point): readonly (readonly [Point, Point])[] => [
  ...[a, b, middle(a, b)].map((from) => [from, nearestOn(from, c, d)] as const),
  ...[c, d, middle(c, d)].map((to) => [nearestOn(to, a, b), to] as const),
];

const middle = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

function nearestOn({ x, y }: Point, a: Point, b: Point): Point {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const squared = dx * dx + dy * dy;
  const share = squared === 0 ? 0 : Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / squared));
  return { x: a.x + share * dx, y: a.y + share * dy };
}

const solid = ([outline = [], ...holes]: readonly Loop[], at: Point): boolean =>
  inside(outline, at) && !holes.some((hole) => inside(hole, at));

/** Arcs have become many chords; a cut with few corners is straight all round. */
const isRound = (loop: Loop): boolean => loop.length > 8 && Math.abs(sidesOf(loop).width - sidesOf(loop).height) < 0.05;
const isPilot = (loop: Loop): boolean => isRound(loop) && sidesOf(loop).width < PILOT + 0.1;

/** Rounded down: 2.96 must not read as the 3 that it misses. */
const hundredth = (value: number): string => mm(Math.floor(value * 100 + ROUNDING) / 100);

/** A cut, as one would point it out. */
function wordsFor(plate: StandingPlate, cut: Loop): string {
  if (cut === plate.outline) return 'the edge';
  const { width, height } = sidesOf(cut);
  if (isRound(cut)) return `the hole of ${mm(tenth(width))}`;
  if (cut.length === 6) return 'the pocket of a nut';
  const kind = isGroove(plate, cut)
    ? 'groove'
    : plate.thickAlong === 'z' && cut === holeRound(plate)
      ? 'opening'
      : 'slot';
  return `the ${kind} of ${plainNumber(tenth(width))} × ${mm(tenth(height))}`;
}

/** Across the seat, for the lock rib of a holder. */
const isGroove = ({ part, outline }: StandingPlate, cut: Loop): boolean =>
  part.id === 'B1' && sidesOf(cut).width > 40 && cut !== outline && !inside(cut, AXIS);

/** The cheapest cure, by what the part is for. */
function cureOf(
  design: Design,
  plate: StandingPlate,
  cuts: readonly Loop[],
  missing: number,
): { readonly hint: string; readonly about?: string } {
  const { id } = plate.part;
  const more = mm(Math.ceil(missing * 10 - ROUNDING) / 10);
  if (cuts.some((cut) => isGroove(plate, cut)))
    return {
      about: 'holders',
      hint: 'Measure again from the middle of the picture to the middle of the rib; or plane the rib off and write locating: pins.',
    };
  if (/^(?:B1|G\d|GP|GQ|SP\d+T?)$/.test(id))
    return {
      about: 'holders',
      hint: `Make the rims of the narrowest holder ${more} wider: its pins stand in them.`,
    };
  if (id === 'F6' || id === 'F7')
    return {
      about: 'lens.mount',
      hint:
        design.lens.mount.by === 'ring'
          ? `Hold the lens by a clamp or a flange, or move one of the two ${more}.`
          : 'Mount the lens from the other side of the board, or turn another ring for its flange.',
    };
  const cure = cuts[0] === cuts[1] ? `make it ${more} wider there` : `move one of the two by ${more}`;
  return { about: 'plywood.thickness', hint: `Use thinner sheet, or ${cure}.` };
}
