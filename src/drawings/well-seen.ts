import type { Piece } from '../assembly/pieces.js';
import type { Workbench } from '../assembly/workbench.js';
import type { Point } from '../geometry/path.js';
import type { Arrival, AtStep } from './at-step.js';
import { faced } from './faced.js';
import { type Look, looksAt, type Underneath } from './look-from.js';
import { type Further, pulled } from './pulled.js';
import { type Body, bodiesOf } from './scene.js';
import { type PieceLines, seenLines } from './seen-lines.js';
import { type SurfacePoints, surfacePoints } from './surface-points.js';
import type { View } from './view.js';
import { wayLines } from './way-line.js';

type Paths = readonly (readonly Point[])[];

/** Corners that are tried until enough is seen. */
const LOOKS = 3;
/** A step as it is seen from a corner from which everything that comes shows. */
export interface Seen {
  readonly look: Look;
  readonly lines: readonly PieceLines[];
  readonly ways: Paths;
  readonly points: SurfacePoints;
  /** For each thing that comes, the share of its lines that is seen. */
  readonly shares: readonly number[];
}

interface Scene {
  /** Keys of what comes. */
  readonly added: ReadonlySet<string>;
  readonly on: Workbench;
  /** Where the lines run along which large things come. */
  readonly led: 'sides' | 'middle';
  /** Of the lines of each thing that comes this share is to be seen. */
  readonly enough: number;
  readonly underneath: Underneath;
}

/** Pulls what is hardly seen farther, at most twice, and looks again. */
export function wellSeen(at: AtStep, scene: Scene): Seen {
  let further: readonly Further[] = at.arrivals.map(() => 'clear');
  for (const next of ['outside', 'far'] as const) {
    const seen = bestSeen(at, scene, further);
    if (seen.shares.every((share) => share >= scene.enough)) return seen;
    const hardly = new Set(at.arrivals.filter((_, i) => (seen.shares[i] ?? 1) < scene.enough).map(kindOf));
    further = further.map((was, i) => (hardly.has(kindOf(at.arrivals[i] as Arrival)) ? next : was));
  }
  return bestSeen(at, scene, further);
}

/** Equal pieces that come the same way are pulled equally far. */
const kindOf = ({ pieces: [first], way }: Arrival): string => `${first?.part.id} ${way?.sign} ${way?.axis}`;

/** From the first corner from which enough is seen of everything that comes; else from that from which most is seen of what shows least. */
function bestSeen(at: AtStep, { added, on, led, enough, underneath }: Scene, further: readonly Further[]): Seen {
  const scene = pulled(at, further);
  const bodies = [...scene.pieces]
    .sort((a, b) => Number(added.has(b.piece.key)) - Number(added.has(a.piece.key)))
    .flatMap((shown) => bodiesOf(on, [shown]));
  const byKey = new Map(bodies.map((body) => [body.key, body]));
  let best: Seen | undefined;
  for (const look of looksAt(scene, added, underneath).slice(0, LOOKS)) {
    const ways = scene.ways.flatMap((way) => wayLines(way, { bodies: byKey, view: look.view, led }));
    const all = seenLines([...bodies, ...ways], look.view);
    const lines = all.slice(0, bodies.length);
    const lengths = new Map(lines.map(({ key, seen }) => [key, lengthOf(seen)]));
    const sum = (pieces: readonly Piece[], of: (key: string) => number) =>
      pieces.reduce((whole, { key }) => whole + of(key), 0);
    const shares = at.arrivals.map(({ pieces, whole }) =>
      // what a whole is made of hides itself
      whole === null
        ? sum(pieces, (key) => lengths.get(key) ?? 0) / sum(pieces, (key) => ownLength(byKey.get(key), look.view))
        : 1,
    );
    if (best !== undefined && Math.min(...shares) <= Math.min(...best.shares)) continue;
    best = {
      look,
      lines,
      ways: all.slice(bodies.length).flatMap((way) => way.seen),
      points: surfacePoints(bodies, look.view),
      shares,
    };
    if (shares.every((share) => share >= enough)) break;
  }
  if (best === undefined) throw new Error('nothing is seen from nowhere');
  return best;
}

/** Of the edges that a piece would show if it stood alone, those that its own faces do not hide. */
function ownLength(body: Body | undefined, view: View): number {
  if (body === undefined) return 0;
  const { corners, edges } = faced(body.mesh, body.matrix, view);
  let sum = 0;
  for (let e = 0; e < edges.length; e += 4) {
    const [p, q] = [3 * (edges[e] as number), 3 * (edges[e + 1] as number)];
    const dx = (corners[p] as number) - (corners[q] as number);
    const dy = (corners[p + 1] as number) - (corners[q + 1] as number);
    sum += Math.sqrt(dx * dx + dy * dy);
  }
  return sum;
}

const lengthOf = (paths: Paths): number =>
  paths.reduce(
    (sum, path) =>
      sum +
      path.slice(1).reduce((part, p, i) => {
        const { x, y } = path[i] as Point;
        return part + Math.sqrt((p.x - x) * (p.x - x) + (p.y - y) * (p.y - y));
      }, 0),
    0,
  );

/** Spots for one number: on faces that are seen, of the first few pieces; else on a line that is seen. */
export function spotsOf(
  keys: readonly string[],
  { points, pieces }: { readonly points: SurfacePoints; readonly pieces: readonly PieceLines[] },
): readonly Point[] {
  const few = keys.slice(0, 12);
  const each = few.length > 4 ? 1 : few.length > 1 ? 2 : 4;
  const onFaces = few.flatMap((key) => points(key, each));
  if (onFaces.length > 0) return onFaces;
  return keys.flatMap((key) => {
    const [path] = pieces.find((piece) => piece.key === key)?.seen ?? [];
    const [a, b] = path ?? [];
    return a === undefined || b === undefined ? [] : [{ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }];
  });
}
