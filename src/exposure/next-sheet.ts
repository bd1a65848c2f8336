import type { StripExposure } from '../model/dialling.js';
import type { ExposureGiven } from '../model/exposure.js';
import type { ColourPack, SettingEntry } from '../model/sitting-log.js';
import { celsius, stopsInWords } from '../units/print.js';
import { filtersOf, noPack } from './colour-cast.js';
import { dialIn } from './dial-in.js';
import { factorOfStops } from './filters.js';
import { popsFor } from './flash.js';
import { type LoggedSheet, type Series, sameMaterial, sameSeries, testedSheets } from './logged-sheets.js';
import { reckonExposure } from './reckon.js';
import { partialExposures, type StripStep, stripStops } from './test-strip.js';
import type { Advice, TestedSheet } from './tested-sheet.js';

/** A test strip that is asked for instead of one exposure. */
export interface StripWanted {
  readonly step: StripStep;
  readonly count: number;
}

export interface NextSheet {
  /** What the exposure is reckoned from, dialled in; of a strip its first exposure, which is given to the whole sheet. */
  readonly given: ExposureGiven;
  /** As it goes into the log. */
  readonly setting: SettingEntry;
  /** In the order in which they are given; empty where the sheet is exposed as a whole. */
  readonly strip: readonly StripExposure[];
  /** What the sheets before say; null where none of this series was looked at. */
  readonly advice: Advice | null;
  /** Plain sentences. */
  readonly reasoning: readonly string[];
  readonly remarks: readonly string[];
}

/** Where a series starts. */
interface Start {
  readonly given: number;
  readonly pack: ColourPack;
  readonly reasoning: readonly string[];
}

/** Developers of one temperature do the same; what differs by more than this may be seen, °C. */
const SAME_BATH = 1;

/**
 * The setting for the next sheet of a log.
 *
 * @param given what today's exposure is reckoned from, a reading among it
 */
export function nextSheet(
  given: ExposureGiven,
  sheets: readonly LoggedSheet[],
  series: Series,
  wanted: StripWanted | null,
): NextSheet | { readonly refused: string; readonly accepted: string } {
  const tested = testedSheets(sheets, series, given.reciprocity);
  const advice = dialIn(series.process, tested);
  const start = advice ?? startOf(sheets, series, given);
  const whole = reckonExposure(dialled(given, start.given, start.pack));
  if (whole.energy === null && whole.time === null)
    throw new Error('A sheet was asked for without a reading to reckon from.');
  if (wanted?.step === 'half' && whole.energy !== null)
    return {
      refused: 'A strip by flash goes in whole stops: a flash fires twice as often or not, but never 1.4 times.',
      accepted: 'Take --strip whole.',
    };
  const strips = wanted === null ? [] : stripStops(wanted.step, wanted.count).map((stop) => start.given + stop);
  const { strip, energy, pops, time } =
    strips.length === 0
      ? { strip: [], energy: whole.energy, pops: whole.pops, time: whole.correctedTime ?? whole.time }
      : stripOf(given, start.pack, strips);
  const lastOfSeries = tested.at(-1);
  return {
    given: dialled(given, strips[0] ?? start.given, start.pack),
    setting: {
      ...series,
      sheet: numberOf(sheets, series),
      at: null,
      dialled: start.given,
      strips,
      colourPack: start.pack,
      magnification: whole.magnification,
      aperture: whole.aperture,
      speed: given.speed,
      filterFactor: whole.filterFactor,
      energy,
      pops,
      lampDistance: given.lampDistance,
      time,
    },
    strip,
    advice,
    reasoning: [
      ...botched(sheets, series),
      ...(lastOfSeries === undefined ? [] : otherwise(sheets, lastOfSeries.sheet, lastOfSeries.given)),
      ...start.reasoning,
    ],
    remarks: bathRemarks(tested),
  };
}

/** Of the sheet of this series that still waits, which is then given out anew; else of a new one, behind all of the log. */
function numberOf(sheets: readonly LoggedSheet[], series: Series): number {
  const waiting = sheets.findLast(({ setting, result }) => result === null && sameSeries(setting, series));
  return waiting?.setting.sheet ?? Math.max(0, ...sheets.map(({ setting }) => setting.sheet)) + 1;
}

/** What a sheet is reckoned from, with what dialling in has found: so many stops more, and filters against a cast. */
export function dialled(given: ExposureGiven, more: number, pack: ColourPack): ExposureGiven {
  const gels = filtersOf(pack).map(({ name, stops }) => ({ name, factor: factorOfStops(stops) }));
  return { ...given, filters: [...given.filters, ...gels], dialled: more };
}

/**
 * The exposures of a strip, and all of them together. The energy of a pop stays the same; their number grows. Times lose
 * as if they had been given in one: the paper does not know that the slide was moved in between (an assumption; many short
 * exposures may lose a little more).
 */
function stripOf(
  given: ExposureGiven,
  pack: ColourPack,
  offsets: readonly number[],
): Pick<SettingEntry, 'energy' | 'pops' | 'time'> & { readonly strip: readonly StripExposure[] } {
  const exposures = offsets.map((offset) => reckonExposure(dialled(given, offset, pack)));
  const first = exposures[0];
  const last = exposures.at(-1);
  if (first === undefined || last === undefined) throw new Error('A strip without strips.');
  if (first.energy !== null) {
    const fewest = given.flashMost === null ? 1 : popsFor(first.energy, given.flashMost);
    const totals = offsets.map((offset) => Math.round(fewest * factorOfStops(offset - (offsets[0] ?? 0))));
    const parts = partialExposures(totals);
    return {
      strip: offsets.map((offset, index) => ({ dialled: offset, pops: parts[index] ?? 0, time: null })),
      energy: last.energy,
      pops: totals.at(-1) ?? fewest,
      time: null,
    };
  }
  const times = exposures.map(({ time, correctedTime }) => correctedTime ?? time ?? 0);
  const parts = partialExposures(times);
  return {
    strip: offsets.map((offset, index) => ({ dialled: offset, pops: null, time: parts[index] ?? 0 })),
    energy: null,
    pops: null,
    time: times.at(-1) ?? 0,
  };
}

/** Where a series begins of which nothing was looked at yet: where another batch of the same paper has ended, or as reckoned. */
function startOf(sheets: readonly LoggedSheet[], series: Series, given: ExposureGiven): Start {
  const own = sheets.filter(({ setting }) => sameSeries(setting, series)).at(-1);
  const relative = sheets
    .filter(({ setting }) => sameMaterial(setting, series) && setting.batch !== series.batch)
    .at(-1);
  if (relative !== undefined) {
    const { batch, dialled: wasDialled, colourPack } = relative.setting;
    const advice = dialIn(series.process, testedSheets(sheets, relative.setting, given.reciprocity));
    const { given: from, pack } = advice ?? { given: wasDialled, pack: colourPack };
    return {
      given: from,
      pack,
      reasoning: [
        `A new batch${series.batch === null ? '' : `, ${series.batch}`}: it starts where ${batch === null ? 'the one before' : `batch ${batch}`} ended, at ${moreThanReckoned(from)}, and is judged anew.`,
      ],
    };
  }
  if (own !== undefined)
    return {
      given: own.setting.dialled,
      pack: own.setting.colourPack,
      reasoning: [`No sheet of this paper was looked at yet: the setting is ${moreThanReckoned(own.setting.dialled)}.`],
    };
  return {
    given: 0,
    pack: noPack,
    reasoning: [
      sheets.length === 0
        ? 'The first sheet is exposed as reckoned.'
        : 'Another paper or process: nothing that was learned holds for it, so the first sheet is exposed as reckoned.',
    ],
  };
}

/** `half a stop more than reckoned` */
function moreThanReckoned(more: number): string {
  const text = stopsInWords(more);
  return text === '0 stops' ? 'what was reckoned' : `${text} ${more > 0 ? 'more' : 'less'} than reckoned`;
}

/** What was set today otherwise than advised is what counts, and it is said. */
function otherwise(sheets: readonly LoggedSheet[], number: number, given: number): readonly string[] {
  const sheet = sheets.find(({ setting }) => setting.sheet === number);
  if (sheet === undefined) return [];
  const more = given - sheet.setting.dialled;
  const text = stopsInWords(more);
  if (text === '0 stops') return [];
  return [
    `Sheet ${number} was really given ${text} ${more > 0 ? 'more' : 'less'} than advised; that is what it is judged by.`,
  ];
}

/** A botched sheet leaves the setting as it was: the same page as before, so it says why. */
function botched(sheets: readonly LoggedSheet[], series: Series): readonly string[] {
  const last = sheets.findLast(({ setting, result }) => sameSeries(setting, series) && result !== null);
  return last?.result?.looks === 'void'
    ? [`Sheet ${last.setting.sheet} was botched and counts for nothing: the setting is the one before.`]
    : [];
}

/** The last sheet that was judged, against the one judged before it. */
function bathRemarks(tested: readonly TestedSheet[]): readonly string[] {
  const [before, last] = tested.filter(({ result }) => result !== null).slice(-2);
  if (before === undefined || last === undefined || before.bath === null || last.bath === null) return [];
  if (Math.abs(last.bath - before.bath) <= SAME_BATH) return [];
  return [
    `The developer of sheet ${last.sheet} was at ${celsius(last.bath)}, that of sheet ${before.sheet} at ${celsius(before.bath)}: a part of what changed may be the bath. Bring both to one temperature before the next sheet.`,
  ];
}
