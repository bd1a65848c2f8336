import { MOST_SHIMS } from '../../joinery/lamination.js';
import type { Finding } from '../../model/finding.js';
import { mm } from '../../units/print.js';
import { ROUNDING, unless } from '../unless.js';
import type { GroundGlassFrame } from './size.js';

/** The glass must reach its depth behind one ply of the frame. */
export const glassPacking = ({ packing, wood, within }: GroundGlassFrame): readonly Finding[] => {
  if (packing.thickness < -ROUNDING)
    return [
      {
        rule: 'glass-packing',
        level: 'error',
        value: packing.thickness,
        limit: 0,
        unit: 'mm',
        about: 'groundGlass.depth',
        message: `The glass would have to stand ${mm(-packing.thickness)} inside the frame’s front ply of ${mm(wood.ply.thickness)}: it cannot reach its depth.`,
        hint: 'Let the deepest holder decide the glass’s depth, turn its frosted side to the lens, or use a thinner sheet.',
      },
    ];
  return [
    ...unless(Math.abs(packing.remainder) <= within + ROUNDING, {
      rule: 'glass-packing',
      level: 'error',
      value: Math.abs(packing.remainder),
      limit: within,
      unit: 'mm',
      about: 'shims',
      message: `Plies and shims leave ${mm(packing.remainder)} of the glass’s packing of ${mm(packing.thickness)} unfilled; ${mm(within)} is allowed.`,
      hint: 'Add a thinner shim to the list.',
    }),
    ...unless(packing.shims.length <= MOST_SHIMS, {
      rule: 'spacer-shims',
      level: 'warning',
      value: packing.shims.length,
      limit: MOST_SHIMS,
      unit: 'shims',
      about: 'stock',
      message: `The glass frame takes ${packing.shims.length} shims: they slide about.`,
      hint: 'Add a thinner sheet to the stock for one ply.',
    }),
  ];
};

export const groundGlassFrameChecks = [glassPacking];
