import type { Search } from '../../src/packing/search.js';

export interface Timed<T> {
  readonly found: T;
  /** Until the first valid answer, ms. */
  readonly firstMilliseconds: number;
}

/** The best that a search finds in so many seconds; what comes later does not count, unless it is the first. */
export function timed<T>(begin: () => Search<T>, seconds: number): Timed<T> {
  const start = performance.now();
  const end = start + 1000 * seconds;
  const search = begin();
  let step = search.next();
  const firstMilliseconds = performance.now() - start;
  let found = step.value;
  while (step.done !== true && performance.now() < end) {
    step = search.next();
    if (performance.now() <= end) found = step.value;
  }
  return { found, firstMilliseconds };
}
