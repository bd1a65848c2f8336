import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type BinPacking, searchBins } from '../../src/packing/bins.js';
import { leastBins } from '../../src/packing/bound.js';
import { after } from '../../src/packing/search.js';
import type { Rectangle } from '../../src/packing/shapes.js';
import { cutSheets } from './cut-sheets.js';

type Given = Parameters<typeof searchBins>[0];
const times = (count: number, width: number, height: number): Rectangle => ({ width, height, count });

/**
 * What is wrong with a packing, reckoned from the rectangles alone: each there as often as wanted, in the bin, clear
 * of the others.
 */
function faults({ width, height, items, turns }: Given, { bins }: BinPacking): readonly string[] {
  const OFF = 1e-6;
  const found: string[] = [];
  items.forEach(({ count }, item) => {
    const placed = bins.flat().filter((place) => place.item === item).length;
    if (placed !== count) found.push(`item ${item} lies ${placed} times instead of ${count}`);
  });
  bins.forEach((bin, b) => {
    if (bin.length === 0) found.push(`bin ${b} is empty`);
    const boxes = bin.map((place) => {
      const item = items[place.item] as Rectangle;
      if (place.turned && !turns) found.push(`item ${place.item} is turned`);
      const [w, h] = place.turned ? [item.height, item.width] : [item.width, item.height];
      return { left: place.x, bottom: place.y, right: place.x + w, top: place.y + h };
    });
    boxes.forEach((a, i) => {
      if (a.left < -OFF || a.bottom < -OFF || a.right > width + OFF || a.top > height + OFF)
        found.push(`bin ${b}: out`);
      for (const c of boxes.slice(0, i)) {
        const across = Math.min(a.right, c.right) - Math.max(a.left, c.left);
        const up = Math.min(a.top, c.top) - Math.max(a.bottom, c.bottom);
        if (across > OFF && up > OFF) found.push(`bin ${b}: overlap of ${across} × ${up}`);
      }
    });
  });
  return found;
}

const binsAfter = (given: Given, steps: number, seed = 1) => after(searchBins(given, seed), steps);

describe('rectangles into the fewest bins', () => {
  // sums and products by hand; each case cannot do with fewer, for the reason that it gives
  test.each([
    { what: 'nothing takes no bin', width: 100, height: 60, items: [], turns: false, bins: 0 },
    { what: 'four quarters fill one', width: 100, height: 60, items: [times(4, 50, 30)], turns: false, bins: 1 },
    { what: 'a fifth takes another', width: 100, height: 60, items: [times(5, 50, 30)], turns: false, bins: 2 },
    {
      what: 'three tenths are as wide as 0.3',
      width: 0.3,
      height: 1,
      items: [times(3, 0.1, 1)],
      turns: false,
      bins: 1,
    },
    {
      what: 'squares over half never share',
      width: 100,
      height: 100,
      items: [times(7, 51, 51)],
      turns: false,
      bins: 7,
    },
    {
      what: 'five round a middle, with no straight cut through',
      width: 590,
      height: 390,
      items: [times(1, 390, 190), times(1, 200, 250), times(1, 390, 140), times(1, 200, 200), times(1, 190, 60)],
      turns: false,
      bins: 1,
    },
    {
      what: 'across the grain a piece takes a bin of its own',
      width: 100,
      height: 60,
      items: [times(1, 100, 40), times(1, 20, 60)],
      turns: false,
      bins: 2,
    },
    {
      what: 'turned it lies beside the other',
      width: 100,
      height: 60,
      items: [times(1, 100, 40), times(1, 20, 60)],
      turns: true,
      bins: 1,
    },
  ])('$what', ({ bins, ...given }) => {
    const packing = binsAfter(given, 200);
    expect(faults(given, packing)).toEqual([]);
    expect(packing.bins).toHaveLength(bins);
  });

  test('what is larger than the bin is a mistake of the caller', () =>
    expect(() => binsAfter({ width: 100, height: 60, items: [times(1, 61, 70)], turns: true }, 1)).toThrow());

  test('two sheets cut up without waste come back as two', () => {
    // 2 × (100 × 100): strips of 37 and 63, cut at 25, 60 and at 41, 80; and the same in other measures
    const items = [
      ...[times(1, 25, 37), times(1, 35, 37), times(1, 40, 37), times(1, 41, 63), times(1, 39, 63), times(1, 20, 63)],
      ...[times(1, 52, 48), times(1, 48, 48), times(1, 33, 52), times(1, 44, 52), times(1, 23, 52)],
    ];
    const given = { width: 100, height: 100, items, turns: false };
    const packing = binsAfter(given, 200);
    expect(faults(given, packing)).toEqual([]);
    expect(packing.bins).toHaveLength(2);
  });
});

const side = fc.integer({ min: 3, max: 60 });
const some: fc.Arbitrary<Given> = fc.record({
  width: fc.constant(97),
  height: fc.constant(61),
  items: fc.array(fc.record({ width: side, height: side, count: fc.integer({ min: 0, max: 4 }) }), { maxLength: 12 }),
  turns: fc.boolean(),
});

describe('laws of the search for bins', () => {
  test('each step gives a packing, none takes more bins than the one before, none fewer than the bound', () =>
    fc.assert(
      fc.property(some, fc.nat(), (given, seed) => {
        let most = Infinity;
        const bound = leastBins(given);
        const search = searchBins(given, seed);
        for (let step = 0; step < 40; step++) {
          const { value, done } = search.next();
          expect(faults(given, value as BinPacking)).toEqual([]);
          const { length } = (value as BinPacking).bins;
          expect(length).toBeLessThanOrEqual(most);
          expect(length).toBeGreaterThanOrEqual(bound);
          most = length;
          if (done) break;
        }
      }),
      { numRuns: 40, seed: 1 },
    ));

  test('it ends where nothing better is possible', () => {
    const search = searchBins({ width: 100, height: 60, items: [times(5, 50, 30)], turns: false }, 1);
    let steps = 0;
    while (search.next().done !== true) expect(++steps).toBeLessThan(10);
  });

  test('the same seed gives the same packing, step for step', () =>
    fc.assert(
      fc.property(some, (given) => {
        expect(binsAfter(given, 35, 7)).toEqual(binsAfter(given, 35, 7));
      }),
      { numRuns: 10, seed: 2 },
    ));

  test('sheets that were cut up are packed with hardly more of them', () =>
    fc.assert(
      fc.property(cutSheets({ width: 120, height: 80, sheets: 4, web: 0, pieces: 5 }), (items) => {
        const given = { width: 120, height: 80, items, turns: false };
        const packing = binsAfter(given, 60);
        expect(faults(given, packing)).toEqual([]);
        expect(packing.bins.length).toBeLessThanOrEqual(5);
      }),
      { numRuns: 20, seed: 3 },
    ));
});
