import { copyRooms, cutRooms, noRooms, ROUNDING, type Rooms } from './rooms.js';
import type { Stance, Window } from './stance.js';

/** A piece to be placed: one of a blank. */
export interface Piece {
  readonly blank: number;
  readonly stances: readonly Stance[];
  /** Pieces of one kind lie in the same ways and have the same windows: changed over they change nothing. */
  readonly kind: number;
  /** Of its cover. */
  readonly area: number;
}

/** Which room is taken: where least is left over to one side, or in all, or farthest left, or lowest. */
export const RULES = 4;
const SIDE = 0;
const AREA = 1;
const LEFT = 2;
const LOW = 3;

/** How a sheet is filled: see the rules. */
export interface Manner {
  /** For all sheets but the last. */
  readonly rule: number;
  /** For windows. */
  readonly windowRule: number;
  /** The last sheet is filled from the left, else from below. */
  readonly fromLeft: boolean;
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
  /** How far the pieces on the last sheet reach from the side from which it is filled. */
  reach: number;
  /** Area of the pieces on the last sheet. */
  onLast: number;
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
}

interface Hole {
  readonly rooms: Rooms;
  host: number;
  window: number;
}

/** Places of one stance that are looked at. */
const MOST_REGIONS = 64;

/**
 * Fills sheets with pieces in a given order, each in the window or else the sheet that suits it best by a rule; the
 * last sheet takes only what no other does, and is filled from one side.
 */
export function filler(pieces: readonly Piece[], spacing: number) {
  const least = Math.min(...pieces.flatMap(({ stances }) => stances.map(narrowSide)));
  const sheets: Rooms[] = [];
  const holes: Hole[] = [];
  let open = 0;
  // the best place found so far for the piece in hand
  let score = Infinity;
  let bestX = 0;
  let bestY = 0;
  let bestStance = 0;
  let bestSpace = 0;
  const regions = new Float64Array(4 * MOST_REGIONS);
  const narrowed = new Float64Array(4 * MOST_REGIONS);
  // largest sides that any window can take: most pieces are larger than all
  return fill;

  function fill(order: ArrayLike<number>, beds: readonly Rooms[], manner: Manner, into: Filling): void {
    while (sheets.length < beds.length) sheets.push(noRooms());
    beds.forEach((bed, i) => {
      copyRooms(bed, sheets[i] as Rooms);
    });
    const last = beds.length - 1;
    open = 0;
    into.left = 0;
    into.reach = 0;
    into.onLast = 0;
    for (let i = 0; i < order.length; i++) {
      const n = order[i] as number;
      const piece = pieces[n] as Piece;
      score = Infinity;
      for (let k = 0; k < open; k++) look((holes[k] as Hole).rooms, piece, manner.windowRule, k);
      if (score < Infinity) {
        const hole = holes[bestSpace] as Hole;
        into.x[n] = bestX + (into.x[hole.host] as number);
        into.y[n] = bestY + (into.y[hole.host] as number);
        into.stance[n] = bestStance;
        into.sheet[n] = into.sheet[hole.host] as number;
        into.host[n] = hole.host;
        into.window[n] = hole.window;
        take(hole.rooms, piece.stances[bestStance] as Stance);
        continue;
      }
      for (let k = 0; k < last; k++) look(sheets[k] as Rooms, piece, manner.rule, k);
      if (score === Infinity) look(sheets[last] as Rooms, piece, manner.fromLeft ? LEFT : LOW, last);
      if (score === Infinity) {
        into.stance[n] = -1;
        into.left += piece.area;
        continue;
      }
      const stance = piece.stances[bestStance] as Stance;
      into.x[n] = bestX;
      into.y[n] = bestY;
      into.stance[n] = bestStance;
      into.sheet[n] = bestSpace;
      into.host[n] = -1;
      take(sheets[bestSpace] as Rooms, stance);
      if (bestSpace === last) {
        into.onLast += piece.area;
        into.reach = Math.max(into.reach, manner.fromLeft ? bestX + stance.width : bestY + stance.height);
      }
      for (const window of stance.windows) openHole(n, window);
    }
  }

  function openHole(host: number, { window, rooms }: Window): void {
    let hole = holes[open];
    if (hole === undefined) {
      hole = { rooms: noRooms(), host, window };
      holes.push(hole);
    }
    hole.host = host;
    hole.window = window;
    const target = hole.rooms;
    for (let i = 0; i < rooms.length; i++) target.edges[i] = rooms[i] as number;
    target.count = rooms.length / 4;
    open++;
  }

  function take(rooms: Rooms, { cover }: Stance): void {
    for (let i = 0; i < cover.length; i += 4) {
      cutRooms(
        rooms,
        bestX + (cover[i] as number) - spacing,
        bestY + (cover[i + 1] as number) - spacing,
        bestX + (cover[i + 2] as number) + spacing,
        bestY + (cover[i + 3] as number) + spacing,
        least,
      );
    }
  }

  function look({ count, edges }: Rooms, { stances }: Piece, rule: number, space: number): void {
    if (count === 0) return;
    for (let s = 0; s < stances.length; s++) {
      const { cover, width, height } = stances[s] as Stance;
      if (cover.length > 4) {
        lookInto(count, edges, stances[s] as Stance, rule, space, s);
        continue;
      }
      for (let i = 0; i < 4 * count; i += 4) {
        const left = edges[i] as number;
        const spareX = (edges[i + 2] as number) - left - width;
        if (spareX < -ROUNDING) continue;
        const bottom = edges[i + 1] as number;
        const spareY = (edges[i + 3] as number) - bottom - height;
        if (spareY < -ROUNDING) continue;
        weigh(rule, left, bottom, spareX, spareY, width, height, space, s);
      }
    }
  }

  /** Where a cover of several rectangles fits: where each of them lies in some room. */
  function lookInto(
    count: number,
    edges: Float64Array,
    { cover, width, height }: Stance,
    rule: number,
    space: number,
    s: number,
  ): void {
    let found = 0;
    for (let c = 0; c < cover.length; c += 4) {
      const [cl, cb, cr, ct] = [
        cover[c] as number,
        cover[c + 1] as number,
        cover[c + 2] as number,
        cover[c + 3] as number,
      ];
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
      for (let k = 0; k < 4 * next; k++) regions[k] = narrowed[k] as number;
      found = next;
      if (found === 0) return;
    }
    for (let k = 0; k < 4 * found; k += 4) {
      const [l, b] = [regions[k] as number, regions[k + 1] as number];
      weigh(rule, l, b, (regions[k + 2] as number) - l, (regions[k + 3] as number) - b, width, height, space, s);
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
    space: number,
    stance: number,
  ): void {
    let value: number;
    if (rule === SIDE) value = Math.min(spareX, spareY) + 1e-4 * Math.max(spareX, spareY);
    else if (rule === AREA) value = (spareX + width) * (spareY + height) - width * height;
    else if (rule === LEFT) value = (x + width) * 1e3 + y + height;
    else value = (y + height) * 1e3 + x + width;
    // an earlier sheet first where places are taken by their distance from a side
    if (rule === LEFT || rule === LOW) value += space * 1e8;
    if (value >= score - ROUNDING) return;
    score = value;
    bestX = x;
    bestY = y;
    bestStance = stance;
    bestSpace = space;
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
