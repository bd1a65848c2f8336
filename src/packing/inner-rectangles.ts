import { type Box, boundsOfPoints, inside } from '../geometry/path.js';
import type { Ring } from './shapes.js';

/** So many heights are tried as the lower and upper side of a rectangle; a toothed panel has fewer. */
const LEVELS = 24;

/** So many rectangles are told of one outline: the largest. */
const MOST = 8;

/**
 * Upright rectangles that lie inside an outline, as large as can be: none of them is both narrower and lower than
 * another. Between two of the outline's heights the strip is cut wherever an edge passes through it; what is left
 * between two cuts is all inside or all outside.
 */
export function innerRectangles(outline: Ring): readonly Box[] {
  const heights = [...new Set(outline.map(({ y }) => y))].sort((a, b) => a - b);
  const levels =
    heights.length <= LEVELS
      ? heights
      : Array.from(
          { length: LEVELS },
          (_, i) => heights[Math.round((i * (heights.length - 1)) / (LEVELS - 1))] as number,
        );
  const found: Box[] = [];
  levels.forEach((bottom, i) => {
    for (const top of levels.slice(i + 1)) found.push(...betweenHeights(outline, bottom, top));
  });
  const larger = (a: Box, b: Box) => size(b) - size(a);
  const best: Box[] = [];
  for (const box of found.sort(larger)) {
    if (best.length === MOST) break;
    const covered = best.some(
      (other) => other.right - other.left >= box.right - box.left && other.top - other.bottom >= box.top - box.bottom,
    );
    if (!covered) best.push(box);
  }
  return best;
}

const size = (box: Box): number => (box.right - box.left) * (box.top - box.bottom);

function betweenHeights(outline: Ring, bottom: number, top: number): readonly Box[] {
  const { left, right } = boundsOfPoints(outline);
  const blocked: (readonly [number, number])[] = [];
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] as (typeof outline)[number];
    if (Math.max(a.y, b.y) <= bottom || Math.min(a.y, b.y) >= top) return;
    const at = (y: number) => (a.y === b.y ? a.x : a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y));
    const clamp = (y: number) => Math.min(top, Math.max(bottom, y));
    const ends = a.y === b.y ? [a.x, b.x] : [at(clamp(a.y)), at(clamp(b.y))];
    blocked.push([Math.min(...ends), Math.max(...ends)]);
  });
  blocked.sort((a, b) => a[0] - b[0]);
  const boxes: Box[] = [];
  let from = left;
  for (const [start, end] of [...blocked, [right, right] as const]) {
    if (start > from && inside(outline, { x: (from + start) / 2, y: (bottom + top) / 2 })) {
      boxes.push({ left: from, right: start, bottom, top });
    }
    from = Math.max(from, end);
  }
  return boxes;
}
