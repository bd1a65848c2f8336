import type { Build } from '../assembly/build.js';
import { type Piece, piecesOf } from '../assembly/pieces.js';
import { stands } from '../assembly/setups.js';
import type { Point } from '../geometry/path.js';
import type { Move } from '../model/assembly-move.js';
import type { Drawing, Mark } from '../model/page.js';
import type { Arrival } from './at-step.js';
import { labelRoom } from './label-room.js';
import { LETTERS, lines } from './line-weights.js';
import { madeMark, type Numbered, type Numbers, numbersIn, numberText, roomiest } from './numbers.js';
import { chainLine, extentOf, hundredths, type Plot, plotted } from './plot.js';
import type { StepGiven } from './step-drawing.js';
import { type Seen, spotsOf, wellSeen } from './well-seen.js';

type Paths = readonly (readonly Point[])[];

/** Of the lines of each part this share is to be seen. */
const ENOUGH = 0.04;
/** For the numbers at both sides, and above and below each group, mm. */
const SIDE = 12;
const ABOVE = 5;
/** For the words over each group. */
const HEAD = 6;
/** What rounding to hundredths may add, mm. */
const ROUNDED = 0.1;

interface Group {
  readonly words: string;
  readonly seen: Seen;
  readonly numbered: readonly Numbered[];
}

/**
 * Every made part with its number, pulled out of the camera against the way that it goes in: front box and lens, the
 * tailboard that they stand on, and what slides on it with all that it carries, one group above the other.
 */
export function explodedDrawing(given: StepGiven): Drawing {
  const { build, plan, on, room, moves } = given;
  const [setup] = build.setups;
  if (setup === undefined) throw new Error('a camera has a set-up');
  const shown = shownPieces(build);
  const groups = [
    { words: 'Front box and lens', pieces: shown.filter((piece) => !piece.slides && !isBase(piece)) },
    { words: 'Tailboard', pieces: shown.filter((piece) => !piece.slides && isBase(piece)) },
    { words: 'Sliding rear, back, and what sits in it', pieces: shown.filter(({ slides }) => slides) },
  ].map(({ words, pieces }): Group => {
    const at = { setup, before: new Map(), arrivals: arrivalsOf(moves, pieces), after: pieces };
    const seen = wellSeen(at, {
      added: new Set(pieces.map(({ key }) => key)),
      on,
      led: 'middle',
      enough: ENOUGH,
      each: false,
      underneath: 'never',
    });
    const { words: from } = seen.look;
    return { words: `${words}: ${from.charAt(0).toLowerCase()}${from.slice(1)}`, seen, numbered: numberedOf(pieces) };
  });
  const { height, marks } = roomiest((shrink) => drawnGroups(groups, room, shrink));
  return {
    name: 'exploded',
    title: 'Every made part, and the way that it goes in',
    description: `${plan.name} taken apart, without perspective. ${groups.map(({ words }) => `${words}.`).join(' ')}`,
    scale: null,
    width: room.width,
    height,
    marks,
  };
}

/** What all stands on bears a T. */
const isBase = ({ part }: Piece): boolean => part.id.startsWith('T');

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

/** All groups at one scale, one above the other. */
function drawnGroups(
  groups: readonly Group[],
  room: StepGiven['room'],
  shrink: number,
): Numbers & { readonly height: number } {
  const bounds = groups.map(({ seen }) => extentOf([...seen.lines.flatMap((piece) => piece.seen), ...seen.ways]));
  const sizes = bounds.map(({ left, right, top, bottom }) => ({ width: right - left, height: top - bottom }));
  const scale =
    shrink *
    Math.min(
      (room.width - 2 * SIDE) / Math.max(...sizes.map(({ width }) => width)),
      (room.height - ROUNDED - groups.length * (HEAD + 2 * ABOVE)) / sizes.reduce((sum, { height }) => sum + height, 0),
    );
  let top = 0;
  const plots = bounds.map((box, i): Plot & { readonly top: number } => {
    const plot = plotted(scale, {
      x: hundredths(room.width / 2 - (scale * (box.left + box.right)) / 2),
      y: hundredths(top + HEAD + ABOVE + scale * box.top),
    });
    const own = top;
    top = hundredths(top + HEAD + 2 * ABOVE + scale * (sizes[i]?.height ?? 0));
    return { ...plot, top: own };
  });
  const words = labelRoom({ width: room.width, height: top });
  const drawn = groups.map(({ seen }, i) => {
    const at = (plots[i] as Plot).at;
    const onPaper = (paths: Paths): Paths => paths.map((path) => path.map(at));
    return { outlines: onPaper(seen.lines.flatMap((piece) => piece.seen)), ways: onPaper(seen.ways) };
  });
  for (const { outlines, ways } of drawn) words.keepClear([...outlines, ...ways]);
  for (const plot of plots) words.take({ left: 0, top: plot.top, right: room.width, bottom: plot.top + HEAD });
  const numbers = numbersIn(
    groups.flatMap(({ seen, numbered }, i) =>
      numbered.map((one) => ({
        text: numberText(one),
        spots: spotsOf(one.keys, { points: seen.points, pieces: seen.lines }).map((plots[i] as Plot).at),
      })),
    ),
    words,
  );
  return {
    homeless: numbers.homeless,
    height: top,
    marks: [
      ...groups.map(
        (group, i): Mark => ({
          kind: 'words',
          role: 'note',
          at: { x: 0, y: hundredths((plots[i]?.top ?? 0) + LETTERS.size + 1) },
          text: `${group.words}.`,
          anchor: 'start',
          ...LETTERS,
        }),
      ),
      {
        kind: 'strokes',
        role: 'way',
        paths: drawn.flatMap(({ ways }) =>
          ways.flatMap((path) => path.slice(1).flatMap((to, i) => chainLine(path[i] as Point, to, 1))),
        ),
        stroke: lines.axis,
      },
      { kind: 'strokes', role: 'outline', paths: drawn.flatMap(({ outlines }) => outlines), stroke: lines.outline },
      ...numbers.marks,
    ],
  };
}
