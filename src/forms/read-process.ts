import { BEYOND_USE, BREAK } from '../design/fields.js';
import type { Problem } from '../design/problem.js';
import { readDocument } from '../design/read-document.js';
import { flagOf } from '../design/read-today.js';
import type { PrintProcess } from '../model/step-sheet.js';
import { processFaults, processFile, processSchema, todaySchema, type WrittenProcess } from './process-file.js';

/** Reads the steps that a print goes through, or tells what is wrong with the file, each at its place. */
export function readProcess(
  text: string,
  file: string,
): { readonly process: PrintProcess } | { readonly problems: readonly Problem[] } {
  const read = readDocument(text, file, {
    schema: processSchema,
    kind: processFile,
    firstKey: 'name: Trial in four baths',
    check: processFaults,
  });
  return 'problems' in read ? read : { process: processOf(read.value) };
}

const processOf = (written: WrittenProcess): PrintProcess => ({
  name: written.name,
  temperature: written.temperature ?? null,
  prints: written.prints,
  timesFrom: written.timesFrom,
  carryOver: written.carryOver,
  tank: {
    fillSeconds: written.fill ?? null,
    drainSeconds: written.drain ?? null,
    workingVolume: written.workingVolume ?? null,
    fullVolume: written.fullVolume ?? null,
  },
  steps: written.steps.map(({ temperature, agitation, light, reuse, caution, ...step }) => ({
    ...step,
    temperature: temperature ?? null,
    agitation: agitation ?? null,
    light: light ?? null,
    serves: reuse,
    caution: caution ?? null,
  })),
});

/** What is given for today. */
export interface ProcessToday {
  readonly prints?: number;
  readonly fill?: number;
  readonly drain?: number;
}

/** What is typed for today, by the keys of the file: a flag takes what its key takes. */
export function readProcessToday(
  typed: Readonly<Record<string, string>>,
): { readonly today: ProcessToday } | { readonly refused: string } {
  const { prints, ...times } = typed;
  // a text of digits is the number that the file would have
  const count = prints !== undefined && /^\d+$/.test(prints) ? Number(prints) : prints;
  const outcome = todaySchema.safeParse(
    { ...times, ...(count === undefined ? {} : { prints: count }) },
    { jitless: true },
  );
  if (!outcome.success) {
    const [issue] = outcome.error.issues;
    const message = issue?.message.replace(BEYOND_USE, 'than this flag takes').replaceAll(BREAK, ' ') ?? '';
    return { refused: `${flagOf(String(issue?.path[0] ?? ''))}: ${message}` };
  }
  const said = Object.entries(outcome.data).filter(([, value]) => value !== undefined);
  return { today: Object.fromEntries(said) };
}
