import { leftWall, levelWidth, lift, liftLeft, liftRight, lowest, rightWall, type Skyline } from './skyline.js';
import type { Stock } from './strip-stock.js';

/** Where pieces were laid, in the order in which they were laid. */
export interface Laid {
  readonly option: Int32Array;
  readonly x: Int32Array;
  readonly y: Int32Array;
  size: number;
}

export const nothingLaid = (pieces: number): Laid => ({
  option: new Int32Array(pieces),
  x: new Int32Array(pieces),
  y: new Int32Array(pieces),
  size: 0,
});

/**
 * Lays all that is left of the stock onto a skyline and returns the height of the whole. Always the lowest gap is filled,
 * with what leaves the fewest steps in the skyline: a piece as wide as the gap, flush with a neighbour, or both (best
 * fit: Burke, Kendall and Whitwell 2004; scored by its fit: Leung, Zhang and Sim 2011). Among equals the
 * kind with the lowest rank comes first.
 *
 * @param counts pieces left of each kind; all used up afterwards
 * @param rank of each option
 */
export function fill(stock: Stock, rank: Float64Array, sky: Skyline, counts: Uint16Array, laid: Laid): number {
  const { optionKind, optionWidth, optionHeight } = stock;
  const options = optionKind.length;
  let left = 0;
  for (let kind = 0; kind < counts.length; kind++) left += counts[kind] as number;
  let first = 0;
  let height = 0;
  for (let i = 0; i < sky.size; i++) height = Math.max(height, sky.y[i] as number);
  while (left > 0) {
    while (counts[optionKind[first] as number] === 0) first++;
    const narrowest = optionWidth[first] as number;
    const at = lowest(sky);
    const gap = levelWidth(sky, at);
    const floor = sky.y[at] as number;
    const onLeft = leftWall(sky, at);
    const onRight = rightWall(sky, at);
    if (gap < narrowest) {
      lift(sky, at, Math.min(onLeft, onRight));
      continue;
    }
    let best = -1;
    let bestFit = -2;
    let bestRank = 0;
    for (let option = first; option < options; option++) {
      const width = optionWidth[option] as number;
      if (width > gap) break;
      if (counts[optionKind[option] as number] === 0) continue;
      const top = floor + (optionHeight[option] as number);
      const rest = gap - width;
      let fit = rest === 0 ? 2 : rest < narrowest ? -1 : 0;
      if (top === onLeft) fit++;
      if (top === onRight) fit++;
      if (fit < bestFit || (fit === bestFit && (rank[option] as number) >= bestRank)) continue;
      best = option;
      bestFit = fit;
      bestRank = rank[option] as number;
    }
    const width = optionWidth[best] as number;
    const top = floor + (optionHeight[best] as number);
    const start = sky.x[at] as number;
    const atRight = top === onRight || (top !== onLeft && onRight > onLeft);
    laid.option[laid.size] = best;
    laid.x[laid.size] = atRight ? start + gap - width : start;
    laid.y[laid.size] = floor;
    laid.size++;
    if (width === gap) lift(sky, at, top);
    else if (atRight) liftRight(sky, at, width, top);
    else liftLeft(sky, at, width, top);
    counts[optionKind[best] as number] = (counts[optionKind[best] as number] as number) - 1;
    left--;
    if (top > height) height = top;
  }
  return height;
}
