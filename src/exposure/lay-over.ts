import type { Sitting } from '../design/design.js';

type Kind = 'meter' | 'flash';

/**
 * What is said today goes before what the file says of the same key, and puts aside what the file says of the same matter
 * in other words: another way to the magnification, a reading of the other kind, the speed that a meter was set to where
 * today's reading was found by a test.
 */
export function layOver(file: Sitting, today: Sitting): Sitting {
  const kept: Sitting = { ...file };
  const aside: Partial<Record<keyof Sitting, undefined>> = {
    ...(placed(today) ? { subject: undefined, magnification: undefined, head: undefined } : {}),
    ...(readingOf(today) === 'meter' ? { flashEnergy: undefined } : {}),
    ...(readingOf(today) === 'flash' ? { meterTime: undefined } : {}),
    ...(otherKind(file, today) ? { testMagnification: undefined, testFilter: undefined } : {}),
    ...(tested(today) && !tested(file) ? { meterSpeed: undefined, flashSpeed: undefined } : {}),
  };
  return { ...kept, ...aside, ...said(today) };
}

/** Whether a reading was found by a test with the camera. */
export const tested = ({ testMagnification, testFilter }: Sitting): boolean =>
  testMagnification !== undefined || testFilter !== undefined;

const placed = ({ subject, magnification, head }: Sitting): boolean =>
  subject !== undefined || magnification !== undefined || head !== undefined;

/** Which kind of reading somebody speaks of; null where of none. */
function readingOf(sitting: Sitting): Kind | null {
  const { meterTime, meterAperture, meterSpeed, flashEnergy, flashAperture, flashDistance, flashSpeed } = sitting;
  if ([meterTime, meterAperture, meterSpeed].some((value) => value !== undefined)) return 'meter';
  if ([flashEnergy, flashAperture, flashDistance, flashSpeed].some((value) => value !== undefined)) return 'flash';
  return null;
}

/** The file may have keys of both kinds at hand, but the quantity of one only. */
function otherKind(file: Sitting, today: Sitting): boolean {
  const now = readingOf(today);
  return (now === 'meter' && file.flashEnergy !== undefined) || (now === 'flash' && file.meterTime !== undefined);
}

/** Without what was not said: an undefined key would hide the file's. */
const said = (today: Sitting): Sitting =>
  Object.fromEntries(Object.entries(today).filter(([, value]) => value !== undefined));
