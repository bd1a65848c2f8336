import { seeded } from './random.js';
import type { Search } from './search.js';
import type { RectanglePlace } from './shapes.js';
import { clear, emptySkyline } from './skyline.js';
import { fill, type Laid, nothingLaid } from './strip-fill.js';
import { type Stock, type StripPacking, type StripProblem, stockOf } from './strip-stock.js';

export type { StripPacking, StripProblem } from './strip-stock.js';

/**
 * Packs rectangles into a strip of given width and the least height.
 */
export function* searchStrip(problem: StripProblem, seed: number): Search<StripPacking> {
  const stock = stockOf(problem);
  const random = seeded(seed);
  const sky = emptySkyline(stock.width, stock.pieces + 1);
  const counts = new Uint16Array(stock.counts.length);
  const laid = nothingLaid(stock.pieces);
  const rank = startRank(stock);
  const run = (): number => {
    clear(sky);
    counts.set(stock.counts);
    laid.size = 0;
    return fill(stock, rank, sky, counts, laid);
  };
  let current = run();
  let bestHeight = current;
  let best = packing(problem, stock, laid);
  let work = stock.pieces;
  while (bestHeight > stock.least) {
    if (work > 2000) {
      yield best;
      work = 0;
    }
    const a = Math.floor(random() * rank.length);
    const b = Math.floor(random() * rank.length);
    swap(rank, a, b);
    const height = run();
    work += stock.pieces;
    if (height <= current) {
      current = height;
      if (height < bestHeight) {
        bestHeight = height;
        best = packing(problem, stock, laid);
      }
    } else swap(rank, a, b);
  }
  return best;
}

function swap(rank: Float64Array, a: number, b: number): void {
  const kept = rank[a] as number;
  rank[a] = rank[b] as number;
  rank[b] = kept;
}

/** Large pieces first, lying down rather than standing up. */
function startRank({ optionWidth, optionHeight }: Stock): Float64Array {
  const order = Array.from(optionWidth, (_, option) => option).sort((a, b) => {
    const [wa, ha] = [optionWidth[a] as number, optionHeight[a] as number];
    const [wb, hb] = [optionWidth[b] as number, optionHeight[b] as number];
    return wb * hb - wa * ha || wb - wa;
  });
  const rank = new Float64Array(order.length);
  order.forEach((option, at) => {
    rank[option] = at;
  });
  return rank;
}

function packing({ items }: StripProblem, stock: Stock, laid: Laid): StripPacking {
  const used = stock.items.map(() => 0);
  let height = 0;
  const places = Array.from({ length: laid.size }, (_, i): RectanglePlace => {
    const option = laid.option[i] as number;
    const kind = stock.optionKind[option] as number;
    const piece = used[kind] as number;
    used[kind] = piece + 1;
    const item = stock.items[kind]?.[piece] as number;
    const { width, height: up } = items[item] as { width: number; height: number };
    const turned = stock.optionWidth[option] !== stock.itemWidth[item];
    const y = (laid.y[i] as number) / stock.scale;
    height = Math.max(height, y + (turned ? width : up));
    return { item, x: (laid.x[i] as number) / stock.scale, y, turned };
  });
  return { height, places };
}
