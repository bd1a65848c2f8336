import { searchSheets } from '../packing/pack-sheets.js';
import type { Search } from '../packing/search.js';
import type { Bed, Blank, Place } from '../packing/shapes.js';
import { bedsOf, priceOf, type SheetStock } from './stock.js';

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
/** Of the dearest sheet: each has to be fetched, laid down and focused on, so a few small ones are worth a larger one. */
const HANDLING = 0.05;

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

/** Beds of all that there is, the smallest first. */
function groundsOf({ stocks, margin }: PackGiven): readonly Ground[] {
  const grounds = stocks.flatMap((stock, n) => bedsOf(stock, margin).map((bed): Ground => ({ ...bed, stock: n })));
  const dearest = Math.max(0, ...grounds.map(({ cost }) => cost));
  return grounds
    .map((ground) => {
      const handling = HANDLING * dearest * priceOf(stocks[ground.stock] as SheetStock);
      return { ...ground, cost: ground.cost + handling };
    })
    .sort((a, b) => a.cost - b.cost);
}

const countOf = (filled: readonly Filled[], blank: number): number =>
  filled.reduce((sum, { places }) => sum + places.filter((place) => place.blank === blank).length, 0);

function* search(beds: readonly Ground[], { blanks, spacing }: PackGiven): Search<readonly Filled[]> {
  const layouts = searchSheets({ blanks, beds, spacing }, SEED);
  for (;;) {
    const { done, value } = layouts.next();
    const filled = value.sheets.map(({ bed, places }) => ({ ground: beds[bed] as Ground, places }));
    if (done) return filled;
    yield filled;
  }
}

const placed = (filled: readonly Filled[]): number => filled.reduce((sum, { places }) => sum + places.length, 0);

/** The first layout, and the better ones that are found in the steps that are given. */
function packedOn(beds: readonly Ground[], given: PackGiven): readonly Filled[] {
  if (given.blanks.every(({ count }) => count === 0)) return [];
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
