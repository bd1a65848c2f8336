import { type Box, boundsOfPoints } from '../geometry/path.js';
import { searchBins } from './bins.js';
import { type NestGiven, searchNest } from './nest.js';
import { offcutOf } from './offcut.js';
import type { Search } from './search.js';
import type { Bed, Blank, Layout, PackedSheet, Place, Rectangle, RectanglePlace } from './shapes.js';
import { searchStrip } from './strip.js';

/** Every so many steps one goes to the rectangles. */
const SHARE = 3;
/** Steps that rectangles are given before they are given up: later ones hardly ever gain. */
const MOST_STEPS = 600;
/** A tie, in parts of the layout's cost or offcut. */
const GAIN = 1e-9;

/**
 * Lays pieces on sheets, in windows of others too: least cost of sheets first, then the largest offcut of one sheet.
 *
 * Nesting (`searchNest`) decides what lies in which window, how each piece is turned and what goes on which sheet. Beside
 * it the rectangles round what lies in no window are packed as nothing but rectangles, which is so much quicker that
 * other ways are found: all of them onto one sheet fewer, and those of the sheet with the offcut into a shorter strip.
 * What lies in windows goes along.
 */
export function* searchSheets(given: NestGiven, seed: number): Search<Layout> {
  const nest = searchNest(given, seed);
  let step = nest.next();
  let best = step.value;
  let nested = best;
  let beside = asRectangles(best, given, seed);
  let isSpent = false;
  for (let n = 1; ; n++) {
    if (step.done === true && isSpent) return best;
    if (!isSpent && (step.done === true || n % SHARE === 0)) {
      const { done, value } = beside.search.next();
      isSpent = done === true;
      if (isBetter(value, best, given.beds)) best = value;
    } else {
      step = nest.next();
      if (step.value !== nested) {
        nested = step.value;
        if (isBetter(nested, best, given.beds)) best = nested;
        const next = asRectangles(nested, given, seed);
        if (next.of !== beside.of) [beside, isSpent] = [next, false];
      }
    }
    yield best;
  }
}

/**
 * What rectangles make of a layout: one sheet fewer, and the sheet with the offcut filled anew from one side and from the
 * other, in turn.
 *
 * @returns the search, and what tells its rectangles from others: layouts of the same ones need not be searched twice
 */
function asRectangles(
  layout: Layout,
  given: NestGiven,
  seed: number,
): { readonly of: string; readonly search: Search<Layout> } {
  const sheet = layout.offcut === null ? undefined : layout.sheets[layout.offcut.sheet];
  const pieces = (sheet?.places ?? []).map(({ blank, turn, within }) => `${blank} ${turn} ${within?.place ?? ''}`);
  return { of: `${layout.sheets.length}: ${pieces.sort().join(', ')}`, search: search() };

  function* search(): Search<Layout> {
    const searches = [
      oneSheetFewer(layout, given, seed),
      shorterStrip(layout, given, { seed, along: 'x' }),
      shorterStrip(layout, given, { seed, along: 'y' }),
    ];
    let best = layout;
    for (let step = 0; step < MOST_STEPS && searches.length > 0; step++) {
      const [next] = searches.splice(0, 1) as [Search<Layout | null>];
      const { done, value } = next.next();
      if (value !== null && isBetter(value, best, given.beds)) best = value;
      if (done !== true) searches.push(next);
      yield best;
    }
    return best;
  }
}

function* oneSheetFewer(layout: Layout, given: NestGiven, seed: number): Search<Layout | null> {
  const { beds, spacing } = given;
  const [first, ...others] = layout.sheets;
  const bed = first && plainBed(beds[first.bed] as Bed);
  if (!bed || others.length === 0 || others.some((sheet) => sheet.bed !== first.bed)) return null;
  const groups = layout.sheets.flatMap((sheet) => groupsOn(sheet, given.blanks));
  const bins = searchBins(
    {
      width: bed.right - bed.left + spacing,
      height: bed.top - bed.bottom + spacing,
      items: groups.map(({ box }) => sizeOf(box, spacing)),
      turns: groups.every(({ otherTurn }) => otherTurn !== null),
    },
    seed,
  );
  for (;;) {
    const { done, value } = bins.next();
    if (value.bins.length < layout.sheets.length) {
      const sheets = value.bins.map((places) => ({ bed: first.bed, places: laid(places, groups, bed) }));
      return withOffcut(sheets, given);
    }
    if (done === true) return null;
    yield null;
  }
}

interface StripWay {
  readonly seed: number;
  /** The side of the sheet from which it is filled: along the other one the strip is as wide as the sheet. */
  readonly along: 'x' | 'y';
}

function* shorterStrip(layout: Layout, given: NestGiven, { seed, along }: StripWay): Search<Layout | null> {
  const { beds, blanks, spacing } = given;
  const { offcut } = layout;
  const sheet = offcut === null ? undefined : layout.sheets[offcut.sheet];
  const bed = sheet && plainBed(beds[sheet.bed] as Bed);
  if (!bed || !sheet || offcut === null) return null;
  const groups = groupsOn(sheet, blanks);
  const across = ({ width, height, count }: Rectangle): Rectangle =>
    along === 'x' ? { width: height, height: width, count } : { width, height, count };
  const [width, longest] =
    along === 'x' ? [bed.top - bed.bottom, bed.right - bed.left] : [bed.right - bed.left, bed.top - bed.bottom];
  const strips = searchStrip(
    {
      width: width + spacing,
      items: groups.map(({ box }) => across(sizeOf(box, spacing))),
      turns: groups.every(({ otherTurn }) => otherTurn !== null),
    },
    seed,
  );
  let least = longest;
  let best: Layout | null = null;
  for (;;) {
    const { done, value } = strips.next();
    if (value.height < least) {
      least = value.height;
      const places = value.places.map((one) => (along === 'x' ? { ...one, x: one.y, y: one.x } : one));
      const sheets = layout.sheets.map((other) =>
        other === sheet ? { bed: sheet.bed, places: laid(places, groups, bed) } : other,
      );
      best = withOffcut(sheets, given);
    }
    if (done === true) return best;
    yield best;
  }
}

/** The whole of a bed that is nothing but an upright rectangle. */
function plainBed({ outline, holes }: Bed): Box | null {
  const box = boundsOfPoints(outline);
  const isCorner = ({ x, y }: { x: number; y: number }) =>
    (x === box.left || x === box.right) && (y === box.bottom || y === box.top);
  return holes.length === 0 && outline.length === 4 && outline.every(isCorner) ? box : null;
}

/** A piece that lies in no window, and what lies in its own. */
interface Group {
  /** Round the piece, on the sheet. */
  readonly box: Box;
  /** The piece first. */
  readonly places: readonly Place[];
  /** How the piece may lie with its sides changed over; null where it may not, or would take along what lies in it. */
  readonly otherTurn: number | null;
}

function groupsOn({ places }: PackedSheet, blanks: readonly Blank[]): readonly Group[] {
  return places.flatMap((place, n): readonly Group[] => {
    if (place.within !== null) return [];
    const held = places.filter(({ within }) => within?.place === n);
    const other = (blanks[place.blank] as Blank).turns.find((turn) => (turn - place.turn) % 2 !== 0);
    const otherTurn = held.length > 0 ? null : (other ?? null);
    return [{ box: boxOf(place, blanks), places: [place, ...held], otherTurn }];
  });
}

function boxOf({ blank, turn, x, y }: Place, blanks: readonly Blank[]): Box {
  const { left, right, bottom, top } = boundsOfPoints((blanks[blank] as Blank).outline);
  const [width, height] = turn % 2 === 0 ? [right - left, top - bottom] : [top - bottom, right - left];
  return { left: x, bottom: y, right: x + width, top: y + height };
}

/** Each stands for its piece and the spacing to the right and above it, and so do bins and strips. */
const sizeOf = ({ left, right, bottom, top }: Box, spacing: number): Rectangle => ({
  width: right - left + spacing,
  height: top - bottom + spacing,
  count: 1,
});

/** Groups where their rectangles lie, numbered anew. */
function laid(places: readonly RectanglePlace[], groups: readonly Group[], bed: Box): readonly Place[] {
  const on: Place[] = [];
  for (const { item, x, y, turned } of places) {
    const { box, places: own, otherTurn } = groups[item] as Group;
    const host = on.length;
    const [right, up] = [bed.left + x - box.left, bed.bottom + y - box.bottom];
    for (const place of own)
      on.push({
        ...place,
        turn: turned && otherTurn !== null ? otherTurn : place.turn,
        x: place.x + right,
        y: place.y + up,
        within: place.within === null ? null : { ...place.within, place: host },
      });
  }
  return on;
}

function withOffcut(sheets: readonly PackedSheet[], { blanks, beds, spacing }: NestGiven): Layout {
  const taken = sheets.map((sheet) => groupsOn(sheet, blanks).map(({ box }) => box));
  return { sheets, offcut: offcutOf(sheets, taken, beds, spacing) };
}

/** Whether a layout lays as many pieces on cheaper sheets, or leaves more of sheets that cost the same. */
function isBetter(one: Layout, other: Layout, beds: readonly Bed[]): boolean {
  const [placed, before] = [one, other].map(({ sheets }) => sheets.reduce((n, { places }) => n + places.length, 0));
  if (placed !== before) return (placed as number) > (before as number);
  const [cost, paid] = [one, other].map(({ sheets }) =>
    sheets.reduce((sum, { bed }) => sum + (beds[bed] as Bed).cost, 0),
  ) as [number, number];
  if (Math.abs(cost - paid) > GAIN * paid) return cost < paid;
  const [left, kept] = [one, other].map(({ offcut: o }) =>
    o === null ? 0 : (o.right - o.left) * (o.top - o.bottom),
  ) as [number, number];
  return left > kept * (1 + GAIN);
}
