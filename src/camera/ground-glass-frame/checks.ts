import { ROUNDING, unless } from '../../assembly/limit.js';
import { MOST_SHIMS } from '../../joinery/lamination.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import type { GroundGlassFrame } from './size.js';

/** glass-packing: the glass must reach its depth behind one ply of the frame, by whole plies and shims. */
export const glassPacking = ({ packing, wood, within, glass, frosted }: GroundGlassFrame): readonly Finding[] => {
  const least = wood.ply.thickness + (frosted === 'eye' ? glass.thickness : 0);
  const turned = frosted === 'eye' && packing.thickness + glass.thickness >= -ROUNDING;
  if (packing.thickness < -ROUNDING)
    return [
      {
        rule: 'glass-packing',
        level: 'error',
        value: packing.thickness,
        limit: 0,
        unit: 'mm',
        about: 'groundGlass.depth',
        message: `The glass cannot come so near: it would have to stand ${mm(tenth(-packing.thickness))} inside the front ply of its frame.`,
        hint: `${turned ? 'Turn the glass and write frosted: lens. Or write' : 'Write'} depth: ${mm(Math.ceil(least * 20 - ROUNDING) / 20)} or more, and let a spacer make up for it; or use thinner sheet.`,
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
      message: `The glass's packing of ${mm(packing.thickness)} cannot be made: plies and shims miss it by ${mm(thousandth(Math.abs(packing.remainder)))}, and ${mm(thousandth(within))} is allowed.`,
      hint: `Add a shim of ${mm(Math.max(0.05, Math.round(Math.abs(packing.remainder) * 20) / 20))} to the list.`,
    }),
    ...unless(packing.shims.length <= MOST_SHIMS, {
      rule: 'spacer-shims',
      level: 'warning',
      value: packing.shims.length,
      limit: MOST_SHIMS,
      unit: 'shims',
      about: 'stock',
      message: `The glass frame takes ${packing.shims.length} shims: they slide about.`,
      hint: `Add a sheet near ${mm(tenth(packing.shims.reduce((sum, shim) => sum + shim, 0)))} to the stock for one ply.`,
    }),
  ];
};

const thousandth = (value: number): number => Math.round(value * 1000) / 1000;

/**
 * frosted-side: where the picture would be sharp with the glass put into its frame the wrong way round. The frosted face
 * then lies a glass's thickness away, and the picture reaches it through the glass or no longer does: in all t/n.
 */
export const frostedSide = ({ effectiveDepth, effectiveOtherSide, frosted, within }: GroundGlassFrame) => {
  const off = Math.abs(effectiveOtherSide - effectiveDepth);
  const tolerance = 2 * within;
  const finding: Finding = {
    rule: 'frosted-side',
    level: 'note',
    value: off,
    limit: tolerance,
    unit: 'mm',
    about: 'groundGlass.frosted',
    message: `The frosted side faces the ${frosted}, and the glass works at ${mm(thousandth(effectiveDepth))}. Put in the wrong way round it works at ${mm(thousandth(effectiveOtherSide))}: every picture is ${mm(thousandth(off))} out of focus, ${plainNumber(off / tolerance, 1)} times the tolerance.`,
    hint: `Scratch a mark beside the edge of its smooth side, which faces the ${frosted === 'lens' ? 'eye' : 'lens'}.`,
  };
  return unless(off <= tolerance, finding);
};

export const groundGlassFrameChecks = [glassPacking, frostedSide];
