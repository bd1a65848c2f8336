/**
 * The best of many candidates, so many at most: a heap with the worst on top, in typed arrays. A candidate is two whole
 * numbers and a key; the lowest keys are the best. Of two with the same mark only the first is taken.
 */
export interface Shortlist {
  limit: number;
  size: number;
  readonly key: Float64Array;
  readonly from: Int32Array;
  readonly move: Int32Array;
  /** Marks seen, open addressing; 0 is free. */
  readonly seen: Int32Array;
  marks: number;
}

export function emptyShortlist(most: number): Shortlist {
  return {
    limit: most,
    size: 0,
    key: new Float64Array(most),
    from: new Int32Array(most),
    move: new Int32Array(most),
    seen: new Int32Array(2 ** Math.ceil(Math.log2(8 * most + 64))),
    marks: 0,
  };
}

export function clearShortlist(list: Shortlist, limit: number): void {
  list.limit = limit;
  list.size = 0;
  list.seen.fill(0);
  list.marks = 0;
}

/** A candidate must be better than this. */
export const threshold = (list: Shortlist): number => (list.size < list.limit ? Infinity : (list.key[0] as number));

/** Takes note of a mark; false where it was known. When the table is half full, what is new is no longer noted. */
function isNew(list: Shortlist, mark: number): boolean {
  const { seen } = list;
  const wanted = mark === 0 ? 1 : mark;
  const mask = seen.length - 1;
  let slot = wanted & mask;
  while (seen[slot] !== 0) {
    if (seen[slot] === wanted) return false;
    slot = (slot + 1) & mask;
  }
  if (2 * list.marks < mask) {
    seen[slot] = wanted;
    list.marks++;
  }
  return true;
}

/** Takes a candidate that is better than the threshold. */
export function take(list: Shortlist, key: number, from: number, move: number, mark: number): void {
  if (!isNew(list, mark)) return;
  let at: number;
  if (list.size < list.limit) {
    at = list.size++;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if ((list.key[above] as number) >= key) break;
      shift(list, above, at);
      at = above;
    }
  } else {
    at = 0;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= list.size) break;
      if (below + 1 < list.size && (list.key[below + 1] as number) > (list.key[below] as number)) below++;
      if ((list.key[below] as number) <= key) break;
      shift(list, below, at);
      at = below;
    }
  }
  list.key[at] = key;
  list.from[at] = from;
  list.move[at] = move;
}

function shift({ key, from, move }: Shortlist, source: number, target: number): void {
  key[target] = key[source] as number;
  from[target] = from[source] as number;
  move[target] = move[source] as number;
}
