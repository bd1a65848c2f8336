import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Design, printProblem, readDesign } from '../../src/index.js';

const folder = join(import.meta.dirname, '../../designs');

/** Names of the designs that come with the program: heron, bittern, … */
export const keptDesigns: readonly string[] = readdirSync(folder)
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => file.slice(0, -'.yaml'.length))
  .sort();

export function keptDesign(name: string): Design {
  const file = `${name}.yaml`;
  const reading = readDesign(readFileSync(join(folder, file), 'utf8'), file);
  if ('design' in reading) return reading.design;
  throw new Error(reading.problems.map(printProblem).join('\n\n'));
}
