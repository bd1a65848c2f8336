import type { Build } from '../../assembly/build.js';
import { ROUNDING } from '../../assembly/limit.js';
import { partOf } from '../../assembly/measure.js';
import { spanOf, spansOf } from '../../assembly/span-of.js';
import { boundsOf } from '../../geometry/path.js';
import type { Prism } from '../../geometry/solid.js';
import type { Finding } from '../../model/finding.js';
import { standardGravity } from '../../standards/gravity.js';
import { kg, mm, plainNumber } from '../../units/print.js';
import type { FittedClamp } from './parts.js';

/** The hold must outweigh the lens so many times; common practice, no source. */
const LEAST_RATIO = 4;

/** What the clamp can tell: whether it holds the lens that stands in it, and what it is printed in. */
export function checkLensClamp(own: FittedClamp, build: Build): readonly Finding[] {
  return [...holdsWeight(own, build), ...gripsLongEnough(build), ...wallHolds(build), standsHeat];
}

/** A thinner collar splits along its layers when it is pinched; common practice, no source. */
const LEAST_WALL = 5;

/** Round about the axis, as the clamp is drawn: bore and collar are the circles that its recipe takes away and adds. */
function wallHolds(build: Build): readonly Finding[] {
  const clamp = partOf(build, 'lens-clamp');
  if (clamp.kind !== 'printed') return [];
  const bore = Math.max(...clamp.solid.cut.filter(isRoundAxis).map(radiusOf));
  const collar = Math.min(...clamp.solid.add.filter(isRoundAxis).map(radiusOf));
  const wall = collar - bore;
  if (wall >= LEAST_WALL - ROUNDING) return [];
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

/** A circle is drawn as two arcs. */
const isRoundAxis = ({ profile, matrix }: Prism): boolean => {
  if (profile.length !== 2 || matrix[12] !== 0 || matrix[13] !== 0 || matrix[10] !== 1) return false;
  const { left, right, bottom, top } = boundsOf(profile);
  return Math.abs(left + right) < ROUNDING && Math.abs(bottom + top) < 0.02;
};
const radiusOf = ({ profile }: Prism): number => boundsOf(profile).right;

function holdsWeight({ clamp: { hold }, massReckoned }: FittedClamp, build: Build): readonly Finding[] {
  const lensKg = build.parts.reduce(
    (sum, part) => sum + (part.kind === 'bought' && part.role === 'lens' ? part.massKg : 0),
    0,
  );
  const ratio = hold.forceN / (lensKg * standardGravity.value);
  if (ratio >= LEAST_RATIO - ROUNDING) return [];
  return [
    {
      rule: 'clamp-grip',
      level: 'error',
      value: ratio,
      limit: LEAST_RATIO,
      unit: 'times the weight',
      message: `On a tilted tripod the lens slips through its clamp, which holds ${plainNumber(hold.forceN, 0)} N along the axis: ${plainNumber(ratio, 1)} times the lens's weight, where ${LEAST_RATIO} times are needed.`,
      ...(massReckoned
        ? {
            hint: `Weigh the lens and write lens.barrel.mass: the ${kg(hundredth(lensKg))} are only reckoned from its size. A lens that really is so heavy is mounted by its flange, or by a ring on its thread.`,
            about: 'lens.barrel.mass',
          }
        : { hint: 'Mount so heavy a lens by its flange, or by a ring on its thread.', about: 'lens.mount.by' }),
    },
  ];
}

const hundredth = (mass: number): number => Math.round(100 * mass) / 100;

/** The barrel as far as it stands in the clamp, against the whole of the clamp. */
function gripsLongEnough(build: Build): readonly Finding[] {
  const clamp = spanOf(build, 'lens-clamp').z;
  const barrel = spansOf(build, 'lens-barrel')[0]?.z ?? [clamp[0], clamp[0]];
  const grip = Math.min(barrel[1], clamp[1]) - Math.max(barrel[0], clamp[0]);
  const needed = clamp[1] - clamp[0];
  if (grip >= needed - ROUNDING) return [];
  return [
    {
      rule: 'clamp-grip',
      level: 'warning',
      value: grip,
      limit: needed,
      unit: 'mm',
      message: `The barrel offers ${mm(grip)} to grip, and a clamp with its pinch bolts is ${plainNumber(needed, 1)} mm long: it pinches air behind the grip, and holds less.`,
      hint: `Wrap the barrel behind the grip to the same diameter for ${plainNumber(Math.ceil(needed - grip), 0)} mm, or mount the lens by a flange or ring.`,
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
