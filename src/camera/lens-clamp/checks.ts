import type { Finding } from '../../model/finding.js';
import { mm, plainNumber } from '../../units/print.js';
import type { LensClamp } from './size.js';

/** The hold must outweigh the lens so many times; common practice, no source. */
const LEAST_RATIO = 4;

/** What the clamp itself can tell: whether it holds, and what it is printed in. */
export function checkLensClamp(clamp: LensClamp): readonly Finding[] {
  return [...holdsWeight(clamp), ...gripsLongEnough(clamp), standsHeat];
}

function holdsWeight({ hold }: LensClamp): readonly Finding[] {
  if (hold.ratio >= LEAST_RATIO) return [];
  return [
    {
      rule: 'clamp-grip',
      level: 'error',
      value: hold.ratio,
      limit: LEAST_RATIO,
      message: `The clamp holds ${plainNumber(hold.forceN, 0)} N along the axis, ${plainNumber(hold.ratio, 1)} times the lens's weight; on a tilted tripod it slips below ${LEAST_RATIO} times.`,
      hint: 'Mount so heavy a lens by its flange, or by a ring on its thread.',
      about: 'lens.mount.by',
    },
  ];
}

function gripsLongEnough({ grip, leastGrip }: LensClamp): readonly Finding[] {
  if (grip >= leastGrip) return [];
  return [
    {
      rule: 'clamp-grip',
      level: 'warning',
      value: grip,
      limit: leastGrip,
      unit: 'mm',
      message: `The barrel offers ${mm(grip)} to grip; with its pinch bolts the clamp is ${plainNumber(leastGrip, 1)} mm long and pinches beyond that.`,
      hint: 'Wrap the narrower end to the diameter of the barrel, or mount the lens by a flange.',
      about: 'lens.barrel.grip',
    },
  ];
}

const standsHeat: Finding = {
  rule: 'clamp-heat',
  level: 'note',
  limit: 70,
  unit: '°C',
  message: 'The lens clamp creeps in a hot car unless it is printed in a material good to 70 °C.',
  hint: 'PETG stays stiff to 75…85 °C; PLA softens at 55…65 °C.',
};
