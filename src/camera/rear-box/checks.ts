import { LEAST_FINGER } from '../../joinery/finger-joint.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber } from '../../units/print.js';
import { ROUNDING, unless } from '../unless.js';
import type { RearBox } from './size.js';

/** c: common practice, no source. */
export function boxClearance({ clearance }: RearBox): readonly Finding[] {
  const about = 'workshop.slideClearance';
  const value = { value: clearance, unit: 'mm', about };
  if (clearance < 0.5 - ROUNDING)
    return [
      {
        rule: 'box-clearance',
        level: 'error',
        ...value,
        limit: 0.5,
        message: `The boxes have ${mm(clearance)} a side between them: they jam at the first damp day.`,
        hint: 'Give 1.5 mm.',
      },
    ];
  if (clearance < 1 - ROUNDING)
    return [
      {
        rule: 'box-clearance',
        level: 'warning',
        ...value,
        limit: 1,
        message: `The boxes have ${mm(clearance)} a side between them: they may scrape in damp weather.`,
        hint: 'Give 1.5 mm.',
      },
    ];
  return unless(clearance <= 2.5 + ROUNDING, {
    rule: 'box-clearance',
    level: 'warning',
    ...value,
    limit: 2.5,
    message: `The boxes have ${mm(clearance)} a side between them: one band of felt hardly closes that.`,
    hint: 'Give 1.5 mm.',
  });
}

/** Felt 1.2 to 1.8 times as thick as the gap (common practice, no source). */
export const feltGap = ({ felt, clearance }: RearBox): readonly Finding[] =>
  unless(felt / clearance >= 1.2 - ROUNDING && felt / clearance <= 1.8 + ROUNDING, {
    rule: 'felt-gap',
    level: 'warning',
    value: felt / clearance,
    limit: felt / clearance < 1.2 ? 1.2 : 1.8,
    unit: 'times the gap',
    about: 'workshop.slideClearance',
    message: `Felt of ${mm(felt)} in a gap of ${mm(clearance)} is ${plainNumber(felt / clearance, 2)} times its width: it ${felt / clearance < 1.2 ? 'leaks' : 'drags'}.`,
    hint: 'A gap of 1.5 mm takes 2 mm felt.',
  });

/** Both bands stay inside the front box at full draw, with room between them. */
export const feltBands = ({ bands, feltWidth, overlapRequired }: RearBox): readonly Finding[] =>
  unless(bands[1] - bands[0] >= feltWidth, {
    rule: 'felt-gap',
    level: 'warning',
    value: bands[1] - bands[0] - feltWidth,
    limit: 0,
    unit: 'mm',
    message: `Two felt bands of ${mm(feltWidth)} do not fit into the overlap of ${mm(overlapRequired)}.`,
  });

/** Damp swells the boxes; a note for a close fit. */
export const damp = ({ clearance }: RearBox): readonly Finding[] =>
  unless(clearance >= 1.2 - ROUNDING, {
    rule: 'damp',
    level: 'note',
    value: clearance,
    limit: 1.2,
    unit: 'mm',
    about: 'workshop.slideClearance',
    message:
      'The boxes run close. Finish both faces of every panel alike, and let the camera warm up before you open it.',
  });

export const rearFingers = ({ rows, wood }: RearBox): readonly Finding[] =>
  Object.entries(rows).flatMap(([edge, row]) =>
    unless(row.width >= Math.max(LEAST_FINGER, 2 * wood.ply.thickness) - ROUNDING, {
      rule: 'finger-rule',
      level: 'error',
      value: row.width,
      limit: Math.max(LEAST_FINGER, 2 * wood.ply.thickness),
      unit: 'mm',
      about: 'plywood.thickness',
      message: `The rear box’s ${edge} edge is ${mm(row.to - row.from)} long: ${row.count} fingers of ${mm(row.width)} crumble or do not hold.`,
      hint: 'The box is too short: see reach-near and panelDead, or use a thinner sheet.',
    }),
  );

export const rearBoxChecks = [boxClearance, feltGap, feltBands, damp, rearFingers];
