import { expect, test } from 'vitest';
import type { BenchReading } from '../../src/model/lens-bench.js';
import { seeded } from '../../src/packing/random.js';
import { benchWith, measured, reading } from './bench.js';

const TRIALS = 2000;
const f = 214;
const V = 196;
const RATIOS = [1 / 6, 1 / 5, 1 / 4, 1 / 3, 1 / 2.5, 1 / 2, 1 / 1.5, 1 / 1.2, 1];
const WORKING = 1 / 4;

/** Normal deviations, two of them from two even numbers (Box and Muller 1958). */
const normal = (random: () => number) => (): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** In how many of a hundred benches each interval holds the truth. */
function held(take: (deviation: () => number) => readonly BenchReading[]) {
  const deviation = normal(seeded(20));
  const counts = { focalLength: 0, flangeDistance: 0, place: 0 };
  for (let trial = 0; trial < TRIALS; trial++) {
    const lens = measured(benchWith(take(deviation)), { at: [WORKING] });
    const [place] = lens.predictions;
    if (Math.abs(lens.focalLength - f) <= lens.intervals.focalLength) counts.focalLength++;
    if (Math.abs(lens.flangeDistance - V) <= lens.intervals.flangeDistance) counts.flangeDistance++;
    if (place && Math.abs(place.distance - (V + f * WORKING)) <= place.interval) counts.place++;
  }
  return Object.entries(counts).map(([figure, count]) => ({ figure, share: (100 * count) / TRIALS }));
}

// The noise is normal and independent from reading to reading. An interval is right for 95 of 100; over 2,000 trials the
// share itself strays by 0.5, so 93 to 97 is four of its deviations either way.
test('of 2,000 benches with alike noise, 93 to 97 of 100 intervals hold the truth', () => {
  for (const { figure, share } of held((deviation) => RATIOS.map((m) => reading(m, V + f * m + 0.3 * deviation())))) {
    expect(share, figure).toBeGreaterThanOrEqual(93);
    expect(share, figure).toBeLessThanOrEqual(97);
  }
}, 30_000);

test('and so they do where the readings are in doubt by different amounts, of the distance and of the magnification, and say so', () => {
  const take = (deviation: () => number) =>
    RATIOS.map((m) => {
      const stated = { distanceDoubt: 0.1 + 0.5 * m, magnificationDoubt: 0.0005 + 0.003 * m };
      const read = m + stated.magnificationDoubt * deviation();
      return reading(read, V + f * m + stated.distanceDoubt * deviation(), stated);
    });
  for (const { figure, share } of held(take)) {
    expect(share, figure).toBeGreaterThanOrEqual(93);
    expect(share, figure).toBeLessThanOrEqual(97);
  }
}, 30_000);
