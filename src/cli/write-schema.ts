import { writeFileSync } from 'node:fs';
import { designJsonSchema, loadBench, loadPrices, loadProcess, loadSitting, loadSurvey } from '../index.js';

/** Run at the end of a compile: the JSON Schema of each file that people write, published beside the program. */
const schemas = {
  design: designJsonSchema(),
  'bench-readings': (await loadBench()).benchJsonSchema(),
  'sitting-log': (await loadSitting()).sittingLogJsonSchema(),
  lenses: (await loadSurvey()).lensesJsonSchema(),
  prices: (await loadPrices()).pricesJsonSchema(),
  process: (await loadProcess()).processJsonSchema(),
};
for (const [name, schema] of Object.entries(schemas))
  writeFileSync(new URL(`../${name}.schema.json`, import.meta.url), `${JSON.stringify(schema, null, 2)}\n`);
