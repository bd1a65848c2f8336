import { type Dimension, dimensioned, type Place } from '../drawings/dimension.js';
import { labelRoom } from '../drawings/label-room.js';
import { lines } from '../drawings/line-weights.js';
import { hundredths, type Plot, plotted, scaleFor, scaleText } from '../drawings/plot.js';
import { boundsOf, type ClosedPath, flatten, type Point } from '../geometry/path.js';
import type { Mark } from '../model/page.js';
import { words } from '../paper/blocks.js';
import { shifted } from '../paper/figure.js';
import { INK, SMALL } from '../paper/prose.js';
import { TEXT_WIDTH } from '../paper/sheet-size.js';
import { plainNumber } from '../units/print.js';
import { TEMPLATE_ROOM, type Template } from './template-page.js';

/** A flat thing by its edges, x to the right and y up. */
export interface Shape {
  readonly outline: ClosedPath;
  readonly holes: readonly ClosedPath[];
}

/** The edge is the middle of the line, and the line is no wider than it must be to be seen. */
const EDGE = { colour: INK, width: 0.2 } as const;
const CENTRE = 3;

/** Words within a template keep off its edges. */
const INSIDE = 8;

export const lettered = (text: string | readonly string[], width: number) =>
  words(text, { size: SMALL, colour: INK, width });

const rounded = ({ x, y }: Point): Point => ({ x: hundredths(x), y: hundredths(y) });

const edge = (loop: ClosedPath, place: (point: Point) => Point): Mark => ({
  kind: 'line',
  role: 'cut',
  points: flatten(loop).map((point) => rounded(place(point))),
  closed: true,
  stroke: EDGE,
});

/** The middle of what is drilled. */
export function centreCross(at: Point, half = CENTRE): Mark {
  const { x, y } = rounded(at);
  return {
    kind: 'strokes',
    role: 'axis',
    paths: [
      [
        { x: x - half, y },
        { x: x + half, y },
      ],
      [
        { x, y: y - half },
        { x, y: y + half },
      ],
    ],
    stroke: lines.axis,
  };
}

/** A hole that is drilled and not cut: a whole circle. */
const isRound = (loop: ClosedPath): boolean => loop.length === 2;

export const middleOf = (loop: ClosedPath): Point => {
  const { left, right, bottom, top } = boundsOf(loop);
  return { x: (left + right) / 2, y: (bottom + top) / 2 };
};

export const sizeOf = (loop: ClosedPath) => {
  const { left, right, bottom, top } = boundsOf(loop);
  return { width: right - left, height: top - bottom };
};

/** Lying: its longer side level, by a quarter turn and never turned over. */
export function lying(shape: Shape): Shape {
  const { width, height } = sizeOf(shape.outline);
  if (width >= height) return shape;
  const turned = (loop: ClosedPath): ClosedPath => loop.map(({ x, y, bulge }) => ({ x: y, y: -x, bulge }));
  return { outline: turned(shape.outline), holes: shape.holes.map(turned) };
}

/** Edges at true size, the upper left corner of their bounds at a point. */
function trueEdges({ outline, holes }: Shape, at: Point): readonly Mark[] {
  const { left, top } = boundsOf(outline);
  const place = ({ x, y }: Point): Point => ({ x: at.x + x - left, y: at.y + top - y });
  return [
    ...[outline, ...holes].map((loop) => edge(loop, place)),
    ...holes.filter(isRound).map((loop) => centreCross(place(middleOf(loop)))),
  ];
}

/** A thing at true size, what it is below it. */
export function trueSize(parts: readonly string[], shape: Shape, says: readonly string[], least = 50): Template {
  const { width, height } = sizeOf(shape.outline);
  const wide = Math.max(width, least);
  const below = lettered(says, wide);
  return {
    parts,
    width: wide,
    height: height + 1.5 + below.height,
    marks: ({ x, y }) => [...trueEdges(shape, { x, y }), ...below.marks({ x, y: y + height + 1.5 })],
  };
}

export const fitsPaper = ({ outline }: Pick<Shape, 'outline'>): boolean => {
  const { width, height } = sizeOf(outline);
  return width <= TEMPLATE_ROOM.width && height <= TEMPLATE_ROOM.height;
};

/** A large thing at true size, what it is written into it, or into its window. */
export function trueSizeLettered(parts: readonly string[], shape: Shape, says: readonly string[]): Template {
  const { width, height } = sizeOf(shape.outline);
  const window = shape.holes.find((loop) => !isRound(loop)) ?? shape.outline;
  const { left, top } = boundsOf(shape.outline);
  const room = boundsOf(window);
  const inside = lettered(says, room.right - room.left - 2 * INSIDE);
  return {
    parts,
    width,
    height,
    marks: ({ x, y }) => [
      ...trueEdges(shape, { x, y }),
      ...inside.marks({ x: x + room.left - left + INSIDE, y: y + top - room.top + INSIDE + 6 }),
    ],
  };
}

/** Where the line of a measure lies: outside of a thing, in the first row or further out, or within it. */
export type MeasureLine =
  | { readonly outside: 'left' | 'right' | 'top' | 'bottom'; readonly row?: 2 }
  | { readonly y: number }
  | { readonly x: number };

/** What is measured on a thing, in its own frame, between two points. */
export interface Measure {
  readonly figure: number;
  readonly what?: string;
  readonly from: Point;
  readonly to: Point;
  readonly line: MeasureLine;
}

/** Paper round a thing for two rows of dimensions, and where the rows lie in it. */
const ROUND = 17;
const ROWS = { first: 6, second: 12 } as const;

function lineOf(
  line: MeasureLine,
  { plot, width, height }: { readonly plot: Plot; readonly width: number; readonly height: number },
): Place['line'] {
  if ('x' in line) return { x: plot.at({ x: line.x, y: 0 }).x };
  if ('y' in line) return { y: plot.at({ x: 0, y: line.y }).y };
  const off = ROUND - (line.row === 2 ? ROWS.second : ROWS.first);
  switch (line.outside) {
    case 'left':
      return { x: off };
    case 'right':
      return { x: hundredths(width - off) };
    case 'top':
      return { y: off };
    case 'bottom':
      return { y: hundredths(height - off) };
  }
}

/** A thing that is too large for the paper, smaller than it is, with the figures to draw it by. */
export function dimensionedDrawing(
  parts: readonly string[],
  shape: Shape & { readonly more?: readonly { readonly points: readonly Point[] }[] },
  {
    measures,
    says,
    room,
  }: {
    readonly measures: readonly Measure[];
    readonly says: readonly string[];
    readonly room: { readonly width: number; readonly height: number };
  },
): Template {
  const { outline, holes, more = [] } = shape;
  const size = sizeOf(outline);
  const free = { width: room.width - 2 * ROUND, height: room.height - 2 * ROUND };
  const scale = Math.min(1, scaleFor(size, free));
  const width = scale * size.width + 2 * ROUND;
  const height = scale * size.height + 2 * ROUND;
  const { left, top } = boundsOf(outline);
  const plot = plotted(scale, { x: ROUND - scale * left, y: ROUND + scale * top });
  const paper = labelRoom({ width, height });
  const loops = [outline, ...holes].map((loop) => flatten(loop).map(plot.at));
  paper.keepClear(loops, 'closed');
  const others = more.map(({ points }) => points.map(plot.at));
  paper.keepClear(others);
  const dimensions = measures.map(
    ({ figure, what, from, to, line }, i): Dimension => ({
      name: `template-${i}`,
      figure: plainNumber(figure, 2),
      ...(what === undefined ? {} : { what }),
      places: [{ from: plot.at(from), to: plot.at(to), line: lineOf(line, { plot, width, height }) }],
    }),
  );
  const marks: readonly Mark[] = [
    ...[...loops].map(
      (points): Mark => ({ kind: 'line', role: 'outline', points, closed: true, stroke: lines.outline }),
    ),
    ...others.map((points): Mark => ({ kind: 'line', role: 'hidden', points, stroke: lines.hidden })),
    ...holes.filter(isRound).map((loop) => centreCross(plot.at(middleOf(loop)), 1.5)),
    ...dimensioned(dimensions, paper),
  ];
  const below = lettered([...says, `Scale ${scaleText(scale)}: not a template; draw it by the figures.`], TEXT_WIDTH);
  return {
    parts,
    width: Math.max(width, TEXT_WIDTH),
    height: height + below.height,
    marks: ({ x, y }) => [...marks.map((mark) => shifted(mark, x, y)), ...below.marks({ x, y: y + height })],
  };
}
