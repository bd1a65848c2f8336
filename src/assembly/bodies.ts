import type { Part } from '../model/part.js';
import type { Setup } from './build.js';
import type { Extent } from './extent.js';
import type { Piece } from './pieces.js';
import { stands } from './setups.js';

/** What is glued, fingered, pressed or screwed together moves as one. */
const FIXED: ReadonlySet<string> = new Set(['finger', 'glue', 'press', 'screw']);

/** The rigid bodies of a camera, by number, and what bears each of them. */
export interface Bodies {
  readonly count: number;
  /** The body that a part belongs to. */
  readonly of: (partId: string) => number;
  /** The body that carries or guides this one, nearer to the front box; null for what stands by itself. */
  readonly carrier: (body: number) => number | null;
}

export function bodiesOf(parts: readonly Part[]): Bodies {
  const index = new Map(parts.map((part, i) => [part.id, i]));
  const root = parts.map((_, i) => i);
  const find = (i: number): number => {
    let at = i;
    while (root[at] !== at) at = root[at] as number;
    return at;
  };
  const links = parts.flatMap((part, from) =>
    part.joins.flatMap(({ to, by }) => {
      const other = index.get(to);
      return other === undefined || other === from ? [] : [{ from, to: other, fixed: FIXED.has(by) }];
    }),
  );
  for (const { from, to, fixed } of links) if (fixed) root[find(from)] = find(to);
  const roots = [...new Set(parts.map((_, i) => find(i)))];
  const body = parts.map((_, i) => roots.indexOf(find(i)));
  const neighbours = roots.map(() => new Set<number>());
  for (const { from, to } of links) {
    const [a, b] = [body[from] as number, body[to] as number];
    if (a === b) continue;
    neighbours[a]?.add(b);
    neighbours[b]?.add(a);
  }
  const carriers = roots.map((): number | null => null);
  const first = body[0] as number;
  const reached = new Set([first]);
  // outwards from the front box, body by body
  for (const at of reached)
    for (const next of neighbours[at] ?? []) {
      if (reached.has(next)) continue;
      reached.add(next);
      carriers[next] = at;
    }
  return {
    count: roots.length,
    of: (partId) => body[index.get(partId) ?? -1] ?? first,
    carrier: (at) => carriers[at] ?? null,
  };
}

/** A shift along x, y and z, mm. */
export type Shift = readonly [number, number, number];

/** Towards one side everything in turn is pushed to the end of its play; `none` is the camera as it is drawn. */
export type Push = 'none' | 'right' | 'left' | 'up' | 'down';

export const PUSHES: readonly Push[] = ['right', 'left', 'up', 'down'];

const SIDES = {
  right: { axis: 0, sign: 1 },
  left: { axis: 0, sign: -1 },
  up: { axis: 1, sign: 1 },
  down: { axis: 1, sign: -1 },
} as const;

/** So far two faces that only bear on each other may part in years of use, mm: a grain of sand, a bowed plate. A choice of ours. */
const PARTED = 0.2;
/** What nothing stops within this is held by hand, cord or gravity, and moves no farther, mm. A choice of ours. */
const FARTHEST = 1;
/** Faces that meet to within this touch, mm. */
const TOUCH = 0.05;

/** A piece with the boxes of what it is made of. */
export interface Boxed {
  readonly piece: Piece;
  readonly body: number;
  readonly boxes: readonly Extent[];
}

/**
 * Where each body stands in a set-up when every clearance is at its loosest towards one side: it moves with what carries
 * it, and then by its own play, and is lifted off what it bears on along the optical axis. Plays are measured between
 * the boxes of the pieces; felt gives way, and a pin in its hole counts for nothing: it is made to be taken out.
 */
export function loosened(bodies: Bodies, pieces: readonly Boxed[]): (setup: Setup, push: Push) => readonly Shift[] {
  const plays = new Map<string, number>();
  return (setup, push) => {
    const shifts: Shift[] = Array.from({ length: bodies.count }, () => [0, 0, 0]);
    if (push === 'none') return shifts;
    const standing = pieces.filter(({ piece }) => stands(piece.placement, setup) && !isFelt(piece.part));
    const own = (body: number) => standing.filter((one) => one.body === body);
    const { axis, sign } = SIDES[push];
    const done = new Set<number>();
    const place = (body: number): Shift => {
      const carrier = bodies.carrier(body);
      if (done.has(body) || carrier === null) return shifts[body] ?? [0, 0, 0];
      done.add(body);
      const mine = own(body);
      if (mine.length === 0) return [0, 0, 0];
      const under = place(carrier);
      const theirs = own(carrier);
      const key = `${push} ${[...mine, ...theirs].map((one) => one.piece.key).join(' ')}`;
      const play = plays.get(key) ?? playOf(mine.filter(isStop), theirs.filter(isStop), axis, sign);
      plays.set(key, play);
      const shift: [number, number, number] = [under[0], under[1], under[2]];
      shift[axis] += sign * play;
      shift[2] += lift(body, mine, standing, place);
      shifts[body] = shift;
      return shift;
    };
    for (let body = 0; body < bodies.count; body++) place(body);
    return shifts;
  };

  /** Beyond what the carrier was lifted by. */
  function lift(
    body: number,
    mine: readonly Boxed[],
    standing: readonly Boxed[],
    place: (body: number) => Shift,
  ): number {
    const carried = place(bodies.carrier(body) ?? body)[2];
    let raised = 0;
    for (const { piece } of mine)
      for (const other of standing) {
        if (other.body === body || !restsOn(piece.part, other.piece.part)) continue;
        const [a, b] = [piece.extent, other.piece.extent];
        const way = Math.abs(a.z[0] - b.z[1]) < TOUCH ? 1 : Math.abs(a.z[1] - b.z[0]) < TOUCH ? -1 : 0;
        if (way === 0 || apart(a.x, b.x) > 0 || apart(a.y, b.y) > 0) continue;
        const here = place(other.body)[2] - carried + way * PARTED;
        if (Math.abs(here) > Math.abs(raised)) raised = here;
      }
    return raised;
  }
}

/** Felt is gone when the camera is old, and gives way before. */
export const isFelt = ({ id, name }: Part): boolean => /felt/i.test(`${id} ${name}`);

const isStop = ({ piece: { part } }: Boxed): boolean => part.kind !== 'bought' || part.shape.form !== 'cylinder';

const restsOn = (a: Part, b: Part): boolean => a.joins.some(({ to, by }) => to === b.id && by === 'rest');

const apart = (a: readonly [number, number], b: readonly [number, number]): number =>
  Math.max(b[0] - a[1], a[0] - b[1]);

const AXES = ['x', 'y', 'z'] as const;

function playOf(mine: readonly Boxed[], theirs: readonly Boxed[], axis: 0 | 1, sign: 1 | -1): number {
  let least = FARTHEST;
  const along = AXES[axis];
  const others = AXES.filter((k) => k !== along);
  for (const { boxes } of mine)
    for (const a of boxes)
      for (const one of theirs)
        for (const b of one.boxes) {
          const gap = sign > 0 ? b[along][0] - a[along][1] : a[along][0] - b[along][1];
          if (gap >= least || gap < -TOUCH / 10) continue;
          if (others.every((k) => apart(a[k], b[k]) < -TOUCH)) least = Math.max(0, gap);
        }
  return least;
}
