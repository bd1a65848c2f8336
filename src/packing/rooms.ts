/**
 * The free part of a sheet or window, kept as all its largest upright rectangles; they overlap. A rectangle lies free
 * exactly where it lies in one of them.
 *
 * Four numbers a room in one row of them: left, bottom, right, top. Searches fill sheets tens of thousands of times a
 * second, so nothing is made anew here; a row grows where it must.
 */
export interface Rooms {
  count: number;
  edges: Float64Array;
}

/** Sums of lengths stray by less, and what lies too close by less is no fault, mm. */
export const ROUNDING = 1e-7;

export const noRooms = (): Rooms => ({ count: 0, edges: new Float64Array(4 * 32) });

export function roomsOf(edges: readonly number[]): Rooms {
  return { count: edges.length / 4, edges: Float64Array.from(edges) };
}

export function copyRooms(from: Rooms, to: Rooms): void {
  const length = 4 * from.count;
  if (to.edges.length < length) to.edges = new Float64Array(2 * length);
  const [source, target] = [from.edges, to.edges];
  for (let i = 0; i < length; i++) target[i] = source[i] as number;
  to.count = from.count;
}

/**
 * Takes a rectangle out of the rooms. Each room that it cuts leaves up to four; those are kept that are at least
 * `least` wide and high and do not lie in another.
 */
export function cutRooms(rooms: Rooms, left: number, bottom: number, right: number, top: number, least: number): void {
  const before = rooms.count;
  // four more rooms for each that is cut, at most, are put behind the others first
  if (rooms.edges.length < 20 * before) {
    const more = new Float64Array(40 * before);
    more.set(rooms.edges);
    rooms.edges = more;
  }
  const edges = rooms.edges;
  const [l, b, r, t] = [left + ROUNDING, bottom + ROUNDING, right - ROUNDING, top - ROUNDING];
  let whole = 0;
  let end = 4 * before;
  for (let i = 0; i < 4 * before; i += 4) {
    const rl = edges[i] as number;
    const rb = edges[i + 1] as number;
    const rr = edges[i + 2] as number;
    const rt = edges[i + 3] as number;
    if (l >= rr || r <= rl || b >= rt || t <= rb) {
      if (whole !== i) {
        edges[whole] = rl;
        edges[whole + 1] = rb;
        edges[whole + 2] = rr;
        edges[whole + 3] = rt;
      }
      whole += 4;
      continue;
    }
    const wide = rr - rl >= least;
    const high = rt - rb >= least;
    if (high && left - rl >= least) end = put(edges, end, rl, rb, left, rt);
    if (high && rr - right >= least) end = put(edges, end, right, rb, rr, rt);
    if (wide && bottom - rb >= least) end = put(edges, end, rl, rb, rr, bottom);
    if (wide && rt - top >= least) end = put(edges, end, rl, top, rr, rt);
  }
  // rooms that were not cut lie in no new one, so only the new ones are looked at
  let kept = whole;
  for (let i = 4 * before; i < end; i += 4) {
    const rl = edges[i] as number;
    const rb = edges[i + 1] as number;
    const rr = edges[i + 2] as number;
    const rt = edges[i + 3] as number;
    if (liesIn(edges, 0, kept, rl, rb, rr, rt) || liesIn(edges, i + 4, end, rl, rb, rr, rt)) continue;
    edges[kept] = rl;
    edges[kept + 1] = rb;
    edges[kept + 2] = rr;
    edges[kept + 3] = rt;
    kept += 4;
  }
  rooms.count = kept / 4;
}

function put(edges: Float64Array, at: number, left: number, bottom: number, right: number, top: number): number {
  edges[at] = left;
  edges[at + 1] = bottom;
  edges[at + 2] = right;
  edges[at + 3] = top;
  return at + 4;
}

function liesIn(
  edges: Float64Array,
  from: number,
  to: number,
  left: number,
  bottom: number,
  right: number,
  top: number,
): boolean {
  for (let i = from; i < to; i += 4) {
    if (
      left >= (edges[i] as number) - ROUNDING &&
      right <= (edges[i + 2] as number) + ROUNDING &&
      bottom >= (edges[i + 1] as number) - ROUNDING &&
      top <= (edges[i + 3] as number) + ROUNDING
    )
      return true;
  }
  return false;
}
