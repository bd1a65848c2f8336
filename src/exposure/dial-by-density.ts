import type { Process, SheetResult } from '../model/sitting-log.js';
import { plainNumber, stopsInWords } from '../units/print.js';
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

/** 1 where exposure makes darker, -1 where it makes lighter. */
export const directionOf = (process: Process): 1 | -1 => (process === 'negative' ? 1 : -1);

/** What more exposure must do. */
export const moreComesOut = (process: Process): string =>
  process === 'negative'
    ? 'on a negative more exposure must come out darker'
    : 'by reversal more exposure must come out lighter';

/**
 * The next setting where the last sheet was measured. Each sheet given has a result.
 *
 * @param wanted the density that is wanted; null where it was never said
 */
export function dialByDensity(process: Process, sheets: readonly TestedSheet[], wanted: number | null): Step {
  const last = sheets.at(-1);
  if (last === undefined) throw new Error('No sheet was measured.');
  const direction = directionOf(process);
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
      `The densities contradict the process: ${moreComesOut(process)}, and here it is the other way. Look whether the process is ${process}, whether the strips were counted from the other end, and what fired. The setting stays.`,
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
      `(${plainNumber(wanted, 2)} − ${plainNumber(density, 2)}) / ${signedNumber(slope)} = ${plainNumber(asked * LOG_STOP, 3).replace('-', '−')} in the logarithm of exposure: ${changed(asked)}${doubt === null ? '' : `, give or take ${stopsInWords(doubt)} (95 in 100)`}.`,
      ...eyeAside(last),
      ...(done
        ? [`Done: ${name} is within a third of a stop of what is wanted. Keep this setting.`]
        : [
            ...(bounded
              ? [
                  held
                    ? `One sheet alone moves the setting by no more than ${stopsInWords(FIRST_STEP)}.`
                    : `A curve is not straight for long: no step is longer than ${stopsInWords(FIRST_STEP)}.`,
                ]
              : []),
            `Next: ${changeInWords(change, last.sheet, strip)}.`,
          ]),
    ],
  };
}

/** `0.39 stop less` */
const changed = (stops: number): string => `${stopsInWords(stops)} ${stops < 0 ? 'less' : 'more'}`;

/** A judgement beside the density is told to be passed over. */
const eyeAside = ({ result }: TestedSheet): readonly string[] =>
  result?.looks == null ? [] : [`The eye says ${judgementInWords(result)}; where a density was read, it counts alone.`];

const judgementInWords = ({ looks, by }: SheetResult): string =>
  by === null ? `${looks}` : `${looks} by ${stopsInWords(by)}`;

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
