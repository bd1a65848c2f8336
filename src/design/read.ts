import { completeDesign } from './complete.js';
import { inconsistencies, slideStands, spacersMeasured } from './consistency.js';
import { defaultedPaths } from './defaulted.js';
import type { Design } from './design.js';
import type { Problem } from './problem.js';
import { readDocument } from './read-document.js';
import { plainReader, type Reader } from './reader.js';
import { designSchema, type Written } from './schema.js';
import { designFile } from './source.js';
import { type FindRemnant, noRemnants, type RemnantFiles, remnantFiles } from './stock.js';

/**
 * Reads a design file: the design with its defaults filled in, or what is wrong, in the order of the file.
 *
 * @param file name of the file, for the messages alone
 * @param find gives the remnants that the design names by their files
 */
export function readDesign(
  text: string,
  file: string,
  find: FindRemnant = noRemnants,
  reader: Reader = plainReader,
): { readonly design: Design } | { readonly problems: readonly Problem[] } {
  let files: RemnantFiles = new Map();
  const check = (written: Written, typed: unknown) => {
    files = remnantFiles(written, find);
    const faults = [...inconsistencies(written, files), ...slideStands(written, typed)];
    // the design is completed below; only where a spacer was measured is it wanted before
    if (faults.length > 0 || !written.holders?.some(({ spacer }) => spacer)) return faults;
    return spacersMeasured(completeDesign(written, defaultedPaths(typed), files));
  };
  const read = readDocument(
    text,
    file,
    { schema: designSchema, kind: designFile, firstKey: 'name: Heron', check },
    reader,
  );
  if ('problems' in read) return read;
  return { design: completeDesign(read.value, defaultedPaths(read.written), files) };
}
