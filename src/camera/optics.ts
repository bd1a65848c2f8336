import type { Design } from '../design/design.js';

/** What light wants of the camera: planes, circles, cone. All z count from the inner face of the front panel. */
export interface Optics {
  readonly seat: number;
  readonly diagonal: number;
  /** Circle of confusion: diagonal/1500 (common practice, no source). */
  readonly confusion: number;
  /** How far a register may be out: a quarter of N·c at infinity. */
  readonly registerTolerance: number;
  readonly filmAtInfinity: number;
  readonly filmAtNearest: number;
  readonly circle: { readonly infinity: number; readonly nearest: number } | null;
  readonly coversFrom: number | null;
  readonly pupil: { readonly z: number; readonly diameter: number };
  readonly rearRim: { readonly z: number; readonly radius: number };
}

export type OpticsGiven = Pick<Design, 'lens' | 'focus' | 'format'> & { readonly seat: number };

/** Depth of focus is judged by this part of the image's diagonal (common practice, no source). */
const CONFUSION = 1500;

export function solveOptics({ lens, focus, format, seat }: OpticsGiven): Optics {
  const { focalLength: f, flangeDistance: V, maxAperture: N, pupilMagnification: P, coverage, barrel } = lens;
  const diagonal = Math.sqrt(format.image.short ** 2 + format.image.long ** 2);
  const confusion = diagonal / CONFUSION;
  const at = (m: number) => (coverage ? (coverage.diameter * (1 + m / P)) / (1 + coverage.at / P) : 0);
  return {
    seat,
    diagonal,
    confusion,
    registerTolerance: (N * confusion) / 4,
    filmAtInfinity: seat + V,
    filmAtNearest: seat + V + f * focus.nearest,
    circle: coverage ? { infinity: at(0), nearest: at(focus.nearest) } : null,
    coversFrom: coverage ? Math.max(0, P * (diagonal / at(0) - 1)) : null,
    pupil: { z: seat + V - P * f, diameter: (P * f) / N },
    rearRim: { z: seat + barrel.grip + barrel.rear, radius: barrel.rearDiameter / 2 },
  };
}
