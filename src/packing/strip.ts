import { type Random, seeded } from './random.js';
import type { Search } from './search.js';
import { clearSkyline, emptySkyline } from './skyline.js';
import { type Beginnings, type Field, fillField, type Guide, roomForBeginnings } from './strip-beam.js';
import { fill, largeFirst, outline } from './strip-fill.js';
import {
  copyLaid,
  type Laid,
  NEVER,
  nothingLaid,
  overDiagonal,
  type Pieces,
  packingOf,
  piecesOf,
  type StripPacking,
  type StripProblem,
  topOf,
} from './strip-pieces.js';

export type { StripPacking, StripProblem } from './strip-pieces.js';

/** The lowest packing found so far. */
interface Best {
  height: number;
  readonly laid: Laid;
}

/** One turn in so many is the search over orders': it is the quicker one at first, and soon stands still. */
const TURNS = 8;

/**
 * Packs rectangles into a strip as low as can be. Two searches take turns: one over the order of the pieces, which soon
 * comes near the best, and one that fills the strip up to a height that is wanted and finds what has little waste or
 * none. It ends when the packing is as low as the area or the shapes of the pieces allow.
 *
 * Each item must fit the width of the strip, turned where it may be.
 */
export function* searchStrip(problem: StripProblem, seed: number): Search<StripPacking> {
  const pieces = piecesOf(problem);
  const random = seeded(seed);
  const best: Best = { height: Infinity, laid: nothingLaid(pieces.total) };
  const byOrder = searchOrders(pieces, best, random);
  const byHeight = searchHeights(pieces, problem.turns, best, random);
  byOrder.next();
  let { height } = best;
  let found = packingOf(problem, pieces, best.laid);
  for (let turn = 0; best.height > pieces.least; turn++) {
    yield found;
    (turn % TURNS === TURNS - 1 || pieces.total > MOST_PIECES ? byOrder : byHeight).next();
    if (best.height === height) continue;
    height = best.height;
    found = packingOf(problem, pieces, best.laid);
  }
  return found;
}

/** A list as long as this is left to the search over orders: the other one counts pieces in 16 bits. */
const MOST_PIECES = 65_535;

/** Keeps a packing if it is the lowest; returns its height. */
function offer(best: Best, laid: Laid): number {
  const height = topOf(laid);
  if (height < best.height) {
    best.height = height;
    copyLaid(laid, best.laid);
  }
  return height;
}

/** Looks at an option after which the search pauses: a millisecond or two. */
const PAUSE = 200_000;

/** Changes over which of two options comes first, and keeps that where the packing becomes no higher. Has no end. */
function* searchOrders(pieces: Pieces, best: Best, random: Random): Generator<void, void, void> {
  const sky = emptySkyline(pieces.width, pieces.total + 1);
  const laid = nothingLaid(pieces.total);
  const rank = largeFirst(pieces.options);
  const pack = (): number => {
    clearSkyline(sky);
    laid.size = 0;
    fill(pieces, rank, sky, pieces.counts.slice(), laid);
    return offer(best, laid);
  };
  let current = pack();
  const ways = [...rank.keys()].filter((option) => pieces.options.width[option] !== NEVER);
  yield;
  for (let work = 0; ; work += pieces.total * (rank.length + 10)) {
    if (work > PAUSE) {
      work = 0;
      yield;
    }
    const one = ways[Math.floor(random() * ways.length)] as number;
    const other = ways[Math.floor(random() * ways.length)] as number;
    changeOver(rank, one, other);
    const height = pack();
    if (height <= current) current = height;
    else changeOver(rank, one, other);
  }
}

function changeOver(rank: Int32Array, one: number, other: number): void {
  const kept = rank[one] as number;
  rank[one] = rank[other] as number;
  rank[other] = kept;
}

/** Beginnings held at once: as many as take some tens of megabytes at most. */
const mostBreadth = (total: number): number => Math.min(16384, Math.max(16, Math.floor(2e6 / total)));

/** Heights tried with the same breadth. */
const HEIGHTS = 4;

/**
 * Tries to fill the strip up to a height that is wanted: first the least that is not known to be impossible, then
 * always half-way from where it failed to the best, then the same with twice the breadth. Has no end.
 */
function* searchHeights(pieces: Pieces, turns: boolean, best: Best, random: Random): Generator<void, void, void> {
  const laid = nothingLaid(pieces.total);
  const complete = completion(pieces);
  const widest = mostBreadth(pieces.total);
  let room: Beginnings | undefined;
  for (let breadth = 2; ; breadth = Math.min(widest, 2 * breadth)) {
    yield;
    if (room === undefined || breadth > room.most) room = roomForBeginnings(pieces, Math.min(widest, 8 * breadth));
    let target = pieces.least;
    for (let attempt = 0; attempt < HEIGHTS && target < best.height; attempt++) {
      // the shorter the front along which pieces are laid, the sooner it shows what does not fit
      const lying = turns && target < pieces.width;
      const field: Field = {
        width: lying ? target : pieces.width,
        height: lying ? pieces.width : target,
        options: pieces.options,
        counts: pieces.counts,
        total: pieces.total,
        area: pieces.area,
      };
      const filled = yield* fillField(field, someGuide(attempt, random), { breadth, room, laid });
      const upright = lying ? overDiagonal(laid) : laid;
      if (!filled) complete(upright);
      offer(best, upright);
      const failed = filled ? pieces.least : target;
      target = Math.min(best.height - 1, Math.floor((failed + best.height) / 2));
      if (target <= failed) break;
    }
  }
}

/** Figures that did well on average; no ones do on all lists, so that they differ from attempt to attempt. */
const someGuide = (attempt: number, random: Random): Guide => ({
  level: 0.25 * (0.5 + random()),
  largeness: 0.3 * (0.5 + random()),
  skips: attempt % 2,
});

/** Lays what a packing lacks on top of what it has. */
function completion(pieces: Pieces): (laid: Laid) => void {
  const sky = emptySkyline(pieces.width, pieces.total + 1);
  const rank = largeFirst(pieces.options);
  return (laid) => {
    const left = pieces.counts.slice();
    for (const kind of laid.kind.subarray(0, laid.size)) left[kind] = (left[kind] as number) - 1;
    outline(sky, laid);
    fill(pieces, rank, sky, left, laid);
  };
}
