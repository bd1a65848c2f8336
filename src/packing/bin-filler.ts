import { freeRooms } from './free-rooms.js';

/** Every rectangle that must be packed, one by one; lengths in whole grid lines. */
export interface Pieces {
  readonly width: Float64Array;
  readonly height: Float64Array;
  readonly turns: boolean;
}

/** Fills one bin at a time from a row of pieces. All of it is kept in the same arrays, filling after filling. */
export interface BinFiller {
  /** The row: what is to come first stands first. After a filling, what found no room, in the same order. */
  readonly row: Int32Array;
  /** How many stand in the row. */
  waiting: number;
  /** Where each piece was put when it was last put somewhere. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly turned: Uint8Array;
  /**
   * Puts each piece of the row in turn where one of the `RULES` has it, if there is room.
   * @param limit given up where the costs of those that found no room come to more
   * @returns the pieces that lie in the bin; null where it was given up
   */
  fill(rule: number, limit: number, costs: Float64Array): readonly number[] | null;
}

export function binFiller({ width, height, turns }: Pieces, binWidth: number, binHeight: number): BinFiller {
  const all = width.length;
  const rooms = freeRooms(binWidth, binHeight, all);
  const { row, x, y, turned } = {
    row: new Int32Array(all),
    x: new Float64Array(all),
    y: new Float64Array(all),
    turned: new Uint8Array(all),
  };
  const self: BinFiller = { row, waiting: 0, x, y, turned, fill };
  return self;

  function fill(rule: number, limit: number, costs: Float64Array): readonly number[] | null {
    let narrowest = Infinity;
    let lowest = Infinity;
    for (let i = 0; i < self.waiting; i++) {
      const piece = row[i] as number;
      narrowest = Math.min(narrowest, width[piece] as number);
      lowest = Math.min(lowest, height[piece] as number);
    }
    if (turns) narrowest = lowest = Math.min(narrowest, lowest);
    rooms.empty(narrowest, lowest);
    const taken: number[] = [];
    let left = 0;
    let lost = 0;
    for (let i = 0; i < self.waiting; i++) {
      const piece = row[i] as number;
      if (rooms.put(width[piece] as number, height[piece] as number, turns, rule)) {
        x[piece] = rooms.x;
        y[piece] = rooms.y;
        turned[piece] = rooms.turned ? 1 : 0;
        taken.push(piece);
        continue;
      }
      lost += costs[piece] as number;
      if (lost > limit) return null;
      row[left++] = piece;
    }
    self.waiting = left;
    return taken;
  }
}
