import type * as z from 'zod';
import { formatsLike } from '../standards/formats.js';
import { quoted } from '../units/quantity.js';
import { BREAK, orList } from './fields.js';
import type { DocumentedKey } from './key-table.js';
import { nearestWord } from './nearest-word.js';
import { pathText } from './yaml.js';

/** A fault in a value or a key of the file, not yet tied to a place in the file. */
export interface Fault {
  readonly path: readonly PropertyKey[];
  /** Whether the key is at fault or what stands after it. */
  readonly at: 'key' | 'value';
  readonly what: string;
  readonly accepted: string;
  /** Whether the key is not there at all. */
  readonly missing?: true;
  /** Path of the key that was probably meant. */
  readonly meant?: string;
}

type Issue = z.core.$ZodIssue;

/** What a schema found, in the words of someone who writes the file; `table` has its keys. */
export function explainIssues(
  issues: readonly Issue[],
  written: unknown,
  table: readonly DocumentedKey[],
): readonly Fault[] {
  const faults = issues.flatMap((issue) => explain(issue, [], written, table));
  const mistyped = new Set(faults.flatMap(({ meant }) => (meant === undefined ? [] : [meant])));
  return faults.filter(({ path, missing }) => !(missing && mistyped.has(pathText(path)))); // one slip, one message
}

function explain(
  issue: Issue,
  parent: readonly PropertyKey[],
  written: unknown,
  table: readonly DocumentedKey[],
): readonly Fault[] {
  const path = [...parent, ...issue.path];
  const key = documented(path, table);
  const fault = (what: string, accepted: string): readonly Fault[] => [{ path, at: 'value', what, accepted }];
  if (issue.code === 'unrecognized_keys') return issue.keys.map((word) => unknownKey(path, word, table));
  const value = valueAt(written, path);
  if (value === undefined) {
    const accepted = `Write ${last(path)}: ${key?.example}.`;
    return [{ path, at: 'value', what: 'It is not given, and it has no default.', accepted, missing: true }];
  }
  if (value === null) {
    const accepted = `Write ${last(path)}: ${key?.example}${key?.required ? '' : ', or delete the key'}.`;
    return [{ path, at: 'key', what: 'Nothing stands after the colon.', accepted }];
  }
  const named = last(path) === 'format' || (last(path) === 'formats' && typeof path.at(-1) === 'number');
  if (named && typeof value !== 'object') return fault(...unknownFormat(value));
  if (issue.code === 'invalid_union') {
    const group = issue.errors.find((branch) =>
      branch.every((inner) => inner.path.length > 0 || inner.code === 'unrecognized_keys'),
    );
    if (group !== undefined && group.length > 0) return group.flatMap((inner) => explain(inner, path, written, table));
  }
  const [what, accepted] = issue.message.split(BREAK);
  if (what !== undefined && accepted !== undefined) return fault(what, accepted);
  if (issue.code === 'too_small') return fault('The list is too short.', `Write ${last(path)}: ${key?.example}.`);
  if (issue.code === 'too_big') return fault('The list is too long.', `Write ${last(path)}: ${key?.example}.`);
  const keyed = key !== undefined && key.keys.length > 0;
  return fault(
    `Here stands ${quoted(value)}.`,
    keyed && typeof path.at(-1) === 'number'
      ? `Write the entry as keys: ${key.keys.join(', ')}.`
      : `Write ${last(path)}: ${key?.example ?? '...'}.`,
  );
}

function unknownKey(path: readonly PropertyKey[], word: string, table: readonly DocumentedKey[]): Fault {
  const known =
    path.length === 0
      ? table.flatMap(({ path: top }) => (/[.[]/.test(top) ? [] : [top]))
      : (documented(path, table)?.keys ?? []);
  const meant = nearestWord(word, known);
  const homes = table
    .filter(({ path: other }) => other.split('.').at(-1) === word)
    .map(({ path: other }) => other.replace(/\.?[^.]*$/, '').replace('[]', '') || 'the top level');
  return {
    path: [...path, word],
    at: 'key',
    what: 'This key is not known here.',
    ...(meant === undefined ? {} : { meant: pathText([...path, meant]) }),
    accepted:
      meant !== undefined
        ? `Did you mean ${meant}?`
        : homes.length > 0
          ? `It belongs to ${orList(homes)}.`
          : `Known here: ${known.join(', ')}.`,
  };
}

function unknownFormat(value: unknown): [what: string, accepted: string] {
  const own = '{ width: 127 mm, height: 177.8 mm, image: [120.6 mm, 171.4 mm] }';
  const like = formatsLike(String(value));
  if (like.length > 1) return [`${quoted(value)} may mean more than one size.`, `Write ${orList(like)}.`];
  return [
    `${quoted(value)} is not in the table of formats.`,
    like.length === 1 ? `Write ${like[0]}.` : `Write a name such as 4x5, 5x7 or 8x10, or a size: ${own}.`,
  ];
}

/** The row of the table for a path of the file, whatever the numbers in its lists. */
function documented(path: readonly PropertyKey[], table: readonly DocumentedKey[]): DocumentedKey | undefined {
  const keyed = pathText(path).replace(/\[\d+\]/g, '[]');
  return table.find((row) => row.path === keyed) ?? table.find((row) => row.path === keyed.replace(/\[\]$/, ''));
}

function valueAt(written: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, step)
        ? (value as Record<PropertyKey, unknown>)[step] // an own key of an object: seen on the line above
        : undefined,
    written,
  );
}

/** The last key of a path, as a word. */
const last = (path: readonly PropertyKey[]): string => String(path.findLast((step) => typeof step !== 'number') ?? '');
