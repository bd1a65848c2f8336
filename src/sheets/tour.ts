import type { Point } from '../geometry/path.js';
import { type Random, seeded } from '../packing/random.js';
import type { Search } from '../packing/search.js';

/** Something that the beam follows without lifting. */
export interface Contour {
  /** Where the head may come down: vertices of a loop, or the ends of a stroke. At least one. */
  readonly points: readonly Point[];
  /** Where it lifts off for each of them; the same points where nothing is given, since a loop ends where it began. */
  readonly ends?: readonly Point[];
  /** Contours that must be cut before, as indices. */
  readonly after: readonly number[];
  /** All contours of a lower stage are cut before; 0 where nothing is given. Counted from 0. */
  readonly stage?: number;
}

export interface TourGiven {
  readonly start: Point;
  readonly contours: readonly Contour[];
}

export interface Tour {
  /** Indices of the contours as they are cut. */
  readonly order: readonly number[];
  /** For each contour in this order, the index of the point where the head comes down. */
  readonly entries: readonly number[];
  /** Straight moves without the beam from the start to the last contour; no way leads home. mm */
  readonly travel: number;
}

/** At most so many contours are taken out at once; few leave a family of holes where it is, many take long. */
const RUIN = 40;
/** Neighbours on the route that are taken out together at most. */
const STRING = 4;
/** How much worse a tour may be to be worked on, in the first tour's mean move: a walk over many hills, never cooled. */
const WARMTH = 1;
/** A place is passed over as often as this, so that the same gaps are not always filled alike. */
const BLINK = 0.01;
/** A tour worse than this has its entries left as they are before it is judged. */
const PROMISING = 1.01;
/** Contours that one step puts back, about: half a millisecond. */
const STEP = 1000;
/** Rounds of a step for each contour at most: with few contours there is little to be tried. */
const TRIES = 4;
/** Less than this is no gain, mm. */
const GAIN = 1e-9;

/**
 * The least travel through all contours: order and entries, no contour before one that it waits for.
 *
 * The nearest allowed contour next, then again and again some contours that lie near each other are taken out and put
 * back one by one where they cost least (ruin and recreate, Schrimpf et al. 2000; in strings and with blinks,
 * Christiaens and Vanden Berghe 2020), the entries of a promising order chosen anew together. What a contour waits for
 * leaves it a stretch of the order and no more, so nothing is ever tried that would break it.
 *
 * A contour that waits for itself in the end is a mistake of ours and throws.
 */
export function* searchTour(given: TourGiven, seed: number): Search<Tour> {
  const job = jobOf(given);
  const { count } = job;
  const route = nearestNext(job);
  let travel = chooseEntries(job, route);
  let found = tourOf(job, route, travel);
  yield found;
  if (count < 2) return found;

  const random = seeded(seed);
  const warmth = (WARMTH * travel) / count;
  const kept = copyOf(route);
  const rounds = Math.min(Math.ceil(STEP / count), TRIES * count);
  const gone = new Int32Array(count);
  const near: (Int32Array | undefined)[] = [];
  while (found.travel > 0) {
    for (let round = 0; round < rounds; round++) {
      const about = Math.floor(random() * count);
      near[about] ??= nearestTo(job, about);
      const taken = ruin(route, { job, random, near: near[about], gone });
      arrange(gone, taken, { job, random });
      for (let i = 0; i < taken; i++) putBack(route, gone[i] as number, job, random);

      const limit = travel - warmth * Math.log(random());
      let now = travelOf(job, route);
      if (now < Math.max(limit, PROMISING * travel)) now = chooseEntries(job, route);
      if (now >= limit) {
        copy(kept, route);
        continue;
      }
      travel = now;
      copy(route, kept);
      if (travel < found.travel - GAIN) found = tourOf(job, route, travel);
    }
    yield found;
  }
  return found;
}

/** The best entries for an order that is settled. */
export function enterBest(given: TourGiven, order: readonly number[]): Tour {
  const job = jobOf(given);
  const route = emptyRoute(job);
  for (const contour of order) append(route, contour, job);
  return tourOf(job, route, chooseEntries(job, route));
}

// Typed arrays from here on: the search reads these numbers some hundred million times a second.

/** The contours in numbers; each entry of each contour is a way, numbered through. */
interface Job {
  readonly count: number;
  /** The first way of each contour, and one more than the last way of all. */
  readonly first: Int32Array;
  readonly inX: Float64Array;
  readonly inY: Float64Array;
  /** As many and one more: the last is the start. */
  readonly outX: Float64Array;
  readonly outY: Float64Array;
  /** A circle round all points of a contour. */
  readonly middleX: Float64Array;
  readonly middleY: Float64Array;
  readonly radius: Float64Array;
  /** All that each contour waits for, at first or second hand, and all that wait for it. */
  readonly before: readonly Int32Array[];
  readonly behind: readonly Int32Array[];
  readonly stage: Int32Array;
}

/** An order as far as it goes. */
interface Route {
  size: number;
  readonly order: Int32Array;
  /** Where each contour stands in the order; −1 where it is taken out. */
  readonly place: Int32Array;
  /** The way by which each contour is cut. */
  readonly way: Int32Array;
  /** How many of each stage are in. */
  readonly staged: Int32Array;
}

function jobOf({ start, contours }: TourGiven): Job {
  const count = contours.length;
  const first = new Int32Array(count + 1);
  contours.forEach(({ points }, c) => {
    first[c + 1] = (first[c] as number) + points.length;
  });
  const ins = contours.flatMap(({ points }) => points);
  const outs = [...contours.flatMap(({ points, ends = points }) => ends), start];
  const circles = contours.map(({ points, ends = points }) => circleRound([...points, ...ends]));
  const before = contours.map((_, c) => allBefore(contours, c));
  const behind = contours.map((): number[] => []);
  before.forEach((earlier, c) => {
    for (const e of earlier) behind[e]?.push(c);
  });
  return {
    count,
    first,
    inX: Float64Array.from(ins, ({ x }) => x),
    inY: Float64Array.from(ins, ({ y }) => y),
    outX: Float64Array.from(outs, ({ x }) => x),
    outY: Float64Array.from(outs, ({ y }) => y),
    middleX: Float64Array.from(circles, ({ x }) => x),
    middleY: Float64Array.from(circles, ({ y }) => y),
    radius: Float64Array.from(circles, ({ radius }) => radius),
    before: before.map((earlier) => Int32Array.from(earlier)),
    behind: behind.map((later) => Int32Array.from(later)),
    stage: Int32Array.from(contours, ({ stage = 0 }) => stage),
  };
}

function circleRound(points: readonly Point[]): Point & { readonly radius: number } {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const x = (Math.min(...xs) + Math.max(...xs)) / 2;
  const y = (Math.min(...ys) + Math.max(...ys)) / 2;
  return { x, y, radius: Math.max(...points.map((p) => distance(p.x, p.y, x, y))) };
}

function allBefore(contours: readonly Contour[], contour: number): ReadonlySet<number> {
  const found = new Set<number>();
  const open = [...(contours[contour] as Contour).after];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (found.has(next)) continue;
    found.add(next);
    open.push(...(contours[next] as Contour).after);
  }
  return found;
}

const emptyRoute = ({ count, stage }: Job): Route => ({
  size: 0,
  order: new Int32Array(count),
  place: new Int32Array(count).fill(-1),
  way: new Int32Array(count),
  staged: new Int32Array(1 + stage.reduce((most, s) => Math.max(most, s), 0)),
});

const copyOf = ({ size, order, place, way, staged }: Route): Route => ({
  size,
  order: order.slice(),
  place: place.slice(),
  way: way.slice(),
  staged: staged.slice(),
});

function copy(from: Route, to: Route): void {
  to.size = from.size;
  to.order.set(from.order);
  to.place.set(from.place);
  to.way.set(from.way);
  to.staged.set(from.staged);
}

function tourOf({ first }: Job, { order, way }: Route, travel: number): Tour {
  return {
    order: Array.from(order),
    entries: Array.from(order, (c) => (way[c] as number) - (first[c] as number)),
    travel,
  };
}

function append(route: Route, contour: number, { stage }: Job): void {
  route.order[route.size] = contour;
  route.place[contour] = route.size;
  route.size++;
  (route.staged[stage[contour] as number] as number)++;
}

/** From where the head stands always to the nearest entry of all contours that may be cut. */
function nearestNext(job: Job): Route {
  const { count, first, inX, inY, outX, outY, before, behind, stage } = job;
  const route = emptyRoute(job);
  const waiting = Int32Array.from(before, (earlier) => earlier.length);
  let left = Array.from({ length: count }, (_, c) => c);
  let out = first[count] as number;
  while (left.length > 0) {
    const open = left.reduce((least, c) => Math.min(least, stage[c] as number), Infinity);
    let [next, by, least] = [-1, -1, Infinity];
    for (const c of left) {
      if (waiting[c] !== 0 || stage[c] !== open) continue;
      for (let w = first[c] as number; w < (first[c + 1] as number); w++) {
        const d = distance(outX[out] as number, outY[out] as number, inX[w] as number, inY[w] as number);
        if (d < least) [next, by, least] = [c, w, d];
      }
    }
    if (next < 0) throw new Error('Contours wait for each other: none of them can be the next.');
    append(route, next, job);
    route.way[next] = by;
    for (const c of behind[next] as Int32Array) (waiting[c] as number)--;
    left = left.filter((c) => c !== next);
    out = by;
  }
  return route;
}

/** The best entry on each contour for this order, all of them together: the shortest path through layers of ways. */
function chooseEntries({ count, first, inX, inY, outX, outY }: Job, { order, way }: Route): number {
  if (count === 0) return 0;
  const cost = new Float64Array(inX.length + 1);
  const from = new Int32Array(inX.length);
  let [start, end] = [inX.length, inX.length + 1];
  for (let i = 0; i < count; i++) {
    const c = order[i] as number;
    for (let w = first[c] as number; w < (first[c + 1] as number); w++) {
      const x = inX[w] as number;
      const y = inY[w] as number;
      let least = Infinity;
      for (let v = start; v < end; v++) {
        if ((cost[v] as number) >= least) continue;
        const d = (cost[v] as number) + distance(outX[v] as number, outY[v] as number, x, y);
        if (d < least) {
          least = d;
          from[w] = v;
        }
      }
      cost[w] = least;
    }
    start = first[c] as number;
    end = first[c + 1] as number;
  }
  let last = start;
  for (let v = start; v < end; v++) if ((cost[v] as number) < (cost[last] as number)) last = v;
  const travel = cost[last] as number;
  for (let i = count - 1; i >= 0; i--) {
    way[order[i] as number] = last;
    last = from[last] as number;
  }
  return travel;
}

function travelOf({ first, count, inX, inY, outX, outY }: Job, { order, way }: Route): number {
  let sum = 0;
  let out = first[count] as number;
  for (let i = 0; i < count; i++) {
    const w = way[order[i] as number] as number;
    sum += distance(outX[out] as number, outY[out] as number, inX[w] as number, inY[w] as number);
    out = w;
  }
  return sum;
}

/** All contours in the order of their distance from one, itself first. */
function nearestTo({ count, first, inX, inY }: Job, contour: number): Int32Array {
  const gap = new Float64Array(count).fill(Infinity);
  for (let c = 0; c < count; c++) {
    for (let w = first[c] as number; w < (first[c + 1] as number); w++) {
      for (let v = first[contour] as number; v < (first[contour + 1] as number); v++) {
        const d = distance(inX[w] as number, inY[w] as number, inX[v] as number, inY[v] as number);
        if (d < (gap[c] as number)) gap[c] = d;
      }
    }
  }
  gap[contour] = -1;
  return Int32Array.from(gap.keys()).sort((a, b) => (gap[a] as number) - (gap[b] as number) || a - b);
}

interface Ruin {
  readonly job: Job;
  readonly random: Random;
  /** Contours by distance from the one about which all this happens. */
  readonly near: Int32Array;
  /** Takes up what is taken out. */
  readonly gone: Int32Array;
}

/** Takes short strings of the route out, each about the nearest contour that is still in; gives how many contours. */
function ruin(route: Route, { job: { stage }, random, near, gone }: Ruin): number {
  const { order, place, staged } = route;
  const wanted = Math.min(near.length, 1 + Math.floor(random() * RUIN));
  let taken = 0;
  for (let i = 0; taken < wanted; i++) {
    const at = place[near[i] as number] as number;
    if (at < 0) continue;
    const length = Math.min(wanted - taken, 1 + Math.floor(random() * STRING));
    const from = Math.max(0, Math.min(route.size - length, at - Math.floor(random() * length)));
    for (let k = from; k < from + length; k++) {
      const c = order[k] as number;
      place[c] = -1;
      (staged[stage[c] as number] as number)--;
      gone[taken++] = c;
    }
    order.copyWithin(from, from + length, route.size);
    route.size -= length;
    for (let k = from; k < route.size; k++) place[order[k] as number] = k;
  }
  return taken;
}

/** The order in which they are put back: by lot as a rule, now and then the widest first. */
function arrange(gone: Int32Array, taken: number, { job, random }: Pick<Ruin, 'job' | 'random'>): void {
  const { radius } = job;
  for (let i = taken - 1; i > 0; i--) {
    const k = Math.floor(random() * (i + 1));
    const c = gone[i] as number;
    gone[i] = gone[k] as number;
    gone[k] = c;
  }
  if (random() < 0.3) gone.subarray(0, taken).sort((a, b) => (radius[b] as number) - (radius[a] as number));
}

/** Where it costs least of all places that its stage and what waits for what leave, by its best entry there. */
function putBack(route: Route, contour: number, job: Job, random: Random): void {
  const { first, inX, inY, outX, outY, middleX, middleY, radius } = job;
  const { order, place, way } = route;
  const [earliest, latest] = stretchFor(route, contour, job);
  const [w0, w1] = [first[contour] as number, first[contour + 1] as number];
  const [x, y, r] = [middleX[contour] as number, middleY[contour] as number, radius[contour] as number];

  let [best, by, least] = [-1, w0, Infinity];
  let out = earliest === 0 ? (first[job.count] as number) : (way[order[earliest - 1] as number] as number);
  for (let at = earliest; at <= latest; at++) {
    const px = outX[out] as number;
    const py = outY[out] as number;
    const open = at === route.size;
    const next = open ? out : (way[order[at] as number] as number);
    const nx = open ? px : (inX[next] as number);
    const ny = open ? py : (inY[next] as number);
    const move = open ? 0 : distance(px, py, nx, ny);
    out = next;
    // nothing on a contour lies nearer than the circle round it
    const bound = distance(px, py, x, y) - r + (open ? 0 : distance(x, y, nx, ny) - r) - move;
    if (bound >= least || (best >= 0 && random() < BLINK)) continue;
    for (let w = w0; w < w1; w++) {
      const to = distance(px, py, inX[w] as number, inY[w] as number);
      const on = open ? 0 : distance(outX[w] as number, outY[w] as number, nx, ny);
      if (to + on - move < least) {
        best = at;
        by = w;
        least = to + on - move;
      }
    }
  }

  order.copyWithin(best + 1, best, route.size);
  order[best] = contour;
  way[contour] = by;
  route.size++;
  (route.staged[job.stage[contour] as number] as number)++;
  for (let k = best; k < route.size; k++) place[order[k] as number] = k;
}

/** The first and the last place in the order that a contour may take. */
function stretchFor({ staged, place }: Route, contour: number, { before, behind, stage }: Job): [number, number] {
  let earliest = 0;
  for (let s = 0; s < (stage[contour] as number); s++) earliest += staged[s] as number;
  let latest = earliest + (staged[stage[contour] as number] as number);
  for (const c of before[contour] as Int32Array) earliest = Math.max(earliest, (place[c] as number) + 1);
  for (const c of behind[contour] as Int32Array) {
    const at = place[c] as number;
    if (at >= 0) latest = Math.min(latest, at);
  }
  return [earliest, latest];
}

function distance(ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  return Math.sqrt(dx * dx + dy * dy);
}
