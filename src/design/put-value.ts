import { isMap, isScalar, isSeq, type Node, type YAMLSeq } from 'yaml';
import { type DescribedKey, describedAt, designKeys } from './described-keys.js';
import { newKey, siblingBefore } from './new-key.js';
import {
  columnAt,
  isComment,
  lexemesOf,
  lineEnd,
  lineStop,
  pairsOf,
  parsed,
  type Refusal,
  type Splice,
  spanOf,
} from './splice.js';
import { type Change, clearedLines } from './take-out.js';
import {
  endOf,
  endOfPair,
  isBlock,
  isEmpty,
  isFlow,
  lastWord,
  type Stop,
  type Trail,
  trailTo,
  type Written,
} from './trail.js';
import { scalarText, type Typed, typedInto, yamlOf } from './typed-value.js';
import { stepsOf, valueAt } from './written-text.js';
import { pathText, type Span } from './yaml.js';

const NO_ENTRY: Refusal = { what: 'The list has no such entry.', accepted: 'Add the entry first.' };

/** As the designs that are written here have it. */
const INDENT = 2;

/** Writes a value as it was typed, with the groups that it needs. */
export function putValue(written: Written, described: DescribedKey, path: string, value: string): Change | Refusal {
  const trail = trailTo(written, stepsOf(path));
  if ('what' in trail) return trail;
  const { stops, rest } = trail;
  const typed = typedInto(described, value);
  if (rest.length > 0) return putKey(written, trail, (inFlow) => `${rest.at(-1)}: ${yamlOf(typed, inFlow)}`);
  const stop = endOf(stops);
  const { node } = stop;
  const several = described.kind === 'field' && described.several !== null;
  if (several && typed.values.length > 0 && isSeq<Node>(node) && isPlainList(written, stop, node))
    return eachValue(written, node, typed);
  const inFlow = stops.some((one) => isFlow(one.node));
  return inPlace(written, stop, yamlOf(typed, inFlow, isScalar(node) ? node : undefined));
}

/** Puts an entry behind the others of a list, as these are written, or begins the list. */
export function putEntry(written: Written, path: string, entry: string): Change | Refusal {
  const { text } = written;
  const trail = trailTo(written, stepsOf(path));
  if ('what' in trail) return trail;
  const { stops, rest } = trail;
  const [line, blanks] = [lineEnd(text), (column: number) => ' '.repeat(column)];
  if (rest.length > 0)
    return putKey(written, trail, (inFlow, column) =>
      inFlow ? `${rest.at(-1)}: [${entry}]` : `${rest.at(-1)}:${line}${blanks(column + INDENT)}- ${entry}`,
    );
  const stop = endOf(stops);
  const { node } = stop;
  const last = isSeq<Node | null>(node) ? node.items.at(-1) : undefined;
  if (node === null || !last) return inPlace(written, stop, `[${entry}]`);
  const end = lastWord(text, last);
  if (isFlow(node)) return { splices: [{ span: [end, end], text: `, ${entry}` }] };
  const column = columnAt(text, spanOf(node)[0]);
  const inner = isBlock(last) ? columnAt(text, spanOf(last)[0]) : column + INDENT;
  const lines = isBlock(last) ? keysIn(entry) : [entry];
  const at = lineStop(text, end);
  return {
    splices: [{ span: [at, at], text: line + `${blanks(column)}-`.padEnd(inner) + lines.join(line + blanks(inner)) }],
  };
}

/** The keys of a group within braces, each as it could stand on a line. */
function keysIn(entry: string): readonly string[] {
  const { root } = parsed(entry);
  if (!isMap(root)) return [entry];
  return pairsOf(root).map(({ key, value }) => entry.slice(spanOf(key)[0], lastWord(entry, value ?? key)));
}

/**
 * Puts a key into the group that a trail ends in, with the groups that are still to come in between.
 *
 * @param write the key and its value, within braces or at a column
 */
function putKey(
  written: Written,
  { stops, rest }: Trail,
  write: (inFlow: boolean, column: number) => string,
): Change | Refusal {
  const stop = endOf(stops);
  const { node, path } = stop;
  if (rest.some((step) => typeof step === 'number') || isSeq(node)) return NO_ENTRY;
  const inFlow = rest.length > 1 || !isMap(node) || stops.some((one) => isFlow(one.node));
  const column = isBlock(node) && node !== null ? columnAt(written.text, spanOf(node)[0]) : 0;
  const key = rest.slice(0, -1).reduceRight<string>((inner, step) => `${step}: { ${inner} }`, write(inFlow, column));
  if (!isMap(node)) return inPlace(written, stop, `{ ${key} }`);
  const group = describedAt(path);
  const order = (group?.kind === 'group' ? group.keys : designKeys).map((one) => one.key);
  const pair = siblingBefore(node, order, String(rest[0]));
  const behind = pair && { pair, end: endOfPair(written, pair, [...path, String(pair.key)]) };
  return { splices: [newKey(written.text, node, behind, key)] };
}

/** Puts a value in place of another, which goes with the comments that stand in it. */
function inPlace(written: Written, { node, pair, path }: Stop, value: string): Change | Refusal {
  const { text, outline } = written;
  if (pair !== null && (node === null || isEmpty(node))) {
    const at = endOfPair(written, pair, path);
    return { splices: [{ span: [at, at], text: text[at - 1] === ':' ? ` ${value}` : `: ${value}` }] };
  }
  if (node === null) return NO_ENTRY;
  const [from] = spanOf(node);
  const span: Span = [from, Math.max(lastWord(text, node), pair === null ? 0 : endOfPair(written, pair, path))];
  if (!isBlock(node) || pair === null) {
    const whole = isScalar(node) ? outline.valueSpans.get(pathText(path)) : undefined;
    return { splices: [{ span: [whole?.[0] ?? from, span[1]], text: value }], gone: span };
  }
  const colon = spanOf(pair.key)[1] + (/^\s*:/.exec(text.slice(spanOf(pair.key)[1]))?.[0].length ?? 0);
  return { splices: [{ span: [colon, colon], text: ` ${value}` }, clearedLines(text, span, [])], gone: span };
}

/** Whether a list holds single values, which can be changed one by one. */
function isPlainList({ outline }: Written, { path }: Stop, { items }: YAMLSeq<Node>): boolean {
  const values = valueAt(outline.value, path);
  if (!Array.isArray(values) || values.length !== items.length || items.length === 0) return false;
  return items.every((item) => isScalar(item) && item.anchor === undefined && !isEmpty(item));
}

/** The values of a list one by one, so that comments between them stay; what is too many goes from its end. */
function eachValue({ text }: Written, list: YAMLSeq<Node>, { values, takes }: Typed): Change | Refusal {
  const { items } = list;
  const inFlow = list.flow === true;
  const write = (value: string, item?: Node) =>
    scalarText(value, { inFlow, takes, before: isScalar(item) ? item : undefined });
  const splices = items.slice(0, values.length).flatMap((item, index): Splice[] => {
    const value = values[index] ?? '';
    if (isScalar(item) && item.source === value) return [];
    return [{ span: [spanOf(item)[0], lastWord(text, item)], text: write(value, item) }];
  });
  const [last, kept] = [items.at(-1), items[values.length - 1] ?? items.at(-1)];
  if (last === undefined || kept === undefined) return NO_ENTRY;
  const [from, to] = [lastWord(text, kept), lastWord(text, last)];
  if (values.length < items.length) {
    const comments = lexemesOf(text).filter((one) => isComment(one) && one.at > from && one.at < to);
    if (comments.length === 0) return { splices: [...splices, { span: [from, to], text: '' }] };
    return {
      what: `The list has ${items.length} values with comments between them, and there are ${values.length} new ones.`,
      accepted: `Write by hand: ${values.join(', ')}.`,
    };
  }
  const more = values.slice(items.length).map((value) => write(value, last));
  const dash = `${lineEnd(text)}${' '.repeat(columnAt(text, spanOf(list)[0]))}- `;
  const at = inFlow ? to : lineStop(text, to);
  return {
    splices: [...splices, { span: [at, at], text: more.map((value) => (inFlow ? ', ' : dash) + value).join('') }],
  };
}
