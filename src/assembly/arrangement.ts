import type { Shared, Solid } from '../geometry/kernel.js';
import { compose, type Matrix4, shift } from '../geometry/placement.js';
import type { Join } from '../model/part.js';
import type { Build, Setup } from './build.js';
import { type Extent, slidBy } from './extent.js';
import { boxAt, type Piece, piecesOf } from './pieces.js';
import { stands } from './setups.js';
import type { Workbench } from './workbench.js';

/** Two pieces that stand in the camera together in one set-up at least. */
export interface Pair {
  readonly a: Piece;
  readonly b: Piece;
  /** How they are joined, seen from either. */
  readonly by: ReadonlySet<Join['by']>;
  /** Where one slides past the other, their place to each other changes from station to station. */
  readonly passing: boolean;
}

/**
 * The pieces of a build with what is known of them two by two. A pair is measured once however many set-ups it stands
 * in, so that the work grows with the number of pieces and not with that of the set-ups.
 */
export interface Arrangement {
  readonly pieces: readonly Piece[];
  readonly setups: readonly Setup[];
  /** How far the moving groups have slid: all stations, two between, and the end of the reserve. */
  readonly rears: readonly number[];
  /** The pairs whose boxes come within `within` of each other at one of these places. */
  readonly pairs: (within: number) => readonly Pair[];
  readonly together: (a: Piece, b: Piece) => readonly Setup[];
  readonly standsIn: (piece: Piece, setup: Setup) => boolean;
  /** What two pieces share at a place of the moving groups. */
  readonly shared: (pair: Pair, rear: number) => Shared;
  /**
   * The most that two pieces share anywhere on the way of the slide, from the closest station to the end of the reserve:
   * looked at as a whole and not station by station, so that nothing thin is missed between two stations.
   */
  readonly sharedOnTheWay: (pair: Pair) => Shared;
  /** Air between two pieces, or `within` where there is more. */
  readonly gap: (pair: Pair, rear: number, within: number) => number;
  /** Whether two pieces come within `within` of each other. */
  readonly touches: (pair: Pair, rear: number, within: number) => boolean;
  /** Whether `b`, moved from its place at `rear`, would share volume with `a`. */
  readonly meets: (pair: Pair, rear: number, move: readonly [number, number, number]) => boolean;
}

/** Shared volume below this is the kernel's 32-bit floats, mm³ for each mm² of common face: faces stand apart by less. */
export const FLOAT = 1e-3;

const NOTHING: Shared = { volume: 0, depth: 0, at: { x: 0, y: 0, z: 0 } };

/** @param reserve how far the moving groups slide beyond the last station */
export function arrange(build: Build, { bench, solid, moved, swept }: Workbench, reserve: number): Arrangement {
  const pieces = piecesOf(build.parts);
  const { setups } = build;
  const inSetup = new Map(pieces.map((piece) => [piece, setups.map((setup) => stands(piece.placement, setup))]));
  const flags = (piece: Piece): readonly boolean[] => inSetup.get(piece) ?? [];
  const farthest = Math.max(...build.stations.map(({ rear }) => rear));
  const rears = [...new Set([0, 0.25, 0.5, 0.75, 1].map((share) => share * farthest))].concat(
    reserve > 0 ? [farthest + reserve] : [],
    // where a stop begins to draw something along
    [...new Set(pieces.flatMap(({ placement: { drawnFrom } }) => drawnFrom ?? []))],
  );
  const joins = new Map<string, Set<Join['by']>>();
  for (const part of build.parts)
    for (const { to, by } of part.joins)
      for (const key of [`${part.id} ${to}`, `${to} ${part.id}`]) joins.set(key, (joins.get(key) ?? new Set()).add(by));

  const meet = (a: Piece, b: Piece) => {
    const [fa, fb] = [flags(a), flags(b)];
    return fa.some((here, i) => here && fb[i] === true);
  };
  const near = (a: Piece, b: Piece, within: number): boolean =>
    movesWith(a, b)
      ? airBetweenBoxes(a.extent, b.extent) <= within
      : airBetweenBoxes(boxAt(a, 0), sweptBox(b, passed(a, b))) <= within ||
        airBetweenBoxes(sweptBox(a, passed(b, a)), boxAt(b, 0)) <= within;
  /** The most that the second slides past the first. */
  const passed = (a: Piece, b: Piece): number =>
    Math.max(0, ...rears.map((rear) => slidBy(b.placement, rear) - slidBy(a.placement, rear)));

  const known = new Map<number, readonly Pair[]>();
  const pairs = (within: number): readonly Pair[] => {
    const found = known.get(within);
    if (found) return found;
    const all: Pair[] = [];
    pieces.forEach((a, i) => {
      for (let j = i + 1; j < pieces.length; j++) {
        const b = pieces[j] as Piece;
        if (!near(a, b, within) || !meet(a, b)) continue;
        all.push({ a, b, by: joins.get(`${a.part.id} ${b.part.id}`) ?? UNJOINED, passing: !movesWith(a, b) });
      }
    });
    known.set(within, all);
    return all;
  };

  const once = <T>(
    memo: Map<string, T>,
    { a, b, passing }: Pair,
    [rear, within]: readonly [rear: number, within?: number],
    make: (rear: number) => T,
  ): T => {
    const place = passing ? rear : 0;
    const key = `${a.key} ${b.key} ${place} ${within}`;
    const value = memo.get(key) ?? make(place);
    memo.set(key, value);
    return value;
  };
  const shares = new Map<string, Shared>();
  const gaps = new Map<string, number>();
  const touching = new Map<string, boolean>();
  const shared: Arrangement['shared'] = (pair, rear) =>
    once(shares, pair, [rear], (place) =>
      airBetweenBoxes(boxAt(pair.a, place), boxAt(pair.b, place)) > -FLOAT
        ? NOTHING
        : bench.shared(solid(pair.a, place), solid(pair.b, place)),
    );
  const gap: Arrangement['gap'] = (pair, rear, within) =>
    once(gaps, pair, [rear, within], (place) =>
      airBetweenBoxes(boxAt(pair.a, place), boxAt(pair.b, place)) >= within
        ? within
        : bench.gap(solid(pair.a, place), solid(pair.b, place), within),
    );
  const meets: Arrangement['meets'] = ({ a, b }, rear, [x, y, z]) => {
    const there = boxAt(b, rear);
    const box: Extent = {
      x: [there.x[0] + x, there.x[1] + x],
      y: [there.y[0] + y, there.y[1] + y],
      z: [there.z[0] + z, there.z[1] + z],
    };
    if (airBetweenBoxes(boxAt(a, rear), box) > -FLOAT) return false;
    const motion: Matrix4 = compose(shift(x, y, z), shift(0, 0, slidBy(b.placement, rear)));
    const away: Solid = moved(b, motion);
    return bench.shared(solid(a, rear), away).depth > FLOAT;
  };
  return {
    pieces,
    setups,
    rears,
    pairs,
    together: (a, b) => setups.filter((_, i) => flags(a)[i] === true && flags(b)[i] === true),
    standsIn: (piece, setup) => flags(piece)[setups.indexOf(setup)] === true,
    shared,
    sharedOnTheWay: (pair) => {
      const [still, sliding] = passed(pair.a, pair.b) > 0 ? [pair.a, pair.b] : [pair.b, pair.a];
      const by = passed(still, sliding);
      if (airBetweenBoxes(still.extent, sweptBox(sliding, by)) > -FLOAT) return NOTHING;
      const drawnOut = swept(sliding, by);
      if (drawnOut === null)
        return rears.map((rear) => shared(pair, rear)).reduce((a, b) => (b.depth > a.depth ? b : a));
      return bench.shared(solid(still, 0), drawnOut);
    },
    gap,
    touches: (pair, rear, within) =>
      once(touching, pair, [rear, within], (place) => {
        const [a, b] = [boxAt(pair.a, place), boxAt(pair.b, place)];
        if (airBetweenBoxes(a, b) >= within) return false;
        // pushed a little it bites: an answer that costs far less than the least distance of two solids
        return towards(a, b, within).some((move) => meets(pair, place, move)) || gap(pair, place, within) < within;
      }),
    meets,
  };
}

/** Small moves of `b` along each axis, the one across which the boxes just meet first and towards `a` first. */
function towards(a: Extent, b: Extent, by: number): readonly (readonly [number, number, number])[] {
  const axes = (['x', 'y', 'z'] as const).map((axis, i) => ({
    i,
    air: Math.max(a[axis][0] - b[axis][1], b[axis][0] - a[axis][1]),
    sign: a[axis][0] + a[axis][1] > b[axis][0] + b[axis][1] ? 1 : -1,
  }));
  const nearest = [...axes].sort((one, other) => other.air - one.air);
  return [1, -1].flatMap((way) =>
    nearest.map(({ i, sign }): readonly [number, number, number] => {
      const step = way * sign * by;
      return [i === 0 ? step : 0, i === 1 ? step : 0, i === 2 ? step : 0];
    }),
  );
}

const UNJOINED: ReadonlySet<Join['by']> = new Set();

/** Whether two pieces keep their place to each other all along the slide. */
const movesWith = (a: Piece, b: Piece): boolean =>
  a.slides === b.slides && a.placement.drawnFrom === b.placement.drawnFrom;

/** The box that a piece's box sweeps while it slides so far. */
const sweptBox = ({ extent: { x, y, z } }: Piece, by: number): Extent => ({ x, y, z: [z[0], z[1] + by] });

const airBetweenBoxes = (a: Extent, b: Extent): number =>
  Math.max(a.x[0] - b.x[1], b.x[0] - a.x[1], a.y[0] - b.y[1], b.y[0] - a.y[1], a.z[0] - b.z[1], b.z[0] - a.z[1]);
