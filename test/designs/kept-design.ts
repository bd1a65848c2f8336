import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Design, printProblem, readDesign } from '../../src/index.js';

const folder = join(import.meta.dirname, '../../designs');

/** Names of the designs that come with the program: heron, bittern, … */
export const keptDesigns: readonly string[] = readdirSync(folder)
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => file.slice(0, -'.yaml'.length))
  .sort();

export const keptDesign = (name: string): Design => designFrom(folder, `${name}.yaml`);

/** A new lens for Teal, whose boxes stand. */
export const secondLens = (): Design => designFrom(join(folder, 'second-lens'), 'teal-210.yaml');

/** Heron with bought holders and nothing ahead of the lens: the camera alone. */
export const bareHeron = (): Design => designFrom(import.meta.dirname, BARE);

/** Its text. */
export const bareHeronText = (): string => readFileSync(join(import.meta.dirname, BARE), 'utf8');

const BARE = 'bare-heron.yaml';

function designFrom(place: string, file: string): Design {
  const reading = readDesign(readFileSync(join(place, file), 'utf8'), file);
  if ('design' in reading) return reading.design;
  throw new Error(reading.problems.map(printProblem).join('\n\n'));
}
