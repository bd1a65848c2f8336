import { writeFileSync } from 'node:fs';
import { designJsonSchema } from '../index.js';

/** Run at the end of a compile: the JSON Schema of the design file, published beside the program. */
writeFileSync(new URL('../design.schema.json', import.meta.url), `${JSON.stringify(designJsonSchema(), null, 2)}\n`);
