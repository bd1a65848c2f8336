import type { Point } from '../geometry/path.js';
import type { Body } from './scene.js';
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
}

/**
 * The edges of pieces as they are seen, hidden lines removed. Where edges of two pieces fall together the earlier piece
 * of the list keeps the line: put first what is to be drawn strongest.
 */
export function seenLines(bodies: readonly Body[], view: View, options: LineOptions = {}): readonly PieceLines[] {
  throw new Error(`not yet: ${bodies.length} ${view.toward.x} ${options.hidden}`);
}
