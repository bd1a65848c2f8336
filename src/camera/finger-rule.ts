import type { Build } from '../assembly/build.js';
import type { Extent } from '../assembly/extent.js';
import { ROUNDING, unless } from '../assembly/limit.js';
import { type Loop, plateOf, type StandingPlate } from '../assembly/measure.js';
import { spanOf } from '../assembly/span-of.js';
import type { Point } from '../geometry/path.js';
import { LEAST_FINGER } from '../joinery/finger-joint.js';
import type { Finding } from '../model/finding.js';
import { mm, tenth } from '../units/print.js';

/** Fingers 2 to 5 thicknesses wide, at least 8 mm, an odd number of three or more; common practice, no source. */
const NARROWEST = 2;
const WIDEST = 5;
const FEWEST = 3;

/**
 * An edge along which two plates meet at a right angle. The owner has the fingers 1, 3 … n and both ends, the partner
 * those between.
 */
export interface FingerEdge {
  /** In the builder's words: the names of both panels. */
  readonly name: string;
  readonly owner: string;
  readonly partner: string;
  /** Along which of the camera's axes the edge runs, and from where to where. */
  readonly along: 'x' | 'y' | 'z';
  readonly from: number;
  readonly to: number;
}

/**
 * The edges of four walls that end in a plate: the long ones, which the sides own, and those in the opening of the plate.
 *
 * @param sides left and right
 * @param lids upper and lower
 */
export function tubeEdges(
  build: Build,
  {
    sides,
    lids,
    plate,
  }: Readonly<Record<'sides' | 'lids', readonly [string, string]>> & {
    readonly plate: { readonly id: string; readonly name: string };
  },
): readonly FingerEdge[] {
  const [left, right] = sides.map((id) => spanOf(build, id)) as [Extent, Extent];
  const [top, floor] = lids.map((id) => spanOf(build, id)) as [Extent, Extent];
  const end = spanOf(build, plate.id).z[0];
  const inPlate = { name: plate.name, owner: plate.id };
  return [
    ...sides.flatMap((owner) =>
      lids.map((partner) => ({ name: 'long', owner, partner, along: 'z' as const, from: left.z[0], to: end })),
    ),
    ...sides.map((partner) => ({ ...inPlate, partner, along: 'y' as const, from: floor.y[1], to: top.y[0] })),
    ...lids.map((partner) => ({ ...inPlate, partner, along: 'x' as const, from: left.x[1], to: right.x[0] })),
  ];
}

/** A stretch of an edge. */
interface Run {
  readonly from: number;
  readonly to: number;
}

/**
 * finger-rule: the edges of a box, their fingers read off the outlines of both plates as they stand.
 *
 * @param fit what the partner's fingers are narrower by
 */
export const fingerRule = (
  box: string,
  edges: readonly FingerEdge[],
  fit: number,
  build: Build,
): readonly Finding[] => {
  // a panel has several edges and is drawn once
  const drawn = new Map<string, StandingPlate>();
  const panel = (id: string) => {
    const plate = drawn.get(id) ?? plateOf(build, id);
    drawn.set(id, plate);
    return plate;
  };
  const found = edges.flatMap((edge) => told(box, edge, fit, panel));
  // left and right are told once where they are alike
  return found.filter(({ message }, i) => found.findIndex((one) => one.message === message) === i);
};

function told(box: string, edge: FingerEdge, fit: number, panel: (id: string) => StandingPlate): readonly Finding[] {
  // a box that does not close has no edge: the rules of the slide say so
  if (edge.to - edge.from <= ROUNDING) return [];
  const [owner, partner] = [panel(edge.owner), panel(edge.partner)];
  const own = runsOf(owner, middleOf(partner), edge);
  const gaps = between(own, edge);
  const others = runsOf(partner, middleOf(owner), edge).map((run) => widened(run, fit));
  const count = own.length + others.length;
  // both ends are the owner's, and the partner has a finger for each gap
  const ends = own.length === gaps.length + 1;
  const odd = count >= FEWEST && ends && others.length === gaps.length;
  const ply = owner.high - owner.low;
  const least = Math.max(LEAST_FINGER, NARROWEST * ply);
  const widths = [...own, ...gaps, ...others].map(({ from, to }) => to - from);
  const [narrowest, widest] = [Math.min(edge.to - edge.from, ...widths), Math.max(0, ...widths)];
  const narrow = narrowest < least - CUT;
  const width = narrow ? narrowest : widest;
  return unless(!narrow && odd && widest <= WIDEST * ply + CUT, {
    rule: 'finger-rule',
    level: 'error',
    value: odd ? width : count,
    limit: odd ? (narrow ? least : WIDEST * ply) : ends ? Math.max(FEWEST, 2 * gaps.length + 1) : FEWEST,
    unit: odd ? 'mm' : 'fingers',
    about: 'plywood.thickness',
    message: `${box}, ${edge.name}: ${count} fingers of ${mm(Math.round(width * 100) / 100)} on ${mm(tenth(edge.to - edge.from))} ${narrow && odd ? 'crumble' : 'do not hold'}.`,
    hint: narrow ? thinner(edge.to - edge.from) : `Use sheet of ${mm(Math.ceil((width * 10) / WIDEST) / 10)} or more.`,
  });
}

/** Edges that were worked out and placed come back with this error at most. */
const CUT = 1e-4;

const thinner = (edge: number): string =>
  edge < FEWEST * LEAST_FINGER - CUT
    ? `The box must be ${mm(FEWEST * LEAST_FINGER)} or more along this edge.`
    : `Use sheet of ${mm(Math.floor((edge * 10) / FEWEST / NARROWEST) / 10)} or less, or make the box longer.`;

const widened = ({ from, to }: Run, by: number): Run => ({ from: from - by / 2, to: to + by / 2 });

interface Middle {
  readonly axis: 'x' | 'y' | 'z';
  readonly at: number;
}

const middleOf = ({ thickAlong, low, high }: StandingPlate): Middle => ({ axis: thickAlong, at: (low + high) / 2 });

/** The wood of a plate along the edge, halfway through the thickness of the other one. */
function runsOf(plate: StandingPlate, middle: Middle, { along, from, to }: FingerEdge): readonly Run[] {
  const ends: number[] = [];
  for (const loop of [plate.outline, ...plate.holes]) ends.push(...crossings(loop, plate.thickAlong, middle, along));
  ends.sort((a, b) => a - b);
  const runs: Run[] = [];
  for (let i = 0; i + 1 < ends.length; i += 2) {
    const run = { from: Math.max(from, ends[i] ?? 0), to: Math.min(to, ends[i + 1] ?? 0) };
    if (run.to - run.from > ROUNDING) runs.push(run);
  }
  return runs;
}

/** Where a loop crosses the line that lies at `middle` and runs along an axis of the camera. */
function crossings(loop: Loop, thickAlong: 'x' | 'y' | 'z', { at }: Middle, along: 'x' | 'y' | 'z'): readonly number[] {
  const runsAlongX = along === (thickAlong === 'x' ? 'z' : 'x');
  const found: number[] = [];
  let a = loop[loop.length - 1] as Point;
  for (const b of loop) {
    if (runsAlongX) {
      if (a.y > at !== b.y > at) found.push(a.x + ((b.x - a.x) * (at - a.y)) / (b.y - a.y));
    } else if (a.x > at !== b.x > at) found.push(a.y + ((b.y - a.y) * (at - a.x)) / (b.x - a.x));
    a = b;
  }
  return found;
}

/** What stands between an owner's fingers. */
function between(own: readonly Run[], { from, to }: FingerEdge): readonly Run[] {
  const gaps: Run[] = [];
  let end = from;
  for (const run of [...own, { from: to, to }]) {
    if (run.from - end >= ROUNDING) gaps.push({ from: end, to: run.from });
    end = run.to;
  }
  return gaps;
}
