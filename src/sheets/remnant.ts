import { type Box, boundsOfPoints, type ClosedPath, inside, type Point } from '../geometry/path.js';
import { box, rectangle } from '../geometry/shapes.js';
import type { Remnant } from '../model/remnant.js';
import { clearStretch } from '../packing/offcut.js';
import { roomsWithin } from '../packing/silhouette.js';
import { chordsInWaste } from './chords.js';
import { outerBox } from './outer-box.js';
import type { CutPath, Layer, Sheet } from './sheet.js';
import { usableOf } from './stock.js';

/** A piece that is left of a sheet and worth keeping. */
export interface LeftOver {
  /** The sheet's; of a window's waste, with the cut that frees it: plywood-4.05-3-R3.1.4. */
  readonly name: string;
  readonly remnant: Remnant;
  /** The largest upright rectangle that a later job can use, margins taken off, from the remnant's lower left corner. */
  readonly clear: Box;
}

/** Smaller pieces go to the stove, mm both ways: most parts of a camera are larger, and the small ones lie in windows. */
export const WORTH_KEEPING = 60;

/** Steps in which what is round is followed where clear rectangles are looked for, mm. */
const FINEST = 2;

/**
 * What is left of a sheet when all is cut, for the rack: the sheet itself with a hole for each part, and the pieces of
 * waste that fall out of windows.
 *
 * The sheet is kept whole, not only its largest clear rectangle. It lies down on the bed by the same corner as before, so
 * a later job can nest between the holes as well; the webs that are left there are thinner than two margins, so nothing is
 * ever laid on them, whether they have broken meanwhile or not. Whoever saws the clear rectangle off has a sheet of its
 * own, with clean edges, and writes its size instead. Waste of windows is the better half of what frames leave: whole
 * rectangles with laser-cut edges.
 */
export function leftOver(sheet: Sheet): readonly LeftOver[] {
  const { name, width, height, remnant } = sheet;
  const whole = remnant ?? { outline: rectangle(box(0, 0, width, height)).map(({ x, y }) => ({ x, y })), holes: [] };
  const taken = ringsOf(sheet, 'cut-outside').map(({ ring }) => [...ring].reverse());
  const rest = pieceOf(sheet, name, whole.outline, [...whole.holes, ...taken]);
  const nested = ringsOf(sheet, 'cut-nested').map(({ ring }) => ring);
  const waste = [...ringsOf(sheet, 'cut-inside'), ...ringsOf(sheet, 'cut-window')].flatMap(({ id, ring }) => {
    const within = nested.filter(([corner]) => corner !== undefined && inside(ring, corner));
    return pieceOf(
      sheet,
      `${name}-${id}`,
      [...ring].reverse(),
      within.map((own) => [...own].reverse()),
    );
  });
  return [...rest, ...waste];
}

/** Loops of an operation large enough to matter; chords of what is round lie in the waste. */
function ringsOf(
  { operations }: Sheet,
  layer: Layer,
): readonly { readonly id: string; readonly ring: readonly Point[] }[] {
  const paths: readonly CutPath[] = operations.find((operation) => operation.layer === layer)?.paths ?? [];
  return paths
    .filter(({ path }) => layer === 'cut-outside' || layer === 'cut-nested' || isLarge(path.vertices))
    .map(({ id, path }) => ({ id, ring: chordsInWaste(path.vertices) }));
}

function isLarge(loop: ClosedPath): boolean {
  const { left, right, bottom, top } = outerBox(loop);
  return Math.min(right - left, top - bottom) >= WORTH_KEEPING;
}

type Loop = readonly Point[];

function pieceOf(
  { material, thickness, margin }: Sheet,
  name: string,
  outline: Loop,
  holes: readonly Loop[],
): readonly LeftOver[] {
  const corner = boundsOfPoints(outline);
  const fromCorner = (loop: Loop) => loop.map(({ x, y }) => ({ x: x - corner.left, y: y - corner.bottom }));
  const remnant = { material, thickness, outline: fromCorner(outline), holes: holes.map(fromCorner) };
  const clear = largestClear(remnant, margin);
  return clear === null ? [] : [{ name, remnant, clear }];
}

/** The largest rectangle worth keeping that is clear of edge and holes by a margin. */
function largestClear(remnant: Remnant, margin: number): Box | null {
  const size = (b: Box) => (b.right - b.left) * (b.top - b.bottom);
  const rooms = usableOf(remnant, margin)
    .flatMap((piece) => roomsWithin(piece.outline, piece.holes, FINEST))
    .filter((b) => Math.min(b.right - b.left, b.top - b.bottom) >= WORTH_KEEPING);
  return rooms.reduce<Box | null>((best, next) => (best === null || size(next) > size(best) ? next : best), null);
}

/** A strip of a sheet that a saw takes off along one cut. */
export interface SheetOffcut extends Box {
  /** Name of the sheet. */
  readonly sheet: string;
}

/**
 * The largest clear strip over the full width or height of a sheet, measured on its cut lines: from one spacing beyond the
 * outermost of them to the edge of the sheet. Of a remnant none: what is left of it is no clean strip.
 */
export function offcutOf(sheet: Sheet): SheetOffcut | null {
  const { name, width, height, spacing, remnant } = sheet;
  if (remnant) return null;
  const boxes = sheet.operations
    .filter(({ layer }) => layer === 'cut-outside')
    .flatMap(({ paths }) => paths.map(({ path }) => outerBox(path.vertices)));
  const across = clearStretch(
    boxes.map(({ left, right }) => [left - spacing, right + spacing] as const),
    0,
    width,
  );
  const up = clearStretch(
    boxes.map(({ bottom, top }) => [bottom - spacing, top + spacing] as const),
    0,
    height,
  );
  const upright = { sheet: name, left: across[0], bottom: 0, right: across[1], top: height };
  const level = { sheet: name, left: 0, bottom: up[0], right: width, top: up[1] };
  const size = (b: Box) => (b.right - b.left) * (b.top - b.bottom);
  const largest = size(level) > size(upright) ? level : upright;
  return Math.min(largest.right - largest.left, largest.top - largest.bottom) < WORTH_KEEPING ? null : largest;
}
