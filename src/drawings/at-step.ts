import type { Build, Setup } from '../assembly/build.js';
import { type Piece, piecesOf } from '../assembly/pieces.js';
import { stands } from '../assembly/setups.js';
import type { Move, Way } from '../model/assembly-move.js';

/** A thing that comes to its place: a piece, several as one, or what had been put together before. */
export interface Arrival {
  readonly pieces: readonly Piece[];
  readonly into: string;
  /** What it was called where it is a whole. */
  readonly whole: string | null;
  /** Null where it is laid down first. */
  readonly way: Way | null;
}

/** What one step works on. */
export interface AtStep {
  readonly setup: Setup;
  /** What stands on the bench under each name before the step. */
  readonly before: ReadonlyMap<string, readonly Piece[]>;
  /** In their order. */
  readonly arrivals: readonly Arrival[];
  /** What it brings or works on, when it is done. */
  readonly after: readonly Piece[];
}

/** What is on the bench at a step, in the first set-up in which it brings anything. */
export function atStep(build: Build, moves: readonly Move[], step: number): AtStep {
  const pieces = new Map(piecesOf(build.parts).map((piece) => [piece.key, piece]));
  const found = (keys: readonly string[]) => keys.flatMap((key) => pieces.get(key) ?? []);
  const inSetup = (setup: Setup, move: Move) => found(move.pieces).every(({ placement }) => stands(placement, setup));
  const own = moves.filter((move) => move.step === step);
  const setup = build.setups.find((one) => own.some((move) => inSetup(one, move)));
  if (setup === undefined) throw new Error(`step ${step} brings nothing`);
  const all = movesIn(moves, (move) => inSetup(setup, move));
  const bench = new Map<string, readonly Piece[]>();
  const put = ({ into, whole, pieces: keys }: Move): void => {
    if (whole !== undefined) bench.delete(whole);
    bench.set(into, [...(bench.get(into) ?? []), ...found(keys)]);
  };
  for (const move of all) if (move.step < step) put(move);
  const before = new Map(bench);
  const here = all.filter((move) => move.step === step);
  for (const move of here) put(move);
  const arrivals = here.map(({ pieces: keys, into, whole, way }) => ({
    pieces: found(keys),
    into,
    whole: whole ?? null,
    way,
  }));
  const worked = new Set(here.map(({ into }) => into));
  return { setup, before, arrivals, after: [...worked].flatMap((name) => bench.get(name) ?? []) };
}

/** What is done in one set-up, each thing once: moves are told for the first set-up in which they are made. */
function movesIn(moves: readonly Move[], stand: (move: Move) => boolean): readonly Move[] {
  const told = new Set<string>();
  return moves
    .filter((move) => {
      const key = `${move.step} ${move.into} ${move.pieces.join(' ')}`;
      if (told.has(key) || !stand(move)) return false;
      told.add(key);
      return true;
    })
    .sort((a, b) => a.step - b.step);
}
