/** The word that was probably meant: the one with the fewest slips of the pen, if they are few for its length. */
export function nearestWord(typed: string, words: readonly string[]): string | undefined {
  const lower = typed.toLowerCase();
  // of words that are as near, one that was begun and not ended
  const begun = (word: string) => (word.toLowerCase().startsWith(lower) ? 0 : 1);
  const ranked = words
    .map((word) => ({ word, slips: slipsBetween(lower, word.toLowerCase()) }))
    .sort((a, b) => a.slips - b.slips || begun(a.word) - begun(b.word));
  const best = ranked[0];
  return best !== undefined && best.slips <= Math.max(1, Math.floor(best.word.length / 3)) ? best.word : undefined;
}

/** Longer than any key: comparing would only take time. */
const LONGEST = 40;

/** Letters put in, left out, changed, or swapped with their neighbour (Damerau 1964, optimal string alignment). */
function slipsBetween(a: string, b: string): number {
  if (a.length > LONGEST) return a.length;
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let least = Math.min(changed, (last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) least = Math.min(least, (beforeLast[j - 2] ?? 0) + 1);
      row.push(least);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
