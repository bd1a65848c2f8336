import { grown, without } from '../geometry/clip.js';
import { area, boundsOfPoints, inside, type Point, polygon } from '../geometry/path.js';
import { rectangle } from '../geometry/shapes.js';
import type { Remnant } from '../model/remnant.js';
import type { Bed, Ring } from '../packing/shapes.js';

/** A kind of sheet that is to be had; its face grain runs along its width. */
export interface SheetStock {
  readonly material: string;
  readonly thickness: number;
  /** Of a remnant, the rectangle round it. */
  readonly sheet: { readonly width: number; readonly height: number };
  /** How many there are; as many as are needed where it is not said. */
  readonly count?: number | null;
  /** Used before what does not say so, whether that saves a sheet or not. */
  readonly first?: boolean;
  readonly remnant?: SheetRemnant | null;
}

/** A piece that is left of an earlier job; its file tells it from others. */
export interface SheetRemnant extends Remnant {
  readonly file: string;
}

/**
 * Of its area, what wood at hand costs beside a sheet that must be bought: it is used where that saves one, though it be
 * several pieces for one sheet, and else it stays whole for another job. A choice of ours.
 */
const AT_HAND = 0.1;

/** Whether more of it are bought as they are needed. */
export const isBought = ({ count, remnant }: SheetStock): boolean => (count ?? null) === null && !remnant;

/** Of an area, beside the same area of a sheet that is bought. */
export const priceOf = (stock: SheetStock): number => (isBought(stock) ? 1 : AT_HAND);

/** What of a sheet parts may lie on: one bed, or where holes divide a remnant, one for each piece of it. */
export function bedsOf(stock: SheetStock, margin: number): readonly Bed[] {
  const { sheet, remnant, count } = stock;
  const price = (size: number) => size * priceOf(stock);
  if (remnant) return usableOf(remnant, margin).map((bed) => ({ ...bed, count: 1, cost: price(netArea(bed)) }));
  const [right, top] = [sheet.width - margin, sheet.height - margin];
  if (right <= margin || top <= margin) return [];
  const outline = [{ x: margin, y: margin }, { x: right, y: margin }, { x: right, y: top }, { x: margin, y: top }]; // biome-ignore format: one line
  return [{ outline, holes: [], count: count ?? Infinity, cost: price(ringArea(outline)) }];
}

/** The same as one bed for each sheet, for who counts sheets: of a remnant that is divided, the rectangle round it all. */
export function wholeBedOf(stock: SheetStock, margin: number): readonly Bed[] {
  const beds = bedsOf(stock, margin);
  const [bed, second] = beds;
  if (bed === undefined || second === undefined) return beds;
  const round = boundsOfPoints(beds.flatMap(({ outline }) => outline));
  return [{ ...bed, outline: rectangle(round).map(({ x, y }) => ({ x, y })), holes: [] }];
}

/** The wood of a sheet. */
export const woodOf = ({ sheet, remnant }: SheetStock): number =>
  remnant ? netArea(remnant) : sheet.width * sheet.height;

/** Pieces of a sheet with holes that keep so far away from its edge and from them, largest first. */
export function usableOf(
  { outline, holes }: Pick<Remnant, 'outline' | 'holes'>,
  margin: number,
): readonly Pick<Bed, 'outline' | 'holes'>[] {
  const rings = grown(without([outline], holes), -margin, { corners: 'mitred' }).filter((ring) => ring.length > 2);
  const pieces = rings.filter((ring) => ringArea(ring) > 0);
  const cut = rings.filter((ring) => ringArea(ring) < 0);
  return pieces
    .map((piece) => ({ outline: piece, holes: cut.filter((hole) => liesIn(hole, piece, pieces)) }))
    .sort((a, b) => netArea(b) - netArea(a));
}

/** Whether of all pieces round it, this is the one right round it. */
function liesIn(hole: Ring, piece: Ring, pieces: readonly Ring[]): boolean {
  const [corner] = hole;
  if (corner === undefined || !inside(piece, corner)) return false;
  return pieces.every((other) => other === piece || !inside(other, corner) || ringArea(other) > ringArea(piece));
}

const netArea = ({ outline, holes }: { readonly outline: Ring; readonly holes: readonly Ring[] }): number =>
  holes.reduce((sum, hole) => sum + ringArea(hole), ringArea(outline));

/** Positive where it runs anticlockwise. */
const ringArea = (ring: readonly Point[]): number => area(polygon(ring.map(({ x, y }) => [x, y])));
