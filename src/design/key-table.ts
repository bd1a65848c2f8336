/** One key of a file that people write, as documented. */
export interface DocumentedKey {
  /** `holders[].filmDepth` */
  readonly path: string;
  readonly description: string;
  /** What could be written after the key. */
  readonly example: string;
  /** What holds where the key is not given; null where it must be given, or where nothing stands in for it. */
  readonly whenAbsent: string | null;
  readonly required: boolean;
  /** Keys of the group, where it is one. */
  readonly keys: readonly string[];
}

/** What is looked at of a JSON Schema. */
export interface SchemaNode {
  readonly type?: string | readonly string[];
  readonly enum?: readonly string[];
  readonly prefixItems?: readonly SchemaNode[];
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly description?: string;
  readonly examples?: readonly string[];
  readonly whenAbsent?: string;
  /** Whether what is less than nothing is taken. */
  readonly mayBeNegative?: boolean;
  readonly default?: unknown;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly items?: SchemaNode | boolean;
  readonly anyOf?: readonly SchemaNode[];
}

/** All keys of a file, in the order of its JSON Schema, groups before what is in them. */
export const keyTable = (schema: Readonly<Record<string, unknown>>): readonly DocumentedKey[] =>
  keysOf(schema as SchemaNode, ''); // JSON Schema has this form

function keysOf(schema: SchemaNode, path: string): DocumentedKey[] {
  const { properties = {}, required = [] } = groupOf(schema);
  return Object.entries(properties).flatMap(([key, child]) => {
    const here = path === '' ? key : `${path}.${key}`;
    const list = isList(child) && groupOf(child).properties !== undefined;
    const documented: DocumentedKey = {
      path: here,
      description: child.description ?? '',
      example: child.examples?.[0] ?? '',
      whenAbsent: child.whenAbsent ?? defaultInWords(child.default),
      required: required.includes(key),
      keys: Object.keys(groupOf(child).properties ?? {}),
    };
    return [documented, ...keysOf(child, list ? `${here}[]` : here)];
  });
}

/** Whether entries may stand in it, be it in one of several choices. */
const isList = ({ items, anyOf = [] }: SchemaNode): boolean => typeof items === 'object' || anyOf.some(isList);

/** The schema of a group of keys: itself, its entries where it is a list, or the one choice that is either. */
function groupOf(schema: SchemaNode): SchemaNode {
  if (schema.properties !== undefined) return schema;
  if (typeof schema.items === 'object') return groupOf(schema.items);
  return schema.anyOf?.map(groupOf).find(({ properties }) => properties !== undefined) ?? {};
}

function defaultInWords(value: unknown): string | null {
  if (value === undefined) return null;
  if (Array.isArray(value)) return value.length === 0 ? 'none' : `[${value.join(', ')}]`;
  return typeof value === 'object' ? 'the defaults of its keys' : String(value);
}
