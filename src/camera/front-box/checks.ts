import { ROUNDING, unless } from '../../assembly/limit.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber } from '../../units/print.js';
import { fingerRule } from '../finger-rule.js';
import type { FrontBox } from './size.js';

export const frontFingers = ({ rows, wood }: FrontBox): readonly Finding[] =>
  fingerRule('Front box', rows, wood.ply.thickness);

/** Free span over thickness from which a panel bows; common practice, no source. */
const SLENDER = 60;

/** thin-panel: the widest wall of the camera. */
export const thinPanel = ({ inside, wood }: FrontBox): readonly Finding[] => {
  const value = inside / wood.ply.thickness;
  return unless(value <= SLENDER + ROUNDING, {
    rule: 'thin-panel',
    level: 'warning',
    value,
    limit: SLENDER,
    unit: 'thicknesses',
    about: 'plywood.thickness',
    message: `The walls of the front box span ${plainNumber(value, 0)} times their thickness: they bow inwards in damp weather, and the rear box rubs.`,
    hint: `Use sheet of ${mm(Math.ceil((inside / SLENDER) * 10) / 10)} or more, or glue a rib along the middle of each wall, outside.`,
  });
};

export const frontBoxChecks = [frontFingers, thinPanel];
