import { area, type Box, boundsOf, type Path, type Point } from '../geometry/path.js';
import { after } from '../packing/search.js';
import { type CutPath, type Layer, layers, type Operation } from './sheet.js';
import { type Contour, enterBest, searchTour } from './tour.js';

/** A path where it lies on the sheet, and what it is cut as. */
export interface Drawn {
  readonly layer: Layer;
  readonly cut: CutPath;
}

export interface CutOrder {
  /** All five, in cutting order, some of them empty. */
  readonly operations: readonly Operation[];
  /** Straight moves without the beam, from the corner where the head rests to the last path. mm */
  readonly travelLength: number;
}

/** The sheet's lower left corner: where the head rests (the contract's). */
const HOME: Point = { x: 0, y: 0 };
/** Strokes drawn one after the other that lie nearer than this are of one word, mm: letters are 4 high at most. */
const WORD = 5;
/** Steps of the search in a word: letters follow each other as they are read, and little is to be gained. */
const WORD_STEPS = 2;
/** An outline waits for all others that are smaller than this share of its area. */
const SMALL = 1 / 2;
/** So many vertices of an outline are looked at as entries while the order is sought; all of them once it is settled. */
const ENTRIES = 16;
/** Any number will do: the same sheet is always cut alike. */
const SEED = 1;

/**
 * The paths of a sheet as they are cut, in one tour through all operations.
 *
 * Operations follow each other as the contract says, which puts holes before the outlines round them and what lies in a
 * window before the window. Of the outlines that part from the sheet, none is cut before another of less than half its
 * area: what is small would shift once the large ones round it are loose. Words are engraved stroke after stroke.
 */
export function cutOrder(drawn: readonly Drawn[], { steps }: { readonly steps: number }): CutOrder {
  const runs = layers.flatMap((layer) => runsOf(layer, drawn));
  const contours = runs.map((run) => ({
    ...waysThrough(run),
    after: smallBefore(run, runs),
    stage: layers.indexOf(run.layer),
  }));
  const { order, entries } = after(searchTour({ start: HOME, contours }, SEED), Math.max(1, steps));
  const inOrder = order.flatMap((r, i) => {
    const { layer, cuts } = runs[r] as Run;
    return (isBackwards(cuts, entries[i] as number) ? [...cuts].reverse() : cuts).map((cut) => ({ layer, cut }));
  });
  const { cuts, travel } = entered(inOrder.map(({ cut }) => cut));
  return {
    operations: layers.map((layer) => ({ layer, paths: cuts.filter((_, i) => inOrder[i]?.layer === layer) })),
    travelLength: travel,
  };
}

/** Paths that are cut one after the other, as they stand here or all of it backwards. */
interface Run {
  readonly layer: Layer;
  readonly cuts: readonly CutPath[];
}

/** What the search moves as one: words of the engraving, single paths of everything else. */
function runsOf(layer: Layer, drawn: readonly Drawn[]): readonly Run[] {
  const cuts = drawn.filter((one) => one.layer === layer).map(({ cut }) => cut);
  if (layer !== 'engrave') return cuts.map((cut) => ({ layer, cuts: [cut] }));
  const words: CutPath[][] = [];
  let before: Box | null = null;
  for (const cut of cuts) {
    const box = boundsOf(cut.path.vertices);
    if (before && gapBetween(before, box) < WORD) words.at(-1)?.push(cut);
    else words.push([cut]);
    before = box;
  }
  return words.map((word) => ({ layer, cuts: written(word) }));
}

/** The strokes of a word by a short way from its lower left corner. */
function written(word: readonly CutPath[]): readonly CutPath[] {
  if (word.length === 1) return word;
  const { left, bottom } = boundsOf(word.flatMap(({ path }) => path.vertices));
  const contours = word.map(({ path }) => ({ ...waysOf(path), after: [] }));
  const { order, entries } = after(searchTour({ start: { x: left, y: bottom }, contours }, SEED), WORD_STEPS);
  return order.map((s, i) => startedAt(word[s] as CutPath, entries[i] as number));
}

/** Which runs are outlines that have to be cut before this one. */
function smallBefore(run: Run, runs: readonly Run[]): readonly number[] {
  if (run.layer !== 'cut-outside') return [];
  const least = SMALL * sizeOf(run);
  return runs.flatMap((other, i) => (other.layer === 'cut-outside' && sizeOf(other) < least ? [i] : []));
}

const sizeOf = ({ cuts }: Run): number => Math.abs(area((cuts[0] as CutPath).path.vertices));

type Ways = Pick<Contour, 'points' | 'ends'>;

/** A loop may be entered at any vertex, a stroke at either end. */
function waysOf({ vertices, closed }: Path): Ways {
  if (closed) return { points: vertices };
  const [first, last] = [vertices[0] as Point, vertices.at(-1) as Point];
  return { points: [first, last], ends: [last, first] };
}

function waysThrough({ cuts }: Run): Ways {
  const [first, last] = [cuts[0] as CutPath, cuts.at(-1) as CutPath];
  if (cuts.length === 1) return first.path.closed ? { points: spread(first.path.vertices) } : waysOf(first.path);
  const { points, ends = points } = waysOf(last.path);
  const [from, to] = [first.path.vertices[0] as Point, ends[0] as Point];
  return { points: [from, to], ends: [to, from] };
}

const isBackwards = (cuts: readonly CutPath[], entry: number): boolean => cuts.length > 1 && entry === 1;

/** A few vertices that stand for all: always the one farthest from those chosen already (Gonzalez 1985). */
function spread(points: readonly Point[]): readonly Point[] {
  if (points.length <= ENTRIES) return points;
  const gaps = points.map(() => Infinity);
  const chosen: Point[] = [];
  let next = points[0] as Point;
  while (chosen.length < ENTRIES) {
    chosen.push(next);
    let widest = 0;
    points.forEach((point, i) => {
      const gap = Math.min(gaps[i] as number, (point.x - next.x) ** 2 + (point.y - next.y) ** 2);
      gaps[i] = gap;
      if (gap > (gaps[widest] as number)) widest = i;
    });
    next = points[widest] as Point;
  }
  return chosen;
}

/** All paths of a settled order, each begun where that makes the whole way shortest. */
function entered(cuts: readonly CutPath[]): { readonly cuts: readonly CutPath[]; readonly travel: number } {
  const contours = cuts.map(({ path }) => ({ ...waysOf(path), after: [] }));
  const order = cuts.map((_, i) => i);
  const { entries, travel } = enterBest({ start: HOME, contours }, order);
  return { cuts: cuts.map((cut, i) => startedAt(cut, entries[i] as number)), travel };
}

/** A loop begun at another vertex; a stroke begun at its other end is walked backwards. */
function startedAt(cut: CutPath, entry: number): CutPath {
  if (entry === 0) return cut;
  const { vertices, closed } = cut.path;
  if (closed)
    return { id: cut.id, path: { closed, vertices: [...vertices.slice(entry), ...vertices.slice(0, entry)] } };
  const back = vertices.map((v, i) => ({ ...v, bulge: i === 0 ? 0 : -(vertices[i - 1]?.bulge ?? 0) || 0 })).reverse();
  return { id: cut.id, path: { closed, vertices: back } };
}

function gapBetween(a: Box, b: Box): number {
  const across = Math.max(0, a.left - b.right, b.left - a.right);
  const up = Math.max(0, a.bottom - b.top, b.bottom - a.top);
  return Math.sqrt(across * across + up * up);
}
