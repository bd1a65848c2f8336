import { copyFilling, type Filling, filler, type Manner, noFilling, priceOf, RULES } from './fill.js';
import { type Ground, groundOf, ringArea } from './ground.js';
import { layoutOf } from './layout-of.js';
import { bigFirst, shuffler, startingOrder } from './order.js';
import { type Piece, piecesOf } from './pieces.js';
import { cheaperPlans, costOf, firstPlan, inOrder, mostOffcut, type Plan } from './plan.js';
import { type Random, seeded } from './random.js';
import type { Search } from './search.js';
import type { Bed, Blank, Layout } from './shapes.js';
import { snugPieces } from './snug.js';

export interface NestGiven {
  readonly blanks: readonly Blank[];
  readonly beds: readonly Bed[];
  /** Least distance between the material of two pieces, mm. */
  readonly spacing: number;
}

/** Places that are looked at in one step: some two milliseconds. */
const STEP = 120_000;
/** Fillings of one round of annealing, of the first and of the longest. */
const SHORT_ROUND = 1000;
const LONG_ROUND = 4000;
const LONGER = 1.2;
/** By so much worse is put up with at the beginning of a round, in sheets. */
const HEAT = 0.02;
/** What pieces on the last sheet count where strips are equally long. */
const TIE = 1e-3;
/** A tie for the search, in sheets. */
const GAIN = 1e-9;
/** How often a round begins with the strip on the other side, and how often a rule is changed for another. */
const OTHER_SIDE = 0.5;
const OTHER_RULE = 0.05;
/** One round in so many tries to do with cheaper sheets, where there may be such. */
const SAVING = 3;

/**
 * Lays pieces on sheets, in windows of others too: least cost of sheets first, then the largest offcut of one sheet.
 * What no bed takes is left out.
 *
 * Pieces are put one by one where a rule likes them best (`filler`); what is searched for is their order, by annealing
 * in rounds. The last sheet is filled from one side with what the others leave, and the strip that this takes is to be
 * as short as can be; where nothing is left for it a sheet is saved. Some rounds try outright to lay all on cheaper
 * sheets.
 */
export function* searchNest(given: NestGiven, seed: number): Search<Layout> {
  const { blanks, beds, spacing } = given;
  const unfit = piecesOf(blanks, spacing);
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
  const snug = snugPieces(unfit, blanks, spacing);
  let looked = snug.next();
  for (; looked.done !== true; looked = snug.next()) yield best.layout;
  const pieces = looked.value;
  const need = needOf(pieces, blanks);
  const random = seeded(seed);
  const fill = filler(pieces, spacing);
  const shuffle = shuffler(pieces, random);
  const order = bigFirst(best.order, pieces);
  best = { ...best, order: order.slice() };
  const changed = order.slice();
  const kept = noFilling(pieces.length);
  let work = 0;
  let savings = 0;
  let length = SHORT_ROUND;
  for (let round = 0; ; round++) {
    const cheaper = best.left > 0 ? [] : cheaperPlans(grounds, best.cost, need);
    const limit = mostOffcut(best.plan, grounds, { pieces, need, spacing });
    if (best.left === 0 && cheaper.length === 0 && best.offcut >= limit) return best.layout;
    const saves = cheaper.length > 0 && round % SAVING === 2;
    const plan = saves ? (cheaper[savings++ % cheaper.length] as Plan) : best.plan;
    const taken = plan.map((n) => grounds[n] as Ground);
    let manner: Manner = saves ? { ...best.manner, last: 'alike' } : onSomeSide(best.manner, random);
    let current = Infinity;
    let least = saves ? Infinity : best.score;
    order.set(best.order);
    for (let i = 0; i < length && (saves || plan === best.plan); i++) {
      changed.set(order);
      let next = manner;
      if (i > 0) {
        shuffle(changed, kept, plan.length);
        next = byOtherRule(manner, random);
      }
      // an exponential chance would be usual; its logarithm need not be the same on every machine
      const patience = HEAT * (1 - i / length) ** 2 * 3 * random() ** 2;
      if (fill(changed, taken, next, filling, current + patience)) {
        current = priceOf(filling, taken[taken.length - 1] as Ground);
        order.set(changed);
        manner = next;
        copyFilling(filling, kept);
        const plain = plainOf(filling, taken);
        if (plain < least - GAIN) {
          least = plain;
          const other = found(plan, changed, next, pieces);
          if (isBetter(other, best)) best = other;
          if (saves && best === other) break;
        }
      }
      work += filling.work;
      if (work < STEP) continue;
      work = 0;
      yield best.layout;
    }
    length = Math.min(LONG_ROUND, Math.ceil(length * LONGER));
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
      score: isWhole
        ? plainOf(
            filling,
            plan.map((n) => grounds[n] as Ground),
          )
        : Infinity,
      left: filling.left,
      cost: costOf(used, grounds),
      offcut: sizeOf(layout),
    };
  }
}

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
function plainOf({ left, reach, onLast }: Filling, taken: readonly Ground[]): number {
  const { area } = taken[taken.length - 1] as Ground;
  return reach + (TIE * onLast) / area + (left > 0 ? 1 + left / area : 0);
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
