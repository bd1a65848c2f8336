import type { ExposureGiven, Reading } from '../../src/model/exposure.js';

/** What a meter says; `reading` adds to it. */
export const metered = (reading: {
  time: number;
  aperture: number;
  speed: number;
  filterFactor?: number;
}): Reading => ({
  kind: 'meter',
  magnification: 0,
  filterFactor: 1,
  ...reading,
});

/** The flash that the checks scale from: 400 J are right at f/16 and 2 m for ISO 100. */
export const flash400: Reading = {
  kind: 'flash',
  energy: 400,
  distance: 2000,
  aperture: 16,
  speed: 100,
  magnification: 0,
  filterFactor: 1,
};

/** A 210 mm lens at f/16, subject far away, no filter, no reading; `given` replaces. */
export const sitting = (given: Partial<ExposureGiven> = {}): ExposureGiven => ({
  lens: { focalLength: 210, pupilMagnification: 1 },
  circleOfConfusion: 0.1,
  magnification: 0,
  aperture: 16,
  speed: null,
  filters: [],
  reading: null,
  lampDistance: null,
  flashMost: null,
  reciprocity: null,
  ...given,
});

/** One filter of each factor. */
export const filters = (...factors: readonly number[]) => factors.map((factor) => ({ name: 'filter', factor }));
