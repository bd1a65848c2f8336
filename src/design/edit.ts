import { isAlias, isMap, isScalar, isSeq, type Node, type Scalar, type YAMLMap } from 'yaml';
import { parseLength } from '../units/length.js';
import { magnification, plainNumber } from '../units/print.js';
import type { Reading } from '../units/quantity.js';
import { parseFNumber, parseMagnification, parseNumber } from '../units/ratio.js';
import { describedAt, designKeys } from './described-keys.js';
import { newKey, siblingBefore } from './new-key.js';
import type { Problem } from './problem.js';
import { readDesign } from './read.js';
import { designFile, problemAt, type Source } from './source.js';
import {
  aliasRefusal,
  BYTE_ORDER_MARK,
  columnAt,
  contentEnd,
  isSharedBy,
  lineEnd,
  pairsOf,
  parsed,
  type Refusal,
  refusedAt,
  SHARED,
  type Splice,
  spanOf,
  spliced,
  UNSAFE,
} from './splice.js';
import { type FindRemnant, noRemnants } from './stock.js';
import { writeKeys } from './write-keys.js';
import { pathText, readYaml, type Span } from './yaml.js';

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
 * length in inches becomes mm. A key that is not there is put behind those that come before it in the table of keys. What
 * is put in was measured, so a comment behind it that says nobody has goes.
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
  let { text: edited } = original;
  for (const change of changes) {
    const step = changeOne(edited, change);
    if ('what' in step) return { problems: [refusedAt(original, change.path, step)] };
    edited = step.text;
    if (step.changed !== null) changed.push(step.changed);
  }
  if (!readsBack(original, { ...original, text: edited }, changes)) {
    const paths = changes.map(({ path }) => path).join(', ');
    const unsafe = {
      what: UNSAFE,
      accepted: `Change by hand: ${paths}.`,
    };
    return { problems: [problemAt(original, null, { path: '', ...unsafe })] };
  }
  // what is put into a design here was measured, and a mark that says it was not would no longer be true
  for (const { path } of changes) {
    const marked = writeKeys(edited, file, [{ kind: 'measured', path }]);
    if ('text' in marked) edited = marked.text;
  }
  const after = readDesign(edited, file, find);
  if ('problems' in after)
    return {
      problems: after.problems.map(({ path, what, accepted }) =>
        refusedAt(original, path, { what: `With the new values the design will not do: ${what}`, accepted }),
      ),
    };
  return { text: mark + edited, changed };
}

type Step = { readonly text: string; readonly changed: ChangedKey | null } | Refusal;

function changeOne(text: string, change: DesignChange): Step {
  const { path, value, kind = 'length' } = change;
  const { root, aliased } = parsed(text);
  const steps = path.split('.');
  let node = root;
  for (let depth = 0; ; depth++) {
    if (isAlias(node)) return aliasRefusal(node.source);
    if (isSharedBy(node, aliased)) return SHARED;
    if (depth === steps.length) break;
    if (!isMap(node)) return { what: 'This is no group of keys.', accepted: `Write ${path} by hand.` };
    const key = steps[depth];
    const pair = pairsOf(node).find((one) => isScalar(one.key) && String(one.key.value) === key);
    if (pair === undefined) return added(text, node, { steps, depth }, valueText(value, styleOf(kind)));
    node = pair.value;
  }
  return replaced(text, node, change);
}

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
  const done = (edits: readonly Splice[]): Step => {
    const [from, to] = spanOf(node);
    if (edits.length === 0) return { text, changed: null };
    const after = spliced(text, edits);
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

const isLong = ({ type }: Scalar): boolean => type === 'BLOCK_FOLDED' || type === 'BLOCK_LITERAL';

/** 0.1 + 0.2 is not quite 0.3, and no file is to be changed for that. */
const EQUAL = 1e-9;

const isEqual = (a: number, b: number): boolean => Math.abs(a - b) < EQUAL;

function isWritten(node: Scalar, value: number | undefined, kind: ValueKind): boolean {
  const reading = kinds[kind].read(node.value);
  return 'value' in reading && value !== undefined && isEqual(reading.value, value);
}

/** A key that is not there, from a certain depth of its path on. */
interface Missing {
  readonly steps: readonly string[];
  readonly depth: number;
}

/** Puts a key, and the groups that it still needs, into a group that has not got it: behind all others where none of them comes before it. */
function added(text: string, map: YAMLMap, { steps, depth }: Missing, value: string): Step {
  const rest = steps.slice(depth);
  const written = rest.reduceRight(
    (inner, key, i) => (i === rest.length - 1 ? `${key}: ${inner}` : `${key}: { ${inner} }`),
    value,
  );
  const group = describedAt(steps.slice(0, depth));
  const order = (group?.kind === 'group' ? group.keys : designKeys).map(({ key }) => key);
  const pair = siblingBefore(map, order, rest[0] ?? '') ?? pairsOf(map).at(-1) ?? null;
  const behind = pair === null ? null : { pair, end: contentEnd(pair) };
  const changed: ChangedKey = { path: steps.join('.'), from: null, to: value };
  return { text: spliced(text, [newKey(text, map, behind, written)]), changed };
}

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
