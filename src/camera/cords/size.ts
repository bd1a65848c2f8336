import type { Stance } from '../loose.js';

/** Two elastic cords from hook to hook over whatever is in: they serve any thickness. */
export interface Cords {
  /** z of the holder seat at the closest station. */
  readonly seat: number;
  /** |y| of the hooks, with the open end up. */
  readonly hookY: number;
  /** Length that lies flat: across the narrowest thing. */
  readonly across: number;
  /** Side of the back, for the length to buy. */
  readonly backSide: number;
  /** Rear faces of what the cords lie on, in each set-up, and the ids of those things. */
  readonly stances: readonly Stance[];
  readonly over: readonly string[];
}
