import { type Asked, measureLens } from '../../src/lens-bench/measure-lens.js';
import type { BenchReading, BenchReadings, LensDocument } from '../../src/model/lens-bench.js';

/** A bench in code: magnification and distance, and what else a test has to say. */
export const reading = (magnification: number, distance: number, more: Partial<BenchReading> = {}): BenchReading => ({
  magnification,
  distance,
  magnificationDoubt: null,
  distanceDoubt: null,
  objectDistance: null,
  ...more,
});

export const readingsOf = (pairs: readonly (readonly [number, number])[]): readonly BenchReading[] =>
  pairs.map(([m, distance]) => reading(m, distance));

export const benchWith = (readings: readonly BenchReading[], more: Partial<BenchReadings> = {}): BenchReadings => ({
  name: null,
  readings,
  pupils: { front: [], rear: [] },
  coverage: [],
  hole: null,
  taken: [],
  ...more,
});

/** Bench A, exact, of f = 210 and V = 202.4; V7.07, common practice, no source: constructed. */
export const benchA = readingsOf([
  [0.1, 223.4],
  [0.25, 254.9],
  [0.5, 307.4],
  [0.75, 359.9],
  [1, 412.4],
]);

/** Bench B; V7.08, common practice, no source: constructed. */
export const pairsOfBenchB = [
  [0.1, 218.9],
  [0.2, 242.3],
  [0.3, 266.6],
  [0.4, 290.1],
  [0.5, 314.6],
  [0.6, 337.9],
  [0.8, 386.4],
  [1, 434.1],
] as const;
export const benchB = readingsOf(pairsOfBenchB);

export function measured(bench: BenchReadings, asked: Partial<Asked> = {}): LensDocument {
  const outcome = measureLens(bench, { at: [], coverageAt: 0, ...asked });
  if ('faults' in outcome) throw new Error(outcome.faults.map(({ what }) => what).join('\n'));
  return outcome.lens;
}

/** Why there is no lens: where in the file, and what. */
export function refused(
  bench: BenchReadings,
): readonly { readonly path: string; readonly what: string; readonly accepted: string }[] {
  const outcome = measureLens(bench, { at: [], coverageAt: 0 });
  if (!('faults' in outcome)) throw new Error('a lens came of it');
  return outcome.faults.map(({ path, what, accepted }) => ({ path: path.join('.'), what, accepted }));
}
