import type { Point } from '../geometry/path.js';
import type { Mark } from '../model/page.js';
import { wordsWidth } from '../paper/words-width.js';
import { grown, type LabelRoom, type Patch, wordsPatch } from './label-room.js';
import { LETTERS, lines } from './line-weights.js';
import { hundredths } from './plot.js';

/** One dimension, on paper. */
export interface Dimension {
  /** What is measured: the id of its line is `dimension-` and this. */
  readonly name: string;
  readonly figure: string;
  /** What it is, in words: said before the figure where there is room for it. */
  readonly what?: string;
  /** Where it may stand, one place at least: the first at which its figure finds room is taken. */
  readonly places: readonly Place[];
}

export interface Place {
  /** Between these two points; the line lies level or upright. */
  readonly from: Point;
  readonly to: Point;
  /** Where the line lies: y of a level one, x of an upright one. */
  readonly line: { readonly y: number } | { readonly x: number };
}

/** Closed and filled arrowheads, mm: ISO 129-1 (from memory) leaves the size to the drawing. */
const ARROW = { length: 2.2, half: 0.36 } as const;
/** From what is measured to its extension line, and how far that goes past the dimension line. */
const GAP = 0.8;
const PAST = 1.2;
/** Of a line that its arrows point at from outside. */
const TAIL = 4.5;
/** From the line to the lowest stroke of the figure. */
const ABOVE = 0.45;
/** Bare paper round a figure: less than that, for its own line. */
const BARE = 0.4;
/** Figures are tried along their line in such steps. */
const STEP = 0.75;

const letters = { size: LETTERS.size, heavy: false } as const;

/** A dimension in its own frame: `u` runs along its line, `v` across it towards where the figure stands. */
interface Laid {
  readonly dimension: Dimension;
  readonly ends: readonly [Point, Point];
  readonly low: number;
  readonly high: number;
  /** From the frame to the paper. */
  readonly at: (u: number, v: number) => Point;
  readonly upright: boolean;
  readonly place: number;
}

function laid(dimension: Dimension, { from, to, line }: Place): Laid {
  const upright = 'x' in line;
  const place = upright ? line.x : line.y;
  const [a, b] = upright ? [from.y, to.y] : [from.x, to.x];
  return {
    dimension,
    ends: [from, to],
    upright,
    place,
    low: Math.min(a, b),
    high: Math.max(a, b),
    // figures stand above a level line and left of an upright one, to be read from the right: ISO 129-1
    at: (u, v) =>
      upright ? { x: hundredths(place - v), y: hundredths(u) } : { x: hundredths(u), y: hundredths(place - v) },
  };
}

/**
 * Lines, arrows and figures of dimensions. The lines that have one place only are put down first, then those that may
 * choose, with their figures, and last the figures of the first ones: so none stands on a line. What figures must not
 * cover has to be in the room already.
 */
export function dimensioned(dimensions: readonly Dimension[], room: LabelRoom): readonly Mark[] {
  const all = dimensions.map((dimension) => dimension.places.map((place) => laid(dimension, place)));
  for (const [option, ...others] of all)
    if (option !== undefined && others.length === 0) room.keepClear(linesOf(option).strokes);
  const settled = all.map((options) => (options.length === 1 ? null : settle(options, room)));
  return all.flatMap((options, i) => marksOf(settled[i] ?? settle(options, room)));
}

interface Settled {
  readonly option: Laid;
  readonly figure: Figure;
}

/** Takes the place at which the figure stands best, and that crosses no words. */
function settle(options: readonly Laid[], room: LabelRoom): Settled {
  const bare = options.filter((option) => room.isBare(linesOf(option).strokes));
  const best = (bare.length === 0 ? options : bare)
    .map((option) => ({ option, figure: figureOf(option, room) }))
    .reduce((least, each) => (each.figure.tried < least.figure.tried ? each : least));
  room.take(best.figure.patch);
  room.keepClear([...linesOf(best.option).strokes, ...best.figure.under]);
  return best;
}

function marksOf({ option, figure }: Settled): readonly Mark[] {
  const { strokes, arrows } = linesOf(option);
  const [own = [], ...others] = strokes;
  return [
    { kind: 'strokes', role: 'dimension', paths: [...others, ...figure.under], stroke: lines.dimension },
    { kind: 'line', role: 'dimension', id: `dimension-${option.dimension.name}`, points: own, stroke: lines.dimension },
    ...arrows.map(
      (points): Mark => ({ kind: 'line', role: 'dimension', points, closed: true, fill: lines.dimension.colour }),
    ),
    figure.words,
  ];
}

const isNarrow = ({ low, high }: Laid): boolean => high - low < 2 * ARROW.length + 1;

/** The dimension line first, then what leads to it. */
function linesOf(each: Laid): {
  readonly strokes: readonly (readonly Point[])[];
  readonly arrows: readonly (readonly Point[])[];
} {
  const { low, high, at, ends, upright, place } = each;
  const narrow = isNarrow(each);
  const extensions = ends.flatMap((p) => {
    const [u, v] = upright ? [p.y, place - p.x] : [p.x, place - p.y];
    if (Math.abs(v) < GAP) return [];
    const away = v > 0 ? -1 : 1;
    return [[at(u, v + away * GAP), at(u, away * PAST)]];
  });
  const tails = narrow
    ? [
        [at(low - TAIL, 0), at(low, 0)],
        [at(high, 0), at(high + TAIL, 0)],
      ]
    : [];
  const inwards = narrow ? -1 : 1;
  const arrow = (tip: number, way: 1 | -1) => [
    at(tip, 0),
    at(tip + way * inwards * ARROW.length, ARROW.half),
    at(tip + way * inwards * ARROW.length, -ARROW.half),
  ];
  return { strokes: [[at(low, 0), at(high, 0)], ...extensions, ...tails], arrows: [arrow(low, 1), arrow(high, -1)] };
}

interface Figure {
  readonly words: Mark;
  readonly patch: Patch;
  /** The dimension line drawn on below a figure beside it. */
  readonly under: readonly (readonly Point[])[];
  /** Which way it found room: 0 in words along its line, more for each way that is worse. */
  readonly tried: number;
}

/** The figure where it is free: along its line from the middle outwards, else beside it; in words where they find room. */
function figureOf(each: Laid, room: LabelRoom): Figure {
  const { dimension, low, high, at, upright } = each;
  const { figure, what } = dimension;
  const { top, bottom } = wordsPatch('', { x: 0, y: 0 }, letters);
  const base = ABOVE + bottom;
  const patchAt = (u: number, width: number): Patch => {
    const [a, b] = [at(u - width / 2, base - top), at(u + width / 2, ABOVE)];
    return {
      left: Math.min(a.x, b.x),
      right: Math.max(a.x, b.x),
      top: Math.min(a.y, b.y),
      bottom: Math.max(a.y, b.y),
    };
  };
  const arrows = isNarrow(each) ? 0 : ARROW.length + 0.3;
  const along = (width: number): readonly number[] => {
    const spare = (high - low - width) / 2 - arrows;
    const places: number[] = [];
    for (let off = 0; off <= spare; off += STEP) places.push((low + high) / 2 + off, (low + high) / 2 - off);
    return places;
  };
  const tail = isNarrow(each) ? ARROW.length + 0.6 : 0.8;
  const beside = (width: number) => [high + tail + width / 2, low - tail - width / 2];
  const inWords = what === undefined ? figure : `${what} ${figure}`;
  const ways = [
    { text: inWords, where: along },
    { text: inWords, where: beside },
    { text: figure, where: along },
    { text: figure, where: beside },
  ];
  const tries = ways.flatMap(({ text, where }, tried) => {
    const width = wordsWidth(text, letters);
    return where(width).map((u) => ({ text, u, width, tried }));
  });
  const free = tries.find(({ u, width }) => room.isFree(grown(patchAt(u, width), BARE)));
  const chosen = free ?? tries.at(-1);
  if (chosen === undefined) throw new Error('a figure has two places beside its line at least');
  const { text, u, width } = chosen;
  const end = u > high ? high : u < low ? low : null;
  return {
    patch: patchAt(u, width),
    tried: free?.tried ?? ways.length,
    under: end === null ? [] : [[at(end, 0), at(u > high ? u + width / 2 : u - width / 2, 0)]],
    words: {
      kind: 'words',
      role: 'dimension',
      at: at(u, base),
      text,
      anchor: 'middle',
      ...LETTERS,
      ...(upright ? { turned: Math.PI / 2 } : {}),
    },
  };
}
