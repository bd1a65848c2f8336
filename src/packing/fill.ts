import type { Ground } from './ground.js';
import type { Piece } from './pieces.js';
import { copyRooms, cutRooms, noRooms, ROUNDING, type Rooms } from './rooms.js';
import type { Stance, Window } from './stance.js';

/** Which room is taken: where least is left over to one side, or in all, or farthest left, or lowest. */
export const RULES = 4;
const SIDE = 0;
const AREA = 1;
const LEFT = 2;
const LOW = 3;

/** How sheets are filled: see the rules. */
export interface Manner {
  readonly rule: number;
  /** For windows. */
  readonly windowRule: number;
  /** The last sheet takes only what no other does, from the left or from below; or it is filled as the others are. */
  readonly last: 'left' | 'low' | 'alike';
}

/** Where pieces lie, by piece. */
export interface Filling {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Index into the piece's stances; -1 where it lies nowhere. */
  readonly stance: Int16Array;
  /** Index into the sheets; of its host's window where it is nested. */
  readonly sheet: Int16Array;
  /** The piece in whose window it lies, or -1. */
  readonly host: Int16Array;
  /** Index into the windows of the host's stance. */
  readonly window: Int16Array;
  /** Area of pieces that found no place. */
  left: number;
  /** How far the pieces on the last sheet reach from the side from which it is filled, as a share of it. */
  reach: number;
  /** Area of the pieces on the last sheet. */
  onLast: number;
  /** What the filling took to make, in places that were looked at. */
  work: number;
}

export function noFilling(pieces: number): Filling {
  const small = () => new Int16Array(pieces);
  return {
    x: new Float64Array(pieces),
    y: new Float64Array(pieces),
    stance: small(),
    sheet: small(),
    host: small(),
    window: small(),
    left: 0,
    reach: 0,
    onLast: 0,
    work: 0,
  };
}

export function copyFilling(from: Filling, to: Filling): void {
  to.x.set(from.x);
  to.y.set(from.y);
  to.stance.set(from.stance);
  to.sheet.set(from.sheet);
  to.host.set(from.host);
  to.window.set(from.window);
  to.left = from.left;
  to.reach = from.reach;
  to.onLast = from.onLast;
  to.work = from.work;
}

/** What pieces on the last sheet count beside the strip that they take: so a search comes nearer to a shorter strip. */
const LOADED = 0.2;

/**
 * What a search has to bring down, in sheets: the strip that is taken of the last one, a little for what lies on it, and
 * more than a sheet for what lies nowhere. It only grows while sheets are filled.
 */
export const priceOf = ({ left, reach, onLast }: Filling, { area }: Ground): number =>
  reach + (LOADED * onLast) / area + (left > 0 ? 1 + left / area : 0);

/** A sheet or a window while it is filled. */
interface Space {
  readonly rooms: Rooms;
  /** What fits snugly as long as nothing lies in the window. */
  snug: Window['snug'];
  /** Changes whenever the rooms do; never the same again. */
  state: number;
  /** The window's piece, and its index into the windows of that piece's stance. */
  host: number;
  window: number;
  /** By kind of piece: the best place, and for which state it was found. */
  readonly seen: Float64Array;
  readonly score: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly stance: Int16Array;
}

/** Places of one stance that are looked at. */
const MOST_REGIONS = 64;

/**
 * Fills sheets with pieces in a given order, each in the window or else the sheet that suits it best by a rule; the
 * last sheet takes only what no other does, and is filled from one side.
 */
export function filler(pieces: readonly Piece[], spacing: number) {
  const least = Math.min(...pieces.flatMap(({ stances }) => stances.map(narrowSide)));
  const kinds = 1 + Math.max(...pieces.map(({ kind }) => kind));
  const sheets: Space[] = [];
  const holes: Space[] = [];
  let open = 0;
  let states = 0;
  let work = 0;
  // the best place found so far in the space that is looked at
  let score = Infinity;
  let bestX = 0;
  let bestY = 0;
  let bestStance = 0;
  const regions = new Float64Array(4 * MOST_REGIONS);
  const narrowed = new Float64Array(4 * MOST_REGIONS);
  return fill;

  /**
   * @param limit broken off where the filling becomes dearer than this: see `priceOf`
   * @returns whether it was finished
   */
  function fill(
    order: ArrayLike<number>,
    grounds: readonly Ground[],
    manner: Manner,
    into: Filling,
    limit = Infinity,
  ): boolean {
    for (let i = 0; i < grounds.length; i++) {
      const sheet = spaceAt(sheets, i);
      copyRooms((grounds[i] as Ground).rooms, sheet.rooms);
      sheet.state = ++states;
    }
    const last = grounds.length - 1;
    const lastGround = grounds[last] as Ground;
    const { left, bottom, right, top } = lastGround.box;
    const alike = manner.last === 'alike';
    const fromLeft = manner.last === 'left';
    const others = alike ? grounds.length : last;
    const [from, side] = fromLeft ? [left, right - left] : [bottom, top - bottom];
    open = 0;
    // what goes before and after, whatever is looked at
    work = 100 + 4 * order.length;
    into.left = 0;
    into.onLast = 0;
    into.reach = 0;
    for (let i = 0; i < order.length; i++) {
      const n = order[i] as number;
      const piece = pieces[n] as Piece;
      if (piece.nests && open > 0) {
        const k = bestOf(holes, open, piece, manner.windowRule);
        if (k >= 0) {
          const hole = holes[k] as Space;
          const { host } = hole;
          put(piece, n, hole, into);
          into.x[n] = (into.x[n] as number) + (into.x[host] as number);
          into.y[n] = (into.y[n] as number) + (into.y[host] as number);
          into.sheet[n] = into.sheet[host] as number;
          into.host[n] = host;
          into.window[n] = hole.window;
          continue;
        }
      }
      let k = bestOf(sheets, others, piece, manner.rule);
      if (k < 0 && !alike && look(sheets[last] as Space, piece, fromLeft ? LEFT : LOW) < Infinity) k = last;
      if (k < 0) {
        into.stance[n] = -1;
        into.left += piece.area;
        if (priceOf(into, lastGround) > limit) return broken(into);
        continue;
      }
      const stance = put(piece, n, sheets[k] as Space, into);
      into.sheet[n] = k;
      into.host[n] = -1;
      if (k === last && !alike) {
        into.onLast += piece.area;
        const end = fromLeft ? (into.x[n] as number) + stance.width : (into.y[n] as number) + stance.height;
        if (end - from > into.reach * side) into.reach = (end - from) / side;
        if (priceOf(into, lastGround) > limit) return broken(into);
      }
      for (let w = 0; w < stance.windows.length; w++) openHole(n, stance.windows[w] as Window);
    }
    into.work = work;
    return true;
  }

  function broken(into: Filling): false {
    into.work = work;
    return false;
  }

  function spaceAt(spaces: Space[], i: number): Space {
    while (spaces.length <= i) {
      spaces.push({
        rooms: noRooms(),
        snug: undefined,
        state: 0,
        host: -1,
        window: -1,
        seen: new Float64Array(kinds),
        score: new Float64Array(kinds),
        x: new Float64Array(kinds),
        y: new Float64Array(kinds),
        stance: new Int16Array(kinds),
      });
    }
    return spaces[i] as Space;
  }

  function openHole(host: number, { window, rooms, snug }: Window): void {
    if (rooms.length === 0 && snug === undefined) return;
    const hole = spaceAt(holes, open);
    open++;
    hole.host = host;
    hole.window = window;
    hole.snug = snug;
    hole.state = ++states;
    const { edges } = hole.rooms;
    for (let i = 0; i < rooms.length; i++) edges[i] = rooms[i] as number;
    hole.rooms.count = rooms.length / 4;
  }

  /** Which of the first so many spaces has the best place for a piece, -1 for none. */
  function bestOf(spaces: readonly Space[], count: number, piece: Piece, rule: number): number {
    let best = -1;
    let least = Infinity;
    for (let k = 0; k < count; k++) {
      // an earlier sheet first where places are taken by their distance from a side
      const far = rule === LEFT || rule === LOW ? 1e9 * k : 0;
      const value = look(spaces[k] as Space, piece, rule) + far;
      if (value >= least - ROUNDING) continue;
      best = k;
      least = value;
    }
    return best;
  }

  /** How good the best place is that a space has for a piece, remembered for the next of its kind. */
  function look(space: Space, piece: Piece, rule: number): number {
    const { kind } = piece;
    if (space.seen[kind] === space.state) return space.score[kind] as number;
    score = Infinity;
    search(space.rooms, piece, rule);
    const snug = score === Infinity && space.snug !== undefined ? space.snug.get(kind) : undefined;
    if (snug !== undefined) {
      score = 0;
      bestX = snug.x;
      bestY = snug.y;
      bestStance = snug.stance;
    }
    space.seen[kind] = space.state;
    space.score[kind] = score;
    space.x[kind] = bestX;
    space.y[kind] = bestY;
    space.stance[kind] = bestStance;
    return score;
  }

  /** Puts a piece where the space was last found to have its best place. */
  function put({ kind, stances }: Piece, n: number, space: Space, into: Filling): Stance {
    const stance = space.stance[kind] as number;
    const x = space.x[kind] as number;
    const y = space.y[kind] as number;
    into.x[n] = x;
    into.y[n] = y;
    into.stance[n] = stance;
    take(space.rooms, stances[stance] as Stance, x, y);
    space.snug = undefined;
    space.state = ++states;
    return stances[stance] as Stance;
  }

  function take(rooms: Rooms, { cover }: Stance, x: number, y: number): void {
    for (let i = 0; i < cover.length; i += 4) {
      cutRooms(
        rooms,
        x + (cover[i] as number) - spacing,
        y + (cover[i + 1] as number) - spacing,
        x + (cover[i + 2] as number) + spacing,
        y + (cover[i + 3] as number) + spacing,
        least,
      );
    }
  }

  /**
   * Looks at every place for the rectangle round a piece. Pieces hook into each other only where that finds none or
   * they are large: looking for that takes long, and small ones are many.
   */
  function search({ count, edges }: Rooms, { stances, nests }: Piece, rule: number): void {
    work += 4 + count * stances.length;
    for (let s = 0; s < stances.length; s++) {
      const { width, height } = stances[s] as Stance;
      for (let i = 0; i < 4 * count; i += 4) {
        const left = edges[i] as number;
        const spareX = (edges[i + 2] as number) - left - width;
        if (spareX < -ROUNDING) continue;
        const bottom = edges[i + 1] as number;
        const spareY = (edges[i + 3] as number) - bottom - height;
        if (spareY < -ROUNDING) continue;
        weigh(rule, left, bottom, spareX, spareY, width, height, s);
      }
    }
    if (nests && score < Infinity) return;
    for (let s = 0; s < stances.length; s++) {
      const stance = stances[s] as Stance;
      if (stance.cover.length > 4) searchCover(count, edges, stance, rule, s);
    }
  }

  /** Where a cover of several rectangles fits: where each of them lies in some room. */
  function searchCover(
    count: number,
    edges: Float64Array,
    { cover, width, height }: Stance,
    rule: number,
    s: number,
  ): void {
    let found = 0;
    for (let c = 0; c < cover.length; c += 4) {
      const cl = cover[c] as number;
      const cb = cover[c + 1] as number;
      const cr = cover[c + 2] as number;
      const ct = cover[c + 3] as number;
      let next = 0;
      for (let i = 0; i < 4 * count; i += 4) {
        const left = (edges[i] as number) - cl;
        const bottom = (edges[i + 1] as number) - cb;
        const right = (edges[i + 2] as number) - cr;
        const top = (edges[i + 3] as number) - ct;
        if (right < left - ROUNDING || top < bottom - ROUNDING) continue;
        if (c === 0) {
          if (next < MOST_REGIONS) next = add(narrowed, next, left, bottom, right, top);
          continue;
        }
        for (let k = 0; k < 4 * found; k += 4) {
          const l = Math.max(left, regions[k] as number);
          const b = Math.max(bottom, regions[k + 1] as number);
          const r = Math.min(right, regions[k + 2] as number);
          const t = Math.min(top, regions[k + 3] as number);
          if (r >= l - ROUNDING && t >= b - ROUNDING && next < MOST_REGIONS) next = add(narrowed, next, l, b, r, t);
        }
      }
      work += next;
      for (let k = 0; k < 4 * next; k++) regions[k] = narrowed[k] as number;
      found = next;
      if (found === 0) return;
    }
    for (let k = 0; k < 4 * found; k += 4) {
      const [l, b] = [regions[k] as number, regions[k + 1] as number];
      weigh(rule, l, b, (regions[k + 2] as number) - l, (regions[k + 3] as number) - b, width, height, s);
    }
  }

  function weigh(
    rule: number,
    x: number,
    y: number,
    spareX: number,
    spareY: number,
    width: number,
    height: number,
    stance: number,
  ): void {
    let value: number;
    if (rule === SIDE) value = Math.min(spareX, spareY) + 1e-4 * Math.max(spareX, spareY);
    else if (rule === AREA) value = (spareX + width) * (spareY + height) - width * height;
    else if (rule === LEFT) value = (x + width) * 1e3 + y + height;
    else value = (y + height) * 1e3 + x + width;
    if (value >= score - ROUNDING) return;
    score = value;
    bestX = x;
    bestY = y;
    bestStance = stance;
  }
}

function add(to: Float64Array, count: number, left: number, bottom: number, right: number, top: number): number {
  to[4 * count] = left;
  to[4 * count + 1] = bottom;
  to[4 * count + 2] = right;
  to[4 * count + 3] = top;
  return count + 1;
}

function narrowSide({ cover }: Stance): number {
  let least = Infinity;
  for (let i = 0; i < cover.length; i += 4) {
    least = Math.min(
      least,
      (cover[i + 2] as number) - (cover[i] as number),
      (cover[i + 3] as number) - (cover[i + 1] as number),
    );
  }
  return least;
}
