import {
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  type Scalar,
  visit,
  type YAMLMap,
} from 'yaml';
import { parseLength } from '../units/length.js';
import { magnification, plainNumber } from '../units/print.js';
import type { Reading } from '../units/quantity.js';
import { parseFNumber, parseMagnification, parseNumber } from '../units/ratio.js';
import { designJsonSchema } from './json-schema.js';
import { keyTable } from './key-table.js';
import type { Problem } from './problem.js';
import { readDesign } from './read.js';
import { designFile, problemAt, type Source } from './source.js';
import { type FindRemnant, noRemnants } from './stock.js';
import { pathText, readYaml } from './yaml.js';

/** A value that a key of the design shall have, or the readings of one. */
export interface DesignChange {
  /** Such as laser.kerf; no lists on the way. */
  readonly path: string;
  /** A length where left out, mm; a magnification of 0 is infinity. */
  readonly kind?: ValueKind;
  readonly value: number | readonly number[];
}

type ValueKind = 'length' | 'number' | 'f-number' | 'magnification';

export interface ChangedKey {
  readonly path: string;
  /** As it was written; null where the key was not there. */
  readonly from: string | null;
  readonly to: string;
}

export interface DesignEdit {
  readonly text: string;
  /** What was changed; a key that had its value already is not among them. */
  readonly changed: readonly ChangedKey[];
}

/**
 * A design file with some values changed and every other byte as it was: comments, blanks, quotes, line ends, lists
 * and groups in either style. A value keeps the way it was written (`4.05`, `4.05mm`, `"4.05 mm"`, `f/8`, `1:8`, `0.5`); a
 * length in inches becomes mm. A key that is not there is put behind those that come before it in the table of keys.
 *
 * What could not be changed without changing something else (an alias, a list with comments between its items) is a
 * problem, and so is an edit that does not read back as the same design with the new values, or is no design with them.
 *
 * @param find gives the remnants that the design names by their files
 */
export function editDesign(
  text: string,
  file: string,
  changes: readonly DesignChange[],
  find: FindRemnant = noRemnants,
): DesignEdit | { readonly problems: readonly Problem[] } {
  const mark = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : '';
  const original: Source = { file, text: text.slice(mark.length), kind: designFile };
  const before = readDesign(original.text, file, find);
  if ('problems' in before) return before;
  const changed: ChangedKey[] = [];
  const order = keyTable(designJsonSchema()).map(({ path }) => path);
  let { text: edited } = original;
  for (const change of changes) {
    const step = changeOne(edited, change, order);
    if ('what' in step) return { problems: [placed(original, change.path, step)] };
    edited = step.text;
    if (step.changed !== null) changed.push(step.changed);
  }
  if (!readsBack(original, { ...original, text: edited }, changes)) {
    const paths = changes.map(({ path }) => path).join(', ');
    const unsafe = {
      what: 'The file is written in a way that cannot be changed safely.',
      accepted: `Change by hand: ${paths}.`,
    };
    return { problems: [problemAt(original, null, { path: '', ...unsafe })] };
  }
  const after = readDesign(edited, file, find);
  if ('problems' in after)
    return {
      problems: after.problems.map(({ path, what, accepted }) =>
        placed(original, path, { what: `With the new values the design will not do: ${what}`, accepted }),
      ),
    };
  return { text: mark + edited, changed };
}

const BYTE_ORDER_MARK = '\ufeff';

interface Refusal {
  readonly what: string;
  readonly accepted: string;
}

/** At the key in the file as it was given, or at the nearest group round it. */
function placed(source: Source, path: string, { what, accepted }: Refusal): Problem {
  const outline = readYaml(source);
  const steps = path.split('.');
  for (let length = steps.length; length > 0 && 'keySpans' in outline; length--) {
    const span = outline.keySpans.get(steps.slice(0, length).join('.'));
    if (span !== undefined) return problemAt(source, span, { path, what, accepted });
  }
  return problemAt(source, null, { path, what, accepted });
}

type Step = { readonly text: string; readonly changed: ChangedKey | null } | Refusal;

function changeOne(text: string, change: DesignChange, order: readonly string[]): Step {
  const { path, value, kind = 'length' } = change;
  const document = parseDocument(text, { prettyErrors: false, uniqueKeys: false, merge: false, logLevel: 'silent' });
  const aliased = new Set<string>();
  visit(document, { Alias: (_, { source }) => void aliased.add(source) });
  const steps = path.split('.');
  let node = document.contents as Node | null;
  for (let depth = 0; ; depth++) {
    if (isAlias(node))
      return { what: ALIAS, accepted: `Write the value out where ${node.source} is named, and try again.` };
    if (isSharedBy(node, aliased))
      return {
        what: 'This value is named, and used in another place, too.',
        accepted: 'Write the other place out, and try again.',
      };
    if (depth === steps.length) break;
    if (!isMap(node)) return { what: 'This is no group of keys.', accepted: `Write ${path} by hand.` };
    const key = steps[depth];
    const pair = pairsOf(node).find((one) => isScalar(one.key) && String(one.key.value) === key);
    if (pair === undefined) return added(text, node, { steps, depth, order }, valueText(value, styleOf(kind)));
    node = pair.value;
  }
  return replaced(text, node, change);
}

const ALIAS = 'This value is an alias of another one.';

const isSharedBy = (node: Node | null, aliased: ReadonlySet<string>): boolean =>
  node !== null && 'anchor' in node && typeof node.anchor === 'string' && aliased.has(node.anchor);

type KeyAndValue = Pair<Node, Node | null>;

/** What the composer makes; the library's own type allows anything. */
const pairsOf = (map: YAMLMap): readonly KeyAndValue[] => map.items as KeyAndValue[];

/** How a value is written: as a text of its kind, and in which quotes. */
interface Style {
  readonly text: (value: number) => string;
  readonly quote: string;
}

interface KindOfValue {
  readonly read: (written: unknown) => Reading;
  /** Writes a value as the one that stood there before was written; that is empty where none did. */
  readonly writeLike: (before: string) => (value: number) => string;
}

/** Beyond this nothing of a camera is told apart. */
const DECIMALS = 6;

const kinds: Readonly<Record<ValueKind, KindOfValue>> = {
  length: {
    read: (written) => parseLength(written, 'any'),
    writeLike: (before) => {
      const unit = /^[-+\d.]+(\s*mm|)$/.exec(before)?.[1] ?? ' mm';
      return (value) => plainNumber(value) + unit;
    },
  },
  number: {
    read: (written) => parseNumber(written, 'any'),
    writeLike: () => (value) => plainNumber(value, DECIMALS),
  },
  'f-number': {
    read: parseFNumber,
    writeLike: (before) => {
      const lead = /^(f\s*\/?\s*|1\s*:\s*|)[\d.]+$/i.exec(before)?.[1] ?? 'f/';
      return (value) => lead + plainNumber(value, DECIMALS);
    },
  },
  magnification: {
    read: parseMagnification,
    writeLike: (before) => (value) => {
      const ratio = magnification(value);
      const exact = parseMagnification(ratio);
      const bare = value > 0 && /^[\d.]+$/.test(before);
      return !bare && 'value' in exact && isEqual(exact.value, value) ? ratio : plainNumber(value, DECIMALS);
    },
  },
};

function styleOf(kind: ValueKind, scalar?: Scalar): Style {
  const quote = scalar?.type === 'QUOTE_DOUBLE' ? '"' : scalar?.type === 'QUOTE_SINGLE' ? "'" : '';
  return { text: kinds[kind].writeLike(scalar?.source ?? ''), quote };
}

const oneValue = (value: number, { text, quote }: Style): string => quote + text(value) + quote;

const valueText = (value: DesignChange['value'], style: Style): string =>
  typeof value === 'number'
    ? oneValue(value, style)
    : value.length === 1
      ? oneValue(value[0] ?? 0, style)
      : listText(value, style);

const listText = (values: readonly number[], style: Style): string =>
  `[${values.map((value) => oneValue(value, style)).join(', ')}]`;

function replaced(text: string, node: Node | null, { path, value, kind = 'length' }: DesignChange): Step {
  const values = typeof value === 'number' ? [value] : value;
  const done = (edits: readonly Edit[]): Step => {
    const [from, to] = spanOf(node);
    if (edits.length === 0) return { text, changed: null };
    const after = withEdits(text, edits);
    return {
      text: after,
      changed: { path, from: text.slice(from, to), to: after.slice(from, to + after.length - text.length) },
    };
  };
  if (isScalar(node)) {
    if (isLong(node))
      return { what: 'This value goes over several lines.', accepted: 'Write it on one line, and try again.' };
    const style = styleOf(kind, node);
    return done(
      values.length === 1 && isWritten(node, values[0], kind)
        ? []
        : [{ span: spanOf(node), text: valueText(values, style) }],
    );
  }
  if (!isSeq(node)) return { what: 'Here is no value.', accepted: `Write ${path} by hand.` };
  const items = node.items as readonly (Node | null)[];
  const scalars = items.filter((item) => isScalar(item) && !isLong(item) && item.anchor === undefined);
  if (scalars.length < items.length)
    return {
      what: 'The list holds something other than plain lengths.',
      accepted: 'Write each of its readings out, and try again.',
    };
  if (items.length === values.length)
    return done(
      scalars.flatMap((item, i) =>
        isScalar(item) && !isWritten(item, values[i], kind)
          ? [{ span: spanOf(item), text: oneValue(values[i] ?? 0, styleOf(kind, item)) }]
          : [],
      ),
    );
  const span = spanOf(node);
  const whole: Span = [span[0], contentEnd(node)];
  if (text.slice(...whole).includes('#'))
    return {
      what: `The list has ${items.length} readings with comments between them, and there are ${values.length} new ones.`,
      accepted: `Write by hand: ${listText(values, styleOf(kind))}.`,
    };
  const style = styleOf(kind, isScalar(items[0]) ? items[0] : undefined);
  const column = ' '.repeat(columnAt(text, span[0]));
  const lines = values.map((one) => `- ${oneValue(one, style)}`).join(lineEnd(text) + column);
  return done([{ span: whole, text: node.flow === true ? listText(values, style) : lines }]);
}

type Span = readonly [from: number, to: number];

/** A node's own characters, without the blanks and comments behind it. */
function spanOf(node: Node | null): Span {
  const range = node?.range;
  if (!range) throw new Error('a node of a parsed file has no place in it');
  return [range[0], range[1]];
}

const isLong = ({ type }: Scalar): boolean => type === 'BLOCK_FOLDED' || type === 'BLOCK_LITERAL';

/** 0.1 + 0.2 is not quite 0.3, and no file is to be changed for that. */
const EQUAL = 1e-9;

const isEqual = (a: number, b: number): boolean => Math.abs(a - b) < EQUAL;

function isWritten(node: Scalar, value: number | undefined, kind: ValueKind): boolean {
  const reading = kinds[kind].read(node.value);
  return 'value' in reading && value !== undefined && isEqual(reading.value, value);
}

interface Edit {
  readonly span: Span;
  readonly text: string;
}

/** From the last to the first, so that the places of the earlier ones stay right. */
const withEdits = (text: string, edits: readonly Edit[]): string =>
  [...edits]
    .sort((a, b) => b.span[0] - a.span[0])
    .reduce((done, { span, text: put }) => done.slice(0, span[0]) + put + done.slice(span[1]), text);

/** A key that is not there, from a certain depth of its path on, and the order of all keys that there may be. */
interface Missing {
  readonly steps: readonly string[];
  readonly depth: number;
  readonly order: readonly string[];
}

/** Puts a key, and the groups that it still needs, into a group that has not got it. */
function added(text: string, map: YAMLMap, { steps, depth, order }: Missing, value: string): Step {
  const rest = steps.slice(depth);
  const written = rest.reduceRight(
    (inner, key, i) => (i === rest.length - 1 ? `${key}: ${inner}` : `${key}: { ${inner} }`),
    value,
  );
  const changed: ChangedKey = { path: steps.join('.'), from: null, to: value };
  const put = (at: number, what: string): Step => ({ text: text.slice(0, at) + what + text.slice(at), changed });
  const after = siblingBefore(map, { steps, depth, order });
  if (map.flow === true) {
    if (after !== null) return put(contentEnd(after), `, ${written}`);
    const open = spanOf(map)[0] + 1;
    return put(open, ` ${written}${text[open] === '}' ? ' ' : ''}`);
  }
  if (after === null) return { what: 'The group has no keys yet.', accepted: `Write ${written} into it.` };
  const end = contentEnd(after);
  const column = ' '.repeat(columnAt(text, spanOf(after.key)[0]));
  const line = text.indexOf('\n', end);
  const at = line < 0 ? text.length : text[line - 1] === '\r' ? line - 1 : line;
  return put(at, lineEnd(text) + column + written);
}

/** The key of a group behind which a new one is looked for: the last of those before it in the table, or of all. */
function siblingBefore(map: YAMLMap, { steps, depth, order }: Missing): KeyAndValue | null {
  const pairs = pairsOf(map);
  const lead = steps
    .slice(0, depth)
    .map((step) => `${step}.`)
    .join('');
  const place = order.indexOf(lead + (steps[depth] ?? ''));
  const placeOf = (pair: KeyAndValue) => order.indexOf(lead + (isScalar(pair.key) ? String(pair.key.value) : ''));
  const earlier = pairs.filter((pair) => placeOf(pair) < place);
  if (earlier.length === 0) return pairs.at(-1) ?? null;
  return earlier.reduce((last, pair) => (placeOf(pair) > placeOf(last) ? pair : last));
}

/** Where the last word of a node or a pair ends. */
function contentEnd(node: Node | KeyAndValue): number {
  if ('key' in node)
    return node.value === null || spanOf(node.value)[1] <= spanOf(node.key)[1]
      ? spanOf(node.key)[1] + 1
      : contentEnd(node.value);
  if ((!isMap(node) && !isSeq(node)) || node.flow === true) return spanOf(node)[1];
  const last = node.items.at(-1) as Node | KeyAndValue | null | undefined;
  return last ? contentEnd(last) : spanOf(node)[1];
}

const columnAt = (text: string, offset: number): number => offset - (text.lastIndexOf('\n', offset - 1) + 1);

/** As the file has it. */
const lineEnd = (text: string): string => (/\r\n/.test(text) ? '\r\n' : '\n');

/** Whether the edited file is the same design but for the new values, and has these. */
function readsBack(before: Source, after: Source, changes: readonly DesignChange[]): boolean {
  const [old, now] = [readYaml(before), readYaml(after)];
  if (!('value' in old) || !('value' in now)) return false;
  const paths = changes.map(({ path }) => path);
  if (JSON.stringify(without(old.value, paths)) !== JSON.stringify(without(now.value, paths))) return false;
  return changes.every(({ path, value, kind = 'length' }) => {
    const written = path
      .split('.')
      .reduce<unknown>((inner, key) => (inner as Record<string, unknown> | undefined)?.[key], now.value);
    const found = (Array.isArray(written) ? written : [written]).map(kinds[kind].read);
    const wanted = typeof value === 'number' ? [value] : value;
    return (
      found.length === wanted.length &&
      found.every((reading, i) => 'value' in reading && isEqual(reading.value, wanted[i] ?? Number.NaN))
    );
  });
}

/** The values without those of some keys, and without groups that hold nothing else. */
function without(value: unknown, paths: readonly string[], path: readonly string[] = []): unknown {
  if (paths.includes(pathText(path))) return undefined;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  const kept = Object.entries(value)
    .map(([key, inner]) => [key, without(inner, paths, [...path, key])] as const)
    .filter(([, inner]) => inner !== undefined);
  return kept.length === 0 ? undefined : Object.fromEntries(kept);
}
