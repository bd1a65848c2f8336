import {
  CST,
  type Document,
  isMap,
  isScalar,
  isSeq,
  Lexer,
  type Node,
  type Pair,
  parseDocument,
  visit,
  type YAMLMap,
} from 'yaml';
import type { Problem } from './problem.js';
import { problemAt, type Source } from './source.js';
import { readYaml, type Span } from './yaml.js';

/*
 * How a YAML text is changed here: by putting other characters in place of some, so that all others stay. The parser says
 * where things stand, and nothing is ever printed by it.
 */

export const BYTE_ORDER_MARK = '\ufeff';

export interface Splice {
  readonly span: Span;
  readonly text: string;
}

/** From the last to the first, so that the places of the earlier ones stay right. */
export const spliced = (text: string, splices: readonly Splice[]): string =>
  [...splices]
    .sort((a, b) => b.span[0] - a.span[0])
    .reduce((done, { span, text: put }) => done.slice(0, span[0]) + put + done.slice(span[1]), text);

/** Why a text is not changed, and what to do instead. */
export interface Refusal {
  readonly what: string;
  readonly accepted: string;
}

/** A refusal at the key in the file as it was given, or at the nearest group round it. */
export function refusedAt(source: Source, path: string, { what, accepted }: Refusal): Problem {
  const outline = readYaml(source);
  const steps = path.split(/\.|(?=\[)/);
  for (let length = steps.length; length > 0 && 'keySpans' in outline; length--) {
    const here = steps.slice(0, length).join('.').replaceAll('.[', '[');
    const span = outline.keySpans.get(here) ?? (here.endsWith(']') ? outline.valueSpans.get(here) : undefined);
    if (span !== undefined) return problemAt(source, span, { path, what, accepted });
  }
  return problemAt(source, null, { path, what, accepted });
}

export const aliasRefusal = (name: string): Refusal => ({
  what: 'This value is an alias of another one.',
  accepted: `Write the value out where ${name} is named, and try again.`,
});

export const SHARED: Refusal = {
  what: 'This value is named, and used in another place, too.',
  accepted: 'Write the other place out, and try again.',
};

export const UNSAFE = 'The file is written in a way that cannot be changed safely.';

export type KeyAndValue = Pair<Node, Node | null>;

/** A text as the parser sees it, and the names that its aliases point at. */
export interface Parsed {
  readonly root: Node | null;
  readonly aliased: ReadonlySet<string>;
}

export function parsed(text: string): Parsed {
  const document: Document = parseDocument(text, {
    prettyErrors: false,
    uniqueKeys: false,
    merge: false,
    logLevel: 'silent',
  });
  const aliased = new Set<string>();
  visit(document, { Alias: (_, { source }) => void aliased.add(source) });
  return { root: document.contents as Node | null, aliased };
}

export const isSharedBy = (node: Node | null, aliased: ReadonlySet<string>): boolean =>
  node !== null && 'anchor' in node && typeof node.anchor === 'string' && aliased.has(node.anchor);

/** What the composer makes; the library's own type allows anything. */
export const pairsOf = (map: YAMLMap): readonly KeyAndValue[] => map.items as KeyAndValue[];

export const keyOf = ({ key }: KeyAndValue): string | null => (isScalar(key) ? String(key.source ?? key.value) : null);

/** A node's own characters, without the blanks and comments behind it. */
export function spanOf(node: Node | null): Span {
  const range = node?.range;
  if (!range) throw new Error('a node of a parsed file has no place in it');
  return [range[0], range[1]];
}

/** Where the last word of a node or a pair ends. */
export function contentEnd(node: Node | KeyAndValue): number {
  if ('key' in node)
    return node.value === null || spanOf(node.value)[1] <= spanOf(node.key)[1]
      ? spanOf(node.key)[1] + 1
      : contentEnd(node.value);
  if ((!isMap(node) && !isSeq(node)) || node.flow === true) return spanOf(node)[1];
  const last = node.items.at(-1) as Node | KeyAndValue | null | undefined;
  return last ? contentEnd(last) : spanOf(node)[1];
}

export const columnAt = (text: string, offset: number): number => offset - (text.lastIndexOf('\n', offset - 1) + 1);

/** Where the line of a place ends, its line end not counted. */
export function lineStop(text: string, offset: number): number {
  const line = text.indexOf('\n', offset);
  return line < 0 ? text.length : text[line - 1] === '\r' ? line - 1 : line;
}

/** As the file has it. */
export const lineEnd = (text: string): string => (/\r\n/.test(text) ? '\r\n' : '\n');

/** A word of YAML, and where it stands. */
export interface Lexeme {
  readonly at: number;
  readonly text: string;
}

/** The signs and comments of a text: what stands between its values. */
export function lexemesOf(text: string): readonly Lexeme[] {
  const found: Lexeme[] = [];
  let at = 0;
  let isValue = false;
  for (const lexeme of new Lexer().lex(text)) {
    const type = CST.tokenType(lexeme);
    // signs of the lexer's own, which are not in the text: each value is announced by one
    if (type === 'scalar' || type === 'doc-mode' || type === 'flow-error-end') {
      isValue = type === 'scalar';
      continue;
    }
    if (!isValue && (type === 'comment' || type === 'comma' || type === 'seq-item-ind'))
      found.push({ at, text: lexeme });
    isValue = false;
    at += lexeme.length;
  }
  return found;
}

export const isComment = ({ text }: Lexeme): boolean => text.startsWith('#');
