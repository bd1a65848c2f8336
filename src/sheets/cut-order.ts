import type { Path, Point, Vertex } from '../geometry/path.js';
import type { CutPath } from './sheet.js';

/** The paths of one operation in the order in which they are cut, and how far the head moves without the beam. */
export interface Tour {
  readonly paths: readonly CutPath[];
  readonly end: Point;
  readonly travel: number;
}

/** A way to cut a path: where the head comes down and where it lifts off; `index` is the vertex that becomes the first. */
interface Way {
  readonly index: number;
  readonly start: Point;
  readonly end: Point;
}

interface Stop {
  readonly cut: CutPath;
  readonly ways: readonly Way[];
  way: number;
}

/** Rounds of ordering and of choosing entries; the second already gains next to nothing. */
const ROUNDS = 4;
/** Less than this is not worth another round, mm. */
const GAIN = 1e-6;

/**
 * A short way through all paths from where the head stands: the nearest next, then stretches turned round (2-opt) and
 * moved elsewhere (or-opt), in turn with the best entry on each loop for the order found. A loop may be entered at any
 * of its vertices, a stroke at either end.
 */
export function cutOrder(paths: readonly CutPath[], from: Point): Tour {
  let stops = nearestNext(paths, from);
  chooseWays(stops, from);
  let travel = travelOf(stops, from);
  for (let round = 0; round < ROUNDS; round++) {
    stops = reordered(stops, from);
    chooseWays(stops, from);
    const now = travelOf(stops, from);
    if (now > travel - GAIN) break;
    travel = now;
  }
  return {
    paths: stops.map((stop) => ({ id: stop.cut.id, path: startedAt(stop.cut.path, taken(stop).index) })),
    end: stops.length === 0 ? from : taken(stops.at(-1) as Stop).end,
    travel: travelOf(stops, from),
  };
}

function waysOf({ vertices, closed }: Path): readonly Way[] {
  if (closed) return vertices.map((v, index) => ({ index, start: v, end: v }));
  const [first, last] = [vertices[0] as Vertex, vertices.at(-1) as Vertex];
  return [
    { index: 0, start: first, end: last },
    { index: vertices.length - 1, start: last, end: first },
  ];
}

/** A loop begun at another vertex; a stroke begun at its other end is walked backwards. */
function startedAt(path: Path, index: number): Path {
  if (index === 0) return path;
  const { vertices, closed } = path;
  if (closed) return { closed, vertices: [...vertices.slice(index), ...vertices.slice(0, index)] };
  const back = vertices
    .map((v, i) => ({ ...v, bulge: i === 0 ? 0 : -(vertices[i - 1] as Vertex).bulge || 0 }))
    .reverse();
  return { closed, vertices: back };
}

const taken = (stop: Stop): Way => stop.ways[stop.way] as Way;

function nearestNext(paths: readonly CutPath[], from: Point): Stop[] {
  const rest: Stop[] = paths.map((cut) => ({ cut, ways: waysOf(cut.path), way: 0 }));
  const stops: Stop[] = [];
  let here = from;
  while (rest.length > 0) {
    let [next, way, least] = [0, 0, Infinity];
    rest.forEach((stop, i) => {
      stop.ways.forEach((w, k) => {
        const d = distance(here, w.start);
        if (d < least) [next, way, least] = [i, k, d];
      });
    });
    const [stop] = rest.splice(next, 1) as [Stop];
    stop.way = way;
    here = taken(stop).end;
    stops.push(stop);
  }
  return stops;
}

/** The best entry on each path for this order: shortest path through the layers of ways. */
function chooseWays(stops: readonly Stop[], from: Point): void {
  const came: number[][] = [];
  let before: readonly Way[] = [{ index: 0, start: from, end: from }];
  let cost: readonly number[] = [0];
  for (const { ways } of stops) {
    const back: number[] = [];
    const next: number[] = [];
    for (const way of ways) {
      let [least, by] = [Infinity, 0];
      before.forEach((w, i) => {
        const d = (cost[i] as number) + distance(w.end, way.start);
        if (d < least) [least, by] = [d, i];
      });
      next.push(least);
      back.push(by);
    }
    came.push(back);
    cost = next;
    before = ways;
  }
  let way = cost.indexOf(Math.min(...cost));
  for (let i = stops.length - 1; i >= 0; i--) {
    (stops[i] as Stop).way = way;
    way = (came[i] as number[])[way] as number;
  }
}

/** Turns stretches round and moves up to three paths elsewhere while that shortens the way. */
function reordered(given: readonly Stop[], from: Point): Stop[] {
  let stops = [...given];
  const count = stops.length;
  // where each path in turn is begun, and where the head stands before it: read millions of times
  let starts: readonly Point[] = [];
  let heads: readonly Point[] = [];
  const settle = (now: Stop[]): void => {
    stops = now;
    starts = now.map((stop) => taken(stop).start);
    heads = [from, ...now.map((stop) => taken(stop).end)];
  };
  /** From the lift after path i − 1 to the start of path j; nothing where j is past the last, since no way leads home. */
  const move = (i: number, j: number): number => (j >= count ? 0 : distance(heads[i] as Point, starts[j] as Point));
  settle(stops);
  for (let better = true; better; ) {
    better = false;
    for (let i = 0; i < count; i++) {
      for (let j = i; j < count; j++) {
        const first = starts[i] as Point;
        const last = heads[j + 1] as Point;
        const old = move(i, i) + move(j + 1, j + 1);
        const now = distance(heads[i] as Point, last) + (j + 1 < count ? distance(first, starts[j + 1] as Point) : 0);
        if (now > old - GAIN) continue;
        const stretch = stops.slice(i, j + 1).reverse();
        for (const stop of stretch) if (!stop.cut.path.closed) stop.way = 1 - stop.way;
        settle([...stops.slice(0, i), ...stretch, ...stops.slice(j + 1)]);
        better = true;
      }
    }
    for (let size = 1; size <= 3; size++) {
      for (let i = 0; i + size <= count; i++) {
        const after = i + size;
        let least = move(i, i) + move(after, after) - move(i, after) - GAIN;
        if (least <= 0) continue;
        let to = -1;
        for (let j = 0; j <= count; j++) {
          if (j >= i && j <= after) continue;
          const add =
            distance(heads[j] as Point, starts[i] as Point) +
            (j < count ? distance(heads[after] as Point, starts[j] as Point) : 0) -
            move(j, j);
          if (add < least) [to, least] = [j, add];
        }
        if (to < 0) continue;
        const stretch = stops.slice(i, after);
        const rest = [...stops.slice(0, i), ...stops.slice(after)];
        const place = to > i ? to - size : to;
        settle([...rest.slice(0, place), ...stretch, ...rest.slice(place)]);
        better = true;
      }
    }
  }
  return stops;
}

const travelOf = (stops: readonly Stop[], from: Point): number =>
  stops.reduce(
    (sum, stop, i) => sum + distance(i === 0 ? from : taken(stops[i - 1] as Stop).end, taken(stop).start),
    0,
  );

function distance(a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  return Math.sqrt(dx * dx + dy * dy);
}
