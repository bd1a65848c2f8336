import type { Exposure, ExposureGiven, Reciprocity } from '../model/exposure.js';
import { extensionFactor, subjectDistance, workingAperture } from '../optics/conjugates.js';
import { depthAbout } from '../optics/depth.js';
import { factorOfStops, stackFactor, stopsOfFactor } from './filters.js';
import { popsFor } from './flash.js';
import { givenTime, LOSS_BEGINS } from './reciprocity.js';

/**
 * The setting for this sitting, from one that is known to be right.
 *
 *     W = W0 · (N/N0)² · (d/d0)² · (S0/S) · ((1 + m/P)/(1 + m0/P))² · F/F0
 *
 * and a time by the same factors without the distance of the lamp; reciprocity comes last. N is the number that is typed:
 * f/22 is 22, though a lens so engraved may be stopped down to 22.6. That is 0.08 stop at most between whole stops, and
 * `strayOfMark` says it.
 */
export function reckonExposure(given: ExposureGiven): Exposure {
  const { lens, magnification: m, aperture, reading } = given;
  const P = lens.pupilMagnification;
  const filterFactor = stackFactor(given.filters);
  const times = {
    extension: extensionFactor(m, P) / extensionFactor(reading?.magnification ?? 0, P),
    filter: filterFactor / (reading?.filterFactor ?? 1),
    speed: reading === null || given.speed === null ? null : reading.speed / given.speed,
    aperture: reading === null ? null : (aperture / reading.aperture) ** 2,
    distance: reading?.kind === 'flash' ? ((given.lampDistance ?? reading.distance) / reading.distance) ** 2 : null,
    dialled: given.dialled === undefined ? null : factorOfStops(given.dialled),
  };
  const more = Object.values(times).reduce<number>((product, factor) => product * (factor ?? 1), 1);
  const energy = reading?.kind === 'flash' ? reading.energy * more : null;
  const time = reading?.kind === 'meter' ? reading.time * more : null;
  return {
    magnification: m,
    subjectDistance: m === 0 ? null : subjectDistance(lens.focalLength, m),
    extensionFactor: extensionFactor(m, P),
    filterFactor,
    aperture,
    workingAperture: workingAperture(aperture, m, P),
    energy,
    pops: energy === null || given.flashMost === null ? null : popsFor(energy, given.flashMost),
    time,
    correctedTime: time === null ? null : withLoss(time, given.reciprocity),
    stops: {
      extension: stopsOfFactor(times.extension),
      filter: stopsOfFactor(times.filter),
      speed: inStops(times.speed),
      aperture: inStops(times.aperture),
      distance: inStops(times.distance),
      dialled: inStops(times.dialled),
      total: stopsOfFactor(more),
    },
    depthOfField: depthAbout({
      f: lens.focalLength,
      P,
      N: aperture,
      c: given.circleOfConfusion,
      m,
    }),
  };
}

const inStops = (factor: number | null): number | null => (factor === null ? null : stopsOfFactor(factor));

function withLoss(time: number, reciprocity: Reciprocity | null): number | null {
  if (reciprocity !== null) return givenTime(time, reciprocity);
  return time > LOSS_BEGINS ? null : time;
}
