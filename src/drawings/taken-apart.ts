import type { Workbench } from '../assembly/workbench.js';
import type { Point } from '../geometry/path.js';
import type { Point3 } from '../geometry/placement.js';
import type { Axis, Way } from '../model/assembly-move.js';
import type { Arrival, AtStep } from './at-step.js';
import { type Look, looksAt } from './look-from.js';
import { type Pulled, pulled } from './pulled.js';
import { type Body, bodiesOf } from './scene.js';
import { type PieceLines, seenLines } from './seen-lines.js';
import { type Squared, silhouettes } from './silhouettes.js';
import { wayLines } from './way-line.js';

/** Pieces pulled so far apart that a good part of each is seen. */
export interface TakenApart {
  readonly look: Look;
  readonly lines: readonly PieceLines[];
  readonly ways: readonly (readonly Point[])[];
  /** What is seen where, on squares of this side; bodies in the order of `keys`. */
  readonly squared: (side: number) => Squared;
  readonly keys: readonly string[];
}

/** Of each part’s silhouette so much is wanted. */
const WANTED = 0.55;
/** How much farther a thing is tried to be pulled, as a share of the largest side of the group. */
const FURTHER = [0.15, 0.4] as const;
const ROUNDS = 14;
/** What it costs that a picture becomes wider and higher by the size of the group: the paper has less height to spare. */
const WIDER = 0.15;
const HIGHER = 2;
/** Less gain than this is not worth a pull. */
const LEAST_GAIN = 0.03;
const SQUARES = 80;
const LOOKS = 2;

export function takenApart({ arrivals: came, ...at }: AtStep, on: Workbench): TakenApart {
  const arrivals = came.map((one) => ({ ...one, way: one.way ?? outOf(one, at.after) }));
  const whole = { ...at, arrivals };
  const added = new Set(at.after.map(({ key }) => key));
  const kinds = [...new Set(arrivals.map(kindOf))];
  const first = pulled(
    whole,
    arrivals.map(() => 0),
  );
  const bodies = bodiesOf(
    on,
    first.pieces.map(({ piece }) => ({ piece })),
  );
  const order = new Map(first.pieces.map(({ piece: { key } }, i) => [key, i]));
  const parts = new Map<string, number[]>();
  for (const { piece } of first.pieces)
    parts.set(piece.part.id, [...(parts.get(piece.part.id) ?? []), order.get(piece.key) as number]);
  const tries = looksAt(first, added, 'never')
    .slice(0, LOOKS)
    .map((look) => {
      const size = largestOf(bodies, look);
      const show = silhouettes(bodies, look.view, size / SQUARES);
      const judge = (more: ReadonlyMap<string, number>) => {
        const out = pulled(
          whole,
          arrivals.map((one) => more.get(kindOf(one)) ?? 0),
        );
        const outs: Point3[] = [];
        for (const { piece, out: by } of out.pieces) outs[order.get(piece.key) as number] = by;
        const { shares, columns, rows } = show(outs);
        const seen = [...parts.values()].map((own) => Math.max(...own.map((i) => shares[i] as number)));
        const enough = seen.reduce((sum, share) => sum + Math.min(1, share / WANTED), 0) + Math.min(...seen) / WANTED;
        return { out, outs, more, score: enough - (WIDER * columns + HIGHER * rows) / SQUARES };
      };
      let best = judge(new Map());
      for (let round = 0; round < ROUNDS; round++) {
        const was = best;
        for (const kind of kinds)
          for (const further of FURTHER) {
            const tried = judge(new Map([...was.more, [kind, (was.more.get(kind) ?? 0) + further]]));
            if (tried.score > best.score + LEAST_GAIN) best = tried;
          }
        if (best === was) break;
      }
      return { look, ...best };
    });
  const [one, ...others] = tries;
  if (one === undefined) throw new Error('nothing is seen from nowhere');
  const { look, out, outs } = others.reduce((most, other) => (other.score > most.score ? other : most), one);
  return {
    look,
    ...drawn(out, look, on),
    squared: (side) => silhouettes(bodies, look.view, side)(outs),
    keys: bodies.map(({ key }) => key),
  };
}

/** Equal pieces that come the same way are pulled equally far. */
const kindOf = ({ pieces: [first], whole, way }: Arrival): string =>
  `${whole ?? first?.part.id} ${way?.sign} ${way?.axis}`;

/** What is laid down first goes out of the middle of all, across its own thickness. */
function outOf({ pieces: [first], whole }: Arrival, all: AtStep['after']): Way | null {
  if (first === undefined || whole !== null) return null;
  const thick = (k: Axis) => first.extent[k][1] - first.extent[k][0];
  const axis = (['x', 'y', 'z'] as const).reduce((thin, k) => (thick(k) < thick(thin) ? k : thin));
  const low = Math.min(...all.map(({ extent }) => extent[axis][0]));
  const high = Math.max(...all.map(({ extent }) => extent[axis][1]));
  return { axis, sign: first.extent[axis][0] + first.extent[axis][1] > low + high ? -1 : 1 };
}

function largestOf(bodies: readonly Body[], { view }: Look): number {
  const { columns, rows } = silhouettes(bodies, view, 20)([]);
  return 20 * Math.max(columns, rows);
}

function drawn({ pieces, ways }: Pulled, { view }: Look, on: Workbench) {
  const bodies = bodiesOf(on, pieces);
  const byKey = new Map(bodies.map((body) => [body.key, body]));
  const along = ways.flatMap((way) => wayLines(way, { bodies: byKey, view, led: 'middle' }));
  const all = seenLines([...bodies, ...along], view);
  return { lines: all.slice(0, bodies.length), ways: all.slice(bodies.length).flatMap((way) => way.seen) };
}
