import type { Finding } from '../model/finding.js';
import { inch } from '../units/length.js';
import { mm } from '../units/print.js';
import type { Design } from './design.js';

/** 4.05 less 4 is a little more than 0.05 in binary: a length that stands on a limit is within it. */
const ROUNDING = 1e-9;

/** Nominal thicknesses under which sheet is sold, common practice: whole millimetres, 6.5, and eighths and sixteenths of an inch. */
const NOMINAL = [6.5, ...[1 / 16, 1 / 8, 3 / 16, 1 / 4, 3 / 8, 1 / 2, 3 / 4].map((part) => part * inch)];
const NOMINAL_WITHIN = 0.01;

/** thickness-measured: several readings that differ were measured. */
export const thicknessMeasured = ({ plywood: { thickness, readings } }: Design): readonly Finding[] =>
  readings.some((reading) => reading !== thickness)
    ? []
    : nominalThickness(thickness).map((finding) => ({
        ...finding,
        about: 'plywood.thickness',
        hint: 'Measure the sheet at its corners and in the middle, and write the readings as a list.',
      }));

/** The same of a single figure: one that is exactly a nominal thickness was read on a label. */
export function nominalThickness(thickness: number): readonly Finding[] {
  const nominal = [Math.max(1, Math.round(thickness)), ...NOMINAL].find(
    (named) => Math.abs(named - thickness) <= NOMINAL_WITHIN + ROUNDING,
  );
  if (nominal === undefined) return [];
  return [
    {
      rule: 'thickness-measured',
      level: 'warning',
      value: thickness,
      limit: nominal,
      unit: 'mm',
      message: `${mm(thickness)} is a nominal thickness; real sheet differs from it, and every joint is cut to it.`,
      hint: 'Measure the sheet at its corners and in the middle, and give the mean.',
    },
  ];
}

/** Beyond the first joints become loose or tight, beyond the second fingers will not enter. Common practice, no source. */
const SPREAD_NOTICED = 0.15;
const SPREAD_REFUSED = 0.3;

/** thickness-spread: how much the readings of one sheet differ. */
export function thicknessSpread({ plywood: { readings } }: Design): readonly Finding[] {
  const spread = Math.max(...readings) - Math.min(...readings);
  if (spread <= SPREAD_NOTICED + ROUNDING) return [];
  const refused = spread > SPREAD_REFUSED + ROUNDING;
  const limit = refused ? SPREAD_REFUSED : SPREAD_NOTICED;
  return [
    {
      rule: 'thickness-spread',
      level: refused ? 'error' : 'warning',
      value: spread,
      limit,
      unit: 'mm',
      about: 'plywood.thickness',
      message: `The readings of the sheet differ by ${mm(spread)}; ${mm(limit)} is the most that the fits take.`,
      hint: 'Measure again where the odd reading was taken, or sort the sheets and use the even ones.',
    },
  ];
}

const LEAST_KERF = 0.03;
const MOST_KERF = 0.5;

/** kerf-plausible: what a laser removes from plywood. */
export function kerfPlausible({ laser: { kerf } }: Design): readonly Finding[] {
  if (kerf >= LEAST_KERF && kerf <= MOST_KERF) return [];
  return [
    {
      rule: 'kerf-plausible',
      level: 'error',
      value: kerf,
      limit: kerf < LEAST_KERF ? LEAST_KERF : MOST_KERF,
      unit: 'mm',
      about: 'laser.kerf',
      message: `A kerf of ${mm(kerf)} is none that a laser leaves; ${mm(LEAST_KERF)} to ${mm(MOST_KERF)} is.`,
      hint:
        kerf < LEAST_KERF
          ? `If it was typed in inches, write ${mm(kerf * inch)}.`
          : 'Cut the test piece and measure the kerf in mm; a usual one is 0.15 mm.',
    },
  ];
}

/** Three-ply splits where more is pressed in. Common practice, no source. */
const MOST_PRESS = 0.05;
const THIN = 5;

/** fit-ladder: a press fit that splits thin sheet, or fits that are not in the order of their names. */
export function fitLadder({ plywood: { thickness }, workshop: { fits } }: Design): readonly Finding[] {
  const ladder = [fits.press, fits.glueSlip, fits.slide, fits.dropIn];
  const findings: Finding[] = [];
  if (thickness < THIN && -fits.press > MOST_PRESS + ROUNDING)
    findings.push({
      rule: 'fit-ladder',
      level: 'note',
      value: -fits.press,
      limit: MOST_PRESS,
      unit: 'mm',
      about: 'workshop.fits.press',
      message: `A press fit of ${mm(-fits.press)} may split sheet of ${mm(thickness)}.`,
      hint: 'Write press: -0.05 mm or nearer to nothing.',
    });
  const step = ladder.findIndex((fit, index) => fit <= (ladder[index - 1] ?? Number.NEGATIVE_INFINITY));
  if (step > 0)
    findings.push({
      rule: 'fit-ladder',
      level: 'warning',
      value: ladder[step] ?? 0,
      limit: ladder[step - 1] ?? 0,
      unit: 'mm',
      about: 'workshop.fits',
      message: 'The fits do not widen from press over glueSlip and slide to dropIn.',
      hint: 'Take them from the test piece; usual are -0.02, 0.08, 0.3 and 0.6 mm.',
    });
  return findings;
}
