/** Numbers from 0 up to, not including, 1: the same row of them for the same seed, on any machine. */
export type Random = () => number;

/**
 * A counter hashed to 32 bits (the mulberry32 scheme, public domain): plenty for shuffling, and one multiplication a
 * number.
 */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let hash = Math.imul(state ^ (state >>> 15), state | 1);
    hash ^= hash + Math.imul(hash ^ (hash >>> 7), hash | 61);
    return ((hash ^ (hash >>> 14)) >>> 0) / 4294967296;
  };
}
