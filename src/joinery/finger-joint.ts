import type { Step } from '../geometry/shapes.js';

/** An edge divided into fingers, counted from its lower end. */
export interface FingerRow {
  readonly from: number;
  readonly to: number;
  readonly count: number;
  readonly width: number;
}

/** No finger narrower than this, whatever the ply, mm (common practice, no source). */
export const LEAST_FINGER = 8;

/**
 * Divides an edge: fingers near three thicknesses wide, an odd number of them so that the row is the same from both
 * ends, at least three (common practice, no source).
 */
export function fingerRow(from: number, to: number, ply: number): FingerRow {
  const length = to - from;
  let count = nearestOdd(length / (3 * ply));
  while (count > 3 && length / count < LEAST_FINGER) count -= 2;
  return { from, to, count, width: length / count };
}

const nearestOdd = (n: number): number => Math.max(3, 2 * Math.round((n - 1) / 2) + 1);

/** The owner of the edge keeps the fingers 1, 3 … n and both ends; it is cut in, exactly, at 2, 4 …. */
export const ownerNotches = (row: FingerRow, depth: number): readonly Step[] =>
  gaps(row).map(([from, to]) => ({ from, to, depth: -depth }));

/** The partner has the fingers 2, 4 …, each narrower by the fit. */
export const partnerFingers = (row: FingerRow, depth: number, fit: number): readonly Step[] =>
  gaps(row).map(([from, to]) => ({ from: from + fit / 2, to: to - fit / 2, depth }));

function gaps({ from, count, width }: FingerRow): readonly (readonly [number, number])[] {
  const found: [number, number][] = [];
  for (let i = 1; i < count; i += 2) found.push([from + i * width, from + (i + 1) * width]);
  return found;
}
