import type { ClosedPath } from '../geometry/path.js';
import { boxAt, rectangle, type Step } from '../geometry/shapes.js';

/** Tabs along an edge: their middles and their width. */
export interface TabRow {
  readonly middles: readonly number[];
  readonly width: number;
}

/** `count` tabs spread evenly over an edge, clear of its ends. */
export function tabRow(from: number, to: number, count: number, width: number): TabRow {
  const pitch = (to - from) / count;
  return { middles: Array.from({ length: count }, (_, i) => from + (i + 0.5) * pitch), width };
}

/** The tabs as steps of their own plate's edge; the slots are as wide as the row says, the tabs narrower by the fit. */
export const tabSteps = ({ middles, width }: TabRow, depth: number, fit: number): readonly Step[] =>
  middles.map((m) => ({ from: m - (width - fit) / 2, to: m + (width - fit) / 2, depth }));

/** Slots along x for tabs of a plate `ply` thick that stands with its middle at y. */
export const slotsAlongX = ({ middles, width }: TabRow, y: number, ply: number, fit: number): readonly ClosedPath[] =>
  middles.map((m) => rectangle(boxAt(m, y, width, ply + fit)));

/** Slots along y for tabs of a plate `ply` thick that stands with its middle at x. */
export const slotsAlongY = ({ middles, width }: TabRow, x: number, ply: number, fit: number): readonly ClosedPath[] =>
  middles.map((m) => rectangle(boxAt(x, m, ply + fit, width)));
