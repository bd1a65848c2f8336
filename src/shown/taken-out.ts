import type { Build, Setup } from '../assembly/build.js';
import { type Piece, piecesOf } from '../assembly/pieces.js';
import { stands } from '../assembly/setups.js';
import type { Arrival } from '../drawings/at-step.js';
import { type PulledWay, pulled } from '../drawings/pulled.js';
import type { Move } from '../model/assembly-move.js';
import type { TakenOut, TakenStep } from '../model/shown.js';

/**
 * How a camera comes apart: each thing back along the way that it came, far enough to be clear of all that stood there,
 * with all that had been put on it before.
 */
export const takenOut = (build: Build, moves: readonly Move[]): TakenOut =>
  Object.fromEntries(build.setups.map((setup) => [setup.name, takenIn(setup, piecesOf(build.parts), moves)]));

/** In the order in which they were brought. */
function takenIn(setup: Setup, all: readonly Piece[], moves: readonly Move[]): readonly TakenStep[] {
  const standing = all.filter(({ placement }) => stands(placement, setup));
  const pieces = new Map(standing.map((piece) => [piece.key, piece]));
  const told = new Set<string>();
  const stepOf = new Map<Arrival, number>();
  const arrivals = [...moves]
    .sort((a, b) => a.step - b.step)
    .flatMap(({ step, into, whole, way, pieces: keys }): readonly Arrival[] => {
      const own = keys.flatMap((key) => pieces.get(key) ?? []);
      const key = `${into} ${own.map((piece) => piece.key).join(' ')}`;
      if (own.length < keys.length || told.has(key)) return [];
      told.add(key);
      const arrival = { pieces: own, into, whole: whole ?? null, way };
      stepOf.set(arrival, step);
      return [arrival];
    });
  return pulled({ setup, before: new Map(), arrivals, after: standing }).ways.map((way) => ({
    step: stepOf.get(way.arrival) as number,
    pieces: way.arrival.pieces.map(({ key }) => key),
    by: vectorOf(way),
  }));
}

const vectorOf = ({ from, to }: PulledWay) => ({ x: from.x - to.x, y: from.y - to.y, z: from.z - to.z });
