import type { Contributor } from '../../src/proof/budget.js';

/** The sum in so many cameras, each contributor drawn by its own spread: shares no arithmetic with the budget. */
export function simulated(
  nominal: number,
  contributors: readonly Contributor[],
  { draws, seed }: { readonly draws: number; readonly seed: number },
): readonly number[] {
  const next = seeded(seed);
  return Array.from({ length: draws }, () => {
    let sum = nominal;
    for (const one of contributors)
      for (let piece = 0; piece < one.count; piece++)
        sum += one.sensitivity * (one.shift + one.half * drawn(one.spread, next));
    return sum;
  });
}

/** From −1 to 1. */
function drawn(spread: Contributor['spread'], next: () => number): number {
  if (spread === 'uniform') return 2 * next() - 1;
  if (spread === 'triangular') return next() + next() - 1;
  // Box and Muller; what falls beyond the limits is drawn again
  for (;;) {
    const at = (Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next())) / spread.normal;
    if (Math.abs(at) <= 1) return at;
  }
}

/** Numbers between 0 and 1, the same on every run: mulberry32, a generator in the public domain. */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 2 ** 32;
  };
}
