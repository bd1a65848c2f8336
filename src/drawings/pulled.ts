import { around } from '../assembly/extent.js';
import type { Piece } from '../assembly/pieces.js';
import type { Point3 } from '../geometry/placement.js';
import type { Axis, Way } from '../model/assembly-move.js';
import type { Part } from '../model/part.js';
import type { Arrival, AtStep } from './at-step.js';

/** A piece pulled out of its place. */
export interface PulledPiece {
  readonly piece: Piece;
  readonly out: Point3;
}

/** Along which a thing comes: from where it is shown to where it ends, both as shifts from its true place. */
export interface PulledWay {
  readonly arrival: Arrival;
  readonly from: Point3;
  readonly to: Point3;
}

export interface Pulled {
  readonly pieces: readonly PulledPiece[];
  readonly ways: readonly PulledWay[];
}

/** Air between what is pulled and what it goes to, as a share of the largest side of all that is shown. */
const AIR = 0.08;
/** Between equal pieces that come one upon the other. */
const AIR_BETWEEN_EQUALS = 0.03;
/** What is still hidden then is pulled farther by this share. */
const FAR = 0.5;
/** Boxes that overlap by less than this stand beside each other, mm. */
const BESIDE = 0.1;

/** How far a thing is pulled: clear of what it goes to, out of all that stands there, or farther still; clear and so much more, as a share of the largest side. */
export type Further = 'clear' | 'outside' | 'far' | number;

const AXES = ['x', 'y', 'z'] as const;

const HERE: Point3 = { x: 0, y: 0, z: 0 };

/**
 * Each thing that a step brings is pulled back along its way until it is clear of all that it goes to, as that stands in
 * the end and as it is shown; what was put on a thing that is pulled later goes along with it.
 */
export function pulled({ before, arrivals, after }: AtStep, further: readonly Further[] = []): Pulled {
  const size = largest(after);
  const bench = new Map<string, readonly PulledPiece[]>(
    [...before].map(([name, pieces]) => [name, pieces.map((piece) => ({ piece, out: HERE }))]),
  );
  const ways: { readonly arrival: Arrival; readonly vector: Point3 }[] = [];
  for (const [i, arrival] of arrivals.entries()) {
    const { pieces, whole, into, way } = arrival;
    const there = bench.get(into) ?? [];
    const moving = whole === null ? besideIts(pieces, there, way) : (bench.get(whole) ?? []).filter(isOneOf(pieces));
    const vector =
      way === null
        ? HERE
        : along(way.axis, -way.sign * clear(moving, there, { arrival, size, further: further[i] ?? 'clear' }));
    if (whole !== null) bench.delete(whole);
    bench.set(into, [...there, ...moving.map(({ piece, out }) => ({ piece, out: sum(out, vector) }))]);
    ways.push({ arrival, vector });
  }
  const shown = new Set(after);
  const all = [...bench.values()].flat().filter(({ piece }) => shown.has(piece));
  const outOf = new Map(all.map(({ piece, out }) => [piece.key, out]));
  return {
    pieces: all,
    ways: ways.flatMap(({ arrival, vector }) => {
      const [first] = arrival.pieces;
      const from = first === undefined ? undefined : outOf.get(first.key);
      if (arrival.way === null || from === undefined) return [];
      return [{ arrival, from, to: sum(from, { x: -vector.x, y: -vector.y, z: -vector.z }) }];
    }),
  };
}

/**
 * Where a thing is before it is pulled: at its place, or beside it with what alone it is joined to and what has been
 * pulled across its way. A bolt hovers over its hole, and not over where the hole will be.
 */
function besideIts(pieces: readonly Piece[], there: readonly PulledPiece[], way: Way | null): readonly PulledPiece[] {
  const parts = new Set(pieces.map(({ part }) => part));
  const made = there.filter(
    ({ piece: { part } }) => part.kind !== 'bought' && [...parts].some((one) => isJoined(one, part)),
  );
  const [first] = made;
  const goesAlong =
    way !== null &&
    first !== undefined &&
    first.out[way.axis] === 0 &&
    made.every(({ out }) => AXES.every((k) => out[k] === first.out[k]));
  return pieces.map((piece) => ({ piece, out: goesAlong ? first.out : HERE }));
}

const isJoined = (a: Part, b: Part): boolean =>
  a.joins.some(({ to }) => to === b.id) || b.joins.some(({ to }) => to === a.id);

const isOneOf =
  (pieces: readonly Piece[]) =>
  ({ piece }: PulledPiece): boolean =>
    pieces.includes(piece);

function largest(pieces: readonly Piece[]): number {
  const { x, y, z } = around(pieces.map(({ extent }) => extent));
  return Math.max(x[1] - x[0], y[1] - y[0], z[1] - z[0]);
}

const sum = (a: Point3, b: Point3): Point3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });

const along = (axis: Axis, by: number): Point3 => ({ ...HERE, [axis]: by });

/** How far back along its way a thing goes until its box is clear of every box before it. */
function clear(
  moving: readonly PulledPiece[],
  there: readonly PulledPiece[],
  { arrival: { way }, size, further }: { readonly arrival: Arrival; readonly size: number; readonly further: Further },
): number {
  if (way === null) return 0;
  const { axis, sign } = way;
  const across = AXES.filter((one) => one !== axis);
  /** The end towards which it moves, counted along its way. */
  const front = ({ piece, out }: PulledPiece) => sign * (piece.extent[axis][sign > 0 ? 1 : 0] + out[axis]);
  const back = ({ piece, out }: PulledPiece) => sign * (piece.extent[axis][sign > 0 ? 0 : 1] + out[axis]);
  const more = further === 'far' ? FAR : typeof further === 'number' ? further : 0;
  const isOutside = further === 'outside' || further === 'far';
  let far = 0;
  for (const one of moving)
    for (const { piece, out } of there) {
      const equal = piece.part === one.piece.part;
      const air = size * (equal ? AIR_BETWEEN_EQUALS : AIR + more);
      for (const shown of out === HERE ? [HERE] : [HERE, out]) {
        const other = { piece, out: shown };
        if ((isOutside && !equal) || across.every((k) => overlap(one, other, k) > BESIDE))
          far = Math.max(far, front(one) - back(other) + air);
      }
    }
  return far > 0 ? far : size * (AIR + more);
}

const overlap = (a: PulledPiece, b: PulledPiece, k: Axis): number =>
  Math.min(a.piece.extent[k][1] + a.out[k], b.piece.extent[k][1] + b.out[k]) -
  Math.max(a.piece.extent[k][0] + a.out[k], b.piece.extent[k][0] + b.out[k]);
