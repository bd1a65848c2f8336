import type { Part, Placement } from '../model/part.js';
import { boxesOf, type Extent, type PlacedBox, slidBox } from './extent.js';

/** One piece of wood, or one bought thing, in one of its places. */
export interface Piece {
  /** The part's id, and where it has several places the number of this one: `F5#2`. */
  readonly key: string;
  readonly part: Part;
  readonly placement: Placement;
  /** The upright box round it, at the closest station. */
  readonly extent: Extent;
  /** Whether it slides along +z with the rear standard. */
  readonly slides: boolean;
}

/** Every piece in every place, in the order of the parts. */
export const piecesOf = (parts: readonly Part[]): readonly Piece[] =>
  parts.flatMap((part) =>
    boxesOf(part).map(({ placement, extent }, i, all) => ({
      key: all.length === 1 ? part.id : `${part.id}#${i + 1}`,
      part,
      placement,
      extent,
      slides: placement.group !== 'front',
    })),
  );

/** A piece's box with the moving groups slid by `rear`. */
export const boxAt = (piece: PlacedBox, rear: number): Extent => slidBox(piece, rear);
