import { searchAcross } from '../packing/across.js';
import { searchSheets } from '../packing/pack-sheets.js';
import type { Search } from '../packing/search.js';
import type { Bed, Blank, Place } from '../packing/shapes.js';
import { bedsOf, isBought, priceOf, type SheetStock } from './stock.js';

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
  /** Among all of them. */
  readonly index: number;
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
export const packParts = (given: PackGiven): readonly FilledSheet[] =>
  joined(packedFirst(groundsOf(given), given), given.stocks);

/** How many kits are cut, all of the same parts. */
export interface RunGiven extends PackGiven {
  /** `blanks` are those of one kit. */
  readonly copies: number;
  /** Fewer sheets cannot hold one kit: once it lies on as few, it is looked for no better layout of it. */
  readonly least: number;
  /** How long it is looked for sheets that several kits share, after `steps` for the kit alone. */
  readonly acrossSteps: number;
}

/** Of the bar, what the search for one kit alone takes. */
const ALONE = 0.2;

/**
 * The parts of several kits onto what there is: never more sheets than the kits would take one after the other, for they
 * begin as they would lie then, each on what those before it have left.
 *
 * Sheets come in an order in which the first kit is whole early.
 */
export function packRun(given: RunGiven): readonly FilledSheet[] {
  const { blanks, stocks, copies, onStep = () => {} } = given;
  const grounds = groundsOf(given);
  const onAlone = (done: number) => onStep(ALONE * done);
  const alone = oneAfterTheOther(grounds, { ...given, onStep: onAlone });
  const wanted = copies * blanks.reduce((sum, { count }) => sum + count, 0);
  const together = blanks.map((blank) => ({ ...blank, count: copies * blank.count }));
  // where the stock runs short, kits that come first must not take the room of what fits nowhere else
  const begun =
    placed(alone) === wanted
      ? alone
      : mostPlaced(alone, packedFirst(grounds, { ...given, blanks: together, least: 0, steps: 0 }));
  return soonestWhole(joined(across(begun, grounds, given), stocks), blanks);
}

const mostPlaced = (one: readonly Filled[], other: readonly Filled[]): readonly Filled[] =>
  placed(other) > placed(one) ? other : one;

/** Each kit as it is packed alone, from what those before it have left; the same again as long as there is enough for it. */
function oneAfterTheOther(grounds: readonly Ground[], given: RunGiven): readonly Filled[] {
  const filled: Filled[] = [];
  let kit: readonly Filled[] | null = null;
  for (let n = 0; n < given.copies; n++) {
    const left = grounds.map((ground, i) => ({ ...ground, count: ground.count - takenOf(filled, i) }));
    const last: readonly Filled[] = kit ?? [];
    const isEnough = kit !== null && left.every(({ count }, i) => takenOf(last, i) <= count);
    if (!isEnough) kit = packedFirst(left, given);
    filled.push(...(kit ?? []));
  }
  return filled;
}

const takenOf = (filled: readonly Filled[], ground: number): number =>
  filled.filter((sheet) => sheet.ground.index === ground).length;

/** Sheets that are to be used first stay so: what lies on them is packed anew among itself, and so is the rest. */
function across(filled: readonly Filled[], grounds: readonly Ground[], given: RunGiven): readonly Filled[] {
  const { blanks, spacing, stocks, acrossSteps, onStep = () => {} } = given;
  const isFirst = ({ stock }: Ground) => stocks[stock]?.first === true;
  const firsts = filled.filter(({ ground }) => isFirst(ground));
  const others = filled.filter(({ ground }) => !isFirst(ground));
  const all = placed(filled);
  let told = 0;
  const anew = (sheets: readonly Filled[], beds: readonly Ground[]): readonly Filled[] => {
    const share = all === 0 ? 0 : placed(sheets) / all;
    const steps = Math.round(acrossSteps * share);
    const start = sheets.map(({ ground, places }) => ({ bed: ground.index, places }));
    const search = searchAcross(start, { blanks, beds, spacing }, SEED);
    let best = search.next();
    for (let step = 1; step < steps && best.done !== true; step++) {
      best = search.next();
      onStep(ALONE + (1 - ALONE) * (told + (share * step) / steps));
    }
    told += share;
    return best.value.map(({ bed, places }) => ({ ground: grounds[bed] as Ground, places }));
  };
  const begun = anew(
    firsts,
    grounds.map((ground) => (isFirst(ground) ? ground : { ...ground, count: 0 })),
  );
  const rest = anew(
    others,
    grounds.map((ground, n) => ({ ...ground, count: ground.count - takenOf(begun, n) })),
  );
  return [...begun, ...rest];
}

/** Sheets one after the other as most of them is wanted for the first kit that is not whole yet. */
function soonestWhole(sheets: readonly FilledSheet[], blanks: readonly Blank[]): readonly FilledSheet[] {
  const left = [...sheets];
  const cut = blanks.map(() => 0);
  const ordered: FilledSheet[] = [];
  const countsOf = ({ places }: FilledSheet) => blanks.map((_, n) => places.filter(({ blank }) => blank === n).length);
  const counts = new Map(sheets.map((sheet) => [sheet, countsOf(sheet)]));
  let kit = 1;
  while (left.length > 0) {
    const wanting = blanks.map(({ count }, n) => Math.max(0, kit * count - (cut[n] as number)));
    const useOf = (sheet: FilledSheet) =>
      (counts.get(sheet) ?? []).reduce((sum, count, n) => sum + Math.min(count, wanting[n] as number), 0);
    const uses = left.map(useOf);
    const most = Math.max(...uses);
    if (most === 0) {
      kit++;
      continue;
    }
    const [next] = left.splice(uses.indexOf(most), 1) as [FilledSheet];
    (counts.get(next) ?? []).forEach((count, n) => {
      cut[n] = (cut[n] as number) + count;
    });
    ordered.push(next);
  }
  return ordered;
}

function packedFirst(grounds: readonly Ground[], given: PackGiven & Partial<RunGiven>): readonly Filled[] {
  const { blanks, stocks, onStep = () => {} } = given;
  const isFirst = ({ stock }: Ground) => stocks[stock]?.first === true;
  const first = grounds.filter(isFirst);
  const others = grounds.filter((ground) => !isFirst(ground));
  if (first.length === 0) return packedOn(others, given);
  const half = { ...given, steps: Math.ceil(given.steps / 2) };
  const begun = packedOn(first, { ...half, onStep: (done) => onStep(done / 2) });
  const left = blanks.map((blank, n) => ({ ...blank, count: blank.count - countOf(begun, n) }));
  const rest = packedOn(others, { ...half, blanks: left, onStep: (done) => onStep(0.5 + done / 2) });
  return [...begun, ...rest];
}

/** Beds of all that there is, the smallest first. */
function groundsOf({ stocks, margin }: PackGiven): readonly Ground[] {
  const grounds = stocks.flatMap((stock, n) => bedsOf(stock, margin).map((bed) => ({ ...bed, stock: n })));
  const dearest = Math.max(0, ...grounds.map(({ cost }) => cost));
  return grounds
    .map((ground) => {
      const handling = HANDLING * dearest * priceOf(stocks[ground.stock] as SheetStock);
      return { ...ground, cost: ground.cost + handling };
    })
    .sort((a, b) => a.cost - b.cost)
    .map((ground, index) => ({ ...ground, index }));
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
function packedOn(all: readonly Ground[], given: PackGiven & Partial<RunGiven>): readonly Filled[] {
  const beds = all.filter(({ count }) => count > 0);
  if (given.blanks.every(({ count }) => count === 0)) return [];
  const wanted = given.blanks.reduce((sum, { count }) => sum + count, 0);
  // sheets at hand are cheaper than others, so as few may still be better
  const least = beds.every(({ stock }) => isBought(given.stocks[stock] as SheetStock)) ? (given.least ?? 0) : 0;
  const layouts = search(beds, given);
  let best = layouts.next();
  for (let step = 0; best.done !== true; step++) {
    const most = placed(best.value) === wanted ? given.steps : Math.max(given.steps, LEAST_FOR_ALL);
    if (step >= most) break;
    if (best.value.length <= least && placed(best.value) === wanted) break;
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
