import {
  clearSkyline,
  cover,
  leftWall,
  levelWidth,
  lift,
  liftLeft,
  liftRight,
  lowestGap,
  rightWall,
  type Skyline,
} from './skyline.js';
import { type Laid, lay, type Pieces } from './strip-pieces.js';

/** The skyline above what was laid. */
export function outline(sky: Skyline, { x, y, width, height, size }: Laid): void {
  clearSkyline(sky);
  const top = (i: number): number => (y[i] as number) + (height[i] as number);
  // low ones first: each then covers nothing that is higher
  const order = Array.from({ length: size }, (_, i) => i).sort((a, b) => top(a) - top(b));
  for (const i of order) cover(sky, x[i] as number, (x[i] as number) + (width[i] as number), top(i));
}

/**
 * Lays all the pieces that are left onto a skyline. Always the lowest gap is filled, with what leaves the fewest levels
 * in the skyline: a piece as wide as the gap, flush with a neighbour, or both (best fit: Burke, Kendall and Whitwell
 * 2004, Operations Research 52; scored by how it fits: Leung, Zhang and Sim 2011, European Journal of Operational
 * Research 215). Among equals the option of the lowest rank comes first.
 *
 * @param counts pieces left of each kind; none afterwards
 * @param laid what is laid is added here
 */
export function fill({ options }: Pieces, rank: Int32Array, sky: Skyline, counts: Int32Array, laid: Laid): void {
  const { width: widths, height: heights } = options;
  const kinds = counts.length;
  let left = 0;
  for (const count of counts) left += count;
  for (let first = 0; left > 0; ) {
    // kinds are in order of width: the first of which there is a piece is the narrowest
    while (counts[first] === 0) first++;
    const narrowest = widths[2 * first] as number;
    const at = lowestGap(sky);
    const gap = levelWidth(sky, at);
    const onLeft = leftWall(sky, at);
    const onRight = rightWall(sky, at);
    if (gap < narrowest) {
      lift(sky, at, Math.min(onLeft, onRight));
      continue;
    }
    const floor = sky.y[at] as number;
    let best = -1;
    let bestFit = -Infinity;
    for (let kind = first; kind < kinds && (widths[2 * kind] as number) <= gap; kind++) {
      if (counts[kind] === 0) continue;
      for (let option = 2 * kind; option <= 2 * kind + 1; option++) {
        const rest = gap - (widths[option] as number);
        if (rest < 0) break;
        const top = floor + (heights[option] as number);
        let fit = rest === 0 ? 2 : rest < narrowest ? -1 : 0;
        if (top === onLeft) fit++;
        if (top === onRight) fit++;
        if (fit < bestFit || (fit === bestFit && (rank[option] as number) > (rank[best] as number))) continue;
        best = option;
        bestFit = fit;
      }
    }
    const width = widths[best] as number;
    const top = floor + (heights[best] as number);
    // flush with a wall where it can be, against the higher one otherwise
    const atRight = top === onRight || (top !== onLeft && onRight > onLeft);
    lay(laid, options, best, (sky.x[at] as number) + (atRight ? gap - width : 0), floor);
    if (width === gap) lift(sky, at, top);
    else if (atRight) liftRight(sky, at, width, top);
    else liftLeft(sky, at, width, top);
    counts[best >> 1] = (counts[best >> 1] as number) - 1;
    left--;
  }
}

/** The rank of each option where large pieces come first, and lie rather than stand. */
export function largeFirst({ width, height }: Pieces['options']): Int32Array {
  const area = (option: number): number => (width[option] as number) * (height[option] as number);
  const order = Array.from(width, (_, option) => option).sort(
    (a, b) => area(b) - area(a) || (width[b] as number) - (width[a] as number),
  );
  const rank = new Int32Array(order.length);
  order.forEach((option, at) => {
    rank[option] = at;
  });
  return rank;
}
