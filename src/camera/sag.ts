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

export interface Sag {
  readonly sag: number;
  /** rad */
  readonly tilt: number;
  readonly atFilmEdge: number;
}

/** A cantilever with its load at the end: sag W·a³/(3EI), slope W·a²/(2EI) (handbooks of statics; row M4.10 of the checks). */
export function sagOf({ loadN, overhang: a, width, thickness, modulus, imageLong }: SagGiven): Sag {
  const stiffness = (modulus * width * thickness ** 3) / 12;
  const tilt = (loadN * a * a) / (2 * stiffness);
  return { sag: (loadN * a * a * a) / (3 * stiffness), tilt, atFilmEdge: (tilt * imageLong) / 2 };
}
