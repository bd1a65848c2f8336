import { clearShortlist, emptyShortlist, type Shortlist, take, threshold } from './shortlist.js';
import {
  emptySkyline,
  leftWall,
  levelWidth,
  lift,
  liftLeft,
  narrowestGap,
  rightWall,
  type Skyline,
  WALL,
} from './skyline.js';
import { type Laid, lay, type Options } from './strip-pieces.js';

/** A rectangle to be filled, and what with. Pieces may be left over in the end; the area of all is known. */
export interface Field {
  readonly width: number;
  readonly height: number;
  readonly options: Options;
  readonly counts: Int32Array;
  readonly total: number;
  readonly area: number;
}

/** What makes one beginning better than another with as many pieces, in pieces of mean area. */
export interface Guide {
  /** Cost of a level in the skyline: the more there are, the harder they are to fill. */
  readonly level: number;
  /** Large pieces are laid first: one that is so many times as large as the mean is worth that to this power. */
  readonly largeness: number;
  /** How often a gap that could be filled may be left empty before a piece. */
  readonly skips: number;
}

/**
 * The beginnings of packings that are held at once, in two halves: those that are gone on from, and those that come of
 * them. A beginning is a skyline, what is left of each kind, the area that is lost for good, and the way to it.
 */
export interface Beginnings {
  readonly most: number;
  readonly levels: number;
  readonly kinds: number;
  readonly skyX: Int32Array;
  readonly skyY: Int32Array;
  readonly skySize: Int32Array;
  readonly left: Uint16Array;
  readonly lost: Float64Array;
  readonly worth: Float64Array;
  /** Sum of marks of the pieces that are laid, whatever their order. */
  readonly mark: Int32Array;
  /** The last step on the way to it: index into what follows. */
  readonly last: Int32Array;
  readonly stepBefore: Int32Array;
  readonly stepOption: Int32Array;
  readonly stepX: Int32Array;
  readonly stepY: Int32Array;
  steps: number;
  readonly shortlist: Shortlist;
}

/** More levels than this and a beginning is given up. It is rare: gaps too narrow for a piece are closed at once. */
const MOST_LEVELS = 250;

export function roomForBeginnings({ counts, total }: Pick<Field, 'counts' | 'total'>, most: number): Beginnings {
  const levels = Math.min(total + 1, MOST_LEVELS);
  const kinds = counts.length;
  return {
    most,
    levels,
    kinds,
    skyX: new Int32Array(2 * most * levels),
    skyY: new Int32Array(2 * most * levels),
    skySize: new Int32Array(2 * most),
    left: new Uint16Array(2 * most * kinds),
    lost: new Float64Array(2 * most),
    worth: new Float64Array(2 * most),
    mark: new Int32Array(2 * most),
    last: new Int32Array(2 * most),
    stepBefore: new Int32Array(most * total),
    stepOption: new Int32Array(most * total),
    stepX: new Int32Array(most * total),
    stepY: new Int32Array(most * total),
    steps: 0,
    shortlist: emptyShortlist(most),
  };
}

/** Bits of a move that say how many gaps are skipped before the piece is laid. */
const SKIP_BITS = 2;

/** How many lengths are told apart when it is asked whether a piece is as wide as a gap; a power of two. */
const WIDTHS = 4096;

/** Work after which the search pauses, in looks at an option: a millisecond or two. */
const PAUSE = 250_000;

interface Run {
  readonly field: Field;
  readonly at: Beginnings;
  readonly guide: Guide;
  readonly slack: number;
  readonly lossCost: number;
  /** Nothing fits into less height than this. */
  readonly lowest: number;
  readonly worthOf: Float64Array;
  readonly sky: Skyline;
  /** The options that are left and fit a gap. */
  readonly fitting: Int32Array;
  /** For each width the last beginning that had a piece of it left. */
  readonly widthStamp: Int32Array;
  stamp: number;
  work: number;
}

/**
 * Fills a rectangle by going on from many beginnings at once, piece by piece, and keeping the best `breadth` of what
 * comes of them (beam search). Each piece lies at the left of the narrowest gap in the skyline, where the choice is
 * smallest; what can be seen to stay empty is lost, and a beginning that has lost more than the rectangle has to spare
 * is given up. So a packing without waste is found where the breadth is sufficient.
 *
 * @returns whether everything was laid; `laid` holds that, or the most promising of the last beginnings
 */
export function* fillField(
  field: Field,
  guide: Guide,
  given: { readonly breadth: number; readonly room: Beginnings; readonly laid: Laid },
): Generator<void, boolean, void> {
  const { room: at, laid, breadth } = given;
  const slack = field.width * field.height - field.area;
  const mean = field.area / field.total;
  const run: Run = {
    field,
    at,
    guide,
    slack,
    lossCost: 1 / mean,
    lowest: field.options.height.reduce((least, height) => (height > 0 ? Math.min(least, height) : least), WALL),
    worthOf: Float64Array.from(
      field.options.width,
      (width, option) => ((width * (field.options.height[option] as number)) / mean) ** guide.largeness,
    ),
    sky: emptySkyline(field.width, at.levels + 1),
    fitting: new Int32Array(field.options.width.length),
    widthStamp: new Int32Array(WIDTHS),
    stamp: 0,
    work: 0,
  };
  let [here, there] = [0, at.most];
  let size = slack < 0 ? 0 : 1;
  start(run);
  for (let piece = 0; piece < field.total && size > 0; piece++) {
    clearShortlist(at.shortlist, breadth);
    // the last of the heap are the best: with those first, most of what follows need not be looked at closely
    for (let node = here + size - 1; node >= here; node--) {
      goOnFrom(run, node);
      if (run.work > PAUSE) {
        run.work = 0;
        yield;
      }
    }
    let next = 0;
    for (let child = 0; child < at.shortlist.size; child++) {
      if (makeChild(run, child, there + next, piece + 1 === field.total)) next++;
      if (run.work > PAUSE) {
        run.work = 0;
        yield;
      }
    }
    if (next === 0) {
      trace(run, mostPromising(run, here, size), laid);
      return false;
    }
    size = next;
    [here, there] = [there, here];
  }
  if (size === 0) {
    laid.size = 0;
    return false;
  }
  trace(run, here, laid);
  return true;
}

function start({ field, at }: Run): void {
  at.skyX[0] = 0;
  at.skyY[0] = 0;
  at.skySize[0] = 1;
  at.left.set(field.counts);
  at.lost[0] = 0;
  at.worth[0] = 0;
  at.mark[0] = 0;
  at.last[0] = -1;
  at.steps = 0;
}

function loadSkyline(at: Beginnings, node: number, sky: Skyline): void {
  const base = node * at.levels;
  const size = at.skySize[node] as number;
  for (let i = 0; i < size; i++) {
    sky.x[i] = at.skyX[base + i] as number;
    sky.y[i] = at.skyY[base + i] as number;
  }
  sky.size = size;
}

/** Two numbers hashed to 32 bits. */
function hash(a: number, b: number): number {
  const mixed = Math.imul(a, 0x9e3779b1) ^ Math.imul(b + 0x7f4a7c15, 0x85ebca6b);
  const more = Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d);
  return more ^ (more >>> 13);
}

/** The mark of one piece of a kind; negative, where levels have their x. */
const pieceMark = (kind: number): number => hash(-7 - kind, 0);

/** Offers to the shortlist what may come next of a beginning. */
function goOnFrom(run: Run, node: number): void {
  const { at, guide, sky, field, fitting, worthOf, slack } = run;
  const { left, shortlist } = at;
  const { width: widths, height: heights } = field.options;
  loadSkyline(at, node, sky);
  const leftAt = node * at.kinds;
  let first = 0;
  while (left[leftAt + first] === 0) first++;
  const narrowest = widths[2 * first] as number;
  let lost = at.lost[node] as number;
  const worth = at.worth[node] as number;
  for (let skips = 0; ; skips++) {
    const gapAt = narrowestGap(sky);
    const gap = levelWidth(sky, gapAt);
    const start = sky.x[gapAt] as number;
    const floor = sky.y[gapAt] as number;
    const onLeft = leftWall(sky, gapAt);
    const onRight = rightWall(sky, gapAt);
    const stamp = ++run.stamp;
    let fit = 0;
    let kind = first;
    for (; kind < at.kinds; kind++) {
      const narrow = widths[2 * kind] as number;
      if (narrow > gap) break;
      if (left[leftAt + kind] === 0) continue;
      fitting[fit++] = 2 * kind;
      run.widthStamp[narrow & (WIDTHS - 1)] = stamp;
      const wide = widths[2 * kind + 1] as number;
      if (wide > gap) continue;
      fitting[fit++] = 2 * kind + 1;
      run.widthStamp[wide & (WIDTHS - 1)] = stamp;
    }
    // two beginnings with the same skyline and the same pieces left are the same, whatever came first
    let mark = at.mark[node] as number;
    for (let i = 0; i < sky.size; i++)
      if (i !== gapAt) mark = (mark + hash(sky.x[i] as number, sky.y[i] as number)) | 0;
    run.work += 30 + 2 * sky.size + kind + 2 * fit;
    // no piece takes away more than two levels: most are too small to be shortlisted, however well they fit
    const atBest = guide.level * (sky.size - 2) + run.lossCost * lost - worth;
    let mustBeat = threshold(shortlist);
    for (let i = 0; i < fit; i++) {
      const option = fitting[i] as number;
      const gain = worthOf[option] as number;
      if (atBest - gain >= mustBeat) continue;
      const width = widths[option] as number;
      const top = floor + (heights[option] as number);
      if (top > field.height) continue;
      const rest = gap - width;
      let levels = sky.size;
      let loss = lost;
      let misfit = 0;
      if (top === onLeft) levels--;
      if (rest === 0) {
        if (top === onRight) levels--;
      } else if (rest < narrowest) {
        loss += rest * (Math.min(top, onRight) - floor);
      } else {
        levels++;
        if (run.widthStamp[rest & (WIDTHS - 1)] !== stamp) misfit = MISFIT;
      }
      if (field.height - top < run.lowest) loss += width * (field.height - top);
      if (loss > slack) continue;
      const key = guide.level * levels + run.lossCost * loss + misfit - worth - gain;
      if (key >= mustBeat) continue;
      let childMark = (mark + pieceMark(option >> 1)) | 0;
      if (top !== onLeft) childMark = (childMark + hash(start, top)) | 0;
      if (rest > 0) childMark = (childMark + hash(start + width, floor)) | 0;
      else if (top === onRight) childMark = (childMark - hash(start + gap, onRight)) | 0;
      take(shortlist, key, node, (option << SKIP_BITS) | skips, childMark);
      mustBeat = threshold(shortlist);
      run.work += 5;
    }
    if (skips === guide.skips) return;
    const wall = Math.min(onLeft, onRight);
    if (wall === WALL) return;
    lost += gap * (wall - floor);
    if (lost > slack) return;
    lift(sky, gapAt, wall);
  }
}

/** Cost of what is left of a gap where no single piece is as wide. */
const MISFIT = 0.1;

/** Makes of a shortlisted child a beginning of its own; false where that can be seen to fail. */
function makeChild(run: Run, child: number, slot: number, isLast: boolean): boolean {
  const { at, sky, field, slack } = run;
  const node = at.shortlist.from[child] as number;
  const move = at.shortlist.move[child] as number;
  const option = move >> SKIP_BITS;
  loadSkyline(at, node, sky);
  let lost = at.lost[node] as number;
  let gap = narrowestGap(sky);
  for (let skips = move & ((1 << SKIP_BITS) - 1); skips > 0; skips--) {
    lost += closeGap(sky, gap, field.height);
    gap = narrowestGap(sky);
  }
  const x = sky.x[gap] as number;
  const y = sky.y[gap] as number;
  const width = field.options.width[option] as number;
  const top = y + (field.options.height[option] as number);
  if (width === levelWidth(sky, gap)) lift(sky, gap, top);
  else liftLeft(sky, gap, width, top);
  const kind = option >> 1;
  const leftAt = slot * at.kinds;
  at.left.copyWithin(leftAt, node * at.kinds, (node + 1) * at.kinds);
  at.left[leftAt + kind] = (at.left[leftAt + kind] as number) - 1;
  if (!isLast)
    for (gap = narrowestGap(sky); !canBeFilled(run, gap, leftAt); gap = narrowestGap(sky)) {
      const loss = closeGap(sky, gap, field.height);
      lost += loss;
      if (loss === 0 || lost > slack) return false;
    }
  if (sky.size > at.levels) return false;
  const base = slot * at.levels;
  for (let i = 0; i < sky.size; i++) {
    at.skyX[base + i] = sky.x[i] as number;
    at.skyY[base + i] = sky.y[i] as number;
  }
  at.skySize[slot] = sky.size;
  at.lost[slot] = lost;
  at.worth[slot] = (at.worth[node] as number) + (run.worthOf[option] as number);
  at.mark[slot] = ((at.mark[node] as number) + pieceMark(kind)) | 0;
  at.last[slot] = at.steps;
  at.stepBefore[at.steps] = at.last[node] as number;
  at.stepOption[at.steps] = option;
  at.stepX[at.steps] = x;
  at.stepY[at.steps] = y;
  at.steps++;
  run.work += 40 + 3 * sky.size + (at.kinds >> 3);
  return true;
}

/** Gives up a gap: lifts it to the lower of its walls, or to the top of the field, and returns the area that is lost. */
function closeGap(sky: Skyline, gap: number, top: number): number {
  const wall = Math.min(leftWall(sky, gap), rightWall(sky, gap), top);
  const loss = levelWidth(sky, gap) * (wall - (sky.y[gap] as number));
  lift(sky, gap, wall);
  return loss;
}

/** Whether any piece that is left fits a gap. */
function canBeFilled({ at, sky, field }: Run, gap: number, leftAt: number): boolean {
  const { width, height } = field.options;
  const across = levelWidth(sky, gap);
  const up = field.height - (sky.y[gap] as number);
  for (let kind = 0; kind < at.kinds && (width[2 * kind] as number) <= across; kind++) {
    if (at.left[leftAt + kind] === 0) continue;
    if ((height[2 * kind] as number) <= up) return true;
    if ((width[2 * kind + 1] as number) <= across && (height[2 * kind + 1] as number) <= up) return true;
  }
  return false;
}

function mostPromising({ at, guide, lossCost }: Run, from: number, size: number): number {
  let best = from;
  let bestKey = Infinity;
  for (let node = from; node < from + size; node++) {
    const key =
      guide.level * (at.skySize[node] as number) + lossCost * (at.lost[node] as number) - (at.worth[node] as number);
    if (key >= bestKey) continue;
    best = node;
    bestKey = key;
  }
  return best;
}

/** Writes down the pieces of a beginning, the first that was laid first. */
function trace({ at, field }: Run, node: number, laid: Laid): void {
  const way: number[] = [];
  for (let step = at.last[node] as number; step >= 0; step = at.stepBefore[step] as number) way.push(step);
  laid.size = 0;
  for (const step of way.reverse())
    lay(laid, field.options, at.stepOption[step] as number, at.stepX[step] as number, at.stepY[step] as number);
}
