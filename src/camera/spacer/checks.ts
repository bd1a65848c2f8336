import { MOST_SHIMS } from '../../joinery/lamination.js';
import type { Finding } from '../../model/finding.js';
import { mm } from '../../units/print.js';
import { ROUNDING, unless } from '../unless.js';
import { carriesPins, type PlacedSpacer } from './size.js';

/** What plies and shims leave of the register. */
export const register = ({ spacer }: PlacedSpacer): readonly Finding[] => {
  const { made, tolerance, holder } = spacer;
  return unless(Math.abs(made.remainder) <= tolerance + ROUNDING, {
    rule: 'register',
    level: 'error',
    value: Math.abs(made.remainder),
    limit: tolerance,
    unit: 'mm',
    about: 'shims',
    message: `With ${holder} the glass stands ${mm(made.remainder)} off the film: focus right on the glass is wrong in the picture.`,
    hint: 'Add a thinner shim, or another sheet to the stock.',
  });
};

export const spacerShims = ({ spacer, wood }: PlacedSpacer): readonly Finding[] => {
  const { made, holder } = spacer;
  return unless(made.shims.length <= MOST_SHIMS, {
    rule: 'spacer-shims',
    level: 'warning',
    value: made.shims.length,
    limit: MOST_SHIMS,
    unit: 'shims',
    about: 'stock',
    message: `The spacer for ${holder} takes ${made.shims.length} shims on ${made.plies.length} plies of ${mm(wood.ply.thickness)}: they slide about.`,
    hint: `Add a sheet near ${mm(Math.round((made.thickness - made.plies.length * wood.ply.thickness) * 10) / 10)} to the stock for one ply.`,
  });
};

export const spacerHeld = (own: PlacedSpacer): readonly Finding[] =>
  unless(own.spacer.thickness <= own.fence + ROUNDING || carriesPins(own), {
    rule: 'spacer-held',
    level: 'error',
    value: own.spacer.thickness,
    limit: own.fence,
    unit: 'mm',
    about: 'stock',
    message: `The spacer for ${own.spacer.holder} is thicker than the well’s fence and has no ply to carry pins: it floats.`,
    hint: 'Add a sheet to the stock for one ply.',
  });

export const spacerChecks = [register, spacerShims, spacerHeld];
