import type { BenchFault, BenchReadings, Measured } from '../model/lens-bench.js';
import { circleAt } from '../optics/image-circle.js';
import { mm } from '../units/print.js';
import { combined, meanOf, type Repeated, withInterval } from './repeated.js';

/** Nobody sees the edge of the light finer, each way, mm. */
const READ_TO = 1;

/** A glass so little ahead of infinity, as a magnification, stands at infinity. */
const AT_INFINITY = 0.01;

interface Lens {
  readonly focalLength: number;
  readonly flangeDistance: number;
  /** null: not measured, and taken to be 1. */
  readonly pupils: Repeated | null;
}

/**
 * The circle of good light, each reading of it brought to one magnification: it grows as the exit pupil's distance to the
 * film does. What P is in doubt by moves all of them together.
 */
export function coverageOf(
  readings: BenchReadings['coverage'],
  { focalLength: f, flangeDistance: V, pupils }: Lens,
  at: number,
): { readonly circle: Measured | null } | { readonly faults: readonly BenchFault[] } {
  const seen = readings.map((reading) => ({
    diameter: reading.diameter,
    at: 'magnification' in reading ? reading.magnification : (reading.distance - V) / f,
  }));
  const faults = seen.flatMap(({ at: m }, i): readonly BenchFault[] =>
    m >= -AT_INFINITY
      ? []
      : [
          {
            path: ['coverage', i, 'distance'],
            what: `The glass would stand ${mm(Math.round(-m * f * 10) / 10)} nearer to the lens than at infinity: nothing is sharp there.`,
            accepted: 'Write the distance from the lens seat to the ground surface of the glass.',
          },
        ],
  );
  if (faults.length > 0) return { faults };
  if (seen.length === 0) return { circle: null };
  const brought = (P: number) =>
    meanOf(
      seen.map((circle) => circleAt(at, { ...circle, at: Math.max(0, circle.at) }, P)),
      READ_TO,
    );
  const P = pupils?.value ?? 1;
  const circle = brought(P);
  const doubt = pupils?.standardError ?? null;
  if (doubt === null) return { circle: withInterval(circle) };
  const shares = [
    { error: circle.standardError, freedom: circle.freedom },
    { error: (brought(P + doubt).value - brought(P - doubt).value) / 2, freedom: pupils?.freedom ?? 0 },
  ];
  return { circle: withInterval(combined(circle.value, shares)) };
}
