/** Lines that stand in one place of two texts and are not the same there. */
export interface Difference {
  /** Where it begins in each, counted from 1. */
  readonly mineAt: number;
  readonly theirsAt: number;
  readonly mine: readonly string[];
  readonly theirs: readonly string[];
}

/** More pairs of lines are not compared: texts that differ so much are read beside each other. */
const MOST_PAIRS = 4e6;

/**
 * Where two texts differ, line by line; null where they differ in too much. What they have in common is the longest that
 * stands in both in the same order.
 */
export function differences(mineText: string, theirsText: string): readonly Difference[] | null {
  const mine = mineText.split(/\r?\n/);
  const theirs = theirsText.split(/\r?\n/);
  let head = 0;
  while (head < Math.min(mine.length, theirs.length) && mine[head] === theirs[head]) head += 1;
  let tail = 0;
  while (
    tail < Math.min(mine.length, theirs.length) - head &&
    mine[mine.length - 1 - tail] === theirs[theirs.length - 1 - tail]
  )
    tail += 1;
  const [m, n] = [mine.length - head - tail, theirs.length - head - tail];
  if (m * n > MOST_PAIRS) return null;
  const common = commonLengths(mine.slice(head, head + m), theirs.slice(head, head + n));

  const found: Difference[] = [];
  let [i, j] = [0, 0];
  while (i < m || j < n) {
    const [fromI, fromJ] = [i, j];
    while ((i < m || j < n) && !(i < m && j < n && mine[head + i] === theirs[head + j])) {
      const without = { mine: common[i + 1]?.[j] ?? -1, theirs: common[i]?.[j + 1] ?? -1 };
      if (j >= n || (i < m && without.mine >= without.theirs)) i += 1;
      else j += 1;
    }
    if (i > fromI || j > fromJ)
      found.push({
        mineAt: head + fromI + 1,
        theirsAt: head + fromJ + 1,
        mine: mine.slice(head + fromI, head + i),
        theirs: theirs.slice(head + fromJ, head + j),
      });
    while (i < m && j < n && mine[head + i] === theirs[head + j]) {
      i += 1;
      j += 1;
    }
  }
  return found;
}

/** How many lines two texts have in common from line i of the one and line j of the other on. */
function commonLengths(mine: readonly string[], theirs: readonly string[]): readonly Int32Array[] {
  const rows = Array.from({ length: mine.length + 1 }, () => new Int32Array(theirs.length + 1));
  for (let i = mine.length - 1; i >= 0; i--)
    for (let j = theirs.length - 1; j >= 0; j--) {
      const [here, below] = [rows[i], rows[i + 1]];
      if (here === undefined || below === undefined) continue;
      here[j] = mine[i] === theirs[j] ? (below[j + 1] ?? 0) + 1 : Math.max(below[j] ?? 0, here[j + 1] ?? 0);
    }
  return rows;
}
