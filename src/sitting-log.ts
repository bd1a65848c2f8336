import { nearestFocus } from './camera/standing.js';
import type { Design } from './design/design.js';
import { lineTrouble } from './design/names.js';
import type { Problem } from './design/problem.js';
import { readToday } from './design/read-today.js';
import { exposureGiven } from './exposure/given.js';
import {
  faultOf,
  type LoggedSheet,
  type Series,
  sameMaterial,
  sameSeries,
  sheetsOf,
  withBatches,
} from './exposure/logged-sheets.js';
import { type NextSheet, nextSheet, type StripWanted } from './exposure/next-sheet.js';
import { disagreement } from './exposure/read-against-seen.js';
import { sittingDocument } from './exposure/sitting.js';
import { FEWEST_STRIPS, MOST_STRIPS, stripSteps } from './exposure/test-strip.js';
import { meantSheet, stillWaiting } from './exposure/waiting-sheets.js';
import { readResultFlags, refusalOf } from './forms/read-result-flags.js';
import { type PlacedEntry, readSittingLog } from './forms/read-sitting-log.js';
import type { ResultFlags } from './forms/result-flags.js';
import { LOG_HEAD, resultText, settingText } from './forms/write-sitting-log.js';
import type { Dialling } from './model/dialling.js';
import type { SittingDocument } from './model/sitting.js';
import type { ResultEntry, SettingEntry } from './model/sitting-log.js';
import { quoted } from './units/quantity.js';

/** What is asked of a log, as it was typed. */
export interface LogAsked {
  readonly result: ResultFlags;
  readonly batch?: string;
  readonly strip?: string;
  readonly steps?: string;
}

/** The log as it stands, and the date and time of day that its next entries bear. */
export interface LogNow {
  readonly file: string;
  readonly text: string;
  readonly at: string;
}

/** A sitting of a log: its exposure, why it is as it is, and what is to be added to the log. */
export interface LoggedSitting {
  readonly sitting: SittingDocument;
  readonly dialling: Dialling;
  /** Empty where the log says all of it already. */
  readonly append: string;
}

interface Refused {
  readonly refused: string;
}

/**
 * The next sheet of a log: what came of the last one is taken in, and the setting for the next one given out. The log
 * itself is not touched; what is to be added to it is given back.
 *
 * @param typed what is given for today, by the keys of the design's `sitting`
 */
export function exposeLogged(
  design: Design,
  typed: Readonly<Record<string, string | readonly string[]>>,
  log: LogNow,
  asked: LogAsked,
): LoggedSitting | Refused | { readonly problems: readonly Problem[] } {
  const before = readLog(log);
  if ('problems' in before) return before;
  const wanted = stripWanted(asked);
  if (wanted !== null && 'refused' in wanted) return wanted;
  const trouble = asked.batch === undefined ? null : lineTrouble(asked.batch);
  if (trouble !== null) return { refused: `--batch: ${trouble.what} ${trouble.accepted}` };
  const read = readToday(typed);
  if ('refused' in read) return read;
  const { today } = read;
  const resolved = exposureGiven(design, today);
  if ('refused' in resolved) return inWords(resolved.refused);
  if (resolved.wanting.length > 0)
    return { refused: `A sheet of a log needs an energy or a time. Give ${resolved.wanting.join('; or ')}.` };
  const { process = 'negative', paper = null } = resolved.sitting;
  const after = withResult(before.sheets, { process, paper, batch: asked.batch ?? null }, asked.result);
  if ('refused' in after) return after;
  const { sheets, taken } = after;
  const series = taken?.series ?? seriesOf({ process, paper, batch: asked.batch ?? null }, sheets);
  const next = nextSheet(resolved.given, withBatches(sheets, series), series, wanted);
  if ('refused' in next) return { refused: `${next.refused} ${next.accepted}` };
  const reaches = nearestFocus(design);
  const sitting = sittingDocument(design, today, reaches, () => next.given);
  if ('refused' in sitting) return inWords(sitting.refused);
  const append = additions(log, sheets, taken?.result ?? null, next.setting);
  const beyond = unreadable(append, log.file);
  if (beyond !== null) return beyond;
  const others = stillWaiting(sheets, next.setting.sheet);
  return {
    sitting,
    dialling: diallingOf(log.file, next, append !== '', taken, [...before.notes, ...others]),
    append,
  };
}

const inWords = ({ what, accepted }: { readonly what: string; readonly accepted: string }): Refused => ({
  refused: `${what} ${accepted}`,
});

function readLog({
  text,
  file,
}: LogNow):
  | { readonly sheets: readonly LoggedSheet[]; readonly notes: readonly string[] }
  | { readonly problems: readonly Problem[] } {
  if (text.trim() === '') return { sheets: [], notes: [] };
  const read = readSittingLog(text, file);
  if ('problems' in read) return read;
  const sheets = sheetsOf(read.entries.map(({ entry }: PlacedEntry) => entry));
  if ('faults' in sheets)
    return {
      problems: sheets.faults.flatMap(({ index, path, what, accepted }) => {
        const place = read.entries[index];
        // what was passed over above may be what is missed here
        return place === undefined ? [] : [place.problem(path, [what, ...read.notes].join(' '), accepted)];
      }),
    };
  return { sheets: sheets.sheets, notes: [...read.notes, ...sheets.notes] };
}

/** What was typed of a sheet, and the series that the sheet belongs to. */
interface Taken {
  readonly result: ResultEntry;
  readonly series: Series;
}

/** The sheets with what was typed of the one that waits for it. */
function withResult(
  sheets: readonly LoggedSheet[],
  asked: Series,
  typed: ResultFlags,
): { readonly sheets: readonly LoggedSheet[]; readonly taken: Taken | null } | Refused {
  if (Object.values(typed).every((value) => value === undefined)) return { sheets, taken: null };
  const named = withBatches(sheets, asked);
  const meant = meantSheet(named, asked);
  if ('refused' in meant) return meant;
  const { setting } = meant;
  const read = readResultFlags(typed, setting);
  if ('refused' in read) return read;
  const { result } = read;
  const series = { process: setting.process, paper: setting.paper, batch: setting.batch };
  const fault =
    faultOf(result, setting) ??
    disagreement(
      result,
      setting,
      named.flatMap((sheet) => (sameSeries(sheet.setting, series) && sheet.result !== null ? [sheet.result] : [])),
    );
  if (fault !== null) return { refused: refusalOf(fault.path.slice(1), `${fault.what} ${fault.accepted}`) };
  return {
    sheets: sheets.map((sheet) => (sheet.setting.sheet === setting.sheet ? { ...sheet, result } : sheet)),
    taken: { result, series },
  };
}

/** Without a word of how many. */
const USUAL_STRIPS = 5;

function stripWanted({ strip, steps }: LogAsked): StripWanted | Refused | null {
  if (strip === undefined)
    return steps === undefined
      ? null
      : { refused: '--steps counts the strips of a test strip: give --strip whole or --strip half.' };
  const step = stripSteps.find((word) => word === strip);
  if (step === undefined)
    return {
      refused: `--strip: ${quoted(strip)} is not known here. Write whole or half, the stops between two strips.`,
    };
  const count = steps === undefined ? USUAL_STRIPS : Number(steps);
  if (!Number.isInteger(count) || count < FEWEST_STRIPS || count > MOST_STRIPS)
    return { refused: `--steps: ${quoted(steps)} is not a whole number from ${FEWEST_STRIPS} to ${MOST_STRIPS}.` };
  return { step, count };
}

/** What today's sheet has in common with others: a batch holds until another is named. */
const seriesOf = (asked: Series, sheets: readonly LoggedSheet[]): Series => ({
  ...asked,
  batch: asked.batch ?? sheets.findLast(({ setting }) => sameMaterial(setting, asked))?.setting.batch ?? null,
});

/** What is added to the log. Each entry begins on a line of its own, whatever the file ends with. */
function additions(
  { text, at }: LogNow,
  sheets: readonly LoggedSheet[],
  result: ResultEntry | null,
  setting: SettingEntry,
): string {
  const head = text.trim() === '' ? LOG_HEAD : '';
  const before = sheets.find((sheet) => sheet.setting.sheet === setting.sheet);
  const same = before !== undefined && settingText({ ...before.setting, at: null }) === settingText(setting);
  if (same) return '';
  const entries = [...(result === null ? [] : [resultText({ ...result, at })]), settingText({ ...setting, at })];
  return `${head}${entries.map((entry) => `\n${entry}`).join('')}`;
}

/** A log is never given an entry that it could not be read with again; null where there is none. */
function unreadable(append: string, file: string): Refused | null {
  const read = append === '' ? { entries: [] } : readSittingLog(append, file);
  if (!('problems' in read)) return null;
  const [problem] = read.problems;
  return {
    refused: `This sheet is none for a log. ${problem?.path ?? ''}: ${problem?.what ?? ''} ${problem?.accepted ?? ''}`,
  };
}

const CHEMICALS =
  "Developers, bleaches and acids: gloves, goggles and moving air. Acid goes into water, never water into acid. The makers' data sheets and local rules go before this.";

function diallingOf(
  log: string,
  { setting, advice, strip, reasoning, remarks }: NextSheet,
  written: boolean,
  taken: Taken | null,
  notes: readonly string[],
): Dialling {
  const { sheet, process, paper, batch, dialled, colourPack } = setting;
  return {
    log,
    sheet,
    process,
    paper,
    batch,
    written,
    resultOf:
      taken === null ? null : { sheet: taken.result.sheet, process: taken.series.process, batch: taken.series.batch },
    dialled,
    change: advice?.change ?? null,
    done: advice?.done ?? false,
    chance: advice?.chance ?? null,
    colourFilters: colourPack,
    strip,
    reasoning,
    remarks: [...remarks, ...(taken === null ? [] : [CHEMICALS])],
    notes,
  };
}
