import { boundsOfPoints, type Point } from './path.js';

const GRID = 24;

/** Rooms are told to a nanometre: engines differ in the last digits of sines, and must agree which of two equals is first. */
const STEP = 1e-6;

/** A place in the material and how far the nearest edge is. */
export interface Room {
  readonly at: Point;
  readonly room: number;
}

/**
 * The points of a coarse grid that lie in the material, those farthest from every edge first: places for a mark.
 *
 * @param loops outline and holes as chords
 */
export function roomsIn(loops: readonly (readonly Point[])[]): readonly Room[] {
  const { left, right, bottom, top } = boundsOfPoints(loops[0] ?? []);
  const rooms: Room[] = [];
  for (let i = 1; i < GRID; i++) {
    for (let j = 1; j < GRID; j++) {
      const at = { x: left + ((right - left) * i) / GRID, y: bottom + ((top - bottom) * j) / GRID };
      const room = STEP * Math.round(depthIn(loops, at) / STEP);
      if (room > 0) rooms.push({ at, room });
    }
  }
  // the sort is stable, so that of equals the first stays first
  return rooms.sort((a, b) => b.room - a.room);
}

/** Distance of a point to the nearest edge, 0 outside the material. */
function depthIn(loops: readonly (readonly Point[])[], p: Point): number {
  let within = false;
  let least = Infinity;
  for (const loop of loops) {
    loop.forEach((a, i) => {
      const b = loop[(i + 1) % loop.length] as Point;
      if (a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) within = !within;
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const t = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
      const [ex, ey] = [a.x + t * dx - p.x, a.y + t * dy - p.y];
      least = Math.min(least, ex * ex + ey * ey);
    });
  }
  return within ? Math.sqrt(least) : 0;
}
