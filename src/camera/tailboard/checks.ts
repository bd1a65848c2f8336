import type { Build } from '../../assembly/build.js';
import type { Extent } from '../../assembly/extent.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { openingRound, outlineOf, outlinesOf, sidesOf } from '../../assembly/measure.js';
import { spanOf } from '../../assembly/span-of.js';
import type { Point3 } from '../../geometry/placement.js';
import type { Finding } from '../../model/finding.js';
import { mm, tenth } from '../../units/print.js';
import { type Tailboard, TRIPOD_PLATE } from './size.js';

/** Wood that holds the tripod nut: thickness and width; common practice, no source. */
const HELD_IN = 12;
const DOUBLER = 60;

/** tripod-hold: lower ply and doubler as they are placed, and the nut's flange let in under the sole. */
export function tripodHold(_own: Tailboard, build: Build): readonly Finding[] {
  const { x, z } = spanOf(build, 'T4');
  const width = Math.min(x[1] - x[0], z[1] - z[0]);
  const lower = outlineOf(build, 'T1L');
  const doubler = outlinesOf(build, 'T4');
  const value = [lower, ...doubler].reduce((sum, { low, high }) => sum + high - low, 0);
  const ply = lower.high - lower.low;
  const [flange, upper] = [outlineOf(build, 'tripod-flange'), outlineOf(build, 'T1U')];
  const thick = flange.high - flange.low;
  const depth = upper.high - flange.low;
  const middle = middleOf(spanOf(build, 'tripod-flange'));
  const recess = openingRound(upper.part, upper.placement, 'y', middle);
  const opening = recess ? sidesOf(recess) : { width: 0, height: 0 };
  const room = Math.min(opening.width, opening.height);
  const across = sidesOf(flange.outline).width;
  const letIn = depth >= thick - ROUNDING && room >= across - ROUNDING;
  const rule = { rule: 'tripod-hold', level: 'error', unit: 'mm' } as const;
  return [
    ...unless(value >= HELD_IN - ROUNDING, {
      ...rule,
      value,
      limit: HELD_IN,
      message: `The tripod nut is held in ${mm(hundredth(value))} of wood: the screw tears out.`,
      hint: `Glue ${Math.ceil((HELD_IN - value) / ply)} more of the doubler's plies under the tailboard.`,
    }),
    ...unless(width >= DOUBLER - ROUNDING, {
      ...rule,
      value: width,
      limit: DOUBLER,
      message: `The doubler is ${mm(tenth(width))} wide: the tripod's plate bends the tailboard round it.`,
      hint: `Make it ${mm(DOUBLER)} square.`,
    }),
    ...unless(letIn, {
      ...rule,
      value: room < across - ROUNDING ? 0 : depth,
      limit: thick,
      about: 'plywood.thickness',
      message: `The nut's flange is ${mm(thick)} thick and is let in ${mm(tenth(room < across - ROUNDING ? 0 : depth))}: it scrapes the sole.`,
      hint: `Use sheet of ${mm(thick)} or more, with a hole of ${mm(tenth(across + 0.5))} in the upper ply.`,
    }),
  ];
}

const middleOf = ({ x, y, z }: Extent): Point3 => ({
  x: (x[0] + x[1]) / 2,
  y: (y[0] + y[1]) / 2,
  z: (z[0] + z[1]) / 2,
});

/** Rounded down: what just misses its limit must not read as if it met it. */
const hundredth = (value: number): number => Math.floor(value * 100 + ROUNDING) / 100;

/** Half of the smallest plate that a tripod for such a camera has; a choice of ours. */
const LEAST_PLATE = 18;
/** Between knob and tripod plate, for the fingers; common practice, no source. */
const KNOB_AIR = 2;

/** knob-clear: the knob of the lock as placed, at the closest position, behind half a tripod plate round the nut as placed. */
export function knobClear(_own: Tailboard, build: Build): readonly Finding[] {
  const nut = spanOf(build, 'tripod-barrel').z;
  const value = spanOf(build, 'lock-knob').z[0] - ((nut[0] + nut[1]) / 2 + TRIPOD_PLATE);
  const plate = Math.floor(TRIPOD_PLATE + value - KNOB_AIR);
  return unless(value >= KNOB_AIR - ROUNDING, {
    rule: 'knob-clear',
    level: 'warning',
    value,
    limit: KNOB_AIR,
    unit: 'mm',
    message:
      value < 0
        ? `At the closest position the knob would stand ${mm(tenth(-value))} over a tripod plate of ${mm(2 * TRIPOD_PLATE)}: it cannot be turned.`
        : `At the closest position the knob stands ${mm(tenth(value))} behind a tripod plate of ${mm(2 * TRIPOD_PLATE)}: no room for fingers.`,
    hint:
      plate < LEAST_PLATE
        ? `Screw a block of ${mm(Math.ceil(spanOf(build, 'T4').y[0] - spanOf(build, 'lock-knob').y[0] + KNOB_AIR))} between doubler and tripod: the knob then turns above the plate.`
        : `Use a plate that reaches ${mm(plate)} or less behind its screw, or turn its narrow side along the camera.`,
  });
}

export const tailboardChecks = [tripodHold, knobClear];
