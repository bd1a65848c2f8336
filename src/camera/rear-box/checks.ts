import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import { fingerRule } from '../finger-rule.js';
import type { RearBox } from './size.js';

/** The air between the boxes that neither jams nor leaks; common practice, no source. */
const CLEARANCE = { jams: 0.5, least: 1, most: 2.5, usual: 1.5 };

/** box-clearance: c, a side. */
export function boxClearance({ clearance }: RearBox): readonly Finding[] {
  const { jams, least, most, usual } = CLEARANCE;
  if (clearance >= least - ROUNDING && clearance <= most + ROUNDING) return [];
  const jammed = clearance < jams - ROUNDING;
  const what = jammed
    ? 'they jam on the first damp day'
    : clearance < least
      ? 'they may scrape in damp weather'
      : 'one band of felt hardly closes that, and light gets in';
  return [
    {
      rule: 'box-clearance',
      level: jammed ? 'error' : 'warning',
      value: clearance,
      limit: jammed ? jams : clearance < least ? least : most,
      unit: 'mm',
      about: 'workshop.slideClearance',
      message: `The boxes have ${mm(clearance)} a side between them: ${what}.`,
      hint: `Write slideClearance: ${mm(usual)}, or leave it out.`,
    },
  ];
}

/** Felt over the gap that it closes: less leaks, more drags; common practice, no source. */
const FELT = { least: 1.2, most: 1.8 };

/** A narrower band peels off; a choice of ours. */
const LEAST_BAND = 8;

/** felt-gap: the free felt against the gap, and room for two bands in the overlap. */
export function feltGap({ felt, clearance, bands, feltWidth }: RearBox): readonly Finding[] {
  const value = felt / clearance;
  const leaks = value < FELT.least;
  const apart = bands[1] - bands[0] - feltWidth;
  return [
    ...unless(value >= FELT.least - ROUNDING && value <= FELT.most + ROUNDING, {
      rule: 'felt-gap',
      level: 'warning',
      value,
      limit: leaks ? FELT.least : FELT.most,
      unit: 'times the gap',
      about: 'workshop.slideClearance',
      message: `Felt of ${mm(felt)} in a gap of ${mm(clearance)} is ${plainNumber(value, 2)} times as thick: it ${leaks ? 'leaks' : 'drags'}.`,
      hint: `Felt of ${mm(felt)} suits a slideClearance of ${mm(Math.round((felt / 1.4) * 10) / 10)}.`,
    }),
    ...unless(apart >= -ROUNDING, {
      rule: 'felt-gap',
      level: 'warning',
      value: apart,
      limit: 0,
      unit: 'mm',
      about: 'focus.nearest',
      message: `Two felt bands of ${mm(feltWidth)} do not fit one behind the other on the rear box: they lap by ${mm(tenth(-apart))}.`,
      hint:
        feltWidth + apart >= LEAST_BAND
          ? `Cut the bands ${mm(Math.floor(feltWidth + apart))} wide.`
          : 'The boxes are too short for two bands: see reach-near and box-meets-panel.',
    }),
  ];
}

/** felt-crossing: felt on both boxes would have to pass itself when the rear box goes in. */
export function feltCrossing(_own: RearBox, { parts }: Build): readonly Finding[] {
  const felts = parts.filter((part) => part.id.startsWith('felt'));
  const carriers = new Set(felts.flatMap((part) => part.placements.map((place) => String(place.group))));
  return unless(carriers.size <= 1, {
    rule: 'felt-crossing',
    level: 'error',
    value: carriers.size,
    limit: 1,
    unit: 'boxes with felt',
    message: `Felt sits on ${[...carriers].join(' and ')}: the bands have to pass each other, and the rear box will not go in.`,
    hint: 'Glue both bands to the rear box.',
  });
}

/** damp: a close fit wants care. */
export const damp = ({ clearance }: RearBox): readonly Finding[] =>
  unless(clearance >= 1.2 - ROUNDING, {
    rule: 'damp',
    level: 'note',
    value: clearance,
    limit: 1.2,
    unit: 'mm',
    about: 'workshop.slideClearance',
    message: 'The boxes run close, and wood swells: a camera from the cold sweats and jams.',
    hint: 'Finish both faces of every panel alike, and let the camera warm up before you open it.',
  });

export const rearFingers = ({ rows, wood }: RearBox): readonly Finding[] =>
  fingerRule('Rear box', rows, wood.ply.thickness);

export const rearBoxChecks = [boxClearance, feltGap, feltCrossing, damp, rearFingers];
