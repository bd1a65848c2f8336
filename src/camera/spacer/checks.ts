import { ROUNDING, unless } from '../../assembly/limit.js';
import { MOST_SHIMS } from '../../joinery/lamination.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import { carriesPins, type PlacedSpacer } from './size.js';

/** register: what plies and shims leave of the distance between glass and film. */
export const register = ({ spacer }: PlacedSpacer): readonly Finding[] => {
  const { made, tolerance, holder, under } = spacer;
  const off = Math.abs(made.remainder);
  // what the spacer lacks, the glass or the film lies too near to the seat
  const short = made.remainder > 0 ? 'ahead of' : 'behind';
  return unless(off <= tolerance + ROUNDING, {
    rule: 'register',
    level: 'error',
    value: made.remainder,
    limit: tolerance,
    unit: 'mm',
    about: 'shims',
    message: `Sharp on the glass is soft in the picture: with the spacer for ${holder} the ${under === 'holder' ? 'film' : 'glass'} stands ${mm(thousandth(off))} ${short} its place, ${plainNumber(off / tolerance, 1)} times the tolerance of ${mm(thousandth(tolerance))}.`,
    hint: `Add a shim of ${mm(Math.max(0.05, Math.round(off * 20) / 20))} to the list, or another sheet to the stock.`,
  });
};

const thousandth = (value: number): number => Math.round(value * 1000) / 1000;

/** spacer-shims: more than a few slide about, glue in or without. */
export const spacerShims = ({ spacer, wood }: PlacedSpacer): readonly Finding[] => {
  const { made, holder } = spacer;
  const filled = made.shims.reduce((sum, shim) => sum + shim, 0);
  return unless(made.shims.length <= MOST_SHIMS, {
    rule: 'spacer-shims',
    level: 'warning',
    value: made.shims.length,
    limit: MOST_SHIMS,
    unit: 'shims',
    about: 'stock',
    message: `The spacer for ${holder} takes ${made.shims.length} shims on ${made.plies.length} plies of ${mm(wood.ply.thickness)}: they slide about.`,
    hint: `Add a sheet near ${mm(tenth(filled))} to the stock for one ply${made.plies.length > 0 ? `, or one near ${mm(tenth(filled + wood.ply.thickness))} in place of a ply` : ''}.`,
  });
};

/** spacer-held: without a ply for pins the well's fence must hold it. */
export const spacerHeld = (own: PlacedSpacer): readonly Finding[] =>
  unless(own.spacer.thickness <= own.fence + ROUNDING || carriesPins(own), {
    rule: 'spacer-held',
    level: 'error',
    value: own.spacer.thickness,
    limit: own.fence,
    unit: 'mm',
    about: 'stock',
    message: `The spacer for ${own.spacer.holder} falls out of the well: it is ${mm(tenth(own.spacer.thickness))} thick, the fence ${mm(own.fence)}, and it has no ply to carry pins.`,
    hint: `Add a sheet of ${mm(own.fence)} or less to the stock for one ply.`,
  });

export const spacerChecks = [register, spacerShims, spacerHeld];
