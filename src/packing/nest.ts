import { copyFilling, type Filling, filler, type Manner, noFilling, priceOf, RULES } from './fill.js';
import { clipped, type Ground, groundOf, ringArea } from './ground.js';
import { layoutOf } from './layout-of.js';
import { bigFirst, shuffler, startingOrder } from './order.js';
import { type Piece, piecesOf } from './pieces.js';
import { cheaperPlans, costOf, firstPlan, inOrder, mostOffcut, type Plan, withAll } from './plan.js';
import { type Random, seeded } from './random.js';
import type { Search } from './search.js';
import type { Bed, Blank, Layout } from './shapes.js';
import { snugPieces } from './snug.js';

export interface NestGiven {
  readonly blanks: readonly Blank[];
  readonly beds: readonly Bed[];
  /** Least distance between the material of two pieces, mm. */
  readonly spacing: number;
  /** A piece of each blank, where these were looked at before: see `knownPieces`. */
  readonly known?: readonly Piece[];
}

/** Places that are looked at in one step: some two milliseconds. */
const STEP = 120_000;
/** Fillings of one round of annealing, of the first and of the longest. */
const SHORT_ROUND = 1000;
const LONG_ROUND = 4000;
const LONGER = 1.2;
/** By so much worse is put up with at the beginning of a round, in sheets. */
const HEAT = 0.03;
/** What pieces on the last sheet count where strips are equally long. */
const TIE = 1e-3;
/** A tie for the search, in sheets. */
const GAIN = 1e-9;
/** How often a round begins with the strip on the other side, and how often a rule is changed for another. */
const OTHER_SIDE = 0.5;
const OTHER_RULE = 0.1;
/** By how much the last sheet is cut shorter than the best strip needs, at most, as a share of it. */
const SHORTER = 0.01;

/**
 * Lays pieces on sheets, in windows of others too: least cost of sheets first, then the largest offcut of one sheet.
 * What no bed takes is left out.
 *
 * Pieces are put one by one where a rule likes them best (`filler`); what is searched for is their order, by annealing
 * in rounds. The last sheet is filled from one side with what the others leave, and the strip that this takes is to be
 * as short as can be; where nothing is left for it a sheet is saved. Other rounds cut the last sheet shorter than that,
 * or take cheaper sheets, fill all alike, and bring down what finds no place.
 */
export function* searchNest(given: NestGiven, seed: number): Search<Layout> {
  const { blanks, beds, spacing, known } = given;
  const unfit = known === undefined ? piecesOf(blanks, spacing) : ofEach(known, blanks);
  if (unfit.length === 0 || beds.length === 0) return { sheets: [], offcut: null };
  const grounds = beds.map((bed) => groundOf(bed, unfit));
  const filling = noFilling(unfit.length);
  const first = startingOrder(unfit);
  const start: Manner = { rule: 0, windowRule: 0, last: 'left' };
  const firstTaken = firstPlan(grounds, fillerOf(unfit, first, start));
  let best = found(firstTaken, first, start, unfit);
  // where no bed takes any of them there is nothing to search for
  if (best.plan.length === 0) return best.layout;
  yield best.layout;

  // which pieces fit into round windows takes a while to find out
  let pieces = unfit;
  if (known === undefined) {
    const snug = snugPieces(unfit, blanks, spacing);
    let looked = snug.next();
    for (; looked.done !== true; looked = snug.next()) yield best.layout;
    pieces = looked.value;
  }
  const need = needOf(pieces, blanks);
  const lost = lostOf(pieces);
  const random = seeded(seed);
  const fill = filler(pieces, spacing);
  const shuffle = shuffler(pieces, random);
  best = { ...best, order: bigFirst(best.order, pieces) };
  const order = best.order.slice();
  const changed = order.slice();
  const kept = noFilling(pieces.length);
  let work = 0;
  let tried = 0;
  let length = SHORT_ROUND;
  for (let round = 0; ; round++) {
    const isWhole = best.left <= lost;
    const cheaper = isWhole ? cheaperPlans(grounds, best.cost, need) : [];
    const limit = mostOffcut(best.plan, grounds, { pieces, need, spacing });
    if (isWhole && cheaper.length === 0 && best.offcut >= limit - GAIN * limit) return best.layout;
    const goal = isWhole ? goalOf(round, cheaper.length > 0) : 'strip';
    if (goal === 'strip') yield* anneal(isWhole ? best.plan : withAll(best.plan, grounds, pieces.length), goal);
    else if (goal === 'shorter') yield* anneal(best.plan, goal);
    else yield* anneal(cheaper[tried++ % cheaper.length] as Plan, goal);
    length = Math.min(LONG_ROUND, Math.ceil(length * LONGER));
  }

  /** One round, from the best order so far; it ends where another plan has become the best. */
  function* anneal(plan: Plan, goal: Goal): Generator<Layout, void, void> {
    const taken = plan.map((n) => grounds[n] as Ground);
    if (goal === 'shorter') taken.push(cutShort(taken.pop() as Ground, best.offcut, spacing, random));
    const last = taken[taken.length - 1] as Ground;
    const before = best.plan;
    let manner: Manner = goal === 'strip' ? onSomeSide(best.manner, random) : { ...best.manner, last: 'alike' };
    let current = Infinity;
    let least = plan === best.plan && goal === 'strip' ? best.score : Infinity;
    order.set(best.order);
    for (let i = 0; i < length && best.plan === before; i++) {
      changed.set(order);
      if (i > 0) shuffle(changed, kept, plan.length);
      const next = i > 0 ? byOtherRule(manner, random) : manner;
      // an exponential chance would be usual; its logarithm need not be the same on every machine
      const patience = HEAT * (1 - i / length) ** 2 * 3 * random() ** 2;
      if (fill(changed, taken, next, filling, current + patience)) {
        current = priceOf(filling, last);
        order.set(changed);
        manner = next;
        copyFilling(filling, kept);
        const plain = plainOf(filling, last);
        if (filling.left <= best.left && plain < least - GAIN) {
          least = plain;
          const other = found(plan, changed, next, pieces);
          if (isBetter(other, best)) best = other;
        }
      }
      work += filling.work;
      if (work < STEP) continue;
      work = 0;
      yield best.layout;
    }
  }

  /** Area of the pieces that no bed takes even alone. */
  function lostOf(pieces: readonly Piece[]): number {
    const out = pieces.flatMap((_, n) => ((filling.stance[n] as number) < 0 ? [n] : []));
    const alone = filler(pieces, spacing);
    const fits = (n: number) =>
      grounds.some((ground) => {
        alone([n], [ground], start, filling);
        return filling.left === 0;
      });
    return out.reduce((sum, n) => (fits(n) ? sum : sum + (pieces[n] as Piece).area), 0);
  }

  /** Fills the sheets of a plan in a fixed order and tells what is left over. */
  function fillerOf(pieces: readonly Piece[], order: Int32Array, manner: Manner): (plan: Plan) => number {
    const fill = filler(pieces, spacing);
    return (plan) => {
      fill(
        order,
        plan.map((n) => grounds[n] as Ground),
        manner,
        filling,
      );
      return filling.left;
    };
  }

  /** The filling in hand, written out. */
  function found(plan: Plan, order: Int32Array, manner: Manner, pieces: readonly Piece[]): Found {
    const layout = layoutOf(plan, filling, { pieces, beds, spacing });
    // what is left empty is not bought
    const used = inOrder(
      layout.sheets.map(({ bed }) => bed),
      grounds,
    );
    const isWhole = used.length === plan.length && manner.last !== 'alike';
    return {
      layout,
      plan: isWhole ? plan : used,
      order: order.slice(),
      manner: manner.last === 'alike' ? { ...manner, last: 'left' } : manner,
      score: isWhole ? plainOf(filling, grounds[plan[plan.length - 1] as number] as Ground) : Infinity,
      left: filling.left,
      cost: costOf(used, grounds),
      offcut: sizeOf(layout),
    };
  }
}

/**
 * What takes a while to find out of blanks that are packed again and again: in how many ways each lies, and what fits into
 * whose windows.
 */
export function* knownPieces({ blanks, spacing }: NestGiven): Generator<void, readonly Piece[], void> {
  const single = blanks.map((blank) => ({ ...blank, count: 1 }));
  return yield* snugPieces(piecesOf(single, spacing), single, spacing);
}

const ofEach = (known: readonly Piece[], blanks: readonly Blank[]): readonly Piece[] =>
  blanks.flatMap(({ count }, n) => {
    const piece = known[n] as Piece;
    return Array.from({ length: count }, () => piece);
  });

/** The best layout so far, and how it was come by. */
interface Found {
  readonly layout: Layout;
  readonly plan: Plan;
  readonly order: Int32Array;
  readonly manner: Manner;
  /** As the search scores fillings of its plan; Infinity where it was found on another one. */
  readonly score: number;
  /** Area of pieces that found no place, cost of the sheets, size of the offcut. */
  readonly left: number;
  readonly cost: number;
  readonly offcut: number;
}

function isBetter(one: Found, other: Found): boolean {
  if (one.left !== other.left) return one.left < other.left;
  if (Math.abs(one.cost - other.cost) > GAIN) return one.cost < other.cost;
  if (Math.abs(one.offcut - other.offcut) > GAIN) return one.offcut > other.offcut;
  return one.score < other.score;
}

/** In sheets: the strip that is taken of the last one, what lies nowhere, and what lies on the last where these are the same. */
function plainOf({ left, reach, onLast }: Filling, { area }: Ground): number {
  return reach + (TIE * onLast) / area + (left > 0 ? 1 + left / area : 0);
}

/**
 * What a round is for: a shorter strip on the last sheet by how the rest is filled, all pieces on sheets of which the
 * last is cut shorter than the best strip, or all pieces on cheaper sheets.
 */
type Goal = 'strip' | 'shorter' | 'cheaper';

function goalOf(round: number, canBeCheaper: boolean): Goal {
  if (round % 2 === 1) return 'shorter';
  return round % 4 === 2 && canBeCheaper ? 'cheaper' : 'strip';
}

/** A bed without the strip that would be a little more than the best offcut, on one side or the other. */
function cutShort(ground: Ground, offcut: number, spacing: number, random: Random): Ground {
  const { left, bottom, right, top } = ground.box;
  const [width, height] = [right - left, top - bottom];
  const less = SHORTER * random() ** 2;
  const isUpright = random() < 0.5;
  return clipped(ground, {
    right: isUpright ? right - spacing - offcut / height - less * width : right,
    top: isUpright ? top : top - spacing - offcut / width - less * height,
  });
}

function onSomeSide(manner: Manner, random: Random): Manner {
  if (random() >= OTHER_SIDE) return manner;
  return { ...manner, last: manner.last === 'left' ? 'low' : 'left' };
}

function byOtherRule(manner: Manner, random: Random): Manner {
  const other = () => Math.floor(random() * RULES);
  if (random() < OTHER_RULE) return { ...manner, rule: other() };
  return random() < OTHER_RULE ? { ...manner, windowRule: other() } : manner;
}

const sizeOf = ({ offcut }: Layout): number =>
  offcut === null ? 0 : (offcut.right - offcut.left) * (offcut.top - offcut.bottom);

/** Area that the material of the pieces takes at the least. */
const needOf = (pieces: readonly Piece[], blanks: readonly Blank[]): number => {
  const net = blanks.map(({ outline, windows }) => windows.reduce((rest, w) => rest - ringArea(w), ringArea(outline)));
  return pieces.reduce((sum, { blank }) => sum + (net[blank] as number), 0);
};
