import type { Finding } from '../../model/finding.js';
import { mm } from '../../units/print.js';
import { ROUNDING, unless } from '../unless.js';
import { type Tailboard, TRIPOD_PLATE } from './size.js';

/** Thickness that the tripod nut is held in: lower ply and doubler (common practice, no source). */
export const tripodHold = ({ doubler, wood }: Tailboard): readonly Finding[] => {
  const value = wood.ply.thickness * (1 + doubler.plies);
  return unless(value >= 12 - ROUNDING, {
    rule: 'tripod-hold',
    level: 'error',
    value,
    limit: 12,
    unit: 'mm',
    message: `The tripod nut is held in ${mm(value)} of wood: the screw tears out.`,
  });
};

/** The slot's end to the tailboard's rear edge. */
export const slotLength = ({ slot, start, length }: Tailboard): readonly Finding[] => {
  const value = start + length - (slot.middle + slot.length / 2);
  return unless(value >= 12 - ROUNDING, {
    rule: 'slot-length',
    level: 'error',
    value,
    limit: 12,
    unit: 'mm',
    message: `Behind the lock’s slot ${mm(value)} of wood are left.`,
  });
};

export const knobClear = ({ slot, tripod, knobRadius }: Tailboard): readonly Finding[] => {
  const value = slot.middle - slot.length / 2 + 4 - knobRadius - TRIPOD_PLATE - tripod;
  return unless(value >= 2 - ROUNDING, {
    rule: 'knob-clear',
    level: 'warning',
    value,
    limit: 2,
    unit: 'mm',
    message: `At the closest position the knob stands ${mm(value)} behind a tripod plate of ${mm(2 * TRIPOD_PLATE)}.`,
    hint: 'Use a smaller plate, or turn it so that its narrow side lies along the camera.',
  });
};

export const tailboardChecks = [tripodHold, slotLength, knobClear];
