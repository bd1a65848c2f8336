import { type Box, boundsOf, boundsOfPoints, flatten, inside, type Path, type Point } from '../geometry/path.js';
import type { FlatPart } from '../model/part.js';

/** Chords may stray so far from an arc; what is kept clear of them is kept clear by so much more, mm. */
const CHORD = 0.02;
/** Rows are tried this far apart, mm, and wherever an edge begins or ends. */
const ROW = 1;
/** Beside the best place of a free stretch others are tried this far apart, mm. */
const STEP = 4;
/** Lengths below this are rounding, mm. */
const NOTHING = 1e-9;
/** A place is nearer to the middle where it is nearer by more than the last bits of the arithmetic. */
const NEARER = 1e-6;

export interface Room {
  readonly width: number;
  readonly height: number;
  /** Solid that is wanted between the block and every edge. */
  readonly clearance: number;
}

export interface Rooms {
  readonly fits: (room: Room) => boolean;
  /** Lower left corner of the place nearest to the middle of the part that is free, and suits. */
  readonly nearest: (room: Room, suits: (place: Point) => boolean) => Point | null;
}

interface Edge {
  readonly a: Point;
  readonly b: Point;
  readonly low: number;
  readonly high: number;
}

/**
 * Looks for room on a part: in the wood, clear of outline, holes and what is engraved already, as near to the middle as
 * it goes.
 *
 * Row by row, the nearest first: every edge that comes into the row forbids a stretch of it, and what lies between two
 * such stretches is free as a whole or in a hole as a whole.
 *
 *     ──────┐    ┌───── edge
 *           └────┘             row ──▶  free │forbidden│ free
 */
export function roomsOn(part: FlatPart, taken: readonly Path[]): Rooms {
  const outline = flatten(part.outline, CHORD);
  const holes = part.holes.map((hole) => flatten(hole, CHORD));
  const blots = taken.map(({ vertices }) => cornersOf(boundsOfPoints(vertices)));
  const bounds = boundsOf(part.outline);
  const edgesIn = byHeight([outline, ...holes, ...blots].flatMap(ring), bounds);
  const levels = [...new Set([...part.holes, part.outline, ...blots].flat().map(({ y }) => Math.round(y * 100) / 100))];
  const isWood = (point: Point) => inside(outline, point) && !holes.some((hole) => inside(hole, point));

  const wantedFor = ({ width, height }: Room): Point => ({
    x: (bounds.left + bounds.right - width) / 2,
    y: (bounds.bottom + bounds.top - height) / 2,
  });

  /** Heights of a block, the nearest to the middle first. */
  function rowsFor(room: Room): readonly number[] {
    const clear = room.clearance + CHORD;
    const { y: wanted } = wantedFor(room);
    const least = bounds.bottom + clear;
    const most = bounds.top - clear - room.height;
    // a hundredth more, since the levels are rounded to one
    const rows = [wanted, ...levels.flatMap((y) => [y + clear + 0.01, y - clear - room.height - 0.01])];
    for (let y = least; y <= most; y += ROW) rows.push(y);
    return rows
      .filter((y) => y >= least - NOTHING && y <= most + NOTHING)
      .sort((p, q) => Math.abs(p - wanted) - Math.abs(q - wanted) || p - q);
  }

  /** From where to where the left side of a block may lie in a row. */
  function stretchesIn(y: number, { width, height, clearance }: Room): readonly Stretch[] {
    const clear = clearance + CHORD;
    return freeStretches(edgesIn, y - clear, y + height + clear, bounds)
      .filter(([from, to]) => to - from >= width + 2 * clear)
      .filter(([from, to]) => isWood({ x: (from + to) / 2, y: y + height / 2 }))
      .map(([from, to]) => [from + clear, to - clear - width]);
  }

  return {
    fits: (room) => rowsFor(room).some((y) => stretchesIn(y, room).length > 0),
    nearest: (room, suits) => {
      const wanted = wantedFor(room);
      let best: Point | null = null;
      let off = Infinity;
      for (const y of rowsFor(room)) {
        if ((y - wanted.y) ** 2 >= off - NEARER) break;
        for (const stretch of stretchesIn(y, room))
          for (const x of along(stretch, wanted.x)) {
            const here = (x - wanted.x) ** 2 + (y - wanted.y) ** 2;
            if (here >= off - NEARER) break;
            if (!suits({ x, y })) continue;
            best = { x, y };
            off = here;
          }
      }
      return best;
    },
  };
}

type Stretch = readonly [from: number, to: number];

/** Places on a stretch, the nearest to the one that is wanted first. */
function along([first, last]: Stretch, wanted: number): readonly number[] {
  const nearest = Math.min(Math.max(wanted, first), last);
  const places = [nearest, first, last];
  for (let x = first + STEP; x < last; x += STEP) places.push(x);
  return places.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted) || a - b);
}

/** All edges that come into a row, and others near it; some twice. */
type EdgesIn = (low: number, high: number) => readonly Edge[];

/** Height of the shelves on which edges are kept, mm. */
const SHELF = 6;

/** Edges by height, since a row meets few of them. */
function byHeight(edges: readonly Edge[], { bottom, top }: Box): EdgesIn {
  const last = Math.max(0, Math.floor((top - bottom) / SHELF));
  const shelfAt = (y: number) => Math.min(last, Math.max(0, Math.floor((y - bottom) / SHELF)));
  const shelves = Array.from({ length: last + 1 }, (): Edge[] => []);
  for (const edge of edges)
    for (let k = shelfAt(edge.low); k <= shelfAt(edge.high); k++) (shelves[k] as Edge[]).push(edge);
  return (low, high) => {
    const [first, end] = [shelfAt(low), shelfAt(high)];
    return first === end ? (shelves[first] as Edge[]) : shelves.slice(first, end + 1).flat();
  };
}

/** What no edge comes into of a row, from the left of the part to its right. */
function freeStretches(edgesIn: EdgesIn, low: number, high: number, { left, right }: Box): readonly Stretch[] {
  const met: [number, number][] = [];
  for (const { a, b, low: from, high: to } of edgesIn(low, high)) {
    if (to <= low + NOTHING || from >= high - NOTHING) continue;
    const rise = b.y - a.y;
    if (Math.abs(rise) < NOTHING) {
      met.push(a.x < b.x ? [a.x, b.x] : [b.x, a.x]);
      continue;
    }
    const p = a.x + ((b.x - a.x) * (Math.max(low, from) - a.y)) / rise;
    const q = a.x + ((b.x - a.x) * (Math.min(high, to) - a.y)) / rise;
    met.push(p < q ? [p, q] : [q, p]);
  }
  met.sort((p, q) => p[0] - q[0]);
  const free: Stretch[] = [];
  let begin = left;
  for (const [from, to] of met) {
    if (from > begin + NOTHING) free.push([begin, from]);
    begin = Math.max(begin, to);
  }
  if (right > begin + NOTHING) free.push([begin, right]);
  return free;
}

const ring = (points: readonly Point[]): readonly Edge[] =>
  points.map((a, i) => {
    const b = points[(i + 1) % points.length] as Point;
    return { a, b, low: Math.min(a.y, b.y), high: Math.max(a.y, b.y) };
  });

const cornersOf = ({ left, bottom, right, top }: Box): readonly Point[] => [
  { x: left, y: bottom },
  { x: right, y: bottom },
  { x: right, y: top },
  { x: left, y: top },
];
