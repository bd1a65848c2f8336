import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { laminate, mend } from '../../src/joinery/lamination.js';

describe('a thickness made up of plies and shims', () => {
  // sums: 4 × 4.05 + 4 × 0.5 = 18.2 (M6.19), 3 × 4.05 = 12.15, 0.5 + 0.25 + 0.1 = 0.85 [common practice, no source]
  test.each([
    { thickness: 18.2, ply: 4.05, plies: 4, shims: [0.5, 0.5, 0.5, 0.5] },
    { thickness: 12.15, ply: 4.05, plies: 3, shims: [] },
    { thickness: 0.85, ply: 4.05, plies: 0, shims: [0.5, 0.25, 0.1] },
    { thickness: 0, ply: 4.05, plies: 0, shims: [] },
  ])('$thickness mm of plies of $ply mm', ({ thickness, ply, plies, shims }) => {
    const made = laminate({ thickness, ply, shims: [0.1, 0.25, 0.5], within: 0.01, stock: [] });
    expect(made.plies).toHaveLength(plies);
    expect(made.shims).toEqual(shims);
    expect(made.remainder).toBe(0); // what binary fractions leave over is no remainder
  });

  /*
   * "Whole plies, then the fewest shims whose remainder is within half the tolerance; more than 4 shims: choose another
   * sheet for one ply" (the project's description of the camera, section 4). The sums stand beside the rows.
   */
  test.each([
    // 3 × 4.05 = 12.15 is 0.01 too much, just within the limit
    { name: 'one ply more, as far too thick as may be', thickness: 12.14, plies: [4.05, 4.05, 4.05], remainder: -0.01 },
    // 4.05 is 0.01 short, just within the limit, and 0.01 more would be exact
    { name: 'no shim, as far too thin as may be', thickness: 4.06, sizes: [0.01], plies: [4.05], remainder: 0.01 },
    // 0.15 lies in the middle between 0.1 and 0.2
    { name: 'of two that miss alike the fewer', thickness: 0.15, sizes: [0.1], shims: [0.1], remainder: 0.05 },
    // 0.04 is nearer to nothing than to 0.1
    { name: 'no shim that makes it worse', thickness: 0.04, sizes: [0.1], remainder: 0.04 },
    // 0.07 is nearer to 0.1
    { name: 'a shim too thick, where that is nearer', thickness: 0.07, sizes: [0.1], shims: [0.1], remainder: -0.03 },
    { name: 'nothing, where there is nothing', thickness: 0.5, sizes: [], remainder: 0.5 },
    { name: 'shims as thick as sheet', thickness: 3.5, sizes: [0.5, 3], shims: [3, 0.5] }, // 3 + 0.5
    { name: 'thickest first, whatever the list', thickness: 1.7, sizes: [0.2, 1, 0.5], shims: [1, 0.5, 0.2] }, // their sum
  ])('$name', ({ thickness, sizes = [0.1, 0.25, 0.5], plies = [], shims = [], remainder = 0 }) => {
    const made = laminate({ thickness, ply: 4.05, shims: sizes, within: 0.01, stock: [] });
    expect(made).toMatchObject({ thickness, plies, shims });
    expect(made.remainder).toBeCloseTo(remainder, 9);
  });

  test.each([
    // 7.05 = 4.05 + 3, where shims alone would be six of 0.5
    { name: 'takes the place of a row of shims', thickness: 7.05, plies: [4.05, 3] },
    { name: 'alone', thickness: 3, plies: [3] },
    { name: 'under many of the own', thickness: 15.15, plies: [4.05, 4.05, 4.05, 3] }, // 3 × 4.05 + 3
    { name: 'and a shim', thickness: 7.55, plies: [4.05, 3], shims: [0.5] }, // 4.05 + 3 + 0.5
    // 4.05 + 3 is 0.01 too much, just within the limit
    { name: 'as far too thick as may be', thickness: 7.04, plies: [4.05, 3], remainder: -0.01 },
    // 4.05 + 5 × 0.6 is exact, 4.05 + 2.99 just within the limit
    {
      name: 'as far too thin as may be',
      thickness: 7.05,
      sizes: [0.6],
      stock: [2.99],
      plies: [4.05, 2.99],
      remainder: 0.01,
    },
    // 4.05 + 4 × 0.5 = 4.05 + 2
    { name: 'not for four shims', thickness: 6.05, stock: [2], plies: [4.05], shims: [0.5, 0.5, 0.5, 0.5] },
    // 4.05 + 6 × 0.5 is exact, 4.045 + 6 × 0.5 comes within the limit, but with as many shims
    {
      name: 'not where it saves no shim',
      thickness: 7.05,
      stock: [4.045],
      plies: [4.05],
      shims: [0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
    },
    // neither 4.05 + 6 × 0.5 nor 4.05 + 3 comes within the limit of 7.07: both are 0.02 short, and this without a shim
    { name: 'also where neither meets the limit', thickness: 7.07, plies: [4.05, 3], remainder: 0.02 },
    // 6 is more than 3, which is 6 × 0.5
    { name: 'not where it is too thick', thickness: 3, stock: [6], shims: [0.5, 0.5, 0.5, 0.5, 0.5, 0.5] },
    // 4.05 + 3 wants no shim, 4.05 + 2 two, 4.05 + 1.5 three
    { name: 'that saves most shims, of several', thickness: 7.05, stock: [2, 3, 1.5], plies: [4.05, 3] },
  ])(
    'one ply of another sheet $name',
    ({ thickness, sizes = [0.5], stock = [3], plies = [], shims = [], remainder = 0 }) => {
      const made = laminate({ thickness, ply: 4.05, shims: sizes, within: 0.01, stock });
      expect(made).toMatchObject({ plies, shims });
      expect(made.remainder).toBeCloseTo(remainder, 9);
    },
  );

  test('one ply of another sheet, and fewer of the own than would go in', () => {
    // 11.8 = 4.8 + 7 × 1, while 6.5 + 5 × 1 is 0.3 short and 6.5 + 4.8 half a shim
    const made = laminate({ thickness: 11.8, ply: 6.5, shims: [1], within: 0.01, stock: [4.8] });
    expect(made).toMatchObject({ plies: [4.8], shims: [1, 1, 1, 1, 1, 1, 1], remainder: 0 });
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

describe('a stack of shims that stands', () => {
  const shims = [0.1, 0.25, 0.5];
  const inIt = [0.5, 0.5, 0.5, 0.5];
  // by hand, with half of Heron's tolerance as the limit
  test.each([
    { what: 'near enough', lacks: 0.1, add: [], takeOut: [], remainder: 0.1 },
    { what: 'too thin by 0.3', lacks: 0.3, add: [0.25], takeOut: [], remainder: 0.05 },
    { what: 'too thick by 0.46', lacks: -0.46, add: [], takeOut: [0.5], remainder: 0.04 },
    { what: 'too thick by less than a shim that is in it', lacks: -0.25, add: [0.25], takeOut: [0.5], remainder: 0 },
    { what: 'too thick by more than all that is in it', lacks: -2.6, add: [], takeOut: inIt, remainder: -0.6 },
  ])('$what', ({ lacks, add, takeOut, remainder }) => {
    const mended = mend({ lacks, shims, inIt, within: 0.11 });
    expect(mended).toMatchObject({ add, takeOut });
    expect(mended.remainder).toBeCloseTo(remainder, 9);
  });

  test('without shims in it, what is too thick stays so', () =>
    expect(mend({ lacks: -0.4, shims, inIt: [], within: 0.11 })).toEqual({ add: [], takeOut: [], remainder: -0.4 }));
});
