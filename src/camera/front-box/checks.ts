import { type FingerRow, LEAST_FINGER } from '../../joinery/finger-joint.js';
import type { Finding } from '../../model/finding.js';
import { mm } from '../../units/print.js';
import { ROUNDING, unless } from '../unless.js';
import type { FrontBox } from './size.js';

/** Fingers 2 to 5 thicknesses wide, at least 8, at least three and an odd number (common practice, no source). */
export const fingerRule = (rows: Readonly<Record<string, FingerRow>>, ply: number): readonly Finding[] =>
  Object.entries(rows).flatMap(([edge, row]) =>
    unless(row.width >= Math.max(LEAST_FINGER, 2 * ply) - ROUNDING && row.count >= 3 && row.count % 2 === 1, {
      rule: 'finger-rule',
      level: 'error',
      value: row.width,
      limit: Math.max(LEAST_FINGER, 2 * ply),
      unit: 'mm',
      about: 'plywood.thickness',
      message: `The edge ${edge} is ${mm(row.to - row.from)} long: ${row.count} fingers of ${mm(row.width)} crumble or do not hold.`,
      hint: 'Use a thinner sheet for a camera this small.',
    }),
  );

/** A thin panel bows inwards: free span over thickness at most 60 (common practice, no source). */
export const thinPanel = ({ inside, wood }: FrontBox): readonly Finding[] =>
  unless(inside / wood.ply.thickness <= 60, {
    rule: 'thin-panel',
    level: 'warning',
    value: inside / wood.ply.thickness,
    limit: 60,
    unit: 'thicknesses',
    about: 'plywood.thickness',
    message: `The front box spans ${mm(inside)} with ${mm(wood.ply.thickness)}: its walls bow, and the rear box rubs.`,
    hint: `Use a sheet of ${mm(Math.ceil((inside / 60) * 2) / 2)} or more.`,
  });

export const frontBoxChecks = [(own: FrontBox) => fingerRule(own.rows, own.wood.ply.thickness), thinPanel];
