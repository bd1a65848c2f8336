import { type Box, boundsOfPoints, type Point } from '../geometry/path.js';
import type { Mark } from '../model/page.js';
import { plainNumber } from '../units/print.js';
import { LETTERS } from './line-weights.js';

/** True lengths on their way to the paper. */
export interface Plot {
  /** Paper over true. */
  readonly scale: number;
  /** A point of a view, x to the right and y up, on paper: y down, to a hundredth of a millimetre. */
  readonly at: (point: Point) => Point;
}

/** @param zero where the view’s origin lies on paper */
export const plotted = (scale: number, zero: Point): Plot => ({
  scale,
  at: ({ x, y }) => ({ x: hundredths(zero.x + scale * x), y: hundredths(zero.y - scale * y) }),
});

export const hundredths = (value: number): number => Math.round(value * 100) / 100 || 0;

/**
 * Scales of ISO 5455 (2:1, 1:1, 1:2, 1:5, 1:10, 1:20, 1:50), and some between them, for a drawing at 1:5 where 1:2.5 would go hides
 * the plies of a board; the standard allows those only where it cannot be helped (from memory).
 */
const SCALES = [2, 1, 1 / 2, 1 / 2.5, 1 / 3, 1 / 4, 1 / 5, 1 / 6, 1 / 8, 1 / 10, 1 / 20, 1 / 50] as const;

/** The largest scale at which a view goes into the room that is left for it. */
export function scaleFor(
  size: { readonly width: number; readonly height: number },
  free: { readonly width: number; readonly height: number },
): number {
  const fits = SCALES.find((scale) => scale * size.width <= free.width && scale * size.height <= free.height);
  if (fits === undefined) throw new Error(`no scale for ${size.width} × ${size.height} mm`);
  return fits;
}

export const scaleText = (scale: number): string =>
  scale >= 1 ? `${plainNumber(scale, 2)}:1` : `1:${plainNumber(1 / scale, 2)}`;

/** What stands at the upper left of every drawing: what it is, its scale, its unit. */
export const headed = (title: string, scale: number): readonly Mark[] => [
  { kind: 'words', role: 'note', at: { x: 0, y: 4 }, text: title, anchor: 'start', ...LETTERS, size: 4, bold: true },
  {
    kind: 'words',
    role: 'note',
    at: { x: 0, y: 9 },
    text: `Scale ${scaleText(scale)}, lengths in mm`,
    anchor: 'start',
    ...LETTERS,
  },
];

/** How much of a drawing its head takes, mm. */
export const HEAD = 11;

export const extentOf = (paths: readonly (readonly Point[])[]): Box => boundsOfPoints(paths.flat());

/** The heights of the points that a drawing has at an x, where extension lines begin; null where it has none. */
export function cornersAt(paths: readonly (readonly Point[])[], x: number): readonly number[] | null {
  const ys: number[] = [];
  for (const path of paths) for (const p of path) if (Math.abs(p.x - x) < SAME) ys.push(p.y);
  return ys.length === 0 ? null : ys;
}

/** Points nearer than this stand above each other, mm of true length. */
const SAME = 0.02;

/** A chain line: long dashes with one dot between them for an axis, two for another place of what moves. */
export function chainLine(from: Point, to: Point, dots: 1 | 2): readonly (readonly Point[])[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  const at = (way: number): Point => ({
    x: hundredths(from.x + (dx * Math.min(way, length)) / length),
    y: hundredths(from.y + (dy * Math.min(way, length)) / length),
  });
  const paths: (readonly Point[])[] = [];
  for (let way = 0; way < length; ) {
    paths.push([at(way), at(way + CHAIN.long)]);
    way += CHAIN.long + CHAIN.gap;
    for (let dot = 0; dot < dots && way < length; dot++) {
      paths.push([at(way), at(way + CHAIN.dot)]);
      way += CHAIN.dot + CHAIN.gap;
    }
  }
  return paths;
}

/** mm on paper. */
const CHAIN = { long: 7, gap: 1, dot: 0.7 } as const;
