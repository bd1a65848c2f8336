import { isMap, isScalar, isSeq, parseDocument, type Scalar } from 'yaml';
import { splitValues } from './decimal-comma.js';
import type { DescribedField, DescribedKey } from './described-keys.js';
import { NONE } from './written-text.js';

/** What was typed into a field, as the values that it stands for. */
export interface Typed {
  readonly values: readonly string[];
  /** Whether they are written as a list. */
  readonly isList: boolean;
  readonly takes: DescribedField['takes'];
}

export function typedInto(described: DescribedKey, typed: string): Typed {
  if (described.kind === 'group') return { values: [typed], isList: false, takes: 'text' };
  const field = described.kind === 'list' ? described.alone : described;
  const takes = field?.takes ?? 'quantity';
  const several = field?.several ?? null;
  if (several === null) return { values: [typed], isList: false, takes };
  if (several.none && typed === NONE) return { values: [], isList: true, takes };
  const split = splitValues(several.alone || takes !== 'quantity' ? typed : bySides(typed));
  const values = split.length === 0 ? [typed] : split;
  return { values, isList: values.length > 1 || !several.alone, takes };
}

/** `600 x 400 mm`, as sheets and pictures are spoken of, with a comma for the sign; a unit behind the last is that of all. */
function bySides(typed: string): string {
  const sides = typed.split(/\s*[x×]\s*/i);
  if (sides.length < 2 || !sides.every((side) => /^\d/.test(side))) return typed;
  const unit = /[\d\s/.]([a-z"]+)$/i.exec(sides.at(-1) ?? '')?.[1] ?? '';
  return sides.map((side) => (/[\d]$/.test(side) ? `${side} ${unit}`.trim() : side)).join(', ');
}

/** The typed values as a key's value in YAML, in one line. */
export function yamlOf({ values, isList, takes }: Typed, inFlow: boolean, before?: Scalar): string {
  const write = (value: string, flow: boolean) => scalarText(value, { inFlow: flow, takes, before });
  if (isList) return `[${values.map((value) => write(value, true)).join(', ')}]`;
  return write(values[0] ?? '', inFlow);
}

interface Standing {
  /** Whether it stands within brackets, where a comma ends a value. */
  readonly inFlow: boolean;
  readonly takes: DescribedField['takes'];
  /** What stood there before: its quotes are kept. */
  readonly before: Scalar | undefined;
}

/** A value that reads back as it was typed: without quotes where it can do without, or in those that stood there. */
export function scalarText(typed: string, { inFlow, takes, before }: Standing): string {
  const plain = readsPlain(typed, inFlow, takes);
  if (plain && takes === 'plain') return typed;
  const double = JSON.stringify(typed);
  if (before?.type === 'QUOTE_DOUBLE') return double;
  if (before?.type === 'QUOTE_SINGLE' && !/\p{Cc}/u.test(typed)) return `'${typed.replaceAll("'", "''")}'`;
  return plain ? typed : double;
}

/** Whether YAML takes a text for itself where it stands without quotes: nothing cut off, nothing split, no number in place of a name. */
function readsPlain(typed: string, inFlow: boolean, takes: DescribedField['takes']): boolean {
  if (typed === '' || typed !== typed.trim() || /\p{Cc}/u.test(typed)) return false;
  const places = inFlow ? [`[${typed}]`, `[x, ${typed}, x]`, `{ k: ${typed} }`] : [`k: ${typed}`];
  return places.every((place) => {
    const { contents, errors, warnings } = parseDocument(place, { prettyErrors: false, logLevel: 'silent' });
    if (errors.length + warnings.length > 0) return false;
    const items = isMap(contents) || isSeq(contents) ? contents.items : [];
    const item: unknown = items.length === 3 ? items[1] : items.length === 1 ? items[0] : null;
    const value = isMap(contents) && isPair(item) ? item.value : item;
    if (!isScalar(value) || value.type !== 'PLAIN' || value.source !== typed) return false;
    return takes !== 'text' || typeof value.value === 'string';
  });
}

const isPair = (item: unknown): item is { readonly value: unknown } =>
  typeof item === 'object' && item !== null && 'value' in item && 'key' in item;
