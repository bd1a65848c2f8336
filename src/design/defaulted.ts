import * as z from 'zod';
import type { Design } from './design.js';
import { designSchema } from './schema.js';

/** Paths of the keys with a default that the user did not write; of a group that is missing whole, its own path alone. */
export const defaultedPaths = (written: unknown): readonly string[] => missingIn(designSchema, written, '');

/** Whether the user left a key to its default, be it by leaving out the group that it belongs to. */
export const isDefaulted = (design: Pick<Design, 'defaulted'>, path: string): boolean =>
  design.defaulted.some(
    (missing) => path === missing || path.startsWith(`${missing}.`) || path.startsWith(`${missing}[`),
  );

function missingIn(schema: z.core.$ZodType, written: unknown, path: string): readonly string[] {
  const inner = unwrapped(schema);
  if (inner instanceof z.ZodUnion)
    return inner.options.flatMap((option) => (option instanceof z.ZodObject ? missingIn(option, written, path) : []));
  if (inner instanceof z.ZodArray && Array.isArray(written))
    return written.flatMap((entry, index) => missingIn(inner.element, entry, `${path}[${index}]`));
  if (!(inner instanceof z.ZodObject) || typeof written !== 'object' || written === null || Array.isArray(written))
    return [];
  return Object.entries<z.core.$ZodType>(inner.shape).flatMap(([key, child]) => {
    const here = path === '' ? key : `${path}.${key}`;
    if (Object.hasOwn(written, key)) return missingIn(child, (written as Record<string, unknown>)[key], here); // an own key
    return hasDefault(child) ? [here] : [];
  });
}

const hasDefault = (schema: z.core.$ZodType): boolean =>
  schema instanceof z.ZodPrefault || z.globalRegistry.get(unwrapped(schema))?.whenAbsent !== undefined;

function unwrapped(schema: z.core.$ZodType): z.core.$ZodType {
  return schema instanceof z.ZodPrefault || schema instanceof z.ZodOptional ? unwrapped(schema.def.innerType) : schema;
}
