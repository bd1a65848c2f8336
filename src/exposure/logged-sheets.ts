import type { Reciprocity } from '../model/exposure.js';
import type { LogEntry, Process, ResultEntry, SettingEntry } from '../model/sitting-log.js';
import { stopsOfFactor } from './filters.js';
import { meteredTime } from './reciprocity.js';
import type { TestedSheet } from './tested-sheet.js';

/** A sheet of the log, with what came of it. */
export interface LoggedSheet {
  readonly setting: SettingEntry;
  readonly result: ResultEntry | null;
}

export interface LoggedSheets {
  /** In the order in which they were first given out. */
  readonly sheets: readonly LoggedSheet[];
  /** What was passed over, in sentences. */
  readonly notes: readonly string[];
}

/** What is wrong with a result in the light of its sheet and of those before. */
export interface ResultFault {
  readonly path: readonly string[];
  readonly what: string;
  readonly accepted: string;
}

export interface EntryFault extends ResultFault {
  /** Which entry, from 0. */
  readonly index: number;
}

/** Brings results and settings together: a setting given out again replaces the first, and so does a result. */
export function sheetsOf(entries: readonly LogEntry[]): LoggedSheets | { readonly faults: readonly EntryFault[] } {
  const sheets = new Map<number, LoggedSheet>();
  const notes: string[] = [];
  const faults: EntryFault[] = [];
  for (const [index, entry] of entries.entries()) {
    if (entry.kind === 'setting') {
      const { setting } = entry;
      const before = sheets.get(setting.sheet);
      if (before?.result != null) {
        notes.push(`Sheet ${setting.sheet} was given out again after its result; that is passed over.`);
        continue;
      }
      if (before !== undefined && !mayBeOne(before.setting, setting))
        notes.push(
          `Sheet ${setting.sheet} was given out for ${seriesInWords(before.setting)} and then for ${seriesInWords(setting)}; the later one holds.`,
        );
      sheets.set(setting.sheet, { setting, result: null });
      continue;
    }
    const { result } = entry;
    const sheet = sheets.get(result.sheet);
    const fault = faultOf(result, sheet?.setting ?? null);
    if (fault !== null) faults.push({ index, ...fault });
    if (sheet === undefined || fault !== null) continue;
    if (sheet.result !== null) notes.push(`Sheet ${result.sheet} has a second result; the later one holds.`);
    sheets.set(result.sheet, { ...sheet, result });
  }
  return faults.length > 0 ? { faults } : { sheets: [...sheets.values()], notes };
}

/** What a result says that its sheet cannot have; null where nothing. */
export function faultOf(result: ResultEntry, setting: SettingEntry | null): ResultFault | null {
  const fault = (key: string, what: string, accepted: string) => ({
    path: ['result', ...key.split('.')],
    what,
    accepted,
  });
  if (setting === null)
    return fault(
      'sheet',
      `No sheet ${result.sheet} was given out above.`,
      'Write its setting first, or another number.',
    );
  const { strips, sheet } = setting;
  if (strips.length === 0 && result.strip !== null)
    return fault('strip', `Sheet ${sheet} was no test strip.`, 'Delete the key.');
  if (strips.length === 0 && result.densities.length > 0)
    return fault('densities', `Sheet ${sheet} was no test strip.`, 'Write density: for the whole sheet.');
  if (result.strip !== null && result.strip > strips.length)
    return fault('strip', `Sheet ${sheet} has ${strips.length} strips.`, `Write a number from 1 to ${strips.length}.`);
  if (result.densities.length > 0 && result.densities.length !== strips.length)
    return fault('densities', `Sheet ${sheet} has ${strips.length} strips.`, 'Write one density for each.');
  if (strips.length > 0 && result.strip === null && result.densities.length === 0 && result.looks !== 'void')
    return fault('looks', `Sheet ${sheet} was a test strip: which strip is meant?`, 'Write strip: with its number.');
  if (result.gave.energy !== null && setting.energy === null)
    return fault(
      'gave.energy',
      `Sheet ${sheet} was not given out by energy.`,
      'Write gave: { time: 2 s }, or delete it.',
    );
  if (result.gave.time !== null && setting.time === null)
    return fault(
      'gave.time',
      `Sheet ${sheet} was not given out by time.`,
      'Write gave: { energy: 400 J }, or delete it.',
    );
  return null;
}

/** What a series of sheets has in common. */
export interface Series {
  readonly process: Process;
  readonly paper: string | null;
  readonly batch: string | null;
}

export const sameMaterial = (a: Series, b: Series): boolean => a.process === b.process && a.paper === b.paper;

export const sameSeries = (a: Series, b: Series): boolean => sameMaterial(a, b) && a.batch === b.batch;

/** Whether one setting can be the other given out anew: a batch may be named late. */
const mayBeOne = (before: Series, after: Series): boolean =>
  sameMaterial(before, after) && (before.batch === null || before.batch === after.batch);

/** `reversal, batch H 2207` */
export const seriesInWords = ({ process, batch }: Series): string =>
  batch === null ? process : `${process}, batch ${batch}`;

/** A batch that is named late was the batch all along: sheets before the first name of their paper get it. */
export const withBatches = (sheets: readonly LoggedSheet[], series: Series): readonly LoggedSheet[] =>
  sheets.map((sheet, index) => {
    const { setting } = sheet;
    if (setting.batch !== null) return sheet;
    const later: readonly Series[] = [...sheets.slice(index + 1).map((other) => other.setting), series];
    const named = later.find((other) => other.batch !== null && sameMaterial(other, setting));
    return named === undefined ? sheet : { ...sheet, setting: { ...setting, batch: named.batch } };
  });

/**
 * The sheets of a series as they were really given, without those that were botched: they teach nothing. A time counts without what a long exposure loses, since that is how
 * it was dialled.
 */
export const testedSheets = (
  sheets: readonly LoggedSheet[],
  series: Series,
  reciprocity: Reciprocity | null,
): readonly TestedSheet[] =>
  sheets
    .filter(({ setting, result }) => sameSeries(setting, series) && result?.looks !== 'void')
    .map(({ setting, result }) => {
      const more = otherwise(setting, result, reciprocity);
      return {
        sheet: setting.sheet,
        given: setting.dialled + more,
        strips: setting.strips.map((strip) => strip + more),
        pack: setting.colourPack,
        bath: result?.bath.start ?? null,
        result,
      };
    });

/** How much more was given than advised, stops. */
function otherwise(setting: SettingEntry, result: ResultEntry | null, reciprocity: Reciprocity | null): number {
  const { energy = null, time = null } = result?.gave ?? {};
  if (energy !== null && setting.energy !== null) return stopsOfFactor(energy / setting.energy);
  if (time === null || setting.time === null) return 0;
  const metered = (given: number) => (reciprocity === null ? given : meteredTime(given, reciprocity));
  return stopsOfFactor(metered(time) / metered(setting.time));
}
