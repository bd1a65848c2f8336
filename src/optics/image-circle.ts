/** A circle of good definition as it was published or measured: its diameter in mm, and the magnification that it is for. */
export interface StatedCircle {
  readonly diameter: number;
  /** 0 at infinity; copier and process lenses are stated at 1. */
  readonly at: number;
}

/** Width and height of an image area, mm. */
interface Area {
  readonly width: number;
  readonly height: number;
}

/** What an image circle has to cover, mm. */
export const diagonal = ({ width, height }: Area): number => Math.sqrt(width * width + height * height);

/**
 * Image circle at magnification m, D(1 + m/P)/(1 + m0/P), mm.
 *
 * The angle of the field is limited on the subject's side, so the circle grows as the exit pupil's distance to the film
 * does. At P = 1 a circle stated at 1:1 is twice that at infinity (largeformat list, "Goerz Artars", 25 May 2002); the
 * form with P is derived from the geometry of the pupils.
 */
export const circleAt = (m: number, { diameter, at }: StatedCircle, P = 1): number =>
  (diameter * (1 + m / P)) / (1 + at / P);

/** Circle at infinity of a lens that covers the full angle `field`, 2 f tan(field/2), mm; source as `circleAt`. */
export const circleOfField = (f: number, field: number): number => 2 * f * Math.tan(field / 2);

/** Full angle that a circle at infinity stands for, rad: the inverse of `circleOfField`. */
export const fieldOfCircle = (f: number, circleAtInfinity: number): number => 2 * Math.atan(circleAtInfinity / (2 * f));

/** Magnification from which a circle covers a diagonal, P(diagonal/C0 − 1), and 0 where it covers at infinity. */
export const coversFrom = (imageDiagonal: number, circleAtInfinity: number, P = 1): number =>
  Math.max(0, P * (imageDiagonal / circleAtInfinity - 1));

/**
 * Angle of view over a side of the image, 2 atan(side/(2 f(1 + m/P))), rad, as it is seen from the entrance pupil.
 * Source: article "Angle of view", tickerdossier.com/wiki/angle-of-view, for P = 1; the form with P is derived from the
 * geometry of the pupils: the subject, side/m, stands f(1/m + 1/P) from the entrance pupil.
 */
export const angleOfView = (side: number, f: number, m: number, P = 1): number =>
  2 * Math.atan(side / (2 * f * (1 + m / P)));

/** The image's side in the direction of a movement, and the one across it, mm. */
interface Sides {
  readonly along: number;
  readonly across: number;
}

/**
 * How far the image may move along one of its sides within a circle, mm, the other movement left at zero: rise and
 * shift share one circle, so both at once is less. 0 where the circle does not cover. Plane geometry.
 */
export function movementLeft(circle: number, { along, across }: Sides): number {
  const halfChord = Math.sqrt(Math.max(0, circle * circle - across * across)) / 2;
  return Math.max(0, halfChord - along / 2);
}
