import { cantileverSag, cantileverTilt, secondMoment } from '../assembly/statics.js';

export interface SagGiven {
  readonly loadN: number;
  /** From the doubler's rear edge to the load. */
  readonly overhang: number;
  readonly width: number;
  readonly thickness: number;
  /** N/mm² */
  readonly modulus: number;
  readonly imageLong: number;
}

/** How the tailboard gives way behind its doubler. */
export interface Sag {
  readonly sag: number;
  /** rad */
  readonly tilt: number;
  /** How far the tilt takes the film's edge out of focus, the long side upright. */
  readonly atFilmEdge: number;
}

/** The overhang as a cantilever with its load at the end; the doubler does not give. */
export function sagOf({ loadN, overhang, width, thickness, modulus, imageLong }: SagGiven): Sag {
  const inertia = secondMoment(width, thickness);
  const tilt = cantileverTilt(loadN, overhang, modulus, inertia);
  return { sag: cantileverSag(loadN, overhang, modulus, inertia), tilt, atFilmEdge: (tilt * imageLong) / 2 };
}
