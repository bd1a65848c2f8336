/** The sizes, along one side of the bin, that one piece may show; it is there so many times. */
export interface Sizes {
  readonly sizes: readonly number[];
  readonly count: number;
}

/** A function of a size, scaled so that it gives 1 for the whole bin. */
export type DualFeasible = (size: number) => number;

/**
 * Functions f of sizes with this property: where sizes lie side by side in the bin, their values add up to 1 at most.
 *
 * Pieces in a bin stay a packing when widths are replaced by f of them and heights by g of them, two such functions:
 * whatever stood in a row still fits into the row, so pieces that were clear of each other can be pushed clear again.
 * So f(w)·g(h), summed over all pieces, is no more than the number of bins (Fekete & Schepers 2001, Math. Methods of
 * Operations Research 60; products of functions: their section on higher dimensions).
 *
 * Sizes must be whole numbers: a remainder lost to rounding would make a bound that is none. All sizes up to `whole`.
 *
 * @param most how many functions of each family, about: fewer are quicker
 */
export function dualFeasible(whole: number, pieces: readonly Sizes[], most: number): readonly DualFeasible[] {
  const all = [...new Set(pieces.flatMap(({ sizes }) => sizes))];
  const steps = spread(
    [...new Set(all.map((size) => Math.min(size, whole - size)))].filter((step) => step > 0),
    most,
  );
  const row = Array.from({ length: Math.min(most, 12) }, (_, k) => k + 1);
  return [
    (size) => size / whole,
    ...row.map((k) => rounded(whole, k)),
    ...steps.map((step) => widened(whole, step)),
    ...steps.map((step) => stepped(whole, step)),
    ...steps.map((step) => counted(whole, step, pieces)),
  ];
}

/** Fekete & Schepers, u^(k): rounds up what is over the (k + 1)th part, but for its multiples. */
function rounded(whole: number, k: number): DualFeasible {
  return (size) => {
    const parts = (size * (k + 1)) / whole;
    return Number.isInteger(parts) ? size / whole : Math.floor(parts) / k;
  };
}

/**
 * Martello & Toth's bound as a function (Fekete & Schepers, U^(ε)): beside what is all but `step` wide nothing else
 * counts.
 */
function widened(whole: number, step: number): DualFeasible {
  return (size) => (size < step ? 0 : size > whole - step ? 1 : size / whole);
}

/**
 * Sizes in whole steps, the large ones by what they leave to others (Carlier, Clautiaux & Moukrim 2007, Computers &
 * Operations Research 34, f₂; it includes Fekete & Schepers' φ^(ε)).
 *
 * Small sizes add up to no more steps than their sum has; a size over half the bin counts for all steps but those that
 * the rest has, and there can be only one.
 */
function stepped(whole: number, step: number): DualFeasible {
  const all = Math.floor(whole / step);
  return (size) => {
    if (2 * size > whole) return (all - Math.floor((whole - size) / step)) / all;
    if (2 * size === whole) return 1 / 2;
    return Math.floor(size / step) / all;
  };
}

/**
 * The same by counting (Carlier, Clautiaux & Moukrim 2007, f₁; Boschetti & Mingozzi 2003, 4OR 1): of the pieces from
 * `least` to half the bin, so many go into the whole, so many into what a large one leaves. Each counts for 1, the
 * large one for those that it keeps out. A piece that may show several sizes is counted with the least that is not
 * below `least`: at least as many then go in as with any other.
 */
function counted(whole: number, least: number, pieces: readonly Sizes[]): DualFeasible {
  const row = pieces
    .flatMap(({ sizes, count }) => {
      const small = Math.min(...sizes.filter((size) => size >= least && 2 * size <= whole));
      return small === Infinity ? [] : [{ small, count }];
    })
    .sort((a, b) => a.small - b.small);
  const most = (room: number): number => {
    let number = 0;
    let left = room;
    for (const { small, count } of row) {
      const fitting = Math.min(count, Math.floor(left / small));
      number += fitting;
      left -= fitting * small;
      if (fitting < count) break;
    }
    return number;
  };
  const all = most(whole);
  if (all === 0) return (size) => (2 * size > whole ? 1 : 0);
  return (size) => (size < least ? 0 : 2 * size > whole ? (all - most(whole - size)) / all : 1 / all);
}

/** So many of them, evenly chosen. */
function spread(values: readonly number[], most: number): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  if (sorted.length <= most) return sorted;
  return Array.from({ length: most }, (_, i) => sorted[Math.floor((i * sorted.length) / most)] as number);
}
