import type { Build, Setup } from '../assembly/build.js';
import { ROUNDING } from '../assembly/limit.js';
import { type Loop, leastFrom } from '../assembly/measure.js';
import { stands } from '../assembly/setups.js';
import { type Box, boundsOfPoints, type ClosedPath, flatten, polygon } from '../geometry/path.js';
import { apply } from '../geometry/placement.js';
import { idsOf, matches, stepsOfCamera } from '../model/assembly-steps.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart, Part, Placement } from '../model/part.js';
import { mm, tenth } from '../units/print.js';
import { type Block, blocksOf, inOnePlace } from './straight-line.js';

/** Outlines that differ by no more than this look alike at the bench. A choice of ours. */
const ALIKE = 1;
/** What differs by no more than this works alike: a slide fit. Common practice, no source. */
const SAME = 0.3;

/** Curves are compared as chords that stray by so much: below what counts, and by less than a press fit gives way. */
const CHORDS = 0.005;

/**
 * one-way: no part goes in the wrong way, or in the place of another, unless it does there what it should. Every part is
 * tried in its own place in the seven other ways in which its outline may lie there, and in the place of every part that
 * looks like it; whether it goes in is seen by its neighbours. A mark that says which part it is does not count, a scale does.
 * Where pins locate it, it is also tried where these let it go on turned but shifted, and there by what is at the bench when
 * it comes in: what comes later tells too late.
 */
export function oneWayRules(build: Build): readonly Finding[] {
  const plates = build.parts
    .filter((part) => part.kind === 'flat')
    .filter(({ placements, kept }) => placements.length > 0 && !kept);
  const blocks = blocksOf(build.parts).filter(({ prism }) => prism !== null);
  const standing = build.setups.map((setup) => ({
    setup,
    blocks: blocks.filter(({ piece }) => stands(piece.placement, setup)),
  }));
  const shapes = plates.map(shapeOf);
  const seats = plates.map((part) => seatsOf(part, standing));
  const atBench = thereWhenItComes(build.parts);
  return shapes.flatMap((shape, i) => {
    const own = seats[i] ?? [];
    const turned = wrongWays(shape, shape, own)[0] ?? shiftedWays(shape, own, atBench.get(shape.part.id))[0];
    const swapped = shapes.slice(i + 1).flatMap((other, k) => {
      if (!sameSize(shape, other)) return [];
      const there = wrongWays(shape, other, seats[i + 1 + k] ?? [])[0];
      const back = wrongWays(other, shape, own)[0];
      // where only one of the two goes in, the other one is left over and tells
      return there && back ? [there.stray >= back.stray ? there : back] : [];
    });
    return [...(turned ? [turned] : []), ...swapped].map(told);
  });
}

interface Shape {
  readonly part: FlatPart;
  readonly outline: Loop;
  readonly holes: readonly Loop[];
  readonly middle: { readonly x: number; readonly y: number };
  readonly width: number;
  readonly height: number;
}

function shapeOf(part: FlatPart): Shape {
  const outline = flatten(part.outline, CHORDS);
  const { left, right, bottom, top } = boundsOfPoints(outline);
  return {
    part,
    outline,
    holes: part.holes.map((hole) => flatten(hole, CHORDS)),
    middle: { x: (left + right) / 2, y: (bottom + top) / 2 },
    width: right - left,
    height: top - bottom,
  };
}

const sameSize = (a: Shape, b: Shape): boolean => {
  const near = (p: number, q: number) => Math.abs(p - q) <= ALIKE;
  return (
    Math.abs(a.part.thickness - b.part.thickness) <= SAME &&
    ((near(a.width, b.width) && near(a.height, b.height)) || (near(a.width, b.height) && near(a.height, b.width)))
  );
};

/** The places of one piece, one in each set-up in which it stands, and what else stands in the camera then. */
type Seat = readonly { readonly placement: Placement; readonly others: readonly Block[] }[];

/** One seat for each piece of a part. */
function seatsOf(
  part: FlatPart,
  standing: readonly { readonly setup: Setup; readonly blocks: readonly Block[] }[],
): readonly Seat[] {
  const places = standing.flatMap(({ setup, blocks }) => {
    const here = part.placements.filter((placement) => stands(placement, setup));
    return here.length === 0 ? [] : [{ here, blocks }];
  });
  const count = Math.max(0, ...places.map(({ here }) => here.length));
  return Array.from(
    { length: count },
    (_, k): Seat =>
      places.flatMap(({ here, blocks }) => {
        const placement = here[k];
        return placement === undefined
          ? []
          : [{ placement, others: blocks.filter(({ piece }) => piece.placement !== placement) }];
      }),
  );
}

/** How a part may be turned on the bench before it is put in: own x and y from its old ones. */
interface Turning {
  readonly matrix: readonly [number, number, number, number];
  /** Its engraved face lies on the other side then. */
  readonly over: boolean;
  readonly words: string;
}

const turnings: readonly Turning[] = [
  { matrix: [1, 0, 0, 1], over: false, words: 'as it is' },
  { matrix: [-1, 0, 0, -1], over: false, words: 'turned end for end' },
  { matrix: [0, -1, 1, 0], over: false, words: 'a quarter turn round' },
  { matrix: [0, 1, -1, 0], over: false, words: 'a quarter turn round' },
  { matrix: [-1, 0, 0, 1], over: true, words: 'turned over' },
  { matrix: [1, 0, 0, -1], over: true, words: 'turned over, end for end' },
  { matrix: [0, 1, 1, 0], over: true, words: 'turned over its diagonal' },
  { matrix: [0, -1, -1, 0], over: true, words: 'turned over its diagonal' },
];

const AS_IT_IS = turnings[0];

/** Two parts that bear the same words and lines in the same places, such as the slides of two holders. */
const readsAlike = (a: Shape, b: Shape): boolean => wordsOn(a) === wordsOn(b);

/** What is engraved on a part, counted from its middle in hundredths. */
function wordsOn({ part: { engraving, marks }, middle }: Shape): string {
  const at = ({ x, y }: { readonly x: number; readonly y: number }) =>
    `${Math.round(100 * (x - middle.x))} ${Math.round(100 * (y - middle.y))}`;
  return [
    ...engraving.map(({ vertices }) => vertices.map(at).join()),
    ...marks.map((one) => `${one.text} ${at(one)}`),
  ].join(';');
}

interface WrongWay {
  readonly part: FlatPart;
  readonly place: FlatPart;
  readonly turning: Turning;
  /** How far an edge lies from where it should, mm. */
  readonly stray: number;
  readonly scale: boolean;
}

/** The ways in which a part goes into a place without doing there what it should. */
function wrongWays(shape: Shape, place: Shape, seats: readonly Seat[]): readonly WrongWay[] {
  const self = shape === place;
  return turnings.slice(self ? 1 : 0).flatMap((turning) => {
    const [a] = turning.matrix;
    const [width, height] = a === 0 ? [shape.height, shape.width] : [shape.width, shape.height];
    if (Math.abs(width - place.width) > ALIKE || Math.abs(height - place.height) > ALIKE) return [];
    const outline = turnedLoop(shape.outline, turning, shape, place);
    const edge = strayOf(outline, place.outline, ALIKE);
    if (edge > ALIKE) return [];
    const holes = shape.holes.map((hole) => turnedLoop(hole, turning, shape, place));
    const engraved = [shape.part, place.part].some(({ engraving, marks }) => engraving.length + marks.length > 0);
    const wrong = (stray: number): readonly WrongWay[] => {
      // a scale that lies on the face below is missed at once, one that reads wrong is not
      const scale = stray <= SAME;
      if (scale && (!engraved || turning.over || (turning === AS_IT_IS && readsAlike(shape, place)))) return [];
      return [{ part: shape.part, place: place.part, turning, stray, scale }];
    };
    if (Math.max(edge, holesStray(holes, place.holes)) <= SAME) return wrong(0);
    if (!seats.some((seat) => goesIn(place.part, outline, holes, seat))) return [];
    return wrong(Math.max(edge, holesStray(holes.filter(matters), place.holes.filter(matters))));
  });
}

/** By the id of a part, what is at the bench with it when its step is done. */
function thereWhenItComes(parts: readonly Part[]): ReadonlyMap<string, ReadonlySet<string>> {
  const ids = parts.map(({ id }) => id);
  const together = new Map<string, ReadonlySet<string>>();
  const there = new Map<string, ReadonlySet<string>>();
  for (const { acts } of stepsOfCamera(parts)) {
    const come = acts.map((act) => ({
      into: act.into,
      brought: 'whole' in act ? [] : ids.filter((id) => idsOf(act).some((pattern) => matches(pattern, id))),
      whole: 'whole' in act ? act.whole : null,
    }));
    for (const { into, brought, whole } of come)
      together.set(into, new Set([...(together.get(into) ?? []), ...brought, ...(together.get(whole ?? '') ?? [])]));
    for (const { into, brought } of come) for (const id of brought) there.set(id, together.get(into) ?? new Set());
  }
  return there;
}

/** Ways in which a part goes on all the pins that locate it, but not to its place: turned round, and moved. */
function shiftedWays(
  shape: Shape,
  whole: readonly Seat[],
  there: ReadonlySet<string> | undefined,
): readonly WrongWay[] {
  const seats = whole.map((seat) =>
    seat.map(({ placement, others }) => ({
      placement,
      others: others.filter(({ piece }) => there === undefined || there.has(piece.part.id)),
    })),
  );
  const { part } = shape;
  const holes = part.holes.map((hole) => flatten(hole, CHORDS));
  return turnings.slice(1).flatMap((turning) => {
    const outline = turnedLoop(shape.outline, turning, shape, shape);
    const turned = holes.map((hole) => turnedLoop(hole, turning, shape, shape));
    const strays = seats.flatMap((seat) => {
      // what is only screwed on comes off again
      if (!seat.some(({ others }) => others.some(({ piece }) => glued(part, piece.part)))) return [];
      const pinned = holes.map(roundHole).filter((hole) => seat.some((place) => isPinned(hole, part, place)));
      const [first] = pinned;
      if (first === undefined || pinned.length < 2) return [];
      return turned.map(roundHole).flatMap((hole) => {
        const by = { x: first.x - hole.x, y: first.y - hole.y };
        const far = Math.sqrt(by.x ** 2 + by.y ** 2);
        const moved = (loop: Loop): Loop => loop.map(({ x, y }) => ({ x: x + by.x, y: y + by.y }));
        const now = turned.map(moved);
        const taken = pinned.every((pin) => now.some((loop) => isAlike(pin, roundHole(loop))));
        return far > SAME && taken && goesIn(part, moved(outline), now, seat) ? [far] : [];
      });
    });
    return strays.map((stray) => ({ part, place: part, turning, stray, scale: false }));
  });
}

interface RoundHole {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

function roundHole(loop: Loop): RoundHole {
  const { left, right, bottom, top } = boundsOfPoints(loop);
  return { x: (left + right) / 2, y: (bottom + top) / 2, diameter: right - left };
}

const isAlike = (a: RoundHole, b: RoundHole): boolean =>
  Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y), Math.abs(a.diameter - b.diameter)) <= SAME;

/** Whether a rod of its size stands in the middle of a hole. */
function isPinned({ x, y, diameter }: RoundHole, part: FlatPart, { placement, others }: Seat[number]): boolean {
  const middle = apply(placement.matrix, { x, y, z: part.thickness / 2 });
  return others.some(({ piece: { part: rod, placement: at } }) => {
    if (rod.kind !== 'bought' || rod.shape.form !== 'cylinder' || Math.abs(rod.shape.diameter - diameter) > SAME)
      return false;
    const foot = apply(at.matrix, { x: 0, y: 0, z: 0 });
    const end = apply(at.matrix, { x: 0, y: 0, z: rod.shape.length });
    return AXES.every((axis) => {
      const [from, to] = [Math.min(foot[axis], end[axis]), Math.max(foot[axis], end[axis])];
      return middle[axis] > from - SAME && middle[axis] < to + SAME;
    });
  });
}

const AXES = ['x', 'y', 'z'] as const;

/**
 * Pins, bolts, screws and nuts are parts and stand in their holes, so a round hole of their size that is empty here does
 * nothing. Smaller ones are drilled for the points of wood screws.
 */
const PINS = { least: 3, most: 20 };

function matters(hole: Loop): boolean {
  const { left, right, bottom, top } = boundsOfPoints(hole);
  const [w, h] = [right - left, top - bottom];
  return Math.abs(w - h) > 0.1 || hole.length < 8 || w < PINS.least || w > PINS.most;
}

function turnedLoop(loop: Loop, { matrix: [a, b, c, d] }: Turning, from: Shape, to: Shape): Loop {
  return loop.map(({ x, y }) => {
    const [u, v] = [x - from.middle.x, y - from.middle.y];
    return { x: a * u + b * v + to.middle.x, y: c * u + d * v + to.middle.y };
  });
}

/** How far corners of either loop lie from the other one at most; beyond the limit no matter how far. */
function strayOf(a: Loop, b: Loop, limit = Infinity): number {
  let most = 0;
  for (const [from, to] of [
    [a, b],
    [b, a],
  ] as const)
    for (const point of from) {
      most = Math.max(most, leastFrom(point, to));
      if (most > limit) return most;
    }
  return most;
}

/** The same for holes, each against the one that it comes nearest to; one too many is off by its own width. */
function holesStray(a: readonly Loop[], b: readonly Loop[]): number {
  const boxed = (loop: Loop): Hole => ({ loop, box: boundsOfPoints(loop) });
  const [ours, others] = [a.map(boxed), b.map(boxed)];
  const off = (hole: Hole, among: readonly Hole[]) => {
    const width = Math.min(hole.box.right - hole.box.left, hole.box.top - hole.box.bottom);
    const nearest = among.reduce<{ readonly hole: Hole; readonly by: number } | null>((best, other) => {
      const by = apart(hole.box, other.box);
      return best === null || by < best.by ? { hole: other, by } : best;
    }, null);
    if (nearest === null) return width;
    const stray = nearest.by > SAME ? nearest.by : strayOf(hole.loop, nearest.hole.loop);
    return Math.min(stray, Math.max(width, 2 * SAME));
  };
  return Math.max(0, ...ours.map((hole) => off(hole, others)), ...others.map((hole) => off(hole, ours)));
}

interface Hole {
  readonly loop: Loop;
  readonly box: Box;
}

/** How far the sides of two upright boxes lie from each other at most. */
const apart = (a: Box, b: Box): number =>
  Math.max(
    Math.abs(a.left - b.left),
    Math.abs(a.right - b.right),
    Math.abs(a.bottom - b.bottom),
    Math.abs(a.top - b.top),
  );

/** Whether, in every set-up, nothing of its neighbours stands where there is wood now, and it is not seen that it is wrong. */
function goesIn(place: FlatPart, outline: Loop, holes: readonly Loop[], seat: Seat): boolean {
  const path = (loop: Loop): ClosedPath => polygon(loop.map(({ x, y }) => [x, y] as const));
  // glued to what the part is glued to whose place it takes
  const tried: FlatPart = { ...place, outline: path(outline), holes: holes.map(path) };
  return seat.every(({ placement, others }) => {
    const [block] = blocksOf([{ ...tried, placements: [placement] }]);
    if (block === undefined) return false;
    return !others.some((other) => inOnePlace(block, other) || showsItself(block, other));
  });
}

/** A window this wide is laid over its like, and a step in it this deep is seen before the glue. Choices of ours. */
const WINDOW = 50;
const STEP = 2;

/** Two plates are glued to each other, with windows that should be one: wrong way round, one stands out into the other. */
function showsItself(tried: Block, other: Block): boolean {
  if (tried.prism === null || other.prism === null || tried.prism.thick !== other.prism.thick) return false;
  const { thick } = tried.prism;
  const apart = Math.max(
    other.extent[thick][0] - tried.extent[thick][1],
    tried.extent[thick][0] - other.extent[thick][1],
  );
  if (Math.abs(apart) > ROUNDING || !glued(tried.piece.part, other.piece.part)) return false;
  const [window, next] = [widest(tried), widest(other)];
  if (window === null || next === null) return false;
  const alike = Math.abs(next.long - window.long) <= SAME && Math.abs(next.short - window.short) <= SAME;
  return alike && strayOf(window.loop, next.loop) >= STEP;
}

const glued = (a: Part, b: Part): boolean =>
  [a, b].some((one) => one.joins.some(({ to, by }) => by === 'glue' && to === (one === a ? b : a).id));

/** The widest opening of a plate; null where it has none. */
function widest({ prism }: Block) {
  const windows = (prism?.region.slice(1) ?? []).map((loop) => {
    const { left, right, bottom, top } = boundsOfPoints(loop);
    const [w, h] = [right - left, top - bottom];
    return { loop, long: Math.max(w, h), short: Math.min(w, h) };
  });
  const most = windows.reduce<(typeof windows)[number] | null>(
    (best, one) => (best === null || one.short > best.short ? one : best),
    null,
  );
  return most !== null && most.short >= WINDOW ? most : null;
}

function told({ part, place, turning, stray, scale }: WrongWay): Finding {
  const self = part.id === place.id;
  const way = self
    ? `goes in ${turning.words} as well`
    : `goes in where ${place.id} (${place.name}) belongs, ${turning.words}, and ${place.id} in its place`;
  const wrong =
    stray <= SAME && scale
      ? 'its scale is then read wrong'
      : `an edge of it then lies ${mm(tenth(stray))} from where it should`;
  return {
    rule: 'one-way',
    level: 'warning',
    value: stray,
    limit: SAME,
    unit: 'mm',
    message: `${part.id} (${part.name}) ${way}: ${wrong}.`,
    hint: self
      ? 'Look at its mark before the glue, or move one of its holes so that it goes in one way only.'
      : 'Look at their marks before the glue, or move a hole of one of them.',
  };
}
