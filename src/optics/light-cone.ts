import type { LensFigures } from './conjugates.js';

/** A lens as its light leaves it: also its full aperture and pupil magnification. */
interface LensLight extends LensFigures {
  readonly maxAperture: number;
  /** P, exit over entrance pupil. */
  readonly pupilMagnification: number;
}

/**
 * Where the light seems to come from: z and diameter of the exit pupil, mm.
 *
 * The pupil is P·f ahead of the film at infinity, so z = seat + V − P·f, and P times the entrance pupil f/N wide.
 * Derived: light of half angle atan(1/2N) converges on the film at infinity.
 */
export const exitPupil = ({
  focalLength,
  flangeDistance,
  seat,
  maxAperture,
  pupilMagnification: P,
}: LensLight): { readonly z: number; readonly diameter: number } => ({
  z: seat + flangeDistance - P * focalLength,
  diameter: (P * focalLength) / maxAperture,
});

/** The bundle that leaves the barrel: from the circle of its rear rim to the edge of the image, mm. */
export interface Bundle {
  readonly rim: { readonly z: number; readonly radius: number };
  /** Half of the image's side, or of its diagonal. */
  readonly film: { readonly z: number; readonly half: number };
}

/**
 * Half width of the light at z, from the rear rim of the barrel to the film: R + (i/2 − R)(z − zR)/(zFilm − zR).
 *
 * Whatever the iris does, no light that reaches the image can stand outside the straight line from rim to image edge. A
 * bound for sizing, between the two planes only; it is never above the half image while the rim is smaller than that.
 * Derived from similar triangles.
 */
export const bundleHalfWidth = ({ rim, film }: Bundle, z: number): number =>
  rim.radius + ((film.half - rim.radius) * (z - rim.z)) / (film.z - rim.z);

/** Full aperture f/N and the field that an opening ahead of the lens must let in. */
interface Entrance {
  readonly focalLength: number;
  readonly maxAperture: number;
  /** From the entrance pupil to the opening. */
  readonly depth: number;
  /** rad */
  readonly halfField: number;
}

/** Least opening that does not clip the field, f/N + 2·depth·tan(half field), mm. Derived: entrance pupil and its slope. */
export const entranceOpening = ({ focalLength, maxAperture, depth, halfField }: Entrance): number =>
  focalLength / maxAperture + 2 * depth * Math.tan(halfField);

interface Mask {
  /** From the mask to the film behind it. */
  readonly distance: number;
  /** Diameter of the exit pupil. */
  readonly pupil: number;
  /** From the exit pupil to the film. */
  readonly pupilDistance: number;
}

/**
 * Width over which the shadow of a mask ahead of the film goes from full light to none, mm: d·D/(L − d). Derived: lines
 * from both rims of the pupil past the mask's edge, similar triangles.
 */
export const softEdge = ({ distance, pupil, pupilDistance }: Mask): number =>
  (distance * pupil) / (pupilDistance - distance);
