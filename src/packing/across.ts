import { ringArea } from './ground.js';
import { knownPieces, type NestGiven } from './nest.js';
import { searchSheets } from './pack-sheets.js';
import type { Piece } from './pieces.js';
import { type Random, seeded } from './random.js';
import type { Search } from './search.js';
import type { Bed, Blank, PackedSheet } from './shapes.js';

/** Sheets that are packed anew together: with fewer nothing is gained, with more the search among them takes too long. */
const TOGETHER = 6;
/** Steps that one of these rounds is given: what it does not find by then the next one finds sooner. */
const ROUND = 60;
/** A tie, in parts of the cost of all sheets, or of what lies on one. */
const GAIN = 1e-9;

/**
 * Sheets of several jobs packed across the jobs: never dearer than they were, and never more of them.
 *
 * Packing hundreds of pieces at once is slow and finds little. Here they begin as they lie, and a few sheets at a time are
 * packed anew: the emptiest and some others, the emptier ones more often. Such a round is kept where it takes cheaper
 * sheets, or leaves the emptiest one emptier, so that in the end nothing lies on it.
 *
 * @param start every piece that is wanted, on beds of which no more are taken than there are
 */
export function* searchAcross(
  start: readonly PackedSheet[],
  given: NestGiven,
  seed: number,
): Search<readonly PackedSheet[]> {
  const random = seeded(seed);
  const areas = given.blanks.map(({ outline }) => ringArea(outline));
  const loadOf = ({ places }: PackedSheet): number =>
    places.reduce((sum, { blank, within }) => (within === null ? sum + (areas[blank] as number) : sum), 0);
  const costOf = (sheets: readonly PackedSheet[]): number =>
    sheets.reduce((sum, { bed }) => sum + (given.beds[bed] as Bed).cost, 0);
  let sheets = start;
  yield sheets;
  if (start.length < 2) return sheets;
  const looking = knownPieces(given);
  let looked = looking.next();
  for (; looked.done !== true; looked = looking.next()) yield sheets;
  const known = looked.value;
  for (let round = 1; sheets.length > 1; round++) {
    const emptiestFirst = [...sheets.keys()].sort(
      (a, b) => loadOf(sheets[a] as PackedSheet) - loadOf(sheets[b] as PackedSheet) || a - b,
    );
    const taken = someOf(emptiestFirst, random);
    const before = sheets.filter((_, n) => taken.has(n));
    const others = sheets.filter((_, n) => !taken.has(n));
    const { given: part, blankOf } = partOf(before, others, { ...given, known });
    const rounds = searchSheets(part, round);
    let step = rounds.next();
    for (let n = 1; n < ROUND && step.done !== true; n++) {
      yield sheets;
      step = rounds.next();
    }
    const after = step.value.sheets.map(
      ({ bed, places }): PackedSheet => ({
        bed,
        places: places.map((place) => ({ ...place, blank: blankOf[place.blank] as number })),
      }),
    );
    if (piecesOn(after) < piecesOn(before) || after.length > before.length) continue;
    const [cost, paid] = [costOf(after), costOf(before)];
    const emptiest = Math.min(...before.map(loadOf));
    const isCheaper = cost < paid * (1 - GAIN);
    const isEmptier = cost < paid * (1 + GAIN) && Math.min(...after.map(loadOf)) < emptiest * (1 - GAIN);
    if (isCheaper || isEmptier) sheets = [...others, ...after];
    yield sheets;
  }
  return sheets;
}

/** The emptiest sheet and some of the others. */
function someOf(emptiestFirst: readonly number[], random: Random): ReadonlySet<number> {
  const taken = new Set(emptiestFirst.slice(0, emptiestFirst.length <= TOGETHER ? TOGETHER : 1));
  while (taken.size < Math.min(TOGETHER, emptiestFirst.length)) {
    // squared, the emptier half comes seven times in ten
    taken.add(emptiestFirst[Math.floor(random() ** 2 * emptiestFirst.length)] as number);
  }
  return taken;
}

/** What lies on some sheets, and the beds that are free for it while others keep theirs. */
function partOf(
  some: readonly PackedSheet[],
  others: readonly PackedSheet[],
  { blanks, beds, spacing, known }: Required<NestGiven>,
): { readonly given: NestGiven; readonly blankOf: readonly number[] } {
  const counts = blanks.map(() => 0);
  for (const { places } of some) for (const { blank } of places) counts[blank] = (counts[blank] as number) + 1;
  const blankOf = [...blanks.keys()].filter((n) => (counts[n] as number) > 0);
  const kept = (bed: number) => others.filter((sheet) => sheet.bed === bed).length;
  return {
    blankOf,
    given: {
      blanks: blankOf.map((n): Blank => ({ ...(blanks[n] as Blank), count: counts[n] as number })),
      beds: beds.map((bed, n) => ({ ...bed, count: bed.count - kept(n) })),
      spacing,
      known: blankOf.map((n, blank) => ({ ...(known[n] as Piece), blank })),
    },
  };
}

const piecesOn = (sheets: readonly PackedSheet[]): number => sheets.reduce((sum, { places }) => sum + places.length, 0);
