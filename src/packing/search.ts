/**
 * A search that may be broken off at any time: each step is a few milliseconds of work at most and gives the best found
 * so far, the first step something valid at once. It ends where nothing better is possible.
 *
 * A search knows no clock. Whoever runs it decides when to stop: by counted steps where the same answer is wanted on any
 * machine, by the clock where only time counts.
 */
export type Search<T> = Generator<T, T, void>;

/** The best after so many steps, or after fewer where the search ends. */
export function after<T>(search: Search<T>, steps: number): T {
  let found = search.next();
  for (let step = 1; step < steps && found.done !== true; step++) found = search.next();
  return found.value;
}
