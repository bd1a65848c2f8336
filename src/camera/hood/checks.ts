import type { Build } from '../../assembly/build.js';
import { around } from '../../assembly/extent.js';
import { ROUNDING, unless } from '../../assembly/limit.js';
import { spansOf } from '../../assembly/span-of.js';
import type { Finding } from '../../model/finding.js';
import { mm, plainNumber, tenth } from '../../units/print.js';
import { fingerRule } from '../finger-rule.js';
import { halfOfSquare } from '../light-ahead.js';
import { railHeld } from '../on-rails.js';
import type { PlacedHood } from './parts.js';

/** Its walls as they stand: the square between them, by the least of its half sides, and z of both ends. */
function tunnelOf(build: Build) {
  const [sides, levels] = [spansOf(build, 'LH4'), spansOf(build, 'LH5')];
  const inner = [
    ...sides.map(({ x }) => Math.min(Math.abs(x[0]), Math.abs(x[1]))),
    ...levels.map(({ y }) => Math.min(Math.abs(y[0]), Math.abs(y[1]))),
  ];
  const [mouth] = around([...sides, ...levels]).z;
  return { half: Math.min(...inner), mouth };
}

/** filter-clear, for the mouth of the hood: all of the picture's light comes in, upright and lengthwise, at infinity and wide open. */
export function hoodClear({ hood: { light } }: PlacedHood, build: Build): readonly Finding[] {
  const { half, mouth } = tunnelOf(build);
  const [value, limit] = [2 * half, 2 * halfOfSquare(light, mouth)];
  return unless(value >= limit - ROUNDING, {
    rule: 'filter-clear',
    level: 'warning',
    value,
    limit,
    unit: 'mm',
    about: 'hood.depth',
    message: `The hood cuts the corners of the picture at infinity: the light is ${mm(tenth(limit))} wide ${mm(tenth(light.pupil - mouth))} ahead of the lens seat, and its mouth ${mm(tenth(value))}.`,
    hint: `Make it ${mm(Math.ceil(10 * (limit - value)) / 10)} wider or ${mm(Math.ceil((10 * (limit - value)) / 2 / light.alongLong) / 10)} shorter, or stop the lens down.`,
  });
}

/** Half of what can be before a camera; a hood that keeps off less is hardly worth its weight. A choice of ours. */
const SHADED_FROM = 60;

/**
 * hood-shade: light that slants in by more than this meets no glass: past the rim of the mouth on the side that it comes
 * from it falls beside the far edge of the lens, tan = (half the mouth + half the lens)/distance.
 */
export function hoodShade({ hood: { light, lens } }: PlacedHood, build: Build): readonly Finding[] {
  const { half, mouth } = tunnelOf(build);
  const from = degrees((half + lens.diameter / 2) / (lens.front - mouth));
  const helps = from <= SHADED_FROM + ROUNDING;
  return [
    {
      rule: 'hood-shade',
      level: helps ? 'note' : 'warning',
      value: from,
      limit: SHADED_FROM,
      unit: '°',
      about: 'hood.depth',
      message: `With the hood on, light from more than ${plainNumber(from, 0)}° off the axis does not reach the lens; the picture ends at ${plainNumber(degrees(light.alongLong), 0)}°.`,
      hint: helps
        ? 'Turn the camera or the lamps so that no lamp and no window stands between the two.'
        : 'A hood as short as this hardly helps: make it deeper.',
    },
  ];
}

const degrees = (tangent: number): number => (180 / Math.PI) * Math.atan(tangent);

/** hood-depth: where one asked for a depth that its walls cannot have ahead of the accessory frame. */
export function hoodDepth({ hood: { asked, lens } }: PlacedHood, build: Build): readonly Finding[] {
  const value = lens.front - tunnelOf(build).mouth;
  if (asked === null) return [];
  return unless(value <= asked + ROUNDING, {
    rule: 'hood-depth',
    level: 'warning',
    value,
    limit: asked,
    unit: 'mm',
    about: 'hood.depth',
    message: `The mouth of the hood stands ${mm(tenth(value))} ahead of the lens, where ${mm(asked)} were asked: the accessory frame takes up the rest, and walls shorter than three fingers do not hold.`,
    hint: `Write ${mm(Math.ceil(value))}, or leave depth out.`,
  });
}

/** finger-rule: its walls with each other and in its base. */
export function hoodFingers({ hood: { wood } }: PlacedHood, build: Build): readonly Finding[] {
  const [base] = spansOf(build, 'LH3');
  const { half, mouth } = tunnelOf(build);
  if (base === undefined) return [];
  return fingerRule(
    'Hood',
    [
      { name: 'side to top', owner: 'LH4', partner: 'LH5', along: 'z', from: mouth, to: base.z[0] },
      { name: 'side to base', owner: 'LH3', partner: 'LH4', along: 'y', from: -half, to: half },
      { name: 'top to base', owner: 'LH3', partner: 'LH5', along: 'x', from: -half, to: half },
    ],
    wood.fits.glueSlip,
    build,
  );
}

const hoodHeld = (_own: PlacedHood, build: Build): readonly Finding[] => railHeld(build, 'LH1');

export const hoodChecks = [hoodClear, hoodShade, hoodDepth, hoodFingers, hoodHeld];
