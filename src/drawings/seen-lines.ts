import type { Point } from '../geometry/path.js';
import { chained } from './chain.js';
import { faced } from './faced.js';
import { drawnLines } from './one-line.js';
import type { Body } from './scene.js';
import { type Segment, type Stretch, screenOf, without } from './screen.js';
import type { View } from './view.js';

/** Lines of one piece on the paper, true lengths, x to the right and y up as `project` gives them. */
export interface PieceLines {
  readonly key: string;
  /** What is seen, as open polylines. */
  readonly seen: readonly (readonly Point[])[];
  /** What is behind others; empty where it was not asked for. */
  readonly hidden: readonly (readonly Point[])[];
}

export interface LineOptions {
  /** Whether lines that are behind others are given too. */
  readonly hidden?: boolean;
  /** Lines nearer to each other than this are one line, mm of true length: the air in a joint is not drawn. */
  readonly closest?: number;
}

/** Fingers and slots have up to a tenth of air; the thinnest card has two. */
const CLOSEST = 0.11;
/** A stretch of a line that is left over and shorter than this is rounding, mm. */
const CRUMB = 0.05;

/**
 * The edges of pieces as they are seen, hidden lines removed: exactly, each edge against each facet before it. Faces that
 * touch do not hide each other's edges. Where edges of two pieces fall together the earlier piece of the list keeps the
 * line: put first what is to be drawn strongest.
 */
export function seenLines(bodies: readonly Body[], view: View, options: LineOptions = {}): readonly PieceLines[] {
  const { hidden: withHidden = false, closest = CLOSEST } = options;
  const solids = bodies.map(({ mesh, matrix }) => faced(mesh, matrix, view));
  const screen = screenOf(solids);
  const drawn = drawnLines(closest);
  const behind: { readonly solid: number; readonly line: Line }[] = [];
  const seen = solids.map(({ corners, edges, behind: own }, solid) => {
    const lines: Line[] = [];
    for (let e = 0; e < edges.length; e += 4) {
      const ends = segment(corners, edges[e] as number, edges[e + 1] as number);
      const length = lengthOf(ends);
      if (length < ROUNDING) continue;
      const facets = [edges[e + 2] as number, edges[e + 3] as number] as const;
      const hiding = screen.hiding(ends, { solid, facets });
      for (const stretch of without(hiding, CRUMB / length)) lines.push(...drawn.draw(...cut(ends, stretch)));
      if (withHidden) for (const stretch of hiding) behind.push({ solid, line: cut(ends, stretch) });
    }
    if (withHidden)
      for (let e = 0; e < own.length; e += 2) {
        const ends = segment(corners, own[e] as number, own[e + 1] as number);
        if (lengthOf(ends) >= ROUNDING) behind.push({ solid, line: cut(ends, [0, 1]) });
      }
    return chained(lines);
  });
  // after all that is seen: a hidden line that falls together with one is not drawn
  const hidden = solids.map((): Line[] => []);
  for (const { solid, line } of behind) hidden[solid]?.push(...drawn.draw(...line));
  return bodies.map(({ key }, i) => ({ key, seen: seen[i] ?? [], hidden: chained(hidden[i] ?? []) }));
}

type Line = readonly [number, number, number, number];

/** An edge that points at the eye is a point on the paper, mm. */
const ROUNDING = 1e-3;

function segment(corners: Float64Array, from: number, to: number): Segment {
  const [p, q] = [3 * from, 3 * to];
  return [
    corners[p] as number,
    corners[p + 1] as number,
    corners[p + 2] as number,
    corners[q] as number,
    corners[q + 1] as number,
    corners[q + 2] as number,
  ];
}

const lengthOf = ([px, py, , qx, qy]: Segment): number => Math.sqrt((qx - px) * (qx - px) + (qy - py) * (qy - py));

const cut = ([px, py, , qx, qy]: Segment, [from, to]: Stretch): Line => [
  px + (qx - px) * from,
  py + (qy - py) * from,
  px + (qx - px) * to,
  py + (qy - py) * to,
];
