import { searchNest } from '../packing/nest.js';
import { after, type Search } from '../packing/search.js';
import type { Bed, Blank, Place } from '../packing/shapes.js';
import { bedsOf, isBought, type SheetStock } from './stock.js';

export interface PackGiven {
  /** Parts of one material. */
  readonly blanks: readonly Blank[];
  readonly stocks: readonly SheetStock[];
  readonly spacing: number;
  readonly margin: number;
  /** How long the search goes on: no clock, so that the same is found everywhere. */
  readonly steps: number;
  /** Told as the search goes on; done from 0 to 1. */
  readonly onStep?: (done: number) => void;
}

export interface FilledSheet {
  /** Index into the stocks. */
  readonly stock: number;
  /** At least one. */
  readonly places: readonly Place[];
}

/** A bed, and the stock that it is of. */
interface Ground extends Bed {
  readonly stock: number;
}

interface Filled {
  readonly ground: Ground;
  readonly places: readonly Place[];
}

/** Any would do, as long as it is the same each time. */
const SEED = 1;
/** Where something found no room, so many steps at least: some may find it yet. */
const LEAST_FOR_ALL = 40;
/** For the parts of one sheet that may do with a smaller one. */
const FOR_ONE = 8;
/** Of the dearest sheet: each has to be fetched and laid down, so of equal costs fewer sheets are wanted. */
const HANDLING = 0.01;
/** By which a smaller sheet is cheaper for its size than a larger one, so that of equals the smaller is used up. */
const SMALLER = 1e-6;

/**
 * Parts of one material onto what there is of it: as much as fits onto the sheets that are to be used first, the rest onto
 * the others. What finds no room anywhere is left out.
 */
export function packParts(given: PackGiven): readonly FilledSheet[] {
  const { blanks, stocks, onStep = () => {} } = given;
  const grounds = groundsOf(given);
  const isFirst = ({ stock }: Ground) => stocks[stock]?.first === true;
  const first = grounds.filter(isFirst);
  const others = grounds.filter((ground) => !isFirst(ground));
  if (first.length === 0) return joined(packedOn(others, given), stocks);
  const half = { ...given, steps: Math.ceil(given.steps / 2) };
  const begun = packedOn(first, { ...half, onStep: (done) => onStep(done / 2) });
  const left = blanks.map((blank, n) => ({ ...blank, count: blank.count - countOf(begun, n) }));
  const rest = packedOn(others, { ...half, blanks: left, onStep: (done) => onStep(0.5 + done / 2) });
  return joined([...begun, ...rest], stocks);
}

/**
 * Of several sizes that are bought the search is given the one by which the first layout costs least, or all of them, always
 * with all that lies at hand; then each sheet is changed for the cheapest that its parts fit too.
 */
function packedOn(grounds: readonly Ground[], given: PackGiven): readonly Filled[] {
  const { blanks, stocks } = given;
  if (blanks.every(({ count }) => count === 0)) return [];
  const dearest = Math.max(0, ...grounds.map(({ cost }) => cost));
  const price = (filled: readonly Filled[]) =>
    filled.reduce((sum, { ground }) => sum + ground.cost + HANDLING * dearest, 0);
  const [first, ...others] = choicesOf(stocks, grounds);
  const weighed = (beds: readonly Ground[]) => ({
    beds,
    first: onCheapest(search(beds, given).next().value, grounds, given),
  });
  // with one choice there is nothing to weigh
  const chosen =
    others.length === 0
      ? { beds: first }
      : [first, ...others].map(weighed).reduce((best, next) => {
          const [more, fewer] = [placed(next.first), placed(best.first)];
          return more > fewer || (more === fewer && price(next.first) < price(best.first)) ? next : best;
        });
  return onCheapest(found(chosen.beds, given), grounds, given);
}

/** Beds of all that there is, the cheapest first. */
const groundsOf = ({ stocks, margin }: PackGiven): readonly Ground[] =>
  stocks
    .flatMap((stock, n) => bedsOf(stock, margin).map((bed): Ground => ({ ...bed, stock: n })))
    .sort((a, b) => a.cost - b.cost)
    .map((ground, rank) => ({ ...ground, cost: ground.cost * (1 + rank * SMALLER) }));

const countOf = (filled: readonly Filled[], blank: number): number =>
  filled.reduce((sum, { places }) => sum + places.filter((place) => place.blank === blank).length, 0);

/** What is at hand with each size that is bought, and all together. */
function choicesOf(
  stocks: readonly SheetStock[],
  grounds: readonly Ground[],
): readonly [readonly Ground[], ...(readonly Ground[])[]] {
  const bought = [...new Set(grounds.map(({ stock }) => stock))].filter((n) => isBought(stocks[n] as SheetStock));
  if (bought.length < 2) return [grounds];
  const withOne = bought.map((n) => grounds.filter(({ stock }) => stock === n || !bought.includes(stock)));
  return [grounds, ...withOne];
}

function* search(beds: readonly Ground[], { blanks, spacing }: PackGiven): Search<readonly Filled[]> {
  const nest = searchNest({ blanks, beds, spacing }, SEED);
  for (;;) {
    const { done, value } = nest.next();
    const filled = value.sheets.map(({ bed, places }) => ({ ground: beds[bed] as Ground, places }));
    if (done) return filled;
    yield filled;
  }
}

const placed = (filled: readonly Filled[]): number => filled.reduce((sum, { places }) => sum + places.length, 0);

/** The first layout, and the better ones that are found in the steps that are given. */
function found(beds: readonly Ground[], given: PackGiven): readonly Filled[] {
  const wanted = given.blanks.reduce((sum, { count }) => sum + count, 0);
  const layouts = search(beds, given);
  let best = layouts.next();
  for (let step = 0; best.done !== true; step++) {
    const most = placed(best.value) === wanted ? given.steps : Math.max(given.steps, LEAST_FOR_ALL);
    if (step >= most) break;
    best = layouts.next();
    given.onStep?.((step + 1) / most);
  }
  return best.value;
}

/** Each sheet changed for the cheapest on which all that lies on it finds room. */
function onCheapest(filled: readonly Filled[], grounds: readonly Ground[], given: PackGiven): readonly Filled[] {
  const used = grounds.map((ground) => filled.filter((sheet) => sheet.ground === ground).length);
  return filled.map((sheet) => {
    const counts = given.blanks.map((_, n) => sheet.places.filter(({ blank }) => blank === n).length);
    const blanks = given.blanks.map((blank, n) => ({ ...blank, count: counts[n] as number }));
    for (const [n, ground] of grounds.entries()) {
      if (ground.cost >= sheet.ground.cost) break;
      if ((used[n] as number) >= ground.count) continue;
      const [smaller] = after(search([{ ...ground, count: 1 }], { ...given, blanks }), FOR_ONE);
      if (smaller === undefined || smaller.places.length < sheet.places.length) continue;
      used[n] = (used[n] as number) + 1;
      const freed = grounds.indexOf(sheet.ground);
      used[freed] = (used[freed] as number) - 1;
      return { ground, places: smaller.places };
    }
    return sheet;
  });
}

/** The beds of one remnant are one sheet after all. */
function joined(filled: readonly Filled[], stocks: readonly SheetStock[]): readonly FilledSheet[] {
  const sheets: FilledSheet[] = [];
  for (const { ground, places } of filled) {
    if (places.length === 0) continue;
    const { stock } = ground;
    const same = stocks[stock]?.remnant ? sheets.findIndex((sheet) => sheet.stock === stock) : -1;
    const before = sheets[same]?.places ?? [];
    const counted = places.map((place): Place => {
      const { within } = place;
      return within === null ? place : { ...place, within: { ...within, place: within.place + before.length } };
    });
    const sheet = { stock, places: [...before, ...counted] };
    if (same < 0) sheets.push(sheet);
    else sheets[same] = sheet;
  }
  return sheets;
}
