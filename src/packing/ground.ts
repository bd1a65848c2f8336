import { type Box, boundsOfPoints } from '../geometry/path.js';
import type { Piece } from './pieces.js';
import { type Rooms, roomsOf } from './rooms.js';
import type { Bed, Ring } from './shapes.js';
import { roomsWithin } from './silhouette.js';

/** A bed as the search sees it. */
export interface Ground {
  readonly rooms: Rooms;
  readonly box: Box;
  /** Holes taken off, mm². */
  readonly area: number;
  readonly cost: number;
  readonly count: number;
}

export function groundOf({ outline, holes, cost, count }: Bed, pieces: readonly Piece[]): Ground {
  const narrowest = Math.min(...pieces.flatMap(({ stances }) => stances.map((s) => Math.min(s.width, s.height))));
  const rooms = roomsWithin(outline, holes, narrowest / 4);
  return {
    rooms: roomsOf(rooms.flatMap(({ left, bottom, right, top }) => [left, bottom, right, top])),
    box: boundsOfPoints(outline),
    area: holes.reduce((rest, hole) => rest - ringArea(hole), ringArea(outline)),
    cost,
    count,
  };
}

/** A bed of which only what lies to the left of and below these may be covered. */
export function clipped(ground: Ground, to: { readonly right: number; readonly top: number }): Ground {
  const { count, edges } = ground.rooms;
  const rooms: number[] = [];
  for (let i = 0; i < 4 * count; i += 4) {
    const [left, bottom] = [edges[i] as number, edges[i + 1] as number];
    const right = Math.min(to.right, edges[i + 2] as number);
    const top = Math.min(to.top, edges[i + 3] as number);
    if (right > left && top > bottom) rooms.push(left, bottom, right, top);
  }
  return { ...ground, rooms: roomsOf(rooms) };
}

/** Either way round, mm². */
export function ringArea(ring: Ring): number {
  let twice = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] as Ring[number];
    twice += a.x * b.y - b.x * a.y;
  });
  return Math.abs(twice) / 2;
}
