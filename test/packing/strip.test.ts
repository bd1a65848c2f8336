import { describe, expect, test } from 'vitest';
import { seeded } from '../../src/packing/random.js';
import { after as bestAfter } from '../../src/packing/search.js';
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

const tenths = (items: readonly Rectangle[]): readonly Rectangle[] =>
  items.map(({ width, height, count }) => ({ width: width / 10, height: height / 10, count }));

describe('rectangles of which the least height is known', () => {
  // Z. Moroń, O rozkładach prostokątów na kwadraty, Przegląd Matematyczno-Fizyczny 3 (1925): 33 × 32 from nine squares
  const squares = [1, 4, 7, 8, 9, 10, 14, 15, 18].map((side) => ({ width: side, height: side, count: 1 }));

  test.each([
    { name: 'the nine squares of Moroń, 33 wide', width: 33, items: squares, height: 32 },
    { name: 'the nine squares of Moroń, 32 wide', width: 32, items: squares, height: 33 },
    // cut from a sheet of that size: it can be put together again, and is lower than its area by no packing
    { name: 'a sheet cut into 16 pieces', width: 60, items: cutUp(60, 45, 16, 1), height: 45 },
    { name: 'a wide sheet cut into 25 pieces', width: 120, items: cutUp(120, 40, 25, 2), height: 40 },
    { name: 'a high sheet cut into 30 pieces', width: 50, items: cutUp(50, 130, 30, 3), height: 130 },
    { name: 'a sheet cut into 45 pieces', width: 80, items: cutUp(80, 60, 45, 4), height: 60 },
    {
      name: 'a plywood sheet in tenths of a millimetre',
      width: 600,
      items: tenths(cutUp(6000, 4000, 14, 5)),
      height: 400,
    },
    // five in a row and none between: from the width alone
    {
      name: 'strips that fit a row exactly',
      width: 0.5,
      items: [{ width: 0.1, height: 0.3, count: 10 }],
      height: 0.6,
      turns: false,
    },
    // two do not fit side by side, so that they make a stack
    {
      name: 'squares wider than half the strip',
      width: 10,
      items: [{ width: 5.5, height: 5.5, count: 4 }],
      height: 22,
    },
    { name: 'a piece that must stand', width: 10, items: [{ width: 30, height: 2, count: 5 }], height: 30 },
    {
      name: 'a piece as wide as the strip, to a hair',
      width: 100 / 3,
      items: [{ width: 100 / 3, height: 7, count: 2 }],
      height: 14,
      turns: false,
    },
    { name: 'nothing', width: 10, items: [{ width: 3, height: 2, count: 0 }], height: 0 },
  ])('$name', ({ width, items, height, turns = true }) => {
    const search = searchStrip({ width, items, turns }, 1);
    const found = bestAfter(search, 600);
    expect(faults({ width, items, turns }, found)).toEqual([]);
    expect(found.height).toBeCloseTo(height, 9);
    // and knows that it is the least
    expect(search.next().done).toBe(true);
  });

  test('without turns, what must be turned to fit is not: 2 × 3 and 3 × 2 stand 5 high in a strip of 3', () => {
    const items = [
      { width: 2, height: 3, count: 1 },
      { width: 3, height: 2, count: 1 },
    ];
    expect(bestAfter(searchStrip({ width: 3, items, turns: false }, 1), 50).height).toBe(5);
    // turned, they lie on one another
    expect(bestAfter(searchStrip({ width: 3, items, turns: true }, 1), 50).height).toBe(4);
  });
});

/** Lengths of a camera's parts: hundredths of a millimetre, some pieces several times. */
function mixedParts(count: number, seed: number): readonly Rectangle[] {
  const random = seeded(seed);
  return Array.from({ length: count }, () => ({
    width: Math.round(2500 + 20000 * random()) / 100,
    height: Math.round(1200 + 9000 * random()) / 100,
    count: 1 + Math.floor(3 * random()),
  }));
}

const areaOf = (items: readonly Rectangle[]): number =>
  items.reduce((sum, { width, height, count }) => sum + width * height * count, 0);

describe('any list of rectangles', () => {
  const lists = [1, 2, 3, 4, 5, 6].map((seed) => ({
    seed,
    problem: { width: 240 + 97.35 * seed, items: mixedParts(3 * seed, seed), turns: seed % 2 === 0 },
  }));

  test.each(lists)(
    'list $seed lies in the strip whenever the search is broken off, and never higher than before',
    ({ problem, seed }) => {
      const search = searchStrip(problem, seed);
      let height = Infinity;
      for (let step = 0; step < 25; step++) {
        const { value, done } = search.next();
        expect(faults(problem, value)).toEqual([]);
        expect(value.height).toBeLessThanOrEqual(height);
        expect(value.height).toBeGreaterThanOrEqual(areaOf(problem.items) / problem.width - HAIR);
        height = value.height;
        if (done === true) return;
      }
    },
  );

  test.each(lists)('list $seed packs to the same bytes from the same seed', ({ problem, seed }) => {
    const once = () => JSON.stringify(bestAfter(searchStrip(problem, seed), 30));
    expect(once()).toBe(once());
  });

  test('time takes away a third of the waste of the first packing, or more', () => {
    // the third is a wish, not a law: a search that does not repay its time is not worth having
    const waste = (steps: number): number =>
      lists.reduce((sum, { problem: { width, items } }) => {
        const { height } = bestAfter(searchStrip({ width, items, turns: true }, 1), steps);
        return sum + height * width - areaOf(items);
      }, 0);
    expect(waste(50)).toBeLessThan((2 / 3) * waste(1));
  });

  test('three thousand different pieces are packed at the first step', () => {
    const random = seeded(7);
    const items = Array.from({ length: 3000 }, () => ({
      width: 1 + Math.round(400 * random()) / 10,
      height: 1 + Math.round(400 * random()) / 10,
      count: 1,
    }));
    const first = searchStrip({ width: 600, items, turns: true }, 1).next().value;
    expect(first.places).toHaveLength(3000);
    // so many small pieces leave little room between them
    expect(first.height).toBeLessThan((1.05 * areaOf(items)) / 600);
  });
});

test('a rectangle that fits no strip of that width is our own mistake', () => {
  const items = [{ width: 12, height: 11, count: 1 }];
  expect(() => searchStrip({ width: 10, items, turns: true }, 1).next()).toThrow('rectangle 0 is wider than the strip');
});
