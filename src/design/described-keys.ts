import { isSeq, type Node, parseDocument } from 'yaml';
import { designJsonSchema } from './json-schema.js';
import type { SchemaNode } from './key-table.js';

/** What the schema says of a key, with the keys in it: the form of a design before there is a design in it. */
export type DescribedKey = DescribedField | DescribedGroup | DescribedList;

interface Described {
  readonly key: string;
  readonly description: string;
  readonly example: string;
  readonly whenAbsent: string | null;
  readonly required: boolean;
}

export interface DescribedField extends Described {
  readonly kind: 'field';
  readonly options: readonly string[];
  readonly unit: string;
  readonly mayBeNegative: boolean;
  /** `text` must be quoted where YAML would see a number in it, `plain` must not be quoted: whole numbers and flags. */
  readonly takes: 'text' | 'quantity' | 'plain';
  /** Where several values may stand: whether one may stand alone, without a list, and whether there may be none. */
  readonly several: { readonly alone: boolean; readonly none: boolean } | null;
}

export interface DescribedGroup extends Described {
  readonly kind: 'group';
  readonly keys: readonly DescribedKey[];
  /** That may stand there in its place. */
  readonly words: readonly string[];
}

export interface DescribedList extends Described {
  readonly kind: 'list';
  readonly entry: DescribedGroup;
  readonly most: number;
  /** A value that may stand there in its place. */
  readonly alone: DescribedField | null;
}

/** Whatever stands under a path such as `holders[1].filmDepth`; an entry of a list is the group of its keys. */
export function describedAt(steps: readonly (string | number)[]): DescribedKey | null {
  let [found, keys]: [DescribedKey | null, readonly DescribedKey[]] = [null, designKeys];
  for (const step of steps) {
    found = typeof step === 'number' ? entryOf(found) : (keys.find(({ key }) => key === step) ?? null);
    if (found === null) return null;
    keys = found.kind === 'group' ? found.keys : [];
  }
  return found;
}

const entryOf = (found: DescribedKey | null): DescribedGroup | null => (found?.kind === 'list' ? found.entry : null);

function keysOf({ properties = {}, required = [] }: SchemaNode): readonly DescribedKey[] {
  return Object.entries(properties).map(([key, child]) => described(key, child, required.includes(key)));
}

function described(key: string, schema: SchemaNode, required: boolean): DescribedKey {
  const choices = schema.anyOf ?? [schema];
  const { description = '', examples: [example = ''] = [] } = schema;
  const whenAbsent = schema.whenAbsent ?? defaultInWords(schema.default);
  const about = { key, description, example, whenAbsent, required };
  const group = choices.find(({ properties }) => properties !== undefined);
  if (group !== undefined)
    return { ...about, kind: 'group', keys: keysOf(group), words: choices.flatMap(({ enum: words = [] }) => words) };
  const list = choices.find(({ items }) => typeof items === 'object' && items.properties !== undefined);
  if (list !== undefined && typeof list.items === 'object') {
    const { items } = list;
    const entry = described(key, { ...items, description: items.description ?? description }, true);
    if (entry.kind !== 'group') throw new Error('entries with keys are groups');
    const one = choices.find((choice) => choice !== list);
    const alone = one === undefined ? null : field({ ...about, ...aboutOf(one) }, [one]);
    return {
      ...about,
      kind: 'list',
      entry: { ...entry, example: exampleOf(entry, example) },
      most: list.maxItems ?? 1,
      alone,
    };
  }
  return field(about, choices, schema.mayBeNegative);
}

const aboutOf = ({ description = '', examples: [example = ''] = [] }: SchemaNode) => ({ description, example });

function field(about: Described, choices: readonly SchemaNode[], mayBeNegative = false): DescribedField {
  const array = choices.find(({ items, prefixItems }) => items !== undefined || prefixItems !== undefined);
  const types = choices.flatMap(({ type = [] }) => type);
  const example = about.example.replace(/^\[(.*)\]$|^"(.*)"$/, '$1$2');
  return {
    ...about,
    kind: 'field',
    example,
    options: types.includes('boolean') ? ['true', 'false'] : choices.flatMap(({ enum: words = [] }) => words),
    unit: unitOf(example),
    mayBeNegative,
    takes: types.includes('number') || array !== undefined ? 'quantity' : types.includes('string') ? 'text' : 'plain',
    several:
      array === undefined
        ? null
        : { alone: choices.length > 1, none: choices.length === 1 && array.minItems === undefined },
  };
}

/** Of the first value in an example. */
function unitOf(example: string): string {
  const [first = ''] = example.split(', ');
  if (/^f\/[\d.]+$/.test(first)) return 'f-number';
  return /^-?[\d./]+ (mm|m|g|kg|s|J|%|mm\/s|kg\/m3|N\/mm2)$/.exec(first)?.[1] ?? '';
}

/** Of an entry: its own, the first in that of its list, or made from those of the keys that it must have. */
function exampleOf({ example, keys }: DescribedGroup, ofList: string): string {
  if (example !== '') return example;
  const list = parseDocument(ofList).contents;
  const range = isSeq<Node>(list) ? list.items[0]?.range : undefined;
  if (range) return ofList.slice(range[0], range[1]);
  const needed = keys.flatMap((one) => (one.required ? [`${one.key}: ${one.example}`] : []));
  return `{ ${needed.join(', ')} }`;
}

function defaultInWords(value: unknown): string | null {
  if (value === undefined) return null;
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.join(', ');
  return typeof value === 'object' ? 'the defaults of its keys' : String(value);
}

/** The keys of a design, in the order of the schema. */
export const designKeys: readonly DescribedKey[] = keysOf(designJsonSchema() as SchemaNode); // JSON Schema has this form
