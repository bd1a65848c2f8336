import { expect, test } from 'vitest';
import { seeded } from '../../src/packing/random.js';
import { clearShortlist, emptyShortlist, take, threshold } from '../../src/packing/shortlist.js';

test('a shortlist keeps the best of many, the first of those with one mark, and has the worst on top', () => {
  const random = seeded(5);
  const list = emptyShortlist(20);
  for (const limit of [1, 7, 20]) {
    clearShortlist(list, limit);
    const offered = new Map<number, number>();
    for (let move = 0; move < 300; move++) {
      // a mark stands for what a candidate is, so that equals have equal keys
      const mark = Math.floor(200 * random()) - 100;
      const key = (mark * 37) % 101;
      if (!offered.has(mark)) offered.set(mark, key);
      if (key < threshold(list)) take(list, key, mark, move, mark);
    }
    const best = [...offered.values()].sort((a, b) => a - b).slice(0, limit);
    const kept = Array.from(list.key.subarray(0, list.size));
    expect(kept.toSorted((a, b) => a - b)).toEqual(best);
    expect(kept[0]).toBe(best.at(-1));
    // what belongs together has moved together
    kept.forEach((key, at) => {
      expect(((list.from[at] as number) * 37) % 101).toBe(key);
    });
    expect(new Set(list.from.subarray(0, list.size)).size).toBe(list.size);
  }
});
