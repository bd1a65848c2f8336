import type { KeyEdit } from '../model/design-form.js';
import { describedAt } from './described-keys.js';
import { asMeasured } from './made-up.js';
import type { Problem } from './problem.js';
import { putEntry, putValue } from './put-value.js';
import { plainReader, type Reader } from './reader.js';
import { designFile, type Source } from './source.js';
import { BYTE_ORDER_MARK, isComment, lexemesOf, type Refusal, refusedAt, spliced, UNSAFE } from './splice.js';
import { type Change, takeOut } from './take-out.js';
import type { Steps, Written } from './trail.js';
import { typedInto } from './typed-value.js';
import { isHolding, NONE, stepsOf, valueAt, writtenText } from './written-text.js';
import { type Outline, readYaml, type Span } from './yaml.js';

/**
 * A design file with some keys changed as they were typed, acceptable or not, and every other byte as it was: comments,
 * blanks, quotes, line ends, lists and groups in either style.
 *
 * What could not be changed without changing something else is a problem, and so is a change that does not read back as
 * the same values with the typed ones among them, and the same comments.
 */
export function writeKeys(
  text: string,
  file: string,
  edits: readonly KeyEdit[],
  reader: Reader = plainReader,
): { readonly text: string } | { readonly problems: readonly Problem[] } {
  const mark = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : '';
  const original: Source = { file, text: text.slice(mark.length), kind: designFile };
  const first = writtenIn(original, reader);
  if ('problems' in first) return first;
  let written: Written = first;
  for (const edit of edits) {
    const change = changeFor(written, edit);
    if ('what' in change) return { problems: [refusedAt(original, edit.path, change)] };
    if (change.splices.length === 0) continue;
    const after = writtenIn({ ...original, text: spliced(written.text, change.splices) }, reader);
    if ('problems' in after || !isProven(written, after, edit, change.gone))
      return { problems: [refusedAt(original, edit.path, unsafe(edit))] };
    written = after;
  }
  return { text: mark + written.text };
}

function writtenIn(
  source: Source,
  { outline: read, tree }: Reader,
): Written | { readonly problems: readonly Problem[] } {
  const outline = read(source);
  return 'value' in outline ? { text: source.text, outline, ...tree(source.text) } : outline;
}

const unsafe = ({ path }: KeyEdit): Refusal => ({ what: UNSAFE, accepted: `Change by hand, in the text: ${path}.` });

function changeFor(written: Written, edit: KeyEdit): Change | Refusal {
  const { path } = edit;
  if (edit.kind === 'remove') return takeOut(written, path);
  if (edit.kind === 'measured') return asMeasured(written, path);
  if (edit.kind === 'add') return putEntry(written, path, edit.entry.trim());
  const described = describedAt(stepsOf(path));
  if (described === null) return { what: 'No design has this key.', accepted: 'Change the text by hand.' };
  return isThere(written, edit.value, path) ? { splices: [] } : putValue(written, described, path, edit.value.trim());
}

/** Whether the text has a value already as it was typed; a number where a text is asked for is no such value. */
function isThere({ text, outline }: Written, typed: string, path: string): boolean {
  const steps = stepsOf(path);
  const described = describedAt(steps);
  if (described === null || writtenText(text, outline, path, described) !== typed.trim()) return false;
  return typedInto(described, typed).takes !== 'text' || typeof valueAt(outline.value, steps) === 'string';
}

/** Whether a change did what was asked, and nothing else: to the values, and to the comments outside what it took out. */
function isProven(before: Written, after: Written, edit: KeyEdit, gone: Span | undefined): boolean {
  if (after.outline.problems.length > before.outline.problems.length) return false;
  const steps = stepsOf(edit.path);
  if (!isSame(expected(before.outline.value, after.outline, edit, steps), after.outline.value)) return false;
  if (edit.kind === 'write' && !readsAsTyped(after, edit.path, edit.value)) return false;
  const comments = (text: string, outside?: Span) =>
    lexemesOf(text)
      .filter((one) => isComment(one) && (outside === undefined || one.at < outside[0] || one.at >= outside[1]))
      .map((one) => one.text.trimEnd());
  return isSame(comments(before.text, gone), comments(after.text));
}

function readsAsTyped({ text, outline }: Written, path: string, value: string): boolean {
  const described = describedAt(stepsOf(path));
  if (described === null) return false;
  const { values, isList } = typedInto(described, value.trim());
  return writtenText(text, outline, path, described) === (isList && values.length === 0 ? NONE : values.join(', '));
}

/** The values that there must be after a change: those before it, with what stands now at its path. */
function expected(before: unknown, after: Outline, edit: KeyEdit, steps: Steps): unknown {
  switch (edit.kind) {
    case 'remove':
      return without(before, steps);
    case 'measured':
      return before;
    case 'write':
      return withValue(before, steps, valueAt(after.value, steps));
    case 'add': {
      const entries = valueAt(before, steps);
      const entry = readYaml({ file: '', text: edit.entry, kind: designFile });
      const value = 'value' in entry ? entry.value : undefined;
      return withValue(before, steps, [...(Array.isArray(entries) ? entries : []), value]);
    }
  }
}

function withValue(holding: unknown, [step, ...rest]: Steps, value: unknown): unknown {
  if (step === undefined) return value;
  if (typeof step === 'number')
    return Array.isArray(holding)
      ? holding.map((item, index) => (index === step ? withValue(item, rest, value) : item))
      : holding;
  const group = isHolding(holding) && !Array.isArray(holding) ? holding : {};
  return { ...group, [step]: withValue(group[step], rest, value) };
}

/** Without a value, and without the groups and lists that held nothing else; an entry of a list stays, though it is empty. */
function without(holding: unknown, [step, ...rest]: Steps): unknown {
  if (step === undefined || !isHolding(holding)) return undefined;
  const left = without(holding[step], rest);
  const isEmpty = left === undefined || (isHolding(left) && Object.keys(left).length === 0);
  const goes = rest.length === 0 || (isEmpty && typeof step === 'string');
  if (Array.isArray(holding))
    return holding.flatMap((item: unknown, index) => (index === step ? (goes ? [] : [left]) : [item]));
  return Object.fromEntries(
    Object.entries(holding).flatMap(([key, item]) => (key === step ? (goes ? [] : [[key, left]]) : [[key, item]])),
  );
}

/** Whether two values are the same, in whatever order their keys stand. */
function isSame(a: unknown, b: unknown): boolean {
  if (!isHolding(a) || !isHolding(b)) return Object.is(a, b);
  const keys = Object.keys(a);
  return (
    Array.isArray(a) === Array.isArray(b) &&
    keys.length === Object.keys(b).length &&
    keys.every((key) => key in b && isSame(a[key], b[key]))
  );
}
