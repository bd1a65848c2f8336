import type { Process } from '../model/sitting-log.js';
import { plainNumber, stops as stopsText } from '../units/print.js';
import { type DensityPoint, densitySlope, LOG_STOP, READING_ERROR } from './density-slope.js';
import { CLOSE, changeInWords, FIRST_STEP, type Step, sheetInWords, type TestedSheet } from './tested-sheet.js';

/**
 * Density for each tenfold of exposure where no strip tells: paper of ordinary contrast goes from 0.04 to nine tenths of
 * its black, about 1.9, within a range of exposure of 1.1 (ISO range R110 of a multigrade paper's filter 2, maker's data
 * sheet; its black from memory). Steep on purpose: what is flatter is then moved too little, never too far.
 */
const ASSUMED_SLOPE = 1.7;

/** The flattest that is usual, negative film for portraits (from memory): near enough must be so for it, too. */
const FLATTEST_SLOPE = 0.5;

/** The next setting where the last sheet was measured. Each sheet given has a result. */
export function dialByDensity(process: Process, sheets: readonly TestedSheet[]): Step {
  const last = sheets.at(-1);
  if (last === undefined) throw new Error('No sheet was measured.');
  const wanted = sheets.findLast(({ result }) => result?.wanted !== null)?.result?.wanted ?? null;
  const direction = process === 'negative' ? 1 : -1;
  const learned = densitySlope(sheets.flatMap(pointsOf), direction);
  const stay = (given: number, reasoning: readonly string[]): Step => ({
    given,
    change: 0,
    done: false,
    chance: null,
    reasoning,
  });
  if (wanted === null)
    return stay(last.given, [
      `${sheetInWords(last.sheet, null)} was measured, but which density is wanted was not said; the setting stays.`,
    ]);
  if ('refused' in learned && learned.wrongWay)
    return stay(last.given, [
      `The densities contradict the process: ${process === 'negative' ? 'on a negative more exposure must come out darker' : 'by reversal more exposure must come out lighter'}, and here it is the other way. Look whether the process is ${process}, whether the strips were counted from the other end, and what fired. The setting stays.`,
    ]);
  const { given, density, strip } = nearestPlace(last, wanted);
  const slope = 'slope' in learned ? learned.slope : direction * ASSUMED_SLOPE;
  const asked = (wanted - density) / slope / LOG_STOP;
  const held = strip === null && !('slope' in learned);
  const change = Math.max(-FIRST_STEP, Math.min(FIRST_STEP, asked));
  const bounded = Math.abs(asked) > FIRST_STEP;
  const reserve = 'slope' in learned ? 1 : FLATTEST_SLOPE / ASSUMED_SLOPE;
  const done = Math.abs(asked) <= CLOSE * reserve;
  const doubt = 'slope' in learned ? spreadOf(asked, learned.slope, learned.error) : null;
  const name = sheetInWords(last.sheet, strip);
  const how =
    'slope' in learned
      ? `The slope ${signedNumber(learned.slope)} for each tenfold of exposure was learned from ${learned.points} exposures.`
      : `The slope was taken as ${signedNumber(slope)} for each tenfold of exposure, as of paper of ordinary contrast, since ${learned.refused}.`;
  return {
    given: given + (done ? 0 : change),
    change: done ? 0 : change,
    done,
    chance: null,
    reasoning: [
      `${name} has density ${plainNumber(density, 2)}, and ${plainNumber(wanted, 2)} is wanted. ${how}`,
      `(${plainNumber(wanted, 2)} − ${plainNumber(density, 2)}) / ${signedNumber(slope)} = ${plainNumber(asked * LOG_STOP, 3).replace('-', '−')} in the logarithm of exposure, ${stopsText(asked)}${doubt === null ? '' : `, give or take ${stopsText(doubt)} (95 in 100)`}.`,
      ...(done
        ? [`Done: ${name} is within a third of a stop of what is wanted. Keep this setting.`]
        : [
            ...(bounded
              ? [
                  held
                    ? `One sheet alone moves the setting by no more than ${stopsText(FIRST_STEP)}.`
                    : `A curve is not straight for long: no step is longer than ${stopsText(FIRST_STEP)}.`,
                ]
              : []),
            `Next: ${changeInWords(change, last.sheet, strip)}.`,
          ]),
    ],
  };
}

/** With a real minus sign, since it stands in a formula. */
const signedNumber = (value: number): string => plainNumber(value, 2).replace('-', '−');

/** Two standard errors of the change, stops: of the reading and of the slope together. */
function spreadOf(asked: number, slope: number, error: number): number {
  const reading = READING_ERROR / Math.abs(slope) / LOG_STOP;
  const steepness = (asked * error) / slope;
  return 2 * Math.sqrt(reading * reading + steepness * steepness);
}

/** All that was measured on a sheet. */
function pointsOf({ given, strips, result }: TestedSheet): readonly DensityPoint[] {
  if (result === null) return [];
  const whole =
    result.density === null ? [] : [{ given: placeOf(result.strip, given, strips), density: result.density }];
  const parts = result.densities.map((density, index) => ({ given: strips[index] ?? given, density }));
  return [...whole, ...parts];
}

const placeOf = (strip: number | null, given: number, strips: readonly number[]): number =>
  strip === null ? given : (strips[strip - 1] ?? given);

/** The sheet, or the strip whose density comes nearest to what is wanted. */
function nearestPlace(
  { given, strips, result }: TestedSheet,
  wanted: number,
): { readonly given: number; readonly density: number; readonly strip: number | null } {
  const parts = (result?.densities ?? []).map((density, index) => ({
    given: strips[index] ?? given,
    density,
    strip: index + 1,
  }));
  const strip = result?.strip ?? null;
  const whole =
    result?.density == null ? [] : [{ given: placeOf(strip, given, strips), density: result.density, strip }];
  const places = [...whole, ...parts];
  const first = places[0];
  if (first === undefined) throw new Error('No density was read.');
  return places.reduce(
    (near, place) => (Math.abs(place.density - wanted) < Math.abs(near.density - wanted) ? place : near),
    first,
  );
}
