import type { Finding } from '../model/finding.js';
import { inch } from '../units/length.js';
import { magnification, mm, plainNumber } from '../units/print.js';
import type { Design } from './design.js';

interface Usual {
  readonly path: string;
  readonly value: number;
  /** Below it nothing of this kind is made for such a camera; choices of ours, wide enough for odd but real things. */
  readonly least: number;
  readonly most: number;
  readonly rule?: string;
}

const RULE = 'unit-plausible';

/** Lengths that are far too small or too large for what they are: inches typed for mm, or mm for cm. */
export const unitsPlausible = (design: Design): readonly Finding[] => [
  ...usualLengths(design).flatMap(odd),
  ...largerThanLife(design),
];

/** A bare number is a magnification; whoever wrote metres gets an image larger than life. */
const largerThanLife = ({ focus: { nearest } }: Design): readonly Finding[] =>
  nearest <= 1
    ? []
    : [
        {
          rule: RULE,
          level: 'warning',
          value: nearest,
          limit: 1,
          unit: 'magnification',
          about: 'focus.nearest',
          message: `focus.nearest was read as ${magnification(nearest)}, an image larger than life.`,
          hint: `If a distance was meant, write its unit: nearest: ${plainNumber(nearest)} m.`,
        },
      ];

function usualLengths({ format, lens, plywood, stock, groundGlass, holders, focus, shims }: Design): readonly Usual[] {
  const { barrel } = lens;
  return [
    { path: 'format', value: format.width, least: 40, most: 700 },
    { path: 'lens.focalLength', value: lens.focalLength, least: 40, most: 1500, rule: 'flange-plausible' },
    { path: 'lens.flangeDistance', value: lens.flangeDistance, least: 20, most: 2000, rule: 'flange-plausible' },
    { path: 'lens.barrel.diameter', value: barrel.diameter, least: 10, most: 250 },
    { path: 'plywood.thickness', value: plywood.thickness, least: 1.5, most: 13 },
    { path: 'plywood.sheet', value: Math.min(plywood.sheet.width, plywood.sheet.height), least: 100, most: 3100 },
    ...stock.map(({ thickness }, index) => ({
      path: `stock[${index}].thickness`,
      value: thickness,
      least: 0.3,
      most: 13,
    })),
    { path: 'groundGlass.thickness', value: groundGlass.thickness, least: 0.7, most: 8 },
    { path: 'groundGlass.depth', value: groundGlass.depth, least: 1, most: 80 },
    ...holders.flatMap((holder, index) => [
      { path: `holders[${index}].filmDepth`, value: holder.filmDepth, least: 1, most: 80 },
      { path: `holders[${index}].thickness`, value: holder.thickness, least: 2, most: 120 },
      { path: `holders[${index}].width`, value: holder.width, least: 40, most: 500 },
      { path: `holders[${index}].length`, value: holder.length, least: 40, most: 700 },
    ]),
    { path: 'focus.pastInfinity', value: focus.pastInfinity, least: 0, most: 15 },
    ...shims.map((shim, index) => ({ path: `shims[${index}]`, value: shim, least: 0.02, most: 3 })),
  ];
}

function odd({ path, value, least, most, rule = RULE }: Usual): readonly Finding[] {
  if (value >= least && value <= most) return [];
  const inInches = value < least && value * inch >= least && value * inch <= most;
  return [
    {
      rule: inInches ? RULE : rule,
      // nothing of this kind is so small, and in inches it would be usual: everything that is reckoned from it is wrong
      level: inInches ? 'error' : 'warning',
      value,
      limit: value < least ? least : most,
      unit: 'mm',
      about: path,
      message: `${mm(value)} is odd for ${path}; ${mm(least)} to ${mm(most)} would be usual.`,
      hint: inInches
        ? `If it was meant in inches, write ${mm(value * inch)} or put in after it.`
        : 'Look at the figure and its unit again.',
    },
  ];
}
