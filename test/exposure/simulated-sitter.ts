/*
 * A sitter, a paper and an eye, for trials: it knows nothing of the program. The paper is right at a setting that nobody
 * knows; what comes out is darker or lighter by the error times a scale of its own, and an eye judges it in half stops
 * with some noise.
 */

export interface Sitting {
  /** Stops more than the first setting at which the paper would be right. */
  readonly right: number;
  /** How many stops a stop looks like. */
  readonly scale: number;
}

export interface Seen {
  readonly looks: 'too dark' | 'too light' | 'right';
  readonly by: number | null;
}

/** Even numbers from 0 to 1, the same for the same seed (the counter and mixer called mulberry32, in the public domain). */
export function chance(seed: number): () => number {
  let counter = seed;
  return () => {
    counter = (counter + 0x6d2b79f5) | 0;
    let mixed = Math.imul(counter ^ (counter >>> 15), 1 | counter);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Normally distributed, by Box and Muller's transform. */
const normal = (even: () => number): number => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());

export const sittingBy = (even: () => number): Sitting => ({ right: 4 * even() - 2, scale: 0.7 + 0.6 * even() });

/** What a sheet looks like that was given so many stops more than the first. */
export function look(
  { right, scale }: Sitting,
  given: number,
  process: 'negative' | 'reversal',
  even: () => number,
): Seen {
  const overexposed = given - right;
  const darker = (process === 'negative' ? overexposed : -overexposed) * scale + 0.1 * normal(even);
  const halves = Math.round(2 * darker) / 2;
  if (halves === 0) return { looks: 'right', by: null };
  return { looks: halves > 0 ? 'too dark' : 'too light', by: Math.abs(halves) };
}
