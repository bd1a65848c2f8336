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

/**
 * What is on the bench at a step, in the first set-up in which it brings anything. What it brings in another set-up
 * alone, such as a holder in the place of the glass, comes there too: no part of a step is missing from its picture.
 */
export function atStep(build: Build, moves: readonly Move[], step: number): AtStep {
  const pieces = new Map(piecesOf(build.parts).map((piece) => [piece.key, piece]));
  const brought = build.setups.map((setup) => broughtIn(setup, { pieces, moves, step }));
  const first = brought.find(({ arrivals }) => arrivals.length > 0);
  if (first === undefined) throw new Error(`step ${step} brings nothing`);
  const others = brought.filter((one) => one !== first);
  const before = new Map([...[...others].reverse().flatMap((one) => [...one.before]), ...first.before]);
  const arrivals = others.reduce(withOthers, first.arrivals);
  const bench = new Map(before);
  for (const arrival of arrivals) put(bench, arrival);
  const worked = new Set(arrivals.map(({ into }) => into));
  return {
    setup: first.setup,
    before,
    arrivals,
    after: [...worked].flatMap((name) => bench.get(name) ?? []),
  };
}

type Brought = Pick<AtStep, 'setup' | 'before' | 'arrivals'>;

/** What one step brings in one set-up to what stands there. */
function broughtIn(
  setup: Setup,
  { pieces, moves, step }: { readonly pieces: ReadonlyMap<string, Piece>; readonly moves: readonly Move[]; readonly step: number }, // biome-ignore format: one line
): Brought {
  const found = (keys: readonly string[]) => keys.flatMap((key) => pieces.get(key) ?? []);
  const all = movesIn(moves, (move) => found(move.pieces).every(({ placement }) => stands(placement, setup)));
  const arrival = ({ pieces: keys, into, whole, way }: Move): Arrival => ({
    pieces: found(keys),
    into,
    whole: whole ?? null,
    way,
  });
  const before = new Map<string, readonly Piece[]>();
  for (const move of all) if (move.step < step) put(before, arrival(move));
  return { setup, before, arrivals: all.filter((move) => move.step === step).map(arrival) };
}

function put(bench: Map<string, readonly Piece[]>, { into, whole, pieces }: Arrival): void {
  if (whole !== null) bench.delete(whole);
  bench.set(into, [...(bench.get(into) ?? []), ...pieces]);
}

const partsOf = (arrivals: readonly Arrival[]): ReadonlySet<string> =>
  new Set(arrivals.flatMap(({ pieces }) => pieces.map(({ part }) => part.id)));

const FROM_BEHIND: Way = { axis: 'z', sign: -1 };

/** Adds what comes in another set-up alone, before what comes after it there. */
function withOthers(arrivals: readonly Arrival[], other: Brought): readonly Arrival[] {
  const known = partsOf(arrivals);
  const isKnown = ({ pieces }: Arrival) => pieces.some(({ part }) => known.has(part.id));
  return other.arrivals.reduce<readonly Arrival[]>((all, arrival, i) => {
    if (isKnown(arrival)) return all;
    const next = partsOf(
      other.arrivals
        .slice(i + 1)
        .filter(isKnown)
        .slice(0, 1),
    );
    const found = all.findIndex(({ pieces }) => pieces.some(({ part }) => next.has(part.id)));
    const place = found < 0 ? all.length : found;
    // what is laid down first in its own set-up lies behind what is laid down here
    const { way } = arrival;
    return [...all.slice(0, place), { ...arrival, way: way ?? FROM_BEHIND }, ...all.slice(place)];
  }, arrivals);
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
