import type { Point } from '../geometry/path.js';
import { wordsWidth } from '../paper/words-width.js';

/** An upright rectangle on paper, y down: `top` is the smaller y. */
export interface Patch {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Letters {
  readonly size: number;
  readonly heavy: boolean;
}

/** Of the size: how far letters rise above their base line and hang below it. */
const RISE = 0.78;
const HANG = 0.24;

/** From base line to base line, of the size. */
const LEADING = 1.25;

/** What words cover that stand on a base line, their left end there; further lines below it. */
export function wordsPatch(text: string, { x, y }: Point, letters: Letters): Patch {
  const rows = text.split('\n');
  return {
    left: x,
    top: y - RISE * letters.size,
    right: x + Math.max(...rows.map((row) => wordsWidth(row, letters))),
    bottom: y + (HANG + (rows.length - 1) * LEADING) * letters.size,
  };
}

/** Words that want a place near what they name. */
export interface Wanted {
  /** Several lines parted by line breaks. */
  readonly text: string;
  readonly letters: Letters;
  /** What they name. */
  readonly at: Point;
  /** Other spots of it that do as well. */
  readonly or?: readonly Point[];
  /** How near the middle of the words may come, mm, and how far they may go. Near 0 the words may stand on the spot. */
  readonly from: number;
  readonly to: number;
  /** Where they should rather go, seen from `at`: what lies the other way counts as farther off. */
  readonly toward?: Point;
  /** Bare paper all round the words, mm, for a ring or a frame; half a millimetre where left out. */
  readonly margin?: number;
}

export interface Placed {
  /** The left end of the base line of each line. */
  readonly rows: readonly { readonly text: string; readonly start: Point }[];
  /** What the words cover, without their margin. */
  readonly patch: Patch;
  /** From what is named to the words; null where they stand on it. */
  readonly leader: readonly [Point, Point] | null;
}

/**
 * Paper on which lines stand already, and where words find room by geometry: never on a line, on other words or on a
 * leader, and their own leader never across words or along a line. mm, from the upper left corner, y down.
 */
export interface LabelRoom {
  /** Lines that no words may cover; `closed` ones come back to their first point. */
  readonly keepClear: (paths: readonly (readonly Point[])[], closed?: 'closed') => void;
  /** Paper that is taken: words that stand there, the key. */
  readonly take: (patch: Patch) => void;
  readonly isFree: (patch: Patch) => boolean;
  /** Whether lines come into no paper that is taken. */
  readonly isBare: (paths: readonly (readonly Point[])[]) => boolean;
  /** Takes the best free place; null where there is none within reach. Ask for the words that have the least choice first. */
  readonly place: (wanted: Wanted) => Placed | null;
}

/** Directions that are tried round a spot, and steps outwards, mm. */
const DIRECTIONS = 24;
const STEP = 2;
const MARGIN = 0.5;
/** What a leader’s crossing of a line is worth in length, mm, and what running along one is: the eye takes it for the other. */
const CROSSING = 4;
const ALONG = 30;
/** So near to a line at both ends of a stretch a leader runs along it, mm. */
const BESIDE = 0.6;
/** Paper is looked up by squares of this side, mm. */
const SQUARE = 4;

interface Segment {
  readonly a: Point;
  readonly b: Point;
}

export function labelRoom({ width, height }: { readonly width: number; readonly height: number }): LabelRoom {
  const lines = lookUp<Segment>();
  const leaders = lookUp<Segment>();
  const taken = lookUp<Patch>();

  const isFree = (patch: Patch): boolean =>
    patch.left >= 0 &&
    patch.top >= 0 &&
    patch.right <= width &&
    patch.bottom <= height &&
    !taken.some(patch, (other) => overlap(patch, other)) &&
    !lines.some(patch, (segment) => meets(segment, patch)) &&
    !leaders.some(patch, (segment) => meets(segment, patch));

  const take = (patch: Patch): void => taken.add(patch, patch);

  const keep = (list: LookUp<Segment>, segment: Segment): void => list.add(around(segment), segment);

  return {
    isFree,
    isBare: (paths) =>
      paths.every((path) =>
        path.slice(1).every((b, i) => {
          const segment = { a: path[i] as Point, b };
          return !taken.some(around(segment), (patch) => meets(segment, patch));
        }),
      ),
    take,
    keepClear: (paths, closed) => {
      for (const path of paths) {
        const [first] = path;
        const points = closed !== undefined && first !== undefined ? [...path, first] : path;
        points.slice(1).forEach((b, i) => {
          keep(lines, { a: points[i] as Point, b });
        });
      }
    },
    place: (wanted) => {
      let best: { readonly placed: Placed; readonly outer: Patch; readonly cost: number } | null = null;
      const { text, letters } = wanted;
      const own = wordsPatch(text, { x: 0, y: 0 }, letters);
      const middleOfOwn = { x: (own.left + own.right) / 2, y: (own.top + own.bottom) / 2 };
      for (const { at, middle } of spots(wanted)) {
        const gone = distance(at, middle);
        if (best !== null && gone >= best.cost) break;
        const away = gone + against(wanted, at, middle);
        if (best !== null && away >= best.cost) continue;
        const start = { x: hundredths(middle.x - middleOfOwn.x), y: hundredths(middle.y - middleOfOwn.y) };
        const patch = {
          left: own.left + start.x,
          top: own.top + start.y,
          right: own.right + start.x,
          bottom: own.bottom + start.y,
        };
        const outer = grown(patch, wanted.margin ?? MARGIN);
        if (!isFree(outer)) continue;
        const end = nearest(outer, at);
        const leader: Segment = { a: at, b: end };
        const needed = distance(at, end) > 0;
        if (needed && taken.some(around(leader), (other) => meets(leader, other))) continue;
        if (needed && leaders.some(around(leader), (other) => crosses(leader, other))) continue;
        const crossed = needed ? lines.count(around(leader), (other) => crosses(leader, other)) : 0;
        if (best !== null && away + CROSSING * crossed >= best.cost) continue;
        const along = needed && lines.some(grown(around(leader), BESIDE), (other) => runsAlong(leader, other));
        const cost = away + CROSSING * crossed + (along ? ALONG : 0);
        if (best !== null && cost >= best.cost) continue;
        const rows = text.split('\n').map((row, i) => ({
          text: row,
          start: { x: start.x, y: hundredths(start.y + i * LEADING * letters.size) },
        }));
        best = { placed: { rows, patch, leader: needed ? [at, end] : null }, outer, cost };
      }
      if (best === null) return null;
      take(best.outer);
      if (best.placed.leader !== null) keep(leaders, { a: best.placed.leader[0], b: best.placed.leader[1] });
      return best.placed;
    },
  };
}

/** What is named and a place for the middle of the words, from near to far. */
function* spots({ at: first, or = [], from, to }: Wanted): Generator<{ readonly at: Point; readonly middle: Point }> {
  const named = [first, ...or];
  for (let out = from; out <= to; out += STEP)
    for (let k = 0; k < (out === 0 ? 1 : DIRECTIONS); k++) {
      const turn = (2 * Math.PI * k) / DIRECTIONS;
      const [right, up] = [hundredths(out * Math.cos(turn)), hundredths(out * Math.sin(turn))];
      for (const at of named) yield { at, middle: { x: at.x + right, y: at.y - up } };
    }
}

/** What going the wrong way costs, mm: nothing straight on, as much again as the way itself straight back. */
function against({ toward }: Wanted, at: Point, { x, y }: Point): number {
  if (toward === undefined) return 0;
  const wanted = Math.sqrt(toward.x * toward.x + toward.y * toward.y);
  const gone = Math.sqrt((x - at.x) * (x - at.x) + (y - at.y) * (y - at.y));
  if (wanted === 0 || gone === 0) return 0;
  const along = (toward.x * (x - at.x) + toward.y * (y - at.y)) / (wanted * gone);
  return (gone * (1 - along)) / 2;
}

/** Trigonometry differs in its last digit from one machine to the next; a drawing must not. */
const hundredths = (value: number): number => Math.round(value * 100) / 100;

const distance = (a: Point, b: Point): number => Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));

export const grown = ({ left, top, right, bottom }: Patch, by: number): Patch => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
});

const nearest = ({ left, top, right, bottom }: Patch, { x, y }: Point): Point => ({
  x: Math.max(left, Math.min(right, x)),
  y: Math.max(top, Math.min(bottom, y)),
});

const around = ({ a, b }: Segment): Patch => ({
  left: Math.min(a.x, b.x),
  top: Math.min(a.y, b.y),
  right: Math.max(a.x, b.x),
  bottom: Math.max(a.y, b.y),
});

export const overlap = (a: Patch, b: Patch): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether a segment comes into a rectangle: what is left of it between each pair of parallel sides. */
export function meets({ a, b }: Segment, { left, top, right, bottom }: Patch): boolean {
  let [begin, end] = [0, 1];
  for (const [from, to, low, high] of [
    [a.x, b.x, left, right],
    [a.y, b.y, top, bottom],
  ] as const) {
    const way = to - from;
    if (way === 0) {
      if (from <= low || from >= high) return false;
      continue;
    }
    const [first, last] = way > 0 ? [low, high] : [high, low];
    begin = Math.max(begin, (first - from) / way);
    end = Math.min(end, (last - from) / way);
    if (begin >= end) return false;
  }
  return true;
}

function crosses(s: Segment, t: Segment): boolean {
  const side = ({ a, b }: Segment, p: Point) => Math.sign((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));
  return side(s, t.a) * side(s, t.b) <= 0 && side(t, s.a) * side(t, s.b) < 0;
}

/** Whether two segments lie side by side for a millimetre or more. */
function runsAlong(s: Segment, t: Segment): boolean {
  const [dx, dy] = [s.b.x - s.a.x, s.b.y - s.a.y];
  const long = Math.sqrt(dx * dx + dy * dy);
  const off = ({ x, y }: Point) => ((x - s.a.x) * dy - (y - s.a.y) * dx) / long;
  const way = ({ x, y }: Point) => ((x - s.a.x) * dx + (y - s.a.y) * dy) / long;
  const [va, vb, ua, ub] = [off(t.a), off(t.b), way(t.a), way(t.b)];
  // the stretch of t beside s, and where it is nearest
  const [low, high] = [Math.max(0, Math.min(ua, ub)), Math.min(long, Math.max(ua, ub))];
  if (high - low < 1) return false;
  const at = (u: number) => va + ((u - ua) / (ub - ua)) * (vb - va);
  return Math.abs(at(low)) < BESIDE && Math.abs(at(high)) < BESIDE;
}

interface LookUp<T> {
  readonly add: (patch: Patch, what: T) => void;
  readonly some: (patch: Patch, is: (what: T) => boolean) => boolean;
  /** How many are so; each once. */
  readonly count: (patch: Patch, is: (what: T) => boolean) => number;
}

/** Finds what lies near a patch without looking at everything. */
function lookUp<T>(): LookUp<T> {
  const squares = new Map<number, T[]>();
  const visit = ({ left, top, right, bottom }: Patch, each: (key: number) => boolean): boolean => {
    for (let row = Math.floor(top / SQUARE); row <= Math.floor(bottom / SQUARE); row++)
      for (let column = Math.floor(left / SQUARE); column <= Math.floor(right / SQUARE); column++)
        if (each(row * 4096 + column)) return true;
    return false;
  };
  return {
    add: (patch, what) => {
      visit(patch, (key) => {
        const there = squares.get(key);
        if (there === undefined) squares.set(key, [what]);
        else there.push(what);
        return false;
      });
    },
    some: (patch, is) => visit(patch, (key) => squares.get(key)?.some(is) ?? false),
    count: (patch, is) => {
      const found = new Set<T>();
      visit(patch, (key) => {
        for (const what of squares.get(key) ?? []) if (is(what)) found.add(what);
        return false;
      });
      return found.size;
    },
  };
}
