import type { Point } from '../geometry/path.js';

/** Ends within this are one point, mm: a hundredth is what a drawing is written with. */
const GRID = 0.01;
/** A corner that strays less than this from the line between its neighbours is left out, mm. */
const STRAIGHT = 0.008;

/** Segments (x, y of both ends) joined end to end into as few polylines as a simple walk finds, straight ones made one. */
export function chained(
  segments: readonly (readonly [number, number, number, number])[],
): readonly (readonly Point[])[] {
  const ends = new Map<string, number[]>();
  const grid = (v: number) => Math.round(v / GRID);
  const startKey = segments.map(([x, y]) => `${grid(x)},${grid(y)}`);
  const endKey = segments.map(([, , x, y]) => `${grid(x)},${grid(y)}`);
  segments.forEach((_, i) => {
    for (const key of [startKey[i] as string, endKey[i] as string]) {
      const known = ends.get(key);
      if (known) known.push(i);
      else ends.set(key, [i]);
    }
  });
  const used = new Array<boolean>(segments.length).fill(false);
  /** From an end onwards: the other end of each next segment, the straightest first. */
  const onwards = (key: string, from: Point, at: Point): readonly Point[] => {
    const points: Point[] = [];
    let [here, before, place] = [key, from, at];
    for (;;) {
      let best: { readonly i: number; readonly to: Point; readonly key: string; readonly bend: number } | undefined;
      for (const i of ends.get(here) ?? []) {
        if (used[i]) continue;
        const [x0, y0, x1, y1] = segments[i] as readonly [number, number, number, number];
        const forwards = startKey[i] === here;
        const to = forwards ? { x: x1, y: y1 } : { x: x0, y: y0 };
        const bend = turnOf(before, place, to);
        if (best === undefined || bend > best.bend)
          best = { i, to, key: (forwards ? endKey[i] : startKey[i]) as string, bend };
      }
      if (best === undefined) return points;
      used[best.i] = true;
      points.push(best.to);
      [here, before, place] = [best.key, place, best.to];
    }
  };
  return segments.flatMap(([x0, y0, x1, y1], i) => {
    if (used[i]) return [];
    used[i] = true;
    const [start, end] = [
      { x: x0, y: y0 },
      { x: x1, y: y1 },
    ];
    const ahead = onwards(endKey[i] as string, start, end);
    const back = onwards(startKey[i] as string, end, start);
    return [straightened([...[...back].reverse(), start, end, ...ahead])];
  });
}

/** Cosine of the turn at a corner: 1 where it goes straight on. */
function turnOf(a: Point, b: Point, c: Point): number {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
  const lengths = Math.sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy));
  return lengths === 0 ? -1 : (ux * vx + uy * vy) / lengths;
}

/** Without corners that bend nothing; one that turns back stays. */
function straightened(points: readonly Point[]): readonly Point[] {
  const out: Point[] = [];
  for (const [i, point] of points.entries()) {
    const before = out.at(-1);
    const after = points[i + 1];
    if (before === undefined || after === undefined) {
      out.push(point);
      continue;
    }
    const [dx, dy] = [after.x - before.x, after.y - before.y];
    const [px, py] = [point.x - before.x, point.y - before.y];
    const length = Math.sqrt(dx * dx + dy * dy);
    const along = (px * dx + py * dy) / (length || 1);
    const stray = Math.abs(dx * py - dy * px) / (length || 1);
    if (length === 0 || stray > STRAIGHT || along < 0 || along > length) out.push(point);
  }
  return out;
}
