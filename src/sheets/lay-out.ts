import { area, type Box, boundsOfPoints, type ClosedPath, length, moved, type Path } from '../geometry/path.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart } from '../model/part.js';
import { leastSheets } from '../packing/bound.js';
import type { Blank, Place } from '../packing/shapes.js';
import { bedTooSmall, grainLong, type Lie, partsPart, smallParts, stockIdle, stockShort } from './checks.js';
import { chordsInWaste } from './chords.js';
import { type Beam, cutLine, cutOnce } from './cut-line.js';
import { cutOrder, type Drawn } from './cut-order.js';
import { outerBox } from './outer-box.js';
import { type FilledSheet, packParts, packRun } from './pack.js';
import { offcutOf, type SheetOffcut } from './remnant.js';
import type { Layer, Placed, Sheet } from './sheet.js';
import { bedsOf, isBought, type SheetStock, wholeBedOf, woodOf } from './stock.js';

/** A part and how many of it are cut. */
export interface Piece {
  readonly part: FlatPart;
  readonly count: number;
}

export interface LayOutGiven extends Beam {
  /** What there is to cut from: a part may lie on any sheet of its material. */
  readonly materials: readonly SheetStock[];
  /** Between the cut lines of two parts; never less than half the thickness. */
  readonly spacing?: number;
  /** From a cut line to the sheet's edge. */
  readonly margin?: number;
  /** How long better layouts are looked for: see `EFFORT`. At 0 the first that is found is taken. */
  readonly effort?: number;
  /** Kits that are cut of these pieces, on sheets that they share: one where it is left out. */
  readonly copies?: number;
  /**
   * Whether somebody waits for it to look at, and nobody will cut it: then the cuts follow one another by the first way
   * that is found, the least number of sheets is not reckoned, and parts that part are taken on trust.
   */
  readonly hurried?: boolean;
  /** Told as the search goes on; done from 0 to 1. */
  readonly onProgress?: (done: number) => void;
}

/** How much sheet a material took, against what no packing can beat. */
export interface SheetUse {
  readonly material: string;
  readonly sheets: number;
  /** Of them, those that were at hand: remnants and what was counted. */
  readonly atHand: number;
  /** Fewer are impossible, whatever the packing; null where that was not reckoned. */
  readonly bound: number | null;
  /** Area of the parts over area of the sheets, 0 to 1. */
  readonly use: number;
}

export interface LayOut {
  readonly sheets: readonly Sheet[];
  readonly findings: readonly Finding[];
  readonly uses: readonly SheetUse[];
  /** The strips that sheets keep clear: at most one of each, in the order of the sheets. */
  readonly offcuts: readonly SheetOffcut[];
}

/** A web of 2 mm stands in thin plywood, and 5 mm clear the crushed edge of a sheet: common practice. */
const SPACING = 2;
const MARGIN = 5;
/** How long better layouts are looked for where nobody says: about two seconds for the seventy pieces of a camera. */
export const EFFORT = 20;
/** Of the packer, for each unit of effort: about a tenth of a second. */
const STEPS = 80;
/** For each unit of effort in a run of kits: over all of its pieces about a third of a second, and some for each material. */
const RUN_STEPS = 140;
const RUN_LEAST = 30;
/** Of the search for the order of cuts, for each way round of a sheet: some always, and some for each unit of effort. */
const ORDER_FIRST = 20;
const ORDER_STEPS = 1;

/** Parts to sheets: every piece once, in its place, with its cut lines in cutting order. */
export function layOut(pieces: readonly Piece[], given: LayOutGiven): LayOut {
  const { materials, margin = MARGIN, effort = EFFORT, copies = 1, hurried = false, onProgress = () => {} } = given;
  const cuts = pieces.map((piece): Cut => ({ ...piece, lines: linesOf(piece.part, given) }));
  const all = sum(cuts, ({ count }) => count);
  const findings: Finding[] = cuts.flatMap(({ part, lines }) => cutOnce(part, lines, given));
  const sheets: Sheet[] = [];
  const uses: SheetUse[] = [];
  // a part of which the beam leaves nothing is told by cutOnce
  const whole = cuts.filter(({ lines, count }) => lines[0] !== undefined && lines[0].length > 0 && count > 0);
  const kinds = [...new Set([...materials, ...whole.map(({ part }) => part)].map(({ material }) => material))];
  kinds.forEach((material, n) => {
    const own = whole.filter(({ part }) => part.material === material);
    const stocks = materials.filter((stock) => stock.material === material);
    findings.push(...stockIdle(stocks, own));
    const onStep = (done: number) => onProgress((n + done) / kinds.length);
    const share = sum(own, ({ count }) => count) / all;
    const bench: Bench = { ...given, stocks, margin, effort, copies, share, hurried, onStep };
    const { filled, made, bound } = cutFrom(own, bench);
    findings.push(
      ...roomFor(own, made, bench),
      ...made.flatMap((sheet) => [
        ...(hurried ? [] : partsPart(sheet)),
        ...smallParts(sheet, own),
        ...grainLong(sheet, own),
      ]),
    );
    sheets.push(...made);
    if (made.length > 0) uses.push(useOf({ filled, made, bound }, bench));
  });
  return { sheets, findings: unique(findings), uses, offcuts: sheets.flatMap((sheet) => offcutOf(sheet) ?? []) };
}

interface Cut extends Piece {
  /** Cut lines: the outline first, then the holes in the part's order. */
  readonly lines: readonly ClosedPath[];
}

/** What there is of one material, and how it is cut. */
interface Bench extends Pick<LayOutGiven, 'spacing'> {
  readonly stocks: readonly SheetStock[];
  readonly margin: number;
  readonly effort: number;
  readonly copies: number;
  /** Of all pieces, those of this material: a run of kits is looked into so much of the time. */
  readonly share: number;
  readonly hurried: boolean;
  readonly onStep: (done: number) => void;
}

const spacingOf = ({ spacing = SPACING, stocks }: Bench): number =>
  Math.max(spacing, ...stocks.map(({ thickness }) => thickness / 2));

/** Parts of one material on its sheets; those that are larger than all of them, or find no room, are left out. */
function cutFrom(cuts: readonly Cut[], bench: Bench) {
  const { stocks, margin, effort, copies, share, hurried, onStep } = bench;
  const beds = bedSizes(bench);
  const blanks = cuts
    .map((cut) => blankOf(cut, beds))
    .map((blank) => (blank.turns.length > 0 ? blank : { ...blank, turns: [0], count: 0 }));
  const spacing = spacingOf(bench);
  const wanted = { blanks, stocks, spacing, margin, steps: Math.round(effort * STEPS), onStep };
  const leastFor = (kits: number) =>
    leastSheets({
      blanks: blanks.map((blank) => ({ ...blank, count: kits * blank.count })),
      beds: stocks.flatMap((stock) => wholeBedOf(stock, margin)),
      spacing,
    });
  const filled =
    copies === 1
      ? packParts(wanted)
      : packRun({
          ...wanted,
          copies,
          least: leastFor(1),
          acrossSteps: Math.round(effort * (RUN_LEAST + RUN_STEPS * share)),
        });
  const made = sheetsOf(filled, cuts, bench);
  if (hurried) return { filled, made, bound: null };
  // where what there is does not suffice, nobody cares how few of it are needed
  return { filled, made, bound: Math.min(leastFor(copies), made.length) };
}

/** Of the rectangles round what parts may lie on. */
const bedSizes = ({ stocks, margin }: Bench): readonly Lie[] =>
  stocks
    .flatMap((stock) => bedsOf(stock, margin))
    .map(({ outline }) => boundsOfPoints(outline))
    .map(({ left, right, bottom, top }) => ({ width: right - left, height: top - bottom }));

/** part-on-bed: what does not lie on any sheet, and why. */
function roomFor(cuts: readonly Cut[], made: readonly Sheet[], bench: Bench): readonly Finding[] {
  const { stocks, margin, copies } = bench;
  const beds = bedSizes(bench);
  return cuts.flatMap(({ part, lines, count: ofOne }): readonly Finding[] => {
    const count = copies * ofOne;
    const laid = sum(made, ({ placed }) => placed.filter((place) => place.part === part.id).length);
    if (laid === count) return [];
    const lies = waysOf(part).map((turn) => lieOf(lines, turn));
    return lies.some((lie) => beds.some((bed) => fits(lie, bed)))
      ? [stockShort(part, count - laid, stocks)]
      : [bedTooSmall(part, lies, stocks, margin)];
  });
}

const linesOf = (part: FlatPart, beam: Beam): readonly ClosedPath[] =>
  [part.outline, ...part.holes].map((edge) => cutLine(edge, beam));

/** Long strips bend across their grain, so they lie along the sheet even where the design leaves them free. */
const LONG = 4;

/** The quarter turns after which a part's face grain runs along the sheet. */
const waysOf = ({ grain }: FlatPart): readonly number[] =>
  grain === 'x' ? [0, 2] : grain === 'y' ? [1, 3] : [0, 1, 2, 3];

/** A part as the packer sees it; without a turn where no bed takes it. A hole of which the beam leaves nothing is a window of no size. */
function blankOf({ part, lines, count }: Cut, beds: readonly Lie[]): Blank {
  const [outline = [], ...windows] = lines.map(chordsInWaste);
  const fitting = waysOf(part).filter((turn) => beds.some((bed) => fits(lieOf(lines, turn), bed)));
  const along = fitting.filter((turn) => {
    const { width, height } = lieOf(lines, turn);
    return height <= LONG * width;
  });
  return { outline, windows, turns: along.length > 0 ? along : fitting, count };
}

/** A part's cut outline as it lies after so many quarter turns. */
const boxOf = ([outline = []]: readonly ClosedPath[], quarters: number): Box =>
  outerBox(moved(outline, { x: 0, y: 0, turn: (quarters * Math.PI) / 2 }));

function lieOf(lines: readonly ClosedPath[], quarters: number): Lie {
  const { left, right, bottom, top } = boxOf(lines, quarters);
  return { width: right - left, height: top - bottom };
}

/** Rounding of sums of lengths must not keep a part off a bed that it fits exactly, mm. */
const ROUNDING = 1e-6;

const fits = (lie: Lie, bed: Lie): boolean => lie.width <= bed.width + ROUNDING && lie.height <= bed.height + ROUNDING;

function sheetsOf(filled: readonly FilledSheet[], cuts: readonly Cut[], bench: Bench): readonly Sheet[] {
  const laid = cuts.map(() => 0);
  return filled.map(({ stock, places }, n) => {
    const lying = places.map((place): Lying => {
      const cut = cuts[place.blank] as Cut;
      const instance = (laid[place.blank] as number) + 1;
      laid[place.blank] = instance;
      const turn = (place.turn * Math.PI) / 2;
      const { left, bottom } = boxOf(cut.lines, place.turn);
      return { cut, instance, place, x: place.x - left, y: place.y - bottom, turn };
    });
    const own = bench.stocks[stock] as SheetStock;
    return sheetOf(lying, own, bench, `${own.material}-${n + 1}`);
  });
}

interface Lying {
  readonly cut: Cut;
  readonly instance: number;
  readonly place: Place;
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

/** A whole sheet is the same the other way round: it lies so that the head has the shorter way from its corner. */
function sheetOf(lying: readonly Lying[], stock: SheetStock, bench: Bench, name: string): Sheet {
  const asPacked = sheetLaid(lying, stock, bench, name);
  if (stock.remnant || bench.effort === 0) return asPacked;
  const turned = sheetLaid(turnedRound(lying, stock.sheet), stock, bench, name);
  return turned.travelLength < asPacked.travelLength ? turned : asPacked;
}

/** Everything on a sheet, half a turn on. */
const turnedRound = (lying: readonly Lying[], { width, height }: Lie): readonly Lying[] =>
  lying.map((one) => ({
    ...one,
    x: width - one.x,
    y: height - one.y,
    turn: one.turn < Math.PI ? one.turn + Math.PI : one.turn - Math.PI,
  }));

function sheetLaid(lying: readonly Lying[], stock: SheetStock, bench: Bench, name: string): Sheet {
  const hosts = new Set(lying.flatMap(({ place }) => (place.within ? [windowKey(place.within)] : [])));
  const drawn = lying.flatMap((one, i) => drawnPaths(one, i, hosts));
  const steps = bench.hurried ? 0 : ORDER_FIRST + Math.round(bench.effort * ORDER_STEPS);
  const { operations, travelLength } = cutOrder(drawn, { steps });
  const placed = lying.map(
    ({ cut, instance, x, y, turn }): Placed => ({ part: cut.part.id, instance, x, y, rotation: turn }),
  );
  return {
    name,
    material: stock.material,
    thickness: stock.thickness,
    width: stock.sheet.width,
    height: stock.sheet.height,
    ...(stock.remnant ? { remnant: stock.remnant } : {}),
    ...(isBought(stock) ? {} : { atHand: true }),
    margin: bench.margin,
    spacing: spacingOf(bench),
    placed,
    operations,
    usedArea: sum(lying, ({ cut }) => netArea(cut.part)),
    cutLength: sum(drawn, ({ layer, cut }) => (layer === 'engrave' ? 0 : length(cut.path.vertices))),
    travelLength,
  };
}

const windowKey = ({ place, window }: { readonly place: number; readonly window: number }): string =>
  `${place}.${window}`;

/** The paths of one piece where it lies: engraving, holes, outline, numbered in this order. */
function drawnPaths(one: Lying, place: number, hosts: ReadonlySet<string>): readonly Drawn[] {
  const { part, lines } = one.cut;
  const [outline, ...holes] = lines.map((vertices): Path => ({ vertices, closed: true }));
  const strokes = part.engraving.map((path): readonly [Layer, Path] => ['engrave', path]);
  const windows = holes.flatMap((path, window): readonly (readonly [Layer, Path])[] => {
    if (path.vertices.length === 0) return [];
    return [[hosts.has(windowKey({ place, window })) ? 'cut-window' : 'cut-inside', path]];
  });
  const last: readonly [Layer, Path] = [one.place.within ? 'cut-nested' : 'cut-outside', outline as Path];
  return [...strokes, ...windows, last].map(([layer, path], n) => ({
    layer,
    cut: {
      id: `${part.id}.${one.instance}.${n + 1}`,
      path: { closed: path.closed, vertices: moved(path.vertices, one) },
    },
  }));
}

const netArea = ({ outline, holes }: FlatPart): number => area(outline) + sum(holes, area);

function useOf({ filled, made, bound }: ReturnType<typeof cutFrom>, { stocks }: Bench): SheetUse {
  const stockOf = ({ stock }: FilledSheet) => stocks[stock] as SheetStock;
  return {
    material: (made[0] as Sheet).material,
    sheets: made.length,
    atHand: filled.filter((sheet) => !isBought(stockOf(sheet))).length,
    bound,
    use: sum(made, ({ usedArea }) => usedArea) / sum(filled, (sheet) => woodOf(stockOf(sheet))),
  };
}

/** Two pieces of one part that meet the same fault are told once. */
const unique = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter((f, i) => findings.findIndex((g) => g.rule === f.rule && g.message === f.message) === i);

const sum = <T>(items: readonly T[], of: (item: T) => number): number =>
  items.reduce((total, item) => total + of(item), 0);
