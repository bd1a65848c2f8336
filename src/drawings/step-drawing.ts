import type { Piece } from '../assembly/pieces.js';
import type { Workbench } from '../assembly/workbench.js';
import type { Point } from '../geometry/path.js';
import type { Move } from '../model/assembly-move.js';
import { CAMERA } from '../model/assembly-steps.js';
import type { Drawing, Mark } from '../model/page.js';
import { type AtStep, atStep } from './at-step.js';
import { faced } from './faced.js';
import type { DrawingGiven } from './given.js';
import { labelRoom } from './label-room.js';
import { LETTERS, lines } from './line-weights.js';
import { type Look, looksAt } from './look-from.js';
import { numberedOf, numbersIn, numberText } from './numbers.js';
import { chainLine, extentOf, hundredths, type Plot, plotted } from './plot.js';
import { type Further, pulled } from './pulled.js';
import { type Body, bodiesOf } from './scene.js';
import { type PieceLines, seenLines } from './seen-lines.js';
import { type SurfacePoints, surfacePoints } from './surface-points.js';
import type { View } from './view.js';
import { wayLines } from './way-line.js';

export interface StepGiven extends DrawingGiven {
  readonly moves: readonly Move[];
}

type Paths = readonly (readonly Point[])[];

/** Higher than this a step's drawing is not, mm, so that its words stand on the same page. */
const HIGHEST = 120;
/** For the words that tell from where it is seen. */
const HEAD = 8;
/** Left and right of what is drawn, above and below it, for the numbers. */
const SIDE = 24;
const ABOVE = 7;
/** No larger than true size. */
const LARGEST = 1;
/** Of the lines of a thing that comes this share is to be seen. */
const ENOUGH = 0.25;
/** Corners that are tried until enough is seen. */
const LOOKS = 3;
/** Smaller and smaller, until every number has room. */
const SHRINK = [1, 0.88, 0.76, 0.64, 0.5] as const;

/** What one step brings to what is there, pulled out along the way that it comes. */
export function stepDrawing({ build, plan, on, room, moves }: StepGiven, step: number): Drawing {
  const at = atStep(build, moves, step);
  const added = addedKeys(at);
  const seen = wellSeen(at, added, on);
  const free = { width: room.width - 2 * SIDE, height: Math.min(HIGHEST, room.height) - HEAD - 2 * ABOVE };
  const title = moves.find((move) => move.step === step)?.title ?? '';
  for (const shrink of SHRINK) {
    const drawn = onPaper(seen, { at, added, width: room.width, free, shrink });
    if (drawn === null) continue;
    return {
      name: `step-${String(step).padStart(2, '0')}`,
      title: `Step ${step}: ${title}`,
      description: `${title}, without perspective. ${seen.look.words}.`,
      scale: null,
      width: room.width,
      ...drawn,
    };
  }
  throw new Error(`the numbers of step ${step} of ${plan.name} have no room`);
}

/** All that comes, but for a whole that is laid down and worked on. */
const addedKeys = ({ arrivals }: AtStep): ReadonlySet<string> =>
  new Set(
    arrivals.flatMap(({ pieces, whole, way }) => (whole !== null && way === null ? [] : pieces.map(({ key }) => key))),
  );

interface Seen {
  readonly look: Look;
  readonly lines: readonly PieceLines[];
  readonly ways: Paths;
  readonly points: SurfacePoints;
  /** For each thing that comes, the share of its lines that is seen. */
  readonly shares: readonly number[];
}

/** Pulls what is hardly seen farther, at most twice, and looks again. */
function wellSeen(at: AtStep, added: ReadonlySet<string>, on: Workbench): Seen {
  let further: readonly Further[] = at.arrivals.map(() => 'clear');
  for (const next of ['outside', 'far'] as const) {
    const seen = bestSeen(at, added, on, further);
    if (seen.shares.every((share) => share >= ENOUGH)) return seen;
    further = further.map((was, i) => ((seen.shares[i] ?? 1) < ENOUGH ? next : was));
  }
  return bestSeen(at, added, on, further);
}

/** From the first corner from which enough is seen of everything that comes; else from that from which most is seen of what shows least. */
function bestSeen(at: AtStep, added: ReadonlySet<string>, on: Workbench, further: readonly Further[]): Seen {
  const scene = pulled(at, further);
  const bodies = [...scene.pieces]
    .sort((a, b) => Number(added.has(b.piece.key)) - Number(added.has(a.piece.key)))
    .flatMap((shown) => bodiesOf(on, [shown]));
  const byKey = new Map(bodies.map((body) => [body.key, body]));
  let best: Seen | undefined;
  for (const look of looksAt(
    scene,
    added,
    at.arrivals.some(({ into }) => into === CAMERA),
  ).slice(0, LOOKS)) {
    const ways = scene.ways.flatMap((way) => wayLines(way, byKey, look.view));
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
    if (shares.every((share) => share >= ENOUGH)) break;
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

interface Sheet {
  readonly at: AtStep;
  readonly added: ReadonlySet<string>;
  readonly width: number;
  readonly free: { readonly width: number; readonly height: number };
  readonly shrink: number;
}

/** Null where a number has no room. */
function onPaper(
  { look, lines: pieces, ways, points }: Seen,
  { at, added, width, free, shrink }: Sheet,
): { readonly height: number; readonly marks: readonly Mark[] } | null {
  const bounds = extentOf([...pieces.flatMap(({ seen }) => seen), ...ways]);
  const size = { width: bounds.right - bounds.left, height: bounds.top - bounds.bottom };
  const scale = shrink * Math.min(LARGEST, free.width / size.width, free.height / size.height);
  const plot: Plot = plotted(scale, {
    x: hundredths(width / 2 - (scale * (bounds.left + bounds.right)) / 2),
    y: hundredths(HEAD + ABOVE + scale * bounds.top),
  });
  const height = hundredths(HEAD + 2 * ABOVE + scale * size.height);
  const paths = (of: (key: string) => boolean): Paths =>
    pieces.flatMap(({ key, seen }) => (of(key) ? seen.map((path) => path.map(plot.at)) : []));
  const [addedPaths, therePaths] = [paths((key) => added.has(key)), paths((key) => !added.has(key))];
  const wayPaths = ways.map((path) => path.map(plot.at));
  const words = labelRoom({ width, height });
  words.keepClear([...addedPaths, ...therePaths, ...wayPaths]);
  words.take({ left: 0, top: 0, right: width, bottom: HEAD });
  const named = numberedOf(at.arrivals.filter(({ whole, way }) => whole === null || way !== null));
  const numbers = numbersIn(
    named.map((one) => ({
      text: numberText(one),
      spots: spotsOf(one.keys, { points, pieces }).map(plot.at),
    })),
    words,
  );
  if (numbers === null) return null;
  return {
    height,
    marks: [
      {
        kind: 'words',
        role: 'note',
        at: { x: 0, y: LETTERS.size },
        text: `${look.words}.`,
        anchor: 'start',
        ...LETTERS,
      },
      ...strokes('there', therePaths),
      ...strokes(
        'way',
        wayPaths.flatMap((path) => path.slice(1).flatMap((to, i) => chainLine(path[i] as Point, to, 1))),
      ),
      ...strokes('added', addedPaths),
      ...numbers,
    ],
  };
}

const strokes = (role: 'added' | 'there' | 'way', paths: Paths): readonly Mark[] =>
  paths.length === 0 ? [] : [{ kind: 'strokes', role, paths, stroke: lines[role === 'way' ? 'axis' : role] }];

/** Spots for one number: on faces that are seen, of the first few pieces; else on a line that is seen. */
function spotsOf(
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
