import { entranceOpening } from '../optics/light-cone.js';

/** What the lens takes in, as anything ahead of it must let it pass. */
export interface LightAhead {
  readonly focalLength: number;
  readonly maxAperture: number;
  /** Half of the field on the diagonal, at infinity, rad. */
  readonly halfField: number;
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
