import * as z from 'zod';
import { designSchema } from './schema.js';

/** The JSON Schema (2020-12) of the design file, for editors and other programs. */
export const designJsonSchema = (): Record<string, unknown> =>
  jsonSchemaOf(designSchema, 'Design of a sliding-box camera');

/** The JSON Schema of any file whose keys are described by the fields of `fields.ts`. */
export function jsonSchemaOf(described: z.ZodType, title: string): Record<string, unknown> {
  const schema = z.toJSONSchema(described, {
    io: 'input',
    // zod drops examples where a text becomes a number, as if they were numbers: ours are texts of the design file
    override: ({ jsonSchema }) => {
      const { example } = jsonSchema;
      if (example === undefined) return;
      delete jsonSchema.example;
      jsonSchema.examples = [example];
    },
  });
  return { title, ...schema };
}
