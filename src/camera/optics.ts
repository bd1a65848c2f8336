import type { Design } from '../design/design.js';
import { filmPlane } from '../optics/conjugates.js';
import { circleOfConfusion, registerTolerance } from '../optics/depth.js';
import { circleAt, coversFrom, diagonal } from '../optics/image-circle.js';
import { exitPupil } from '../optics/light-cone.js';

/** What light wants of the camera: planes, circles, cone. All z count from the inner face of the front panel. */
export interface Optics {
  readonly seat: number;
  readonly diagonal: number;
  /** How far a register may be out: a quarter of N·c at infinity, c the diagonal/1500 (common practice, no source). */
  readonly registerTolerance: number;
  readonly filmAtInfinity: number;
  readonly filmAtNearest: number;
  readonly circle: { readonly infinity: number; readonly nearest: number } | null;
  readonly coversFrom: number | null;
  readonly pupil: { readonly z: number; readonly diameter: number };
}

export type OpticsGiven = Pick<Design, 'lens' | 'focus' | 'format'> & { readonly seat: number };

export function solveOptics({ lens, focus, format, seat }: OpticsGiven): Optics {
  const { maxAperture, pupilMagnification: P, coverage } = lens;
  const { short, long } = format.image;
  const imageDiagonal = diagonal({ width: short, height: long });
  const confusion = circleOfConfusion(imageDiagonal);
  const placed = { ...lens, seat };
  const circle = coverage && { infinity: circleAt(0, coverage, P), nearest: circleAt(focus.nearest, coverage, P) };
  return {
    seat,
    diagonal: imageDiagonal,
    registerTolerance: registerTolerance(maxAperture, confusion),
    filmAtInfinity: filmPlane(placed, 0),
    filmAtNearest: filmPlane(placed, focus.nearest),
    circle,
    coversFrom: circle && coversFrom(imageDiagonal, circle.infinity, P),
    pupil: exitPupil(placed),
  };
}
