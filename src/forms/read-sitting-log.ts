import { jsonSchemaOf } from '../design/json-schema.js';
import type { Problem } from '../design/problem.js';
import { readDocument } from '../design/read-document.js';
import type { LogEntry, ResultEntry } from '../model/sitting-log.js';
import { entryFaults, logEntry, logEntrySchema, type WrittenEntry } from './sitting-log.js';

/*
 * A log is added to, never rewritten: a crash, a full disk or a pulled plug can spoil its end and nothing else. Each entry
 * stands between two lines,
 *
 *     ---
 *     result:
 *       sheet: 1
 *     ...
 *
 * so that one which was not written whole lacks the three dots. It is told of and passed over, at the end of the file
 * or, where the next entry was added behind it, in the middle.
 */

/** An entry, and how to point at a key of it in the file. */
export interface PlacedEntry {
  readonly entry: LogEntry;
  readonly problem: (path: readonly string[], what: string, accepted: string) => Problem;
}

export interface ReadLog {
  readonly entries: readonly PlacedEntry[];
  /** What was passed over, in sentences. */
  readonly notes: readonly string[];
}

interface Stretch {
  /** Line of the file on which it begins, from 1. */
  readonly line: number;
  readonly text: string;
  readonly whole: boolean;
}

const BEGIN = /^---(?:\s|$)/;
const END = /^\.\.\.\s*$/;

/** What may stand between entries beside comments: what is left of a --- that was not written whole, or of a lost block of the disk. */
const REMAINS = /^(?:-{0,3}|\0*)$/;

export function readSittingLog(text: string, file: string): ReadLog | { readonly problems: readonly Problem[] } {
  const { stretches, astray } = cut(text.replace(/^\ufeff/, ''));
  const problems: Problem[] = astray.map(({ line, text: sourceLine }) => ({
    file,
    line,
    column: 1,
    length: sourceLine.length,
    path: '',
    sourceLine,
    what: 'This stands outside of every entry.',
    accepted: 'A sitting log has entries, each between a line --- and a line ..., and comments that begin with #.',
  }));
  const entries: PlacedEntry[] = [];
  const notes: string[] = [];
  for (const stretch of stretches) {
    if (!stretch.whole) {
      notes.push(
        `The entry at line ${stretch.line} was not written whole: the line ... at its end is missing. It is passed over; if it is whole, write that line.`,
      );
      continue;
    }
    const here = <Placed extends Problem>(problem: Placed) => ({ ...problem, line: problem.line + stretch.line - 1 });
    const read = readDocument(stretch.text, file, {
      schema: logEntrySchema,
      kind: logEntry,
      firstKey: 'result:',
      check: entryFaults,
    });
    if ('problems' in read) {
      problems.push(...read.problems.map(here));
      continue;
    }
    entries.push({
      entry: entryOf(read.value),
      problem: (path, what, accepted) => here(read.locate({ path, at: 'value', what, accepted })),
    });
  }
  return problems.length > 0 ? { problems: problems.slice(0, MOST_PROBLEMS) } : { entries, notes };
}

/** More than anyone mends before trying again. */
const MOST_PROBLEMS = 10;

/** The stretches of a log by its lines, whole and torn, and the first line that belongs to none. */
function cut(text: string): {
  readonly stretches: readonly Stretch[];
  readonly astray: readonly { readonly line: number; readonly text: string }[];
} {
  const stretches: Stretch[] = [];
  const astray: { line: number; text: string }[] = [];
  let open: { line: number; lines: string[] } | null = null;
  const close = (whole: boolean) => {
    if (open !== null) stretches.push({ line: open.line, text: `${open.lines.join('\n')}\n`, whole });
    open = null;
  };
  for (const [index, ended] of text.split('\n').entries()) {
    const line = ended.replace(/\r$/, '');
    if (BEGIN.test(line)) {
      close(false);
      open = { line: index + 1, lines: [line] };
    } else if (open !== null) {
      open.lines.push(line);
      if (END.test(line)) close(true);
    } else if (astray.length === 0 && !/^\s*(?:#.*)?$/.test(line) && !REMAINS.test(line))
      astray.push({ line: index + 1, text: line });
  }
  close(false);
  return { stretches, astray };
}

function entryOf({ setting, result }: WrittenEntry): LogEntry {
  if (setting !== undefined) {
    const { at, paper, batch, strips, colourFilters, speed, energy, pops, lampDistance, time, ...rest } = setting;
    return {
      kind: 'setting',
      setting: {
        ...rest,
        at: at ?? null,
        paper: paper ?? null,
        batch: batch ?? null,
        strips: strips ?? [],
        colourPack: colourFilters,
        speed: speed ?? null,
        energy: energy ?? null,
        pops: pops ?? null,
        lampDistance: lampDistance ?? null,
        time: time ?? null,
      },
    };
  }
  if (result === undefined) throw new Error('An entry that says nothing passed the reader.');
  return { kind: 'result', result: resultOf(result) };
}

/** A result with null for what was not written. */
export const resultOf = (result: NonNullable<WrittenEntry['result']>): ResultEntry => ({
  sheet: result.sheet,
  at: result.at ?? null,
  looks: result.looks ?? null,
  by: result.by ?? null,
  strip: result.strip ?? null,
  density: result.density ?? null,
  densities: result.densities ?? [],
  wanted: result.wanted ?? null,
  cast: result.cast ?? null,
  castBy: result.castBy ?? null,
  gave: { energy: result.gave.energy ?? null, time: result.gave.time ?? null },
  bath: { start: result.bath.start ?? null, end: result.bath.end ?? null },
  note: result.note ?? null,
});

/** The JSON Schema (2020-12) of one entry. */
export const sittingLogJsonSchema = (): Record<string, unknown> =>
  jsonSchemaOf(logEntrySchema, 'Entry of a sitting log');
