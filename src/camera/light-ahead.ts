import { entranceOpening } from '../optics/light-cone.js';

/** What the lens takes in, as anything ahead of it must let it pass. */
export interface LightAhead {
  readonly focalLength: number;
  readonly maxAperture: number;
  /** Half of the field on the diagonal, at infinity, rad. */
  readonly halfField: number;
  /** tan of half the field along the long side of the picture, which stands upright and lengthwise. */
  readonly alongLong: number;
  /** z of the entrance pupil: taken in the lens seat, as deep as it plausibly lies, for nobody measures it. */
  readonly pupil: number;
}

/** Diameter of the light at a plane ahead of the lens: behind the pupil it is no wider than the pupil. */
export const lightAcross = ({ focalLength, maxAperture, halfField, pupil }: LightAhead, z: number): number =>
  entranceOpening({ focalLength, maxAperture, halfField, depth: Math.max(0, pupil - z) });

/** Round the light, in all; a choice of ours. */
const LIGHT_ROOM = 2;

/** An opening for the light at a plane ahead of the lens. */
export const openingAt = (light: LightAhead, z: number): number => lightAcross(light, z) + LIGHT_ROOM;

/**
 * Half the side of a square at a plane ahead of the lens that lets in the light of all of the picture, upright and
 * lengthwise: f/2N + distance·(half the long side)/f, for the bundle of a corner lies as far out as its two sides, not as its
 * diagonal. Derived as `entranceOpening` is.
 */
export const halfOfSquare = ({ focalLength, maxAperture, alongLong, pupil }: LightAhead, z: number): number =>
  focalLength / maxAperture / 2 + Math.max(0, pupil - z) * alongLong;

/** The same with room round it. */
export const squareAt = (light: LightAhead, z: number): number => halfOfSquare(light, z) + LIGHT_ROOM / 2;

/** z of the foremost plane at which a square of half that side still lets it in. */
export const foremostFor = (light: LightAhead, half: number): number =>
  light.pupil - Math.max(0, half - squareAt(light, light.pupil)) / light.alongLong;
