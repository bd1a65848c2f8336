import type { Finding } from '../model/finding.js';
import { inch } from '../units/length.js';
import { mm, plainNumber } from '../units/print.js';
import { caliperError, KERF_STEP, kerfDoubt, kerfOfComb, STRIPS } from './comb.js';
import { type Beams, type FitName, type Fits, fitAsCut, fitNames, fitSamples, slotAsCut } from './ladder.js';
import type { CouponReadings, CutAs } from './readings.js';

/** What a test piece says of its laser and its sheet, mm. */
export interface CouponResult {
  readonly kerf: number;
  /** Of one comb each, and how well their mean is known from the caliper alone. */
  readonly x: number;
  readonly y: number;
  readonly standardUncertainty: number;
  /** Half of the interval round `kerf` that holds the true one in at least 95 of 100 cases. */
  readonly interval: number;
  /** How far a cut may be from `kerf`: that, and half of what the combs differ by. */
  readonly kerfUncertainty: number;
  /** Empty where it was not measured. */
  readonly thickness: readonly number[];
  readonly fits: Partial<Fits>;
}

/** Marks that were read are taken to be those engraved within this; and limits hold to rounding, mm. */
const SAME = 0.0015;
const ROUNDING = 1e-9;

/** The two combs agree within this; what a laser leaves in plywood (common practice, no source), mm. */
export const COMBS_AGREE = 0.03;
const LEAST_KERF = 0.03;
const MOST_KERF = 0.5;

/** What is written: kerf to a micrometre, a thickness and a fit to a hundredth. */
const KERF_SHOWN = 1 / KERF_STEP;
const FIT_SHOWN = 100;

/** What the readings come to; or why they cannot all be true, each with the key that it is about, and then no result. */
export function judgeReadings(
  readings: CouponReadings,
  { fits, marks }: { readonly fits: Fits; readonly marks: readonly number[] },
): { readonly result: CouponResult } | { readonly findings: readonly Finding[] } {
  const { cut, comb } = readings;
  const misread = (['x', 'y'] as const).flatMap((axis) => comb[axis].flatMap((sum) => combMisread(axis, sum, cut)));
  if (misread.length > 0) return { findings: misread };
  const each = {
    x: comb.x.map((sum) => kerfOfComb(cut.combSum, sum)),
    y: comb.y.map((sum) => kerfOfComb(cut.combSum, sum)),
  };
  const [x, y] = [mean(each.x), mean(each.y)];
  const differ = combsDiffer(each, { x, y });
  if (differ.length > 0) return { findings: differ };

  const exact = (x + y) / 2;
  const { standard, interval } = kerfDoubt();
  const all = [...each.x, ...each.y];
  const spread = (Math.max(...all) - Math.min(...all)) / 2;
  const kerf = rounded(exact, KERF_SHOWN);
  const beams: Beams = { assumed: cut.kerf, measured: exact };
  const found = fitsFound(readings, beams);
  const findings = [
    ...slotContradicts(readings, beams, { marks, doubt: caliperError + interval }),
    ...fitsContradict(readings, { found, fits }),
  ];
  if (findings.length > 0) return { findings };
  return {
    result: {
      kerf,
      x,
      y,
      standardUncertainty: standard,
      interval,
      kerfUncertainty: Math.ceil((interval + spread) * KERF_SHOWN - ROUNDING) / KERF_SHOWN,
      thickness: readings.thickness,
      fits: found,
    },
  };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

const rounded = (value: number, steps: number): number => Math.round(value * steps) / steps || 0;

/** comb-reading, one sum alone: no laser can have left it. */
function combMisread(axis: 'x' | 'y', sum: number, { combSum }: CutAs): readonly Finding[] {
  const kerf = kerfOfComb(combSum, sum);
  if (kerf >= LEAST_KERF - ROUNDING && kerf <= MOST_KERF + ROUNDING) return [];
  const comb = `comb ${axis.toUpperCase()}`;
  const finding = { rule: 'comb-reading', level: 'error', value: kerf, unit: 'mm', about: `comb.${axis}` } as const;
  if (sum > combSum)
    return [
      {
        ...finding,
        limit: LEAST_KERF,
        message: `The ${STRIPS} strips of ${comb} cannot measure ${mm(sum)}: they were drawn ${mm(combSum)}, and a cut only takes away.`,
        hint: 'Brush the soot off, lay the strips flat and push them together; see that the caliper closes at 0.',
      },
    ];
  return [
    {
      ...finding,
      limit: kerf < LEAST_KERF ? LEAST_KERF : MOST_KERF,
      message: `${mm(sum)} across ${comb} would be a kerf of ${mm(kerf)}; a laser leaves ${mm(LEAST_KERF)} to ${mm(MOST_KERF)}.`,
      hint: slipIn(sum, combSum),
    },
  ];
}

const leftByALaser = (kerf: number): boolean => kerf >= LEAST_KERF && kerf <= MOST_KERF;

/** What was probably done where a sum is out of all reason. */
function slipIn(sum: number, combSum: number): string {
  const strip = combSum / STRIPS;
  if (leftByALaser(kerfOfComb(combSum - strip, sum, STRIPS - 1)))
    return `This is what ${STRIPS - 1} strips measure: look for the one that is missing.`;
  if (leftByALaser(kerfOfComb(combSum, sum * STRIPS)))
    return `This is what one strip measures: give the sum of all ${STRIPS}, not divided by their number.`;
  if (leftByALaser(kerfOfComb(combSum, sum * inch))) return `Measured in inches? Then it is ${mm(sum * inch)}.`;
  if (leftByALaser(sum)) return `Give what the strips measure, near ${mm(combSum)}, not the kerf itself.`;
  return `Count the strips and measure again: ${mm(combSum - STRIPS * 0.15)} would be a usual reading.`;
}

/** comb-reading, both together: one kerf cannot stand for two that differ so much. */
function combsDiffer(
  each: Readonly<Record<'x' | 'y', readonly number[]>>,
  { x, y }: Readonly<Record<'x' | 'y', number>>,
): readonly Finding[] {
  const finding = { rule: 'comb-reading', level: 'error', limit: COMBS_AGREE, unit: 'mm' } as const;
  const within = (['x', 'y'] as const).flatMap((axis): readonly Finding[] => {
    const spread = Math.max(...each[axis]) - Math.min(...each[axis]);
    if (spread <= COMBS_AGREE + ROUNDING) return [];
    return [
      {
        ...finding,
        value: spread,
        about: `comb.${axis}`,
        message: `The readings of comb ${axis.toUpperCase()} give kerfs that differ by ${mm(spread)}; ${mm(COMBS_AGREE)} is the most.`,
        hint: 'Measure the odd one again. If it stays, the bed is not level or the beam is not in focus all over it.',
      },
    ];
  });
  const apart = Math.abs(x - y);
  if (within.length > 0 || apart <= COMBS_AGREE + ROUNDING) return within;
  return [
    {
      ...finding,
      value: apart,
      about: 'comb.y',
      message: `Comb X gives a kerf of ${mm(x)} and comb Y one of ${mm(y)}: they differ by ${mm(apart)}, and ${mm(COMBS_AGREE)} is the most that one kerf can stand for.`,
      hint: `Measure both again: most likely one was misread, or strips of both were mixed, or a sum was made of more or fewer than ${STRIPS} strips. If it stays, the beam is not round: have lens and mirrors looked after.`,
    },
  ];
}

/** thickness-reading: what the caliper says of the sheet against the slot that its edge went into. */
function slotContradicts(
  { slot, thickness, cut }: CouponReadings,
  beams: Beams,
  { marks, doubt }: { readonly marks: readonly number[]; readonly doubt: number },
): readonly Finding[] {
  const finding = { rule: 'thickness-reading', level: 'error', unit: 'mm' } as const;
  const far = thickness.find((reading) => Math.abs(reading - cut.thickness) > OTHER_SHEET);
  if (far !== undefined)
    return [
      {
        ...finding,
        about: 'thickness',
        value: far,
        limit: cut.thickness,
        message: `The sheet cannot measure ${mm(far)}: the piece was drawn for ${mm(cut.thickness)}.`,
        hint: 'Measure the sheet that the piece was cut from; a piece of another sheet says nothing of this one.',
      },
    ];
  if (slot === null) return [];
  const place = marks.findIndex((mark) => Math.abs(mark - slot) < SAME);
  if (place < 0) return [notMarked('slot', 'slot', slot, marks, 'thickness-reading')];
  if (thickness.length === 0) return [];
  const [thin, thick] = [Math.min(...thickness), Math.max(...thickness)];
  const width = slotAsCut(slot, beams);
  if (thin > width + doubt + ROUNDING)
    return [
      {
        ...finding,
        about: 'slot',
        value: thin,
        limit: width,
        message: `A sheet of ${mm(thin)} does not enter the slot marked ${mm(slot)}: with the kerf measured it came out ${mm(rounded(width, FIT_SHOWN))} wide.`,
        hint: 'Measure the sheet once more where it was pushed in, and read the mark once more.',
      },
    ];
  const narrower = marks[place - 1];
  if (narrower === undefined) return [];
  const next = slotAsCut(narrower, beams);
  if (thick >= next - doubt - ROUNDING) return [];
  return [
    {
      ...finding,
      about: 'slot',
      value: thick,
      limit: next,
      message: `The slot marked ${mm(slot)} is not the narrowest for a sheet of ${mm(thick)}: the one marked ${mm(narrower)} came out ${mm(rounded(next, FIT_SHOWN))} wide and takes it, too.`,
      hint: 'Try the narrower slots once more with soot and burr taken off, and measure the sheet there.',
    },
  ];
}

/** A sheet that differs by more is not the one that the piece was cut from, mm. A choice of ours. */
const OTHER_SHEET = 1;

const notMarked = (
  about: string,
  what: string,
  value: number,
  marks: readonly number[],
  rule: 'thickness-reading' | 'fit-reading',
): Finding => ({
  rule,
  level: 'error',
  about,
  value,
  unit: 'mm',
  message: `No ${what} of the piece is marked ${plainNumber(value)}.`,
  hint: `Give the number that stands beside it: ${marks.map((mark) => plainNumber(mark)).join(', ')}.`,
});

/** Each sample that felt right, as it really was with the kerf that the combs give. */
function fitsFound({ fits }: CouponReadings, beams: Beams): Partial<Fits> {
  const found: Partial<Record<FitName, number>> = {};
  for (const name of fitNames) {
    const marked = fits[name];
    if (marked !== undefined) found[name] = rounded(fitAsCut(marked, beams), FIT_SHOWN);
  }
  return found;
}

const IN_WORDS: Readonly<Record<FitName, string>> = {
  press: 'press fit',
  glueSlip: 'glue slip',
  slide: 'slide',
  dropIn: 'drop-in',
};

/** fit-reading: a mark that the ladder does not have, or fits that are not in the order of their names. */
function fitsContradict(
  { fits: marked, cut }: CouponReadings,
  { found, fits }: { readonly found: Partial<Fits>; readonly fits: Fits },
): readonly Finding[] {
  const marks = fitSamples(cut.fits);
  const unknown = fitNames.flatMap((name): readonly Finding[] => {
    const mark = marked[name];
    if (mark === undefined || marks.some((known) => Math.abs(known - mark) < SAME)) return [];
    return [notMarked(`fits.${name}`, 'notch', mark, marks, 'fit-reading')];
  });
  if (unknown.length > 0) return unknown;
  return fitNames.slice(1).flatMap((looser, i): readonly Finding[] => {
    const tighter = fitNames[i] as FitName; // one before it in the same list
    if (found[looser] === undefined && found[tighter] === undefined) return [];
    const [loose, tight] = [found[looser] ?? fits[looser], found[tighter] ?? fits[tighter]];
    if (loose > tight + ROUNDING) return [];
    const stays = (name: FitName) =>
      found[name] === undefined ? ', which was not read and stays as the design has it' : '';
    return [
      {
        rule: 'fit-reading',
        level: 'error',
        about: `fits.${found[looser] === undefined ? tighter : looser}`,
        value: loose,
        limit: tight,
        unit: 'mm',
        message: `The ${IN_WORDS[looser]}, ${mm(loose)}${stays(looser)}, is ${loose < tight ? 'tighter than' : 'no looser than'} the ${IN_WORDS[tighter]}, ${mm(tight)}${stays(tighter)}: it needs more room.`,
        hint: 'Try the tongue again from the loosest notch on, the other end of it if the first is worn, and read the marks once more.',
      },
    ];
  });
}
