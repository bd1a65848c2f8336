import type { Finding } from '../../model/finding.js';
import { mm, plainNumber } from '../../units/print.js';
import type { LensClamp } from './size.js';

/** The hold must outweigh the lens so many times; common practice, no source. */
const LEAST_RATIO = 4;

/** What the clamp itself can tell: whether it holds, and what it is printed in. */
export function checkLensClamp(clamp: LensClamp): readonly Finding[] {
  return [...holdsWeight(clamp), ...gripsLongEnough(clamp), ...wallHolds(clamp), standsHeat];
}

/** A thinner collar splits along its layers when it is pinched; common practice, no source. */
const LEAST_WALL = 5;

function wallHolds({ wall }: LensClamp): readonly Finding[] {
  if (wall >= LEAST_WALL) return [];
  return [
    {
      rule: 'clamp-grip',
      level: 'error',
      value: wall,
      limit: LEAST_WALL,
      unit: 'mm',
      message: `The collar of the clamp is ${mm(wall)} thick: it splits between its layers when it is pinched.`,
      hint: `Make the wall ${mm(LEAST_WALL)} or more.`,
    },
  ];
}

function holdsWeight({ hold }: LensClamp): readonly Finding[] {
  if (hold.ratio >= LEAST_RATIO) return [];
  return [
    {
      rule: 'clamp-grip',
      level: 'error',
      value: hold.ratio,
      limit: LEAST_RATIO,
      unit: 'times the weight',
      message: `On a tilted tripod the lens slips through its clamp, which holds ${plainNumber(hold.forceN, 0)} N along the axis: ${plainNumber(hold.ratio, 1)} times the lens's weight, where ${LEAST_RATIO} times are needed.`,
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
      message: `The barrel offers ${mm(grip)} to grip, and a clamp with its pinch bolts is ${plainNumber(leastGrip, 1)} mm long: it pinches air behind the grip, and holds less.`,
      hint: `Wrap the barrel behind the grip to the same diameter for ${plainNumber(Math.ceil(leastGrip - grip), 0)} mm, or mount the lens by a flange or ring.`,
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
