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

/** Either way round, mm². */
export function ringArea(ring: Ring): number {
  let twice = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] as Ring[number];
    twice += a.x * b.y - b.x * a.y;
  });
  return Math.abs(twice) / 2;
}
