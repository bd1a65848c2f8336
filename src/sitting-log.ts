import { nearestFocus } from './camera/camera.js';
import type { Design, Sitting } from './design/design.js';
import { lineTrouble } from './design/names.js';
import type { Problem } from './design/problem.js';
import { readToday } from './design/read-today.js';
import { exposureGiven } from './exposure/given.js';
import { faultOf, type LoggedSheet, type Series, sheetsOf, withBatches } from './exposure/logged-sheets.js';
import { type NextSheet, nextSheet, type StripWanted } from './exposure/next-sheet.js';
import { sittingDocument } from './exposure/sitting.js';
import { FEWEST_STRIPS, MOST_STRIPS, stripSteps } from './exposure/test-strip.js';
import { readResultFlags, refusalOf } from './forms/read-result-flags.js';
import { type PlacedEntry, readSittingLog } from './forms/read-sitting-log.js';
import type { ResultFlags } from './forms/result-flags.js';
import { LOG_HEAD, resultText, settingText } from './forms/write-sitting-log.js';
import type { Dialling } from './model/dialling.js';
import type { SittingDocument } from './model/sitting.js';
import type { ResultEntry, SettingEntry } from './model/sitting-log.js';
import { planCamera } from './pipeline.js';
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
  const after = withResult(before.sheets, asked.result);
  if ('refused' in after) return after;
  const { sheets, result } = after;
  const wanted = stripWanted(asked);
  if (wanted !== null && 'refused' in wanted) return wanted;
  const read = readToday(typed);
  if ('refused' in read) return read;
  const { today } = read;
  const resolved = exposureGiven(design, today);
  if ('refused' in resolved) return inWords(resolved.refused);
  if (resolved.wanting.length > 0)
    return { refused: `A sheet of a log needs an energy or a time. Give ${resolved.wanting.join('; or ')}.` };
  const series = seriesOf(resolved.sitting, sheets, asked.batch);
  if ('refused' in series) return series;
  const next = nextSheet(resolved.given, withBatches(sheets, series), series, wanted);
  if ('refused' in next) return { refused: `${next.refused} ${next.accepted}` };
  const reaches = nearestFocus(design, planCamera(design).camera);
  const sitting = sittingDocument(design, today, reaches, () => next.given);
  if ('refused' in sitting) return inWords(sitting.refused);
  const append = additions(log, sheets, result, next.setting);
  const beyond = unreadable(append, log.file);
  if (beyond !== null) return beyond;
  return { sitting, dialling: diallingOf(log.file, next, append !== '', result, before.notes), append };
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
        return place === undefined ? [] : [place.problem(path, what, accepted)];
      }),
    };
  return { sheets: sheets.sheets, notes: [...read.notes, ...sheets.notes] };
}

/** The sheets with what was typed of the last one. */
function withResult(
  sheets: readonly LoggedSheet[],
  typed: ResultFlags,
): { readonly sheets: readonly LoggedSheet[]; readonly result: ResultEntry | null } | Refused {
  if (Object.values(typed).every((value) => value === undefined)) return { sheets, result: null };
  const last = sheets.at(-1);
  if (last === undefined || last.result !== null)
    return {
      refused: `${last === undefined ? 'No sheet was given out yet' : `Sheet ${last.setting.sheet} has its result`}, so no sheet waits for one. Let the log give out a setting first, without --result.`,
    };
  const read = readResultFlags(typed, last.setting.sheet);
  if ('refused' in read) return read;
  const fault = faultOf(read.result, last.setting);
  if (fault !== null) return { refused: refusalOf(fault.path.slice(1), `${fault.what} ${fault.accepted}`) };
  return { sheets: [...sheets.slice(0, -1), { ...last, result: read.result }], result: read.result };
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
function seriesOf(
  { process = 'negative', paper }: Sitting,
  sheets: readonly LoggedSheet[],
  batch: string | undefined,
): Series | Refused {
  const material = { process, paper: paper ?? null };
  if (batch === undefined) {
    const before = sheets.findLast(
      ({ setting }) => setting.process === material.process && setting.paper === material.paper,
    );
    return { ...material, batch: before?.setting.batch ?? null };
  }
  const trouble = lineTrouble(batch);
  return trouble === null ? { ...material, batch } : { refused: `--batch: ${trouble.what} ${trouble.accepted}` };
}

/** What is added to the log. Each entry begins on a line of its own, whatever the file ends with. */
function additions(
  { text, at }: LogNow,
  sheets: readonly LoggedSheet[],
  result: ResultEntry | null,
  setting: SettingEntry,
): string {
  const head = text.trim() === '' ? LOG_HEAD : '';
  const last = sheets.at(-1);
  const same =
    last !== undefined && last.result === null && settingText({ ...last.setting, at: null }) === settingText(setting);
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
  result: ResultEntry | null,
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
    dialled,
    change: advice?.change ?? null,
    done: advice?.done ?? false,
    chance: advice?.chance ?? null,
    colourFilters: colourPack,
    strip,
    reasoning,
    remarks: [...remarks, ...(result === null ? [] : [CHEMICALS])],
    notes,
  };
}
