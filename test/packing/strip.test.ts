import { describe, expect, test } from 'vitest';
import { seeded } from '../../src/packing/random.js';
import { after } from '../../src/packing/search.js';
import type { Rectangle } from '../../src/packing/shapes.js';
import { type StripPacking, type StripProblem, searchStrip } from '../../src/packing/strip.js';

/** What decimals lose in binary when places are added to lengths, mm. */
const HAIR = 1e-9;

/** What is wrong with a packing: nothing, if it is one. Each pair is looked at; it shares nothing with the search. */
function faults({ width, items, turns }: StripProblem, { height, places }: StripPacking): readonly string[] {
  const found: string[] = [];
  const laid = places.map(({ item, x, y, turned }) => {
    const { width: w, height: h } = items[item] as Rectangle;
    if (turned && !turns) found.push(`item ${item} is turned`);
    return { left: x, bottom: y, right: x + (turned ? h : w), top: y + (turned ? w : h) };
  });
  laid.forEach((a, i) => {
    if (a.left < -HAIR || a.bottom < -HAIR || a.right > width + HAIR) found.push(`place ${i} lies outside`);
    laid.slice(i + 1).forEach((b, j) => {
      const apart =
        a.right <= b.left + HAIR || b.right <= a.left + HAIR || a.top <= b.bottom + HAIR || b.top <= a.bottom + HAIR;
      if (!apart) found.push(`places ${i} and ${i + 1 + j} overlap`);
    });
  });
  items.forEach(({ count }, item) => {
    const times = places.filter((place) => place.item === item).length;
    if (times !== count) found.push(`item ${item} is there ${times} times, not ${count}`);
  });
  const top = Math.max(0, ...laid.map((rectangle) => rectangle.top));
  if (Math.abs(top - height) > HAIR) found.push(`the height is ${top}, not ${height}`);
  return found;
}

describe('what judges a packing here', () => {
  const problem = { width: 4, items: [{ width: 2, height: 3, count: 2 }], turns: false };
  const place = (x: number, y: number, turned = false) => ({ item: 0, x, y, turned });

  test.each([
    { name: 'side by side', height: 3, places: [place(0, 0), place(2, 0)], faults: 0 },
    { name: 'overlapping', height: 3, places: [place(0, 0), place(1, 0)], faults: 1 },
    { name: 'over the edge', height: 3, places: [place(0, 0), place(2.5, 0)], faults: 1 },
    { name: 'one left out', height: 3, places: [place(0, 0)], faults: 1 },
    { name: 'higher than it says', height: 3, places: [place(0, 0), place(2, 1)], faults: 1 },
    { name: 'turned against the grain', height: 4, places: [place(0, 0, true), place(0, 2, true)], faults: 2 },
  ])('$name', ({ height, places, faults: count }) => expect(faults(problem, { height, places })).toHaveLength(count));
});

/** A rectangle cut into so many by straight cuts from edge to edge: it can be put together again without waste. */
function cutUp(width: number, height: number, pieces: number, seed: number): readonly Rectangle[] {
  const random = seeded(seed);
  const list: [number, number][] = [[width, height]];
  while (list.length < pieces) {
    list.sort((a, b) => a[0] * a[1] - b[0] * b[1]);
    const [w, h] = list.pop() as [number, number];
    const across = w > h;
    const cut = Math.round((across ? w : h) * (0.2 + 0.6 * random()));
    list.push(
      ...((across
        ? [
            [cut, h],
            [w - cut, h],
          ]
        : [
            [w, cut],
            [w, h - cut],
          ]) as [number, number][]),
    );
  }
  return list.map(([w, h]) => (random() < 0.5 ? { width: w, height: h, count: 1 } : { width: h, height: w, count: 1 }));
}

describe('rectangles of which the least height is known', () => {
  // Z. Moroń, O rozkładach prostokątów na kwadraty, Przegląd Matematyczno-Fizyczny 3 (1925): 33 × 32 from nine squares
  const squares = [1, 4, 7, 8, 9, 10, 14, 15, 18].map((side) => ({ width: side, height: side, count: 1 }));

  test.each([
    { name: 'the nine squares of Moroń, 33 wide', width: 33, items: squares, height: 32 },
    { name: 'the nine squares of Moroń, 32 wide', width: 32, items: squares, height: 33 },
    ...[1, 2, 3, 4].map((seed) => ({
      name: `a sheet cut into 16 pieces, ${seed}`,
      width: 60,
      items: cutUp(60, 45, 16, seed),
      height: 45,
    })),
  ])('$name', ({ width, items, height }) => {
    const found = after(searchStrip({ width, items, turns: true }, 1), 400);
    expect(faults({ width, items, turns: true }, found)).toEqual([]);
    expect(found.height).toBe(height);
  });
});
