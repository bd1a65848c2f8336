import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { boxOf, holeRound, outlineOf, platesOf, type StandingPlate } from '../../assembly/measure.js';
import { ON_THE_ROAD } from '../../assembly/setups.js';
import { spanOf, spansOf } from '../../assembly/span-of.js';
import type { Finding } from '../../model/finding.js';
import { mm, tenth } from '../../units/print.js';
import { railHeld } from '../on-rails.js';
import type { PlacedCap } from './parts.js';

/** What the cap laps over the opening of the ring: the turn that light does not take; common practice, no source. */
const COVER = 10;
/** Of the peg in the ring: less, and it is shaken out; a choice of ours. */
const PEGGED = 2.5;

/** The foremost of the rings, which the cap lies on; a frame without one is a mistake of ours. */
function frontRing(build: Build, id: string): StandingPlate {
  const [first] = [...platesOf(build, id)].sort((a, b) => a.low - b.low);
  if (first === undefined) throw new Error(`there is no plate ${id} in this build`);
  return first;
}

/** cap-covers: the cap laps over the opening of the ring on all four sides. */
export function capCovers({ restsOn }: PlacedCap, build: Build): readonly Finding[] {
  const cap = boxOf(outlineOf(build, 'LC1').outline);
  const hole = holeRound(frontRing(build, restsOn));
  if (hole === null) return [];
  const ring = boxOf(hole);
  const value = Math.min(ring.left - cap.left, cap.right - ring.right, ring.bottom - cap.bottom, cap.top - ring.top);
  return unless(value >= COVER - ROUNDING, {
    rule: 'cap-covers',
    level: 'error',
    value,
    limit: COVER,
    unit: 'mm',
    message: `Fog with the cap on: it laps over the opening of ${restsOn} by ${mm(tenth(value))}, and daylight gets round less than ${mm(COVER)}.`,
    hint: `Make it ${mm(tenth(COVER - value))} wider or longer on that side.`,
  });
}

/** cap-held: for the road its peg goes through it into the ring: no way of tipping the camera lets it slide out. */
export function capHeld({ restsOn }: PlacedCap, build: Build): readonly Finding[] {
  const setup = build.setups.find(({ name }) => name === ON_THE_ROAD);
  if (setup === undefined) return [];
  const [peg] = spansOf(build, 'cap-peg', { setup });
  const [cap, ring] = [spanOf(build, 'LC1', { setup }), frontRing(build, restsOn)];
  const into = peg === undefined ? 0 : Math.min(peg.z[1], ring.high) - Math.max(peg.z[0], ring.low);
  const through = peg === undefined ? 0 : Math.min(peg.z[1], cap.z[1]) - Math.max(peg.z[0], cap.z[0]);
  const value = Math.min(into, through);
  return unless(value >= PEGGED - ROUNDING, {
    rule: 'cap-held',
    level: 'error',
    value,
    limit: PEGGED,
    unit: 'mm',
    message: `Carried head down the camera loses its cap: its peg stands ${mm(Math.max(0, tenth(value)))} in the cap and in ${restsOn}, and it takes ${mm(PEGGED)}.`,
    hint: 'Cut the peg longer.',
  });
}

const capOnRails = (_own: PlacedCap, build: Build): readonly Finding[] => railHeld(build, 'LC1');

export const capChecks = [capCovers, capHeld, capOnRails];
