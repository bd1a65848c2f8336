import { area, type Box, type ClosedPath, length, moved, type Path } from '../geometry/path.js';
import type { Finding } from '../model/finding.js';
import type { FlatPart } from '../model/part.js';
import { bedTooSmall, grainLong, partsPart, smallParts } from './checks.js';
import { type Beam, cutLine, cutOnce } from './cut-line.js';
import { cutOrder } from './cut-order.js';
import { outerBox } from './outer-box.js';
import { type Place, pack, type Stance } from './pack.js';
import { type CutPath, type Layer, layers, type Operation, type Placed, type Sheet } from './sheet.js';
import { windowRooms } from './window-rooms.js';

/** A part and how many of it are cut. */
export interface Piece {
  readonly part: FlatPart;
  readonly count: number;
}

/** A kind of sheet that is to be had; its face grain runs along its width. */
export interface SheetStock {
  readonly material: string;
  readonly thickness: number;
  readonly sheet: { readonly width: number; readonly height: number };
}

export interface LayOutGiven extends Beam {
  /** Where a material comes in several sizes, the first that takes a part is used. */
  readonly materials: readonly SheetStock[];
  /** Between the cut lines of two parts; never less than half the thickness. */
  readonly spacing?: number;
  /** From a cut line to the sheet's edge. */
  readonly margin?: number;
  /** How often the packer tries another order. */
  readonly effort?: number;
}

/** How much sheet a material took, against what no packing can beat. */
export interface SheetUse {
  readonly material: string;
  readonly sheets: number;
  /** Sheets that the bare area of the parts fills, margins left out. */
  readonly bound: number;
  /** Area of the parts over area of the sheets, 0 to 1. */
  readonly use: number;
}

export interface LayOut {
  readonly sheets: readonly Sheet[];
  readonly findings: readonly Finding[];
  readonly uses: readonly SheetUse[];
}

/** A web of 2 mm stands in thin plywood, and 5 mm clear the crushed edge of a sheet: common practice. */
const SPACING = 2;
const MARGIN = 5;
/** About 0.3 s for the seventy pieces of a camera. */
const EFFORT = 1200;

/** Parts to sheets: every piece once, in its place, with its cut lines in cutting order. */
export function layOut(pieces: readonly Piece[], given: LayOutGiven): LayOut {
  const { materials, margin = MARGIN, effort = EFFORT } = given;
  const findings: Finding[] = [];
  const sheets: Sheet[] = [];
  const uses: SheetUse[] = [];
  const cuts = pieces.map((piece): Cut => {
    const lines = linesOf(piece.part, given);
    return { ...piece, lines, stances: stancesOf(piece.part, lines) };
  });
  for (const { part, lines } of cuts) findings.push(...cutOnce(part, lines, given));

  const left = new Set(cuts);
  for (const stock of materials) {
    const spacing = Math.max(given.spacing ?? SPACING, stock.thickness / 2);
    const bed: Bed = { stock, spacing, margin };
    const fitting = [...left]
      .filter(({ part }) => part.material === stock.material)
      .filter((cut) => stancesOn(cut, bed).length > 0);
    if (fitting.length === 0) continue;
    for (const cut of fitting) left.delete(cut);
    const before = sheets.filter(({ material }) => material === stock.material).length;
    const made = sheetsFor(fitting, bed, { effort, before });
    sheets.push(...made);
    findings.push(
      ...made.flatMap((sheet) => [...partsPart(sheet), ...smallParts(sheet, fitting), ...grainLong(sheet, fitting)]),
    );
    uses.push(useOf(stock, made, margin));
  }
  for (const { part, stances } of left) {
    if (stances.length === 0) continue;
    const beds = materials.filter(({ material }) => material === part.material);
    findings.push(bedTooSmall(part, stances, beds, margin));
  }
  return { sheets, findings: unique(findings), uses };
}

interface Cut extends Piece {
  /** Cut lines: the outline first, then the holes in the part's order. */
  readonly lines: readonly ClosedPath[];
  /** None where nothing of the part is left to cut. */
  readonly stances: readonly TurnedPart[];
}

interface Bed {
  readonly stock: SheetStock;
  readonly spacing: number;
  readonly margin: number;
}

const linesOf = (part: FlatPart, beam: Beam): readonly ClosedPath[] =>
  [part.outline, ...part.holes].map((edge) => cutLine(edge, beam));

/** A stance and what the packer need not know: where the rectangle lies in the turned part's frame. */
interface TurnedPart extends Stance {
  readonly box: Box;
}

/** Long strips bend across their grain, so they lie along the sheet even where the design leaves them free. */
const LONG = 4;

/** The ways in which a part may lie so that its grain runs along the sheet. */
function stancesOf(part: FlatPart, lines: readonly ClosedPath[]): readonly TurnedPart[] {
  if (lines[0]?.length === 0) return [];
  const turns = part.grain === 'x' ? [0] : part.grain === 'y' ? [Math.PI / 2] : [0, Math.PI / 2];
  return turns.map((turn) => {
    const turned = lines.map((line) => moved(line, { x: 0, y: 0, turn }));
    const box = outerBox(turned[0] as ClosedPath);
    const windows = turned.slice(1).map((window) =>
      windowRooms(window).map((room) => ({
        left: room.left - box.left,
        right: room.right - box.left,
        bottom: room.bottom - box.bottom,
        top: room.top - box.bottom,
      })),
    );
    return { turn, width: box.right - box.left, height: box.top - box.bottom, windows, box };
  });
}

function stancesOn(cut: Cut, { stock, margin }: Bed): readonly TurnedPart[] {
  const fitting = cut.stances.filter(
    ({ width, height }) => width <= stock.sheet.width - 2 * margin && height <= stock.sheet.height - 2 * margin,
  );
  const along = fitting.filter(({ width, height }) => height <= LONG * width);
  return along.length > 0 ? along : fitting;
}

function sheetsFor(
  cuts: readonly Cut[],
  bed: Bed,
  { effort, before }: { effort: number; before: number },
): readonly Sheet[] {
  const { stock, spacing, margin } = bed;
  const pieces = cuts.flatMap((cut) => {
    const ways = stancesOn(cut, bed);
    return Array.from({ length: cut.count }, (_, i) => ({ cut, instance: i + 1, stances: ways }));
  });
  const places = pack(
    pieces,
    { width: stock.sheet.width - 2 * margin, height: stock.sheet.height - 2 * margin, spacing },
    { effort },
  );
  const count = 1 + Math.max(...places.map(({ sheet }) => sheet));
  return Array.from({ length: count }, (_, n) => {
    const here = places.filter(({ sheet }) => sheet === n).sort((a, b) => a.blank - b.blank);
    const lying = here.map((place): Lying => {
      const { cut, instance, stances } = pieces[place.blank] as (typeof pieces)[number];
      const { turn, box } = stances.find((s) => s === place.stance) as TurnedPart;
      return { cut, instance, place, x: margin + place.x - box.left, y: margin + place.y - box.bottom, turn };
    });
    return sheetOf(lying, bed, `${stock.material}-${before + n + 1}`);
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

function sheetOf(lying: readonly Lying[], { stock, spacing, margin }: Bed, name: string): Sheet {
  const hosts = new Set(lying.flatMap(({ place }) => (place.within ? [windowKey(place.within)] : [])));
  const drawn = lying.flatMap((one) => drawnPaths(one, hosts));
  const operations: Operation[] = [];
  let head = { x: 0, y: 0 };
  let travelLength = 0;
  for (const layer of layers) {
    const tour = cutOrder(
      drawn.filter((d) => d.layer === layer).map(({ cut }) => cut),
      head,
    );
    operations.push({ layer, paths: tour.paths });
    head = tour.end;
    travelLength += tour.travel;
  }
  const placed = lying.map(
    ({ cut, instance, x, y, turn }): Placed => ({ part: cut.part.id, instance, x, y, rotation: turn }),
  );
  return {
    name,
    material: stock.material,
    thickness: stock.thickness,
    width: stock.sheet.width,
    height: stock.sheet.height,
    margin,
    spacing,
    placed,
    operations,
    usedArea: sum(lying, ({ cut }) => netArea(cut.part)),
    cutLength: sum(drawn, ({ layer, cut }) => (layer === 'engrave' ? 0 : length(cut.path.vertices))),
    travelLength,
  };
}

const windowKey = ({ blank, window }: { readonly blank: number; readonly window: number }): string =>
  `${blank}.${window}`;

/** The paths of one piece where it lies: engraving, holes, outline, numbered in this order. */
function drawnPaths(one: Lying, hosts: ReadonlySet<string>): readonly { layer: Layer; cut: CutPath }[] {
  const { part, lines } = one.cut;
  const [outline, ...holes] = lines.map((vertices): Path => ({ vertices, closed: true }));
  const strokes = part.engraving.map((path): readonly [Layer, Path] => ['engrave', path]);
  const windows = holes.flatMap((path, window): readonly (readonly [Layer, Path])[] => {
    if (path.vertices.length === 0) return [];
    return [[hosts.has(windowKey({ blank: one.place.blank, window })) ? 'cut-window' : 'cut-inside', path]];
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

function useOf(stock: SheetStock, sheets: readonly Sheet[], margin: number): SheetUse {
  const { width, height } = stock.sheet;
  const net = sum(sheets, ({ usedArea }) => usedArea);
  return {
    material: stock.material,
    sheets: sheets.length,
    bound: Math.ceil(net / ((width - 2 * margin) * (height - 2 * margin))),
    use: net / (sheets.length * width * height),
  };
}

/** Two pieces of one part that meet the same fault are told once. */
const unique = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter((f, i) => findings.findIndex((g) => g.rule === f.rule && g.message === f.message) === i);

const sum = <T>(items: readonly T[], of: (item: T) => number): number =>
  items.reduce((total, item) => total + of(item), 0);
