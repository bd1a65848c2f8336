import { readdirSync } from 'node:fs';
import { join } from 'node:path';

/** Where the kept sample has what its sheets left over. */
export const REMNANTS = join(import.meta.dirname, '..', '..', 'output', 'heron', 'remnants');

/** A remnant of its plywood: what fell out of the window of a part. */
export const REMNANT = ((): string => {
  const [first] = readdirSync(REMNANTS)
    .filter((file) => /^plywood-4\.05-\d+-\w+\.\d+\.\d+\.json$/.test(file))
    .sort();
  if (first === undefined) throw new Error('the sample has left no window over');
  return first;
})();
