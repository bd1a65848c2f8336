import type { Box } from '../../geometry/path.js';
import { across, frame, type Matrix4 } from '../../geometry/placement.js';
import type { Cap } from './cap.js';
import type { Funnel } from './funnel.js';
import type { TankFittingsGiven } from './given.js';
import { GLUE, type Insert } from './insert.js';

/** Corner of the block at the chamber's corner, where u and w are 0, in the holder's frame; its v is 0 in the middle of the notch. */
function cornerOf({ chamber, notch }: TankFittingsGiven, { corner, wall }: Insert): readonly [number, number, number] {
  const x = chamber.halfWidth + wall;
  return [corner === 'right' ? x : -x, chamber.end, (notch.from + notch.to) / 2];
}

/** What is notched out of each ply of the end wall for an insert, in the holder's x and y: from the chamber to the outside. */
export function notchFor(given: TankFittingsGiven, insert: Insert): Box {
  const [x] = cornerOf(given, insert);
  const [outer, inner] = [Math.abs(x) + GLUE, Math.abs(x) - insert.width - GLUE];
  const [left, right] = insert.corner === 'right' ? [inner, outer] : [-outer, -inner];
  return { left, bottom: given.chamber.end, right, top: given.openEnd };
}

/** From an insert's own frame to that of the holder. */
export function placeInsert(given: TankFittingsGiven, insert: Insert): Matrix4 {
  const [x, y, z] = cornerOf(given, insert);
  const { u, v } = insert.middle;
  return insert.corner === 'right'
    ? frame([-1, 0, 0], [0, 0, 1], [0, 1, 0], [x - u, y, z + v])
    : frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [x + u, y, z - v]);
}

/**
 * From the cap's own frame to that of the insert that it shuts: turned by so much (rad) from where it goes on, and lifted. Shut
 * it stands square.
 */
export function placeCap({ axis, middle, height }: Insert, cap: Cap, { turned = cap.turn, lifted = 0 } = {}): Matrix4 {
  const back = turned - cap.turn;
  const [cos, sin] = [Math.cos(back), Math.sin(back)];
  const top = height.high + cap.above + lifted;
  return frame([cos, -sin, 0], [-sin, -cos, 0], [0, 0, -1], [axis.u - middle.u, axis.v - middle.v, top]);
}

/** From the funnel's own frame to that of the insert on which it sits. */
export function placeFunnel({ axis, middle, height, neck }: Insert, funnel: Funnel): Matrix4 {
  const top = height.high + neck.rim + funnel.height - funnel.seat.depth / 2;
  return frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [axis.u - middle.u, axis.v - middle.v, top]);
}

/** Where the gasket of a shut cap lies, in the frame of the insert. */
export const placeGasket = ({ axis, middle, height, neck }: Insert): Matrix4 =>
  across(axis.u - middle.u, axis.v - middle.v, height.high + neck.rim);
