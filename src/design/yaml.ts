import { isAlias, isMap, isScalar, isSeq, type Node, parseAllDocuments, type YAMLError } from 'yaml';
import { joinDecimalCommas } from './decimal-comma.js';
import type { Problem } from './problem.js';
import { problemAt, type Source } from './source.js';
import { unclosedAt } from './unclosed.js';

export type Span = readonly [number, number];

/** The values of a YAML file, and where each of them and each key stands. */
export interface Outline {
  readonly value: unknown;
  readonly valueSpans: ReadonlyMap<string, Span>;
  readonly keySpans: ReadonlyMap<string, Span>;
  /** Single values as they are written, without their quotes; a key with nothing behind it has none. */
  readonly texts: ReadonlyMap<string, string>;
  readonly problems: readonly Problem[];
}

/** `holders[1].filmDepth` */
export const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (text, step) =>
      typeof step === 'number' ? `${text}[${step}]` : text === '' ? String(step) : `${text}.${String(step)}`,
    '',
  );

/** Reads YAML 1.2. Where it is not YAML, the first thing wrong is the only problem: what follows would be guesswork. */
export function readYaml(source: Source): Outline | { readonly problems: readonly Problem[] } {
  const at = (span: Span | null, what: string, accepted: string, path = '') =>
    problemAt(source, span, { path, what, accepted });
  const documents = parseQuietly(source.text);
  const { noun, begin: start } = source.kind;
  if (documents === 'too deep') return { problems: [at(null, ...tooDeep(noun))] };
  const [document, second] = documents;
  if (document === undefined || document.contents === null)
    return { problems: [at(null, `The file holds no ${noun}.`, start)] };
  const first = documents.flatMap(({ errors, warnings }) => [...errors, ...warnings])[0];
  if (first !== undefined) {
    const unclosed = MAY_BE_UNCLOSED.has(first.code) ? unclosedAt(source.text) : null;
    if (unclosed === null) return { problems: [at(first.pos, ...inWords(first, noun))] };
    const sign = /["']/.test(source.text.charAt(unclosed)) ? 'quote' : 'bracket';
    return { problems: [at([unclosed, unclosed + 1], `This ${sign} is not closed.`, `Close the ${sign}.`)] };
  }
  if (second !== undefined) {
    const begin = second.contents?.range?.[0] ?? second.range[0];
    return { problems: [at([begin, begin + 1], 'Here a second document begins.', `Keep one ${noun} in a file.`)] };
  }
  return unfold(source, document.contents as Node, at); // not null: seen above
}

const tooDeep = (noun: string): [what: string, accepted: string] => [
  `The file is nested deeper than any ${noun}.`,
  `Give the YAML file of a ${noun}.`,
];

const TAGGED: [what: string, accepted: string] = [
  'A tag, which begins with !, means nothing here.',
  'Put the text in quotes, or delete the tag.',
];

const MAY_BE_UNCLOSED: ReadonlySet<string> = new Set([
  'BAD_INDENT',
  'MISSING_CHAR',
  'UNEXPECTED_TOKEN',
  'BLOCK_IN_FLOW',
]);

/** Duplicate keys are looked for in unfold, since the library's way takes a minute for a large file. */
function parseQuietly(text: string) {
  try {
    const documents = parseAllDocuments(text, {
      prettyErrors: false,
      uniqueKeys: false,
      merge: false,
      logLevel: 'silent',
    });
    return Array.from(documents);
  } catch (error) {
    if (error instanceof RangeError) return 'too deep'; // the library's parser calls itself for each level
    throw error;
  }
}

function inWords({ code, message }: YAMLError, noun: string): [what: string, accepted: string] {
  if (/call stack/.test(message)) return tooDeep(noun);
  switch (code) {
    case 'TAB_AS_INDENT':
      return ['A tab stands where the line is indented.', 'Indent with spaces.'];
    case 'BAD_INDENT':
      return [
        'The indentation does not fit the lines above, or a bracket is not closed.',
        'Indent the keys of a group alike, and close each bracket.',
      ];
    case 'MISSING_CHAR':
      return [
        /quote/.test(message) ? 'A quote is not closed.' : `${message}.`,
        'Close each quote and bracket, and put a blank after each colon.',
      ];
    case 'BLOCK_AS_IMPLICIT_KEY':
    case 'MULTILINE_IMPLICIT_KEY':
      return [
        'A second key begins inside a value.',
        'Give each key its own line, or put a text with a colon in quotes.',
      ];
    case 'TAG_RESOLVE_FAILED':
      return TAGGED;
    default:
      return [
        `This is not YAML: ${message.charAt(0).toLowerCase()}${message.slice(1)}.`,
        'Write `key: value` on a line, or { key: value, key: value }.',
      ];
  }
}

function unfold(
  source: Source,
  root: Node,
  at: (span: Span | null, what: string, accepted: string, path?: string) => Problem,
): Outline | { readonly problems: readonly Problem[] } {
  const valueSpans = new Map<string, Span>();
  const keySpans = new Map<string, Span>();
  const texts = new Map<string, string>();
  const problems: Problem[] = [];
  const anchors = new Map<string, Node>();
  const open = new Set<Node>();
  let values = 0;

  const spanOf = (node: unknown): Span => {
    const range = (node as Node | null)?.range;
    return range ? [range[0], range[1]] : [0, 1];
  };

  const visit = (node: Node | null, path: readonly PropertyKey[], span: Span | null): unknown => {
    values += 1;
    if (values > source.kind.mostValues) return null;
    if (node !== null) valueSpans.set(pathText(path), span ?? spanOf(node));
    if (isAlias(node)) {
      const target = anchors.get(node.source);
      if (target !== undefined && !open.has(target)) return visit(target, path, spanOf(node));
      problems.push(
        at(
          spanOf(node),
          `*${node.source} points at nothing that was written above.`,
          'Write the value out.',
          pathText(path),
        ),
      );
      return null;
    }
    if (node === null || (!isMap(node) && !isSeq(node) && !isScalar(node))) return null;
    if (node.tag !== undefined) {
      problems.push(at(spanOf(node), ...TAGGED, pathText(path)));
      return null;
    }
    if (node.anchor !== undefined) anchors.set(node.anchor, node);
    if (isScalar(node)) {
      if (node.value !== null || node.source !== '') texts.set(pathText(path), node.source ?? String(node.value));
      return scalarValue(node.value, node.source);
    }
    open.add(node);
    const value = isSeq(node) ? list(node.items as Node[], path, span) : map(node, path, span);
    open.delete(node);
    return value;
  };

  const list = (items: readonly (Node | null)[], path: readonly PropertyKey[], span: Span | null): unknown[] =>
    joinDecimalCommas(source.text, items).map((item, index) => {
      if (!('joined' in item)) return visit(item.node, [...path, index], span);
      valueSpans.set(pathText([...path, index]), item.span);
      texts.set(pathText([...path, index]), item.joined);
      return item.joined;
    });

  const map = (node: { readonly items: readonly unknown[] }, path: readonly PropertyKey[], span: Span | null) => {
    const entries: [string, unknown][] = [];
    const seen = new Set<string>();
    const pairs = node.items as readonly { readonly key: Node | null; readonly value: Node | null }[];
    pairs.forEach((pair, index) => {
      if (strayAfterComma(pairs[index - 1], pair)) return;
      if (!isScalar(pair.key)) {
        problems.push(
          at(spanOf(pair.key), 'This is not a key.', 'Write `key: value`, the key a single word.', pathText(path)),
        );
        return;
      }
      const key = String(pair.key.source ?? pair.key.value);
      const here = [...path, key];
      if (seen.has(key)) {
        problems.push(at(spanOf(pair.key), 'This key is written twice.', 'Keep one of the two.', pathText(here)));
        return;
      }
      seen.add(key);
      keySpans.set(pathText(here), span ?? spanOf(pair.key));
      const next = pairs[index + 1];
      if (next === undefined || !strayAfterComma(pair, next)) {
        entries.push([key, visit(pair.value, here, span)]);
        return;
      }
      const whole: Span = [spanOf(pair.value)[0], spanOf(next.key)[1]];
      valueSpans.set(pathText(here), whole);
      texts.set(pathText(here), source.text.slice(...whole));
      entries.push([key, source.text.slice(...whole)]);
    });
    return Object.fromEntries(entries);
  };

  /** To YAML `{ thickness: 4,05 mm }` is two entries: the second has no value and stands right behind the comma. */
  const strayAfterComma = (
    before: { readonly value: Node | null } | undefined,
    pair: { readonly key: Node | null; readonly value: Node | null },
  ): boolean => {
    if (before === undefined || !isScalar(before.value) || !isScalar(pair.key)) return false;
    if (isScalar(pair.value) ? pair.value.value !== null : pair.value !== null) return false;
    const around = source.text.slice(spanOf(before.value)[1] - 1, spanOf(pair.key)[0] + 1);
    return /^\d,\d$/.test(around);
  };

  const value = visit(root, [], null);
  // a file that unfolds to more through its aliases is a bomb
  if (values > source.kind.mostValues) {
    const accepted = 'Write the values out once, without aliases.';
    return { problems: [at(null, `The file holds far more values than any ${source.kind.noun} has.`, accepted)] };
  }
  return { value, valueSpans, keySpans, texts, problems };
}

/** A number that is not written as one (hexadecimal, .nan, .inf) stays text, so that the reader of units refuses it. */
function scalarValue(value: unknown, source: string | undefined): unknown {
  if (typeof value === 'bigint') return source ?? String(value);
  if (typeof value !== 'number' || source === undefined) return value;
  return /^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?$/.test(source) ? value : source;
}
