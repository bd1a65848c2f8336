import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { outlinesOf } from '../../assembly/measure.js';
import { MOST_SHIMS } from '../../joinery/lamination.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber } from '../../units/print.js';
import type { GroundGlassFrame } from './size.js';

/** The frame as it lies in the first set-up for focusing: front ply, what packs it, and the glass behind that. */
function stackOf(build: Build) {
  const setup = build.setups.find(({ focusing }) => focusing);
  const plates = (id: string) => outlinesOf(build, id, setup ? { setup } : {});
  const [front, glass] = [plates('G1')[0], plates('ground-glass')[0]];
  if (front === undefined || glass === undefined) throw new Error('there is no ground glass in this build');
  const shims = build.parts.filter(({ id }) => id.startsWith('glass-shim-')).flatMap(({ id }) => plates(id));
  return { front, glass, shims };
}

/** glass-packing: the glass must reach its depth behind one ply of the frame, by whole plies and shims, as it is placed. */
export function glassPacking({ depth, frosted, within }: GroundGlassFrame, build: Build): readonly Finding[] {
  const { front, glass, shims } = stackOf(build);
  const pane = glass.high - glass.low;
  const least = front.high - front.low + (frosted === 'eye' ? pane : 0);
  const room = depth - least;
  const turned = frosted === 'eye' && room + pane >= -ROUNDING;
  if (room < -ROUNDING)
    return [
      {
        rule: 'glass-packing',
        level: 'error',
        value: room,
        limit: 0,
        unit: 'mm',
        about: 'groundGlass.depth',
        message: `The glass cannot come so near: it would have to stand ${mm(hundredth(-room))} inside the front ply of its frame.`,
        hint: `${turned ? 'Turn the glass and write frosted: lens. Or write' : 'Write'} depth: ${mm(Math.ceil(least * 20 - ROUNDING) / 20)} or more, and let a spacer make up for it; or use thinner sheet.`,
      },
    ];
  const off = (frosted === 'lens' ? glass.low : glass.high) - front.low - depth;
  const thick = shims.reduce((sum, { low, high }) => sum + high - low, 0);
  return [
    ...unless(Math.abs(off) <= within + ROUNDING, {
      rule: 'glass-packing',
      level: 'error',
      value: Math.abs(off),
      limit: within,
      unit: 'mm',
      about: 'shims',
      message: `The glass's packing of ${mm(thousandth(room))} cannot be made: plies and shims miss it by ${mm(thousandth(Math.abs(off)))}, and ${mm(thousandth(within))} is allowed.`,
      hint: `Add a shim of ${mm(Math.max(0.05, Math.round(Math.abs(off) * 20) / 20))} to the list.`,
    }),
    ...unless(shims.length <= MOST_SHIMS, {
      rule: 'spacer-shims',
      level: 'warning',
      value: shims.length,
      limit: MOST_SHIMS,
      unit: 'shims',
      about: 'stock',
      message: `The glass frame takes ${shims.length} shims: they slide about.`,
      hint: `Add a sheet near ${mm(hundredth(thick - off))} to the stock for one ply.`,
    }),
  ];
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;
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
