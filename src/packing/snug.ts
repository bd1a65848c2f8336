import { boundsOfPoints, inside, type Point } from '../geometry/path.js';
import type { Piece } from './pieces.js';
import { ROUNDING } from './rooms.js';
import type { Blank, Ring } from './shapes.js';
import { cornerOf, type Snug, type Stance, turned, type Window } from './stance.js';

/** Moves that are tried to give a piece more air in a window. */
const MOVES = 24;

/**
 * Looks for pieces that fit into windows of which no rectangle would hold the rectangle round them: a disc in a ring.
 * Each is tried in the middle of the empty window and moved to where it has most air. One pair of piece and window a
 * step.
 *
 * @returns the pieces, with what fits snugly known to their windows
 */
export function* snugPieces(
  pieces: readonly Piece[],
  blanks: readonly Blank[],
  spacing: number,
): Generator<void, readonly Piece[], void> {
  const kinds = new Map(pieces.map((piece) => [piece.kind, piece]));
  const nesting = new Set<number>();
  const stancesOf = new Map<number, readonly Stance[]>();
  for (const host of kinds.values()) {
    const stances: Stance[] = [];
    for (const stance of host.stances) {
      const windows: Window[] = [];
      for (const window of stance.windows) {
        const ring = (blanks[host.blank] as Blank).windows[window.window] as Ring;
        const corner = cornerOf(turned((blanks[host.blank] as Blank).outline, stance.turn));
        const edge = turned(ring, stance.turn).map(({ x, y }) => ({ x: x - corner.x, y: y - corner.y }));
        const snug = new Map<number, Snug>();
        for (const guest of kinds.values()) {
          if (guest.kind === host.kind || !isClose(guest, window, edge, spacing)) continue;
          const found = snugPlace(guest, (blanks[guest.blank] as Blank).outline, edge, spacing);
          if (found !== null) snug.set(guest.kind, found);
          yield;
        }
        for (const kind of snug.keys()) nesting.add(kind);
        windows.push(snug.size > 0 ? { ...window, snug } : window);
      }
      stances.push({ ...stance, windows });
    }
    stancesOf.set(host.kind, stances);
  }
  if (nesting.size === 0) return pieces;
  return pieces.map((piece) => ({
    ...piece,
    // of a kind may be what lies as wide and as high after another turn: each keeps its own
    stances: (stancesOf.get(piece.kind) ?? piece.stances).map((stance, i) => ({
      ...stance,
      turn: (piece.stances[i] as Stance).turn,
    })),
    nests: piece.nests || nesting.has(piece.kind),
  }));
}

/** Whether the rectangle round a piece fits into the one round a window, and into none of the window's rooms. */
function isClose({ stances }: Piece, { rooms }: Window, edge: Ring, spacing: number): boolean {
  const fitting = (wide: number, high: number) =>
    stances.some(({ width, height }) => width <= wide + ROUNDING && height <= high + ROUNDING);
  const all = boundsOfPoints(edge);
  if (!fitting(all.right - all.left - 2 * spacing, all.top - all.bottom - 2 * spacing)) return false;
  for (let i = 0; i < rooms.length; i += 4) {
    const [left, bottom] = [rooms[i] as number, rooms[i + 1] as number];
    if (fitting((rooms[i + 2] as number) - left, (rooms[i + 3] as number) - bottom)) return false;
  }
  return true;
}

function snugPlace({ stances }: Piece, outline: Ring, edge: Ring, spacing: number): Snug | null {
  const all = boundsOfPoints(edge);
  for (const [stance, { turn, width, height }] of stances.entries()) {
    const ring = turned(outline, turn);
    const corner = cornerOf(ring);
    const upright = ring.map(({ x, y }) => ({ x: x - corner.x, y: y - corner.y }));
    let x = (all.left + all.right - width) / 2;
    let y = (all.bottom + all.top - height) / 2;
    let step = Math.max(all.right - all.left - width, all.top - all.bottom - height, spacing) / 4;
    let air = airAt(upright, x, y, edge);
    for (let move = 0; move < MOVES && air < spacing - ROUNDING; move += 4) {
      const ways = [
        [x - step, y],
        [x + step, y],
        [x, y - step],
        [x, y + step],
      ] as const;
      let moved = false;
      for (const [a, b] of ways) {
        const more = airAt(upright, a, b, edge);
        if (more <= air) continue;
        [x, y, air, moved] = [a, b, more, true];
      }
      if (!moved) step /= 2;
    }
    if (air >= spacing - ROUNDING) return { stance, x, y };
  }
  return null;
}

/** Least distance of a piece's outline from the edge of the window in which it lies; less than nothing where it does not. */
function airAt(outline: Ring, x: number, y: number, edge: Ring): number {
  const ring = outline.map((p) => ({ x: p.x + x, y: p.y + y }));
  let least = Infinity;
  let out = 0;
  for (const p of ring) {
    const gap = toRing(p, edge);
    if (!inside(edge, p)) out = Math.max(out, gap);
    least = Math.min(least, gap);
  }
  for (const p of edge) {
    const gap = toRing(p, ring);
    if (inside(ring, p)) out = Math.max(out, gap);
    least = Math.min(least, gap);
  }
  if (out > 0) return -out;
  return cross(ring, edge) ? 0 : least;
}

/** Whether an edge of one ring crosses one of the other. */
function cross(one: Ring, other: Ring): boolean {
  const side = (a: Point, b: Point, c: Point) => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  return one.some((a, i) => {
    const b = one[(i + 1) % one.length] as Point;
    return other.some((c, k) => {
      const d = other[(k + 1) % other.length] as Point;
      return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
    });
  });
}

function toRing(p: Point, ring: Ring): number {
  let least = Infinity;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] as Point;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const along = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
    const [ox, oy] = [p.x - a.x - along * dx, p.y - a.y - along * dy];
    least = Math.min(least, ox * ox + oy * oy);
  });
  return Math.sqrt(least);
}
