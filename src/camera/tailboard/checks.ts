import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { countOf } from '../../assembly/setups.js';
import { spanOf } from '../../assembly/span-of.js';
import type { Finding } from '../../model/finding.js';
import { mm, tenth } from '../../units/print.js';
import { type Tailboard, TRIPOD_PLATE } from './size.js';

/** Wood that holds the tripod nut: thickness and width; common practice, no source. */
const HELD_IN = 12;
const DOUBLER = 60;
/** A tee nut's flange is so thick; from memory. */
const NUT_FLANGE = 1.6;

/** tripod-hold: lower ply and doubler as they are placed, and the nut's flange let in under the sole. */
export function tripodHold({ wood }: Tailboard, build: Build): readonly Finding[] {
  const block = build.parts.find((part) => part.id === 'T4');
  const { x, z } = spanOf(build, 'T4');
  const width = Math.min(x[1] - x[0], z[1] - z[0]);
  const plies = block === undefined ? 0 : countOf(block.placements, build.setups);
  const value = wood.ply.thickness * (1 + plies);
  const rule = { rule: 'tripod-hold', level: 'error', unit: 'mm' } as const;
  return [
    ...unless(value >= HELD_IN - ROUNDING, {
      ...rule,
      value,
      limit: HELD_IN,
      message: `The tripod nut is held in ${mm(tenth(value))} of wood: the screw tears out.`,
      hint: `Glue ${Math.ceil((HELD_IN - value) / wood.ply.thickness)} more of the doubler's plies under the tailboard.`,
    }),
    ...unless(width >= DOUBLER - ROUNDING, {
      ...rule,
      value: width,
      limit: DOUBLER,
      message: `The doubler is ${mm(tenth(width))} wide: the tripod's plate bends the tailboard round it.`,
      hint: `Make it ${mm(DOUBLER)} square.`,
    }),
    ...unless(wood.ply.thickness >= NUT_FLANGE - ROUNDING, {
      ...rule,
      value: wood.ply.thickness,
      limit: NUT_FLANGE,
      about: 'plywood.thickness',
      message: `The nut's flange is thicker than the ply of ${mm(wood.ply.thickness)} that it is let into: it scrapes the sole.`,
      hint: `Use sheet of ${mm(NUT_FLANGE)} or more.`,
    }),
  ];
}

/** Half of the smallest plate that a tripod for such a camera has; a choice of ours. */
const LEAST_PLATE = 18;
/** Between knob and tripod plate, for the fingers; common practice, no source. */
const KNOB_AIR = 2;

/** knob-clear: the knob of the lock as placed, at the closest position, behind half a tripod plate. */
export function knobClear({ tripod }: Tailboard, build: Build): readonly Finding[] {
  const value = spanOf(build, 'lock-knob').z[0] - (tripod + TRIPOD_PLATE);
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
