import type { Finding } from '../../model/finding.js';
import { mm, plainNumber } from '../../units/print.js';
import { ROUNDING, unless } from '../unless.js';
import type { RearStandard } from './size.js';

/** The sole's front edge against the panel's foot, at the closest position. */
export const soleMeetsFront = ({ soleFront }: RearStandard): readonly Finding[] =>
  unless(soleFront >= 5 - ROUNDING, {
    rule: 'sole-meets-front',
    level: 'error',
    value: soleFront,
    limit: 5,
    unit: 'mm',
    about: 'lens.flangeDistance',
    message: `At the closest position the sole reaches to ${mm(soleFront)} behind the front panel: it hits the panel’s foot.`,
    hint: 'The lens stands too near to the film for this construction: mount it from the front, or use a thinner holder.',
  });

/** The notch over rails and keepers. */
export const standardOverRails = ({ notchTop, axisHeight, soleThickness, wood }: RearStandard): readonly Finding[] => {
  const keeperTop = -axisHeight + soleThickness + 0.3 + wood.ply.thickness;
  return unless(notchTop - keeperTop >= 0.8 - ROUNDING, {
    rule: 'standard-over-rails',
    level: 'error',
    value: notchTop - keeperTop,
    limit: 0.8,
    unit: 'mm',
    message: `The standard clears the keepers by ${mm(notchTop - keeperTop)}: it sits on its own rails.`,
  });
};

/** Pushed at its edge a guide of length L jams when μ ≥ L/(2e), e = B/2. */
export const racking = ({ soleFront, soleRear, side, friction }: RearStandard): readonly Finding[] => {
  const value = (soleRear - soleFront) / (friction * side);
  return unless(value >= 1 - ROUNDING, {
    rule: 'racking',
    level: value < 0.8 ? 'error' : 'warning',
    value,
    limit: 1,
    unit: 'times the jamming length',
    about: 'workshop.friction',
    message: `The sole is ${mm(soleRear - soleFront)} long and the standard ${mm(side)} wide: pushed at one edge with friction ${plainNumber(friction, 2)} it binds.`,
    hint: 'Wax sole and rails, and push in the middle.',
  });
};

/** The back must turn over sole and keepers. */
export const backClearsSole = ({ axisHeight, soleThickness, wood, side }: RearStandard): readonly Finding[] => {
  const value = axisHeight - soleThickness - wood.ply.thickness - 0.3 - side / 2;
  return unless(value >= 2 - ROUNDING, {
    rule: 'back-clears-sole',
    level: 'error',
    value,
    limit: 2,
    unit: 'mm',
    message: `The back clears the keepers by ${mm(value)}: it will not turn.`,
  });
};

/** Ribs under the front box's floor. */
export const ribUnderFloor = ({
  axisHeight,
  soleThickness,
  ribHeight,
  floorBottom,
}: RearStandard): readonly Finding[] => {
  const value = floorBottom - (-axisHeight + soleThickness + ribHeight);
  return unless(value >= 1.5 - ROUNDING, {
    rule: 'rib-under-floor',
    level: 'error',
    value,
    limit: 1.5,
    unit: 'mm',
    message: `The ribs pass ${mm(value)} under the front box: they jam at close focus.`,
  });
};

/** What the arm of a button lies on, over the clipped corner of the back. */
export const buttonClears = ({ button, cornerClip }: RearStandard): readonly Finding[] => {
  const overBack = button.arm - (cornerClip - 2 * button.pivot) / Math.SQRT2;
  return unless(overBack >= 8 - ROUNDING, {
    rule: 'button-clears',
    level: 'error',
    value: overBack,
    limit: 8,
    unit: 'mm',
    message: `A turn-button lies ${mm(overBack)} over the back: it slips off.`,
  });
};

/** The bolt's head in the sole: solid round it, in front and behind. */
export const boltInSole = ({ bolt, soleRear, front, wood }: RearStandard): readonly Finding[] => {
  const value = Math.min(soleRear - bolt, bolt - front - wood.ply.thickness) - 16.5 / 2;
  return unless(value >= 3 - ROUNDING, {
    rule: 'nut-edge',
    level: 'error',
    value,
    limit: 3,
    unit: 'mm',
    about: 'plywood.thickness',
    message: `The lock bolt’s head leaves ${mm(value)} of wood to the sole’s edge or to the standard’s tenons.`,
    hint: 'Use a thinner sheet.',
  });
};

export const rearStandardChecks = [
  soleMeetsFront,
  standardOverRails,
  racking,
  backClearsSole,
  ribUnderFloor,
  buttonClears,
  boltInSole,
];
