import type { Build } from '../../assembly/build.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { spanOf, spansOf } from '../../assembly/span-of.js';
import { secondMoment, spanSag } from '../../assembly/statics.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import { fingerRule } from '../finger-rule.js';
import type { FrontBox } from './size.js';

/** finger-rule: panel, sides and top, read off their outlines. */
export function frontFingers({ wood }: FrontBox, build: Build): readonly Finding[] {
  const [panel, side, top] = [spanOf(build, 'F1'), spanOf(build, 'F2L'), spanOf(build, 'F3')];
  const foot = spanOf(build, 'T1U').y[1];
  const sides = ['F2L', 'F2R'];
  return fingerRule(
    'Front box',
    [
      ...sides.map((partner) => ({
        name: 'panel to side',
        owner: 'F1',
        partner,
        along: 'y' as const,
        from: foot,
        to: panel.y[1],
      })),
      { name: 'panel to top', owner: 'F1', partner: 'F3', along: 'x', from: panel.x[0], to: panel.x[1] },
      ...sides.map((owner) => ({
        name: 'side to top',
        owner,
        partner: 'F3',
        along: 'z' as const,
        from: panel.z[1],
        to: Math.max(side.z[1], top.z[1]),
      })),
    ],
    wood.fits.glueSlip,
    build,
  );
}

/** Free span over thickness from which a panel bows; common practice, no source. */
const SLENDER = 60;
/** A hand that steadies the camera; common practice, no source. */
const PUSH_N = 10;
/** Birch sheet in bending, N/mm²: section 8 of the camera's description, common practice, no source. */
const MODULUS = 7000;

/** thin-panel: the walls of the front box as they stand, their span over their thickness, and how far a push bows them. */
export const thinPanel = (_own: FrontBox, build: Build): readonly Finding[] => {
  const [left, right] = [spanOf(build, 'F2L').x, spanOf(build, 'F2R').x];
  const [floor, top] = [spanOf(build, 'F4').y, spanOf(build, 'F3').y];
  const [name, roof, wall] =
    spansOf(build, 'C2T').length > 0 ? ['middle box', 'C2T', 'C1R'] : ['rear box', 'R2T', 'R1R'];
  const rear = { top: spanOf(build, roof), side: spanOf(build, wall) };
  const depth = spanOf(build, 'F3').z;
  const ply = top[1] - top[0];
  const span = Math.max(right[0] - left[1], top[0] - floor[1]);
  // the air to the rear box, of which the bow may take half
  const air = Math.min(top[0] - rear.top.y[1], right[0] - rear.side.x[1]);
  const bow = spanSag(PUSH_N, span, MODULUS, secondMoment(depth[1] - depth[0], ply));
  const rule = { rule: 'thin-panel', level: 'warning', about: 'plywood.thickness' } as const;
  const cure = (least: number) =>
    `Use sheet of ${mm(Math.ceil(least * 10 - ROUNDING) / 10)} or more, or glue a rib along the middle of each wall, outside.`;
  const slender = span / ply;
  if (slender > SLENDER + ROUNDING)
    return [
      {
        ...rule,
        value: slender,
        limit: SLENDER,
        unit: 'thicknesses',
        message: `The walls of the front box span ${plainNumber(slender, 0)} times their thickness: they bow inwards in damp weather, and the ${name} rubs.`,
        hint: cure(span / SLENDER),
      },
    ];
  return unless(bow <= air / 2 + ROUNDING, {
    ...rule,
    value: bow,
    limit: air / 2,
    unit: 'mm',
    message: `Pushed with ${PUSH_N} N, a wall of the front box bows ${mm(hundredth(bow))}, more than half of the ${mm(tenth(air))} to the ${name}: it rubs.`,
    hint: cure(ply * Math.cbrt((2 * bow) / air)),
  });
};

const hundredth = (value: number): number => Math.round(value * 100) / 100;

export const frontBoxChecks = [frontFingers, thinPanel];
