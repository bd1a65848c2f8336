import type { Part } from '../model/part.js';

/** The parts of a thing that somebody has weighed whole: each as much heavier or lighter as all of them are in a set-up. */
export function asWeighed(
  parts: readonly Part[],
  weighedKg: number | null,
  setup: string | undefined,
): readonly Part[] {
  if (weighedKg === null || setup === undefined) return parts;
  const mine = parts.reduce(
    (sum, { massKg, placements }) => sum + massKg * placements.filter(({ when }) => when?.includes(setup)).length,
    0,
  );
  return parts.map((part) => ({ ...part, massKg: (part.massKg * weighedKg) / mine }));
}
