import type { Filling } from './fill.js';
import type { Piece } from './pieces.js';
import type { Random } from './random.js';

/** How often a change takes a piece of the last sheet forwards, and how often it mixes the pieces of two sheets. */
const FORWARDS = 0.2;
const MIXED = 0.3;
/** How often, else, the change is among the pieces that lie in no window. */
const BIG = 0.7;

/** In which order pieces are first tried: what no window takes, then the rest, the largest of each first. */
export function startingOrder(pieces: readonly Piece[]): Int32Array {
  const late = ({ nests }: Piece) => (nests ? 1 : 0);
  return Int32Array.from(pieces.keys()).sort((a, b) => {
    const [one, other] = [pieces[a] as Piece, pieces[b] as Piece];
    return late(one) - late(other) || other.area - one.area || a - b;
  });
}

/** The same order, but what no window takes first. */
export const bigFirst = (order: Int32Array, pieces: readonly Piece[]): Int32Array =>
  Int32Array.from([
    ...order.filter((n) => !(pieces[n] as Piece).nests),
    ...order.filter((n) => (pieces[n] as Piece).nests),
  ]);

/**
 * Changes an order in place, a little: two pieces changed over, one put elsewhere, one of the last sheet put before
 * others, or those of two sheets mixed. What no window takes stays before the rest.
 */
export function shuffler(pieces: readonly Piece[], random: Random) {
  const split = pieces.filter(({ nests }) => !nests).length;
  const below = (n: number): number => Math.floor(random() * n);
  const kindAt = (order: Int32Array, i: number): number => (pieces[order[i] as number] as Piece).kind;

  /** @param filling how the pieces lay in the order before */
  return (order: Int32Array, filling: Filling, sheets: number): void => {
    const choice = random();
    if (sheets > 1 && choice < FORWARDS && forwards(order, filling, sheets - 1)) return;
    if (sheets > 1 && choice > 1 - MIXED) mixTwo(order, filling, below(sheets), below(sheets));
    else changeOne(order);
  };

  function changeOne(order: Int32Array): void {
    const bigs = split > 1 && (order.length - split < 2 || random() < BIG);
    const [from, count] = bigs ? [0, split] : [split, order.length - split];
    if (count < 2) return;
    // pieces of one kind changed over change nothing: another pair is looked for, but not for ever
    for (let tries = 0; tries < 8; tries++) {
      const [a, b] = [from + below(count), from + below(count)];
      if (kindAt(order, a) === kindAt(order, b)) continue;
      if (random() < 0.5) swap(order, a, b);
      else move(order, a, b);
      return;
    }
  }

  function forwards(order: Int32Array, { sheet, host, stance }: Filling, last: number): boolean {
    const start = below(order.length);
    for (let k = 0; k < order.length; k++) {
      const at = (start + k) % order.length;
      const n = order[at] as number;
      if ((stance[n] as number) >= 0 && (sheet[n] !== last || (host[n] as number) >= 0)) continue;
      const from = at < split ? 0 : split;
      move(order, at, from + below(at - from + 1));
      return true;
    }
    return false;
  }

  function mixTwo(order: Int32Array, { sheet }: Filling, one: number, other: number): void {
    const at: number[] = [];
    for (let i = 0; i < split; i++) {
      const on = sheet[order[i] as number];
      if (on === one || on === other) at.push(i);
    }
    for (let i = at.length - 1; i > 0; i--) {
      if (random() < 0.5) swap(order, at[i] as number, at[below(i + 1)] as number);
    }
  }
}

function swap(order: Int32Array, a: number, b: number): void {
  const moved = order[a] as number;
  order[a] = order[b] as number;
  order[b] = moved;
}

function move(order: Int32Array, from: number, to: number): void {
  const moved = order[from] as number;
  const step = from < to ? 1 : -1;
  for (let i = from; i !== to; i += step) order[i] = order[i + step] as number;
  order[to] = moved;
}
