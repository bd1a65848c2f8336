import { compose, type Matrix4, quarterTurn, shift } from '../geometry/placement.js';
import { standing } from '../joinery/plate.js';
import type { Group, Placement } from '../model/part.js';

/** Where something loose lies on the holder seat: so far behind it in these set-ups. */
export interface Stance {
  readonly behindSeat: number;
  readonly upright: readonly string[];
  readonly lengthwise: readonly string[];
}

/** A loose thing in all its stances; it turns with the back. */
export const inStances = (group: Group, matrix: Matrix4, stances: readonly Stance[]): readonly Placement[] =>
  stances.flatMap(({ behindSeat, upright, lengthwise }) => {
    const here = compose(shift(0, 0, behindSeat), matrix);
    return [
      ...(upright.length > 0 ? [standing(group, here, upright)] : []),
      ...(lengthwise.length > 0 ? [standing(group, compose(quarterTurn, here), lengthwise)] : []),
    ];
  });
