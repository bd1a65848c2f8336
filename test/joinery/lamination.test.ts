import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { laminate } from '../../src/joinery/lamination.js';

describe('a thickness made up of plies and shims', () => {
  // sums: 4 × 4.05 + 4 × 0.5 = 18.2, 3 × 4.05 = 12.15, 0.5 + 0.25 + 0.1 = 0.85
  test.each([
    { thickness: 18.2, ply: 4.05, plies: 4, shims: [0.5, 0.5, 0.5, 0.5] },
    { thickness: 12.15, ply: 4.05, plies: 3, shims: [] },
    { thickness: 0.85, ply: 4.05, plies: 0, shims: [0.5, 0.25, 0.1] },
    { thickness: 0, ply: 4.05, plies: 0, shims: [] },
  ])('$thickness mm of plies of $ply mm', ({ thickness, ply, plies, shims }) => {
    const made = laminate({ thickness, ply, shims: [0.1, 0.25, 0.5], within: 0.01, stock: [] });
    expect(made.plies).toHaveLength(plies);
    expect(made.shims).toEqual(shims);
    expect(made.remainder).toBeCloseTo(0, 9);
  });

  test('one ply of another sheet takes the place of a row of shims', () => {
    // 7.05 = 4.05 + 3, where shims alone would be six of 0.5
    const made = laminate({ thickness: 7.05, ply: 4.05, shims: [0.5], within: 0.01, stock: [3] });
    expect(made).toMatchObject({ plies: [4.05, 3], shims: [] });
  });

  test('a shim written twice in the list counts once', () => {
    const given = { thickness: 1.3, ply: 4, within: 0.04, stock: [] };
    expect(laminate({ ...given, shims: [0.5, 0.1, 0.5, 0.1] })).toEqual(laminate({ ...given, shims: [0.5, 0.1] }));
  });
});

/**
 * Every sum of whole hundredths that so many shims can come to, counted out from none upwards: which sums there are says
 * how few shims would do and how near they come, whatever way the search takes.
 */
function bestByCounting(rest: number, sizes: readonly number[], within: number) {
  let sums = new Set([0]);
  let nearest = Math.abs(rest);
  for (let count = 0; ; count++) {
    const miss = Math.min(...[...sums].map((sum) => Math.abs(rest - sum)));
    if (miss <= within) return { count, miss };
    nearest = Math.min(nearest, miss);
    if (Math.min(...sums) > rest + within) return { count: null, miss: nearest };
    sums = new Set([...sums].flatMap((sum) => sizes.map((size) => sum + size)));
  }
}

test('no fewer shims would do, and no others as few come nearer', () => {
  const hundredths = fc.record({
    rest: fc.integer({ min: 0, max: 300 }),
    sizes: fc.uniqueArray(fc.integer({ min: 8, max: 120 }), { minLength: 1, maxLength: 4 }),
    within: fc.integer({ min: 1, max: 15 }),
  });
  fc.assert(
    fc.property(hundredths, ({ rest, sizes, within }) => {
      const made = laminate({
        thickness: rest / 100,
        ply: 20,
        shims: sizes.map((size) => size / 100),
        within: within / 100,
        stock: [],
      });
      const best = bestByCounting(rest, sizes, within);
      expect(Math.abs(made.remainder) * 100).toBeCloseTo(best.miss, 6);
      if (best.count !== null) expect(made.shims).toHaveLength(best.count);
    }),
    { seed: 7, numRuns: 400 },
  );
});

test('a fine limit that no shims meet does not take for ever', () => {
  // counted out one by one, 40 shims of five sizes are over a hundred thousand rows, tried forty times
  const shims = [0.07, 0.11, 0.19, 0.23, 0.31];
  const made = laminate({ thickness: 8.8765, ply: 9, shims, within: 0.00001, stock: [] });
  expect(Math.abs(made.remainder)).toBeLessThan(0.01);
});
