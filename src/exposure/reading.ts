import type { Sitting } from '../design/design.js';
import type { Reading, Reciprocity } from '../model/exposure.js';
import type { Assumed } from '../model/sitting.js';
import { exposureTime, metres, scale } from '../units/print.js';
import { tested } from './lay-over.js';
import { meteredTime } from './reciprocity.js';
import { refuse, type SittingRefused } from './refused.js';

interface Found {
  readonly reading: Reading | null;
  readonly assumed: readonly Assumed[];
  readonly wanting: readonly string[];
}

const NO_READING = [
  'for an energy: --flash-energy, --flash-aperture, --flash-distance and --flash-speed of one flash that was right',
  'for a time: --meter-time, --meter-aperture and --meter-speed of a meter reading',
];

/** The reading that is carried over: complete, or none at all; what is begun today must be ended. */
export function readingOf(sitting: Sitting, today: Sitting, reciprocity: Reciprocity | null): Found | SittingRefused {
  const begun = kindBegun(sitting, today);
  if (begun === null) {
    if (tested(today)) return refuse('A test is nothing without its setting.', `Give ${NO_READING.join('; or ')}.`);
    return { reading: null, assumed: [], wanting: NO_READING };
  }
  const of = begun === 'meter' ? meterOf(sitting) : flashOf(sitting);
  if ('refused' in of) return of;
  const byTest = tested(sitting);
  if (byTest && sitting.testMagnification === undefined)
    return refuse(
      'A filter of a test is given, but not the magnification of the test.',
      'Give --test-magnification 1:4.',
    );
  if (of.speed === undefined && !byTest)
    return refuse(
      `The speed of the ${begun} reading is not given.`,
      `Give --${begun}-speed 100; or --test-magnification 1:4, if it was a test on the same paper.`,
    );
  if (sitting.speed === undefined && !byTest)
    return {
      reading: null,
      assumed: [],
      wanting: [`for ${begun === 'meter' ? 'a time' : 'an energy'}: --speed, of the paper or film`],
    };
  const common = {
    aperture: of.aperture,
    magnification: sitting.testMagnification ?? 0,
    filterFactor: sitting.testFilter ?? 1,
    // at a test on the same paper the speeds are one, whatever it is
    speed: of.speed ?? sitting.speed ?? 1,
  };
  const reading: Reading =
    of.kind === 'flash'
      ? { ...common, kind: 'flash', energy: of.energy, distance: of.distance }
      : {
          ...common,
          kind: 'meter',
          time: byTest && reciprocity !== null ? meteredTime(of.time, reciprocity) : of.time,
        };
  const assumed: readonly (Assumed | null)[] = [
    of.kind === 'meter' && reading.kind === 'meter' && reading.time !== of.time
      ? {
          key: 'reciprocity',
          message: `The ${exposureTime(of.time)} of the test are ${exposureTime(reading.time)} without reciprocity.`,
        }
      : null,
    of.kind === 'flash' && sitting.lampDistance === undefined
      ? { key: 'lampDistance', message: `The lamp stands as far off as at the reading, ${metres(of.distance)}.` }
      : null,
    of.kind === 'flash'
      ? {
          key: 'flashEnergy',
          message:
            'A reading counts all lamps that fired at it. Several keep their proportion; distances are those of the main lamp, and all move alike.',
        }
      : null,
    byTest && (of.speed === undefined || sitting.speed === undefined)
      ? { key: 'speed', message: 'The test was made on the same paper, so no speed enters.' }
      : null,
    byTest && sitting.testFilter === undefined
      ? {
          key: 'testFilter',
          message: `Nothing stood in the light at the test at ${scale(common.magnification)}.`,
        }
      : null,
  ];
  return { reading, assumed: assumed.filter((each) => each !== null), wanting: [] };
}

/** Of which kind the reading is; null where none is given, be it that the file keeps some keys of one at hand. */
function kindBegun(sitting: Sitting, today: Sitting): 'meter' | 'flash' | null {
  if (sitting.meterTime !== undefined) return 'meter';
  if (sitting.flashEnergy !== undefined) return 'flash';
  if (today.meterAperture !== undefined || today.meterSpeed !== undefined) return 'meter';
  const flash = [today.flashAperture, today.flashDistance, today.flashSpeed];
  return flash.some((value) => value !== undefined) ? 'flash' : null;
}

function meterOf({ meterTime: time, meterAperture: aperture, meterSpeed: speed }: Sitting) {
  if (time === undefined) return refuse('The time of the meter reading is not given.', 'Give --meter-time 1/4s.');
  if (aperture === undefined)
    return refuse('The aperture of the meter reading is not given.', 'Give --meter-aperture f/16.');
  return { kind: 'meter', time, aperture, speed } as const;
}

function flashOf(sitting: Sitting) {
  const { flashEnergy: energy, flashAperture: aperture, flashDistance: distance, flashSpeed: speed } = sitting;
  if (energy === undefined) return refuse('The energy of the flash reading is not given.', 'Give --flash-energy 400.');
  if (aperture === undefined)
    return refuse('The aperture of the flash reading is not given.', 'Give --flash-aperture f/16.');
  if (distance === undefined)
    return refuse('The distance of the lamp at the flash reading is not given.', 'Give --flash-distance 2m.');
  return { kind: 'flash', energy, aperture, distance, speed } as const;
}
