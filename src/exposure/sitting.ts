import type { Design, Sitting } from '../design/design.js';
import type { Exposure, ExposureGiven } from '../model/exposure.js';
import type { SittingDocument } from '../model/sitting.js';
import { filmPlane, seatToSubject } from '../optics/conjugates.js';
import { apertureFor, distanceFor } from './flash.js';
import { exposureGiven } from './given.js';
import { reckonExposure } from './reckon.js';
import type { SittingRefused } from './refused.js';
import { remarksOn } from './remarks.js';

/**
 * The exposure of one sitting, with what was taken for granted and what to mind.
 *
 * @param today what differs from the design's sitting
 * @param reaches nearest focus of the camera, as a magnification
 * @param dial puts in what the sheets of a log have taught
 */
export function sittingDocument(
  design: Design,
  today: Sitting,
  reaches: number,
  dial: (given: ExposureGiven) => ExposureGiven = (given) => given,
): SittingDocument | SittingRefused {
  const resolved = exposureGiven(design, today);
  if ('refused' in resolved) return resolved;
  const { sitting, tested, assumed, wanting } = resolved;
  const given = dial(resolved.given);
  const exposure = reckonExposure(given);
  const { magnification: m, energy, pops } = exposure;
  const popEnergy = energy === null || pops === null ? null : energy / pops;
  const onePop = onePopOf(design, given, exposure);
  const { near, far } = exposure.depthOfField;
  const u = exposure.subjectDistance;
  return {
    schema: 1,
    ...exposure,
    speed: given.speed,
    subjectFromSeat: m === 0 ? null : seatToSubject(design.lens, m),
    filmDistance: filmPlane({ ...design.lens, seat: 0 }, m),
    lampDistance: given.reading?.kind === 'flash' ? (given.lampDistance ?? given.reading.distance) : null,
    popEnergy,
    popPower: popEnergy === null || given.flashMost === null ? null : popEnergy / given.flashMost,
    onePop,
    aboutEyes: {
      fore: u === null || near === null ? null : u - near,
      aft: u === null || far === null ? null : far - u,
    },
    filters: given.filters,
    reading: given.reading === null ? null : { ...given.reading, tested },
    paper: sitting.paper ?? null,
    wanting,
    assumed,
    remarks: remarksOn({ design, today, sitting, given, tested, exposure, onePop, reaches }),
  };
}

/** What would do with one pop at full power where it takes several: the lamp nearer, or a stop that the lens has. */
function onePopOf(
  { lens }: Design,
  { reading, lampDistance, flashMost, aperture }: ExposureGiven,
  { energy, pops }: Exposure,
): SittingDocument['onePop'] {
  if (reading?.kind !== 'flash' || energy === null || flashMost === null || pops === null || pops < 2) return null;
  const wider = apertureFor(flashMost, { amount: energy, aperture });
  return {
    lampDistance: distanceFor(flashMost, { energy, distance: lampDistance ?? reading.distance }),
    aperture: wider < lens.maxAperture ? null : wider,
  };
}
