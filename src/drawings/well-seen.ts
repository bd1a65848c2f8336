import type { Workbench } from '../assembly/workbench.js';
import type { Point } from '../geometry/path.js';
import type { Arrival, AtStep } from './at-step.js';
import { type Look, looksAt, type Underneath } from './look-from.js';
import { type Further, type Pulled, pulled } from './pulled.js';
import { type Body, bodiesOf } from './scene.js';
import { type PieceLines, seenLines } from './seen-lines.js';
import { type SurfacePoints, surfacePoints } from './surface-points.js';
import { wayLines } from './way-line.js';

type Paths = readonly (readonly Point[])[];

/** Corners that are tried until enough is seen. */
const LOOKS = 3;
/** Of the lines of each thing that comes this share is to be seen. */
const ENOUGH = 0.45;

/** A step as it is seen from a corner from which everything that comes shows. */
export interface Seen {
  readonly look: Look;
  readonly lines: readonly PieceLines[];
  readonly ways: Paths;
  readonly points: SurfacePoints;
}

interface Scene {
  /** Keys of what comes. */
  readonly added: ReadonlySet<string>;
  readonly on: Workbench;
  readonly underneath: Underneath;
}

/** Pulls what is hardly seen farther, at most twice, and looks again; lines are drawn of the last look alone. */
export function wellSeen(at: AtStep, scene: Scene): Seen {
  let further: readonly Further[] = at.arrivals.map(() => 'clear');
  for (const next of ['outside', 'far'] as const) {
    const tried = bestLook(at, scene, further);
    if (tried.shares.every((share) => share >= ENOUGH)) return drawn(tried);
    const hardly = new Set(at.arrivals.filter((_, i) => (tried.shares[i] ?? 1) < ENOUGH).map(kindOf));
    further = further.map((was, i) => (hardly.has(kindOf(at.arrivals[i] as Arrival)) ? next : was));
  }
  return drawn(bestLook(at, scene, further));
}

/** Equal pieces that come the same way are pulled equally far. */
const kindOf = ({ pieces: [first], way }: Arrival): string => `${first?.part.id} ${way?.sign} ${way?.axis}`;

interface Tried {
  readonly look: Look;
  readonly pulled: Pulled;
  readonly bodies: readonly Body[];
  readonly points: SurfacePoints;
  /** For each thing that comes, the share of its lines that is seen. */
  readonly shares: readonly number[];
}

/** The first corner from which enough is seen of everything that comes; else that from which most is seen of what shows least. */
function bestLook(at: AtStep, { added, on, underneath }: Scene, further: readonly Further[]): Tried {
  const out = pulled(at, further);
  // lines that fall together are drawn as those of what comes
  const bodies = [...out.pieces]
    .sort((a, b) => Number(added.has(b.piece.key)) - Number(added.has(a.piece.key)))
    .flatMap((shown) => bodiesOf(on, [shown]));
  let best: Tried | undefined;
  for (const look of looksAt(out, added, underneath).slice(0, LOOKS)) {
    const points = surfacePoints(bodies, look.view);
    const shares = at.arrivals.map(({ pieces, whole }) =>
      // what a whole is made of hides itself
      whole === null ? points.share(pieces.map(({ key }) => key)) : 1,
    );
    if (best !== undefined && Math.min(...shares) <= Math.min(...best.shares)) continue;
    best = { look, pulled: out, bodies, points, shares };
    if (shares.every((share) => share >= ENOUGH)) break;
  }
  if (best === undefined) throw new Error('nothing is seen from nowhere');
  return best;
}

function drawn({ look, pulled: { ways }, bodies, points }: Tried): Seen {
  const byKey = new Map(bodies.map((body) => [body.key, body]));
  const along = ways.flatMap((way) => wayLines(way, { bodies: byKey, view: look.view, led: 'sides' }));
  const all = seenLines([...bodies, ...along], look.view);
  return {
    look,
    lines: all.slice(0, bodies.length),
    ways: all.slice(bodies.length).flatMap((way) => way.seen),
    points,
  };
}

/** Spots for one number: on faces that are seen, of the first few pieces; else on a line that is seen. */
export function spotsOf(
  keys: readonly string[],
  { points, pieces }: { readonly points: SurfacePoints; readonly pieces: readonly PieceLines[] },
): readonly Point[] {
  const few = keys.slice(0, 12);
  const each = few.length > 4 ? 1 : few.length > 1 ? 2 : 4;
  const onFaces = few.flatMap((key) => points.spots(key, each));
  if (onFaces.length > 0) return onFaces;
  return keys.flatMap((key) => {
    const [path] = pieces.find((piece) => piece.key === key)?.seen ?? [];
    const [a, b] = path ?? [];
    return a === undefined || b === undefined ? [] : [{ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }];
  });
}
