import { isAlias, isMap, isScalar, isSeq, type Node } from 'yaml';
import {
  aliasRefusal,
  contentEnd,
  isSharedBy,
  type KeyAndValue,
  keyOf,
  type Parsed,
  pairsOf,
  type Refusal,
  SHARED,
  spanOf,
} from './splice.js';
import { type Outline, pathText } from './yaml.js';

export type Steps = readonly (string | number)[];

/** A text, and what YAML makes of it. */
export interface Written extends Parsed {
  readonly text: string;
  readonly outline: Outline;
}

/** A node on the way to a key, and the pair that it is the value of; an entry of a list has none. */
export interface Stop {
  readonly path: Steps;
  readonly node: Node | null;
  readonly pair: KeyAndValue | null;
}

/** The way from the root to a key, as far as the text has it. */
export interface Trail {
  /** At least the root. */
  readonly stops: readonly Stop[];
  /** Steps that the text does not have. */
  readonly rest: Steps;
}

export function trailTo({ root, aliased }: Parsed, steps: Steps): Trail | Refusal {
  const stops: Stop[] = [{ path: [], node: root, pair: null }];
  for (const [depth, step] of steps.entries()) {
    const node = endOf(stops).node;
    const next = typeof step === 'number' ? entryAt(node, step) : valueUnder(node, step);
    if (next === null) return { stops, rest: steps.slice(depth) };
    if (isAlias(next.node)) return aliasRefusal(next.node.source);
    if (isSharedBy(next.node, aliased)) return SHARED;
    stops.push({ path: steps.slice(0, depth + 1), ...next });
  }
  return { stops, rest: [] };
}

/** The last node of a trail. */
export function endOf(stops: readonly Stop[]): Stop {
  const last = stops.at(-1);
  if (last === undefined) throw new Error('a trail begins at the root');
  return last;
}

function entryAt(node: Node | null, index: number): Omit<Stop, 'path'> | null {
  if (!isSeq<Node | null>(node) || index >= node.items.length) return null;
  return { node: node.items[index] ?? null, pair: null };
}

function valueUnder(node: Node | null, key: string): Omit<Stop, 'path'> | null {
  if (!isMap(node)) return null;
  const pair = pairsOf(node).find((one) => keyOf(one) === key);
  return pair === undefined ? null : { node: pair.value, pair };
}

export const isFlow = (node: Node | null): boolean => (isMap(node) || isSeq(node)) && node.flow === true;

export const isBlock = (node: Node | null): boolean => (isMap(node) || isSeq(node)) && node.flow !== true;

/** Whether there is nothing but a place for a value. */
export const isEmpty = (node: Node | null): boolean =>
  node === null || (isScalar(node) && node.value === null && node.source === '');

/** Where the last word of a node ends, line ends of a long text not counted. */
export const lastWord = (text: string, node: Node): number => text.slice(0, contentEnd(node)).trimEnd().length;

/** Where the last word of a key's value ends, a decimal comma in it being part of it; of none, the key's colon. */
export function endOfPair({ text, outline }: Written, { key, value }: KeyAndValue, path: Steps): number {
  const keyEnd = spanOf(key)[1];
  if (value === null || isEmpty(value)) return keyEnd + (/^\s*:/.exec(text.slice(keyEnd))?.[0].length ?? 0);
  const whole = isScalar(value) ? (outline.valueSpans.get(pathText(path))?.[1] ?? 0) : 0;
  return Math.max(lastWord(text, value), text.slice(0, whole).trimEnd().length);
}
