import type * as z from 'zod';
import { explainIssues, type Fault } from './explain.js';
import { jsonSchemaOf } from './json-schema.js';
import { keyTable } from './key-table.js';
import type { Problem } from './problem.js';
import { plainReader, type Reader } from './reader.js';
import { type FileKind, problemAt, type Source, textProblem } from './source.js';
import { type Outline, pathText } from './yaml.js';

/** More than anyone mends before trying again. */
const MOST_PROBLEMS = 10;

/** A file of some kind, and what it holds. */
interface Described<Schema extends z.ZodType> {
  readonly schema: Schema;
  readonly kind: FileKind;
  /** A key that such a file may begin with, for the message to somebody who wrote none. */
  readonly firstKey: string;
  /** What cannot be true of two keys together, though each of them could be; `written` as in `ReadDocument`. */
  readonly check?: (value: z.output<Schema>, written: unknown) => readonly Fault[];
}

/** A file that was read: its values, what was written for them, and how to point at a key of it. */
export interface ReadDocument<Value> {
  readonly value: Value;
  /** As the YAML has it, before units were read and defaults filled in. */
  readonly written: unknown;
  readonly locate: (fault: Fault) => Problem;
}

/**
 * Reads a YAML file whose keys a schema describes: its values in the units of the core with fixed defaults filled in, or
 * what is wrong, in the order of the file.
 *
 * @param file name of the file, for the messages alone
 */
export function readDocument<Schema extends z.ZodType>(
  text: string,
  file: string,
  { schema, kind, firstKey, check = () => [] }: Described<Schema>,
  reader: Reader = plainReader,
): ReadDocument<z.output<Schema>> | { readonly problems: readonly Problem[] } {
  const source: Source = { file, text: text.replace(/^\ufeff/, ''), kind };
  const unreadable = textProblem(source);
  if (unreadable !== null) return { problems: [unreadable] };
  const outline = reader.outline(source);
  if (!('value' in outline)) return outline;
  const { value: written } = outline;
  if (typeof written !== 'object' || written === null || Array.isArray(written))
    return { problems: [notAGroup(source, written, firstKey)] };
  const outcome = schema.safeParse(written, { jitless: true });
  const faults = outcome.success
    ? check(outcome.data, written)
    : explainIssues(outcome.error.issues, written, keyTable(jsonSchemaOf(schema, '')));
  const told = new Set(outline.problems.map(({ path }) => path));
  const news = faults.filter(({ path }) => !told.has(pathText(path)));
  const problems = [...outline.problems, ...news.map((fault) => locate(source, outline, fault))];
  if (!outcome.success || problems.length > 0) return { problems: inOrder(problems) };
  return { value: outcome.data, written, locate: (fault) => locate(source, outline, fault) };
}

function notAGroup(source: Source, value: unknown, firstKey: string): Problem {
  const found = Array.isArray(value) ? 'a list' : 'a single value';
  return problemAt(source, null, {
    path: '',
    what: `The file holds ${found}, not the keys of a ${source.kind.noun}.`,
    accepted: `Begin with a key, such as ${firstKey}.`,
  });
}

/** At the value or the key; where neither was written, at the key of the group that lacks it, or else nowhere in particular. */
function locate(source: Source, { keySpans, valueSpans }: Outline, { path, at, what, accepted }: Fault): Problem {
  const here = pathText(path);
  const span = (at === 'value' ? valueSpans.get(here) : undefined) ?? keySpans.get(here);
  const holding = () => {
    for (let length = path.length - 1; length > 0; length--) {
      const outer = pathText(path.slice(0, length));
      const found = keySpans.get(outer) ?? valueSpans.get(outer);
      if (found !== undefined) return found;
    }
    return null;
  };
  return problemAt(source, span ?? holding(), { path: here, what, accepted });
}

function inOrder(problems: readonly Problem[]): readonly Problem[] {
  return [...problems].sort((a, b) => a.line - b.line || a.column - b.column).slice(0, MOST_PROBLEMS);
}
