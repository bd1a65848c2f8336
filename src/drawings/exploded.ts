import type { Build } from '../assembly/build.js';
import { holderOf } from '../assembly/holders.js';
import { type Piece, piecesOf } from '../assembly/pieces.js';
import { stands } from '../assembly/setups.js';
import type { Point } from '../geometry/path.js';
import type { Move } from '../model/assembly-move.js';
import type { Drawing, Mark } from '../model/page.js';
import type { Arrival } from './at-step.js';
import { labelRoom } from './label-room.js';
import { LETTERS, lines } from './line-weights.js';
import { type ColumnNumber, numberColumns, numberWidth, ROW } from './number-columns.js';
import { madeMark, type Numbered, numberText } from './numbers.js';
import { chainLine, extentOf, hundredths, plotted } from './plot.js';
import type { StepGiven } from './step-drawing.js';
import { type TakenApart, takenApart } from './taken-apart.js';

/** Between a group and the numbers beside it, and round the numbers, mm. */
const BESIDE = 3;
/** Above and below each group. */
const ABOVE = 1.5;
/** For the words over each group. */
const HEAD = 6;
/** A group that is drawn lower than this is not recognised, mm. */
const LOW = 55;
/** What rounding to hundredths may add, mm. */
const ROUNDED = 0.1;
/** Side of the squares on paper in which is looked what is seen where, mm. */
const SQUARE = 0.6;

interface Group {
  readonly words: string;
  readonly apart: TakenApart;
  readonly numbered: readonly Numbered[];
}

/**
 * Every made part with its number, pulled out of the camera against the way that it goes in: front box and lens, the
 * tailboard that they stand on, what slides on it with all that it carries, what hangs ahead of the lens, and each holder;
 * one group above the other, on as many pages as that takes.
 */
export function explodedDrawings(given: StepGiven): readonly Drawing[] {
  const pages = onPages(explodedGroups(given), given.room);
  return pages.map((groups, i) => explodedDrawing(groups, given, i === 0 ? '' : `-${i + 1}`));
}

/** As many groups on a page as each has its least height on, in their order. */
function onPages(groups: readonly Group[], { height }: StepGiven['room']): readonly (readonly Group[])[] {
  const pages: Group[][] = [];
  let left = 0;
  for (const group of groups) {
    const own = HEAD + Math.max(leastHeight(group), LOW) + 2 * ABOVE;
    const page = pages.at(-1);
    if (page === undefined || own > left) pages.push([group]);
    else page.push(group);
    left = (page === undefined || own > left ? height - ROUNDED : left) - own;
  }
  return pages;
}

function explodedDrawing(groups: readonly Group[], { plan, room }: StepGiven, suffix: string): Drawing {
  const laid = laidOut(groups, room);
  const title = 'Every made part, and the way that it goes in';
  return {
    name: `exploded${suffix}`,
    title: suffix === '' ? title : `${title}, continued`,
    description: `${plan.name} taken apart, without perspective. ${groups.map(({ words }) => `${words}.`).join(' ')}`,
    scale: null,
    width: room.width,
    height: hundredths(laid.reduce((sum, { height }) => sum + HEAD + height, 0)),
    marks: laid.flatMap((one, i) =>
      groupMarks(one, {
        room,
        top: hundredths(laid.slice(0, i).reduce((sum, { height }) => sum + HEAD + height, 0)),
      }),
    ),
  };
}

/** What is pulled apart together, from above to below on the paper. */
export function explodedGroups({ build, on, moves }: StepGiven): readonly Group[] {
  const [setup] = build.setups;
  if (setup === undefined) throw new Error('a camera has a set-up');
  const shown = shownPieces(build);
  const holders = [...new Set(shown.flatMap(({ placement }) => holderOf(placement) ?? []))];
  return [
    {
      words: shown.some(({ placement }) => placement.drawnFrom !== undefined)
        ? 'Front box, middle box and lens'
        : 'Front box and lens',
      pieces: shown.filter((piece) => !piece.slides && !isBase(piece) && !hangsAhead(piece)),
    },
    { words: 'Tailboard', pieces: shown.filter((piece) => !piece.slides && isBase(piece)) },
    {
      words: 'Sliding rear, back, and what sits in it',
      pieces: shown.filter(({ slides, placement }) => slides && holderOf(placement) === null),
    },
    ...(shown.some(hangsAhead) ? [{ words: 'Ahead of the lens', pieces: shown.filter(hangsAhead) }] : []),
    ...holders.map((name) => ({
      words: `${name.charAt(0).toUpperCase()}${name.slice(1)}`,
      pieces: shown.filter(({ placement }) => holderOf(placement) === name),
    })),
  ].map(({ words, pieces }): Group => {
    const apart = takenApart({ setup, before: new Map(), arrivals: arrivalsOf(moves, pieces), after: pieces }, on);
    const { words: from } = apart.look;
    return { words: `${words}: ${from.charAt(0).toLowerCase()}${from.slice(1)}`, apart, numbered: numberedOf(pieces) };
  });
}

/** What all stands on bears a T. */
const isBase = ({ part }: Piece): boolean => part.id.startsWith('T');

/** What hangs ahead of the lens bears an A for its frame, FH for the filter holder, a D for the drop shutter, LH for the hood, LC for the cap. */
const hangsAhead = ({ part }: Piece): boolean => /^(?:A|FH|D|LH|LC)\d/.test(part.id);

/** What is made, and the lens and the glass that it is made for; each in the first set-up in which it stands. */
function shownPieces(build: Build): readonly Piece[] {
  return piecesOf(build.parts).filter(({ part, placement }) => {
    if (part.kind === 'bought' && part.role !== 'lens' && part.role !== 'ground-glass') return false;
    const first = build.setups.find((setup) => part.placements.some((own) => stands(own, setup)));
    return first !== undefined && stands(placement, first);
  });
}

/** What comes of these pieces, each thing once, in the order of assembly. */
function arrivalsOf(moves: readonly Move[], shown: readonly Piece[]): readonly Arrival[] {
  const pieces = new Map(shown.map((piece) => [piece.key, piece]));
  const told = new Set<string>();
  return [...moves]
    .sort((a, b) => a.step - b.step)
    .flatMap(({ into, whole, way, pieces: keys }): readonly Arrival[] => {
      const own = keys.flatMap((key) => pieces.get(key) ?? []);
      const key = `${into} ${own.map((piece) => piece.key).join(' ')}`;
      if (own.length === 0 || told.has(key)) return [];
      told.add(key);
      return [{ pieces: own, into, whole: whole ?? null, way }];
    });
}

function numberedOf(shown: readonly Piece[]): readonly Numbered[] {
  const groups = new Map<string, string[]>();
  for (const { key, part } of shown)
    if (part.kind !== 'bought') groups.set(madeMark(part), [...(groups.get(madeMark(part)) ?? []), key]);
  return [...groups].map(([text, keys]) => ({ text, count: keys.length, keys }));
}

interface Laid {
  readonly group: Group;
  readonly scale: number;
  readonly height: number;
}

/** Its numbers stand in two columns. */
const leastHeight = ({ numbered }: Group): number => ROW * Math.ceil(numbered.length / 2);

/** Each group as wide as the paper lets it; where that is too high together, the highest ones smaller. */
function laidOut(groups: readonly Group[], room: StepGiven['room']): readonly Laid[] {
  const wanted = groups.map((group) => {
    const { left, right, top, bottom } = boundsOf(group);
    const scale = (room.width - 2 * sideOf(group)) / (right - left);
    return { group, scale, own: top - bottom, least: leastHeight(group) };
  });
  const most = highest(
    wanted.map(({ scale, own, least }) => Math.max(scale * own, least) + 2 * ABOVE),
    room.height - ROUNDED - groups.length * HEAD,
  );
  return wanted.map(({ group, scale, own, least }) => {
    const high = Math.min(scale * own, most - 2 * ABOVE);
    return { group, scale: high / own, height: hundredths(Math.max(high, least) + 2 * ABOVE) };
  });
}

/** How high each may be so that all go into a height. */
function highest(heights: readonly number[], into: number): number {
  let left = into;
  const order = [...heights].sort((a, b) => a - b);
  for (const [i, height] of order.entries()) {
    const each = left / (order.length - i);
    if (height > each) return each;
    left -= height;
  }
  return Infinity;
}

const boundsOf = ({ apart: { lines: all, ways } }: Group) => extentOf([...all.flatMap(({ seen }) => seen), ...ways]);

const sideOf = ({ numbered }: Group): number =>
  2 * BESIDE + Math.max(0, ...numbered.map((one) => numberWidth(numberText(one))));

function groupMarks(
  { group, scale, height }: Laid,
  { room, top }: { readonly room: StepGiven['room']; readonly top: number },
): readonly Mark[] {
  const bounds = boundsOf(group);
  const { at } = plotted(scale, {
    x: hundredths(room.width / 2 - (scale * (bounds.left + bounds.right)) / 2),
    y: hundredths(top + HEAD + height / 2 + (scale * (bounds.top + bounds.bottom)) / 2),
  });
  const onPaper = (paths: readonly (readonly Point[])[]) => paths.map((path) => thinned(path.map(at)));
  const { apart, words, numbered } = group;
  const outlines = onPaper(apart.lines.flatMap(({ seen }) => seen));
  const ways = onPaper(apart.ways);
  const bare = () => {
    const free = labelRoom({ width: room.width, height: top + HEAD + height });
    free.keepClear([...outlines, ...ways]);
    return free;
  };
  const numbers = numbered.map(
    (one): ColumnNumber => ({ text: numberText(one), bodies: one.keys.map((key) => apart.keys.indexOf(key)) }),
  );
  const half = (scale * (bounds.right - bounds.left)) / 2 + BESIDE;
  const columns = {
    left: room.width / 2 - half,
    right: room.width / 2 + half,
    top: top + HEAD + ROW / 2,
    bottom: top + HEAD + height - ROW / 2,
  };
  return [
    {
      kind: 'words',
      role: 'note',
      at: { x: 0, y: hundredths(top + LETTERS.size + 1) },
      text: `${words}.`,
      anchor: 'start',
      ...LETTERS,
    },
    {
      kind: 'strokes',
      role: 'way',
      paths: ways.flatMap((path) => path.slice(1).flatMap((to, i) => chainLine(path[i] as Point, to, 1))),
      stroke: lines.axis,
    },
    { kind: 'strokes', role: 'outline', paths: outlines, stroke: lines.outline },
    ...numberColumns(numbers, { squared: apart.squared(SQUARE / scale), at, scale, columns, bare }),
  ];
}

/** So near to a straight line its points are left out, mm on paper: a tenth of the width of the line. */
const STRAIGHT = 0.025;

/** A polyline without the points that nobody sees at this scale. */
function thinned(path: readonly Point[]): readonly Point[] {
  const [from, to] = [path[0], path.at(-1)];
  if (from === undefined || to === undefined || path.length < 3) return path;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  const off = ({ x, y }: Point): number => {
    const [px, py] = [x - from.x, y - from.y];
    return length < STRAIGHT ? Math.sqrt(px * px + py * py) : Math.abs(px * dy - py * dx) / length;
  };
  let farthest = 0;
  path.forEach((p, i) => {
    if (off(p) > off(path[farthest] as Point)) farthest = i;
  });
  if (farthest === 0 || off(path[farthest] as Point) <= STRAIGHT) return [from, to];
  return [...thinned(path.slice(0, farthest + 1)), ...thinned(path.slice(farthest)).slice(1)];
}
