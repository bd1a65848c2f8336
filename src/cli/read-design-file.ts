import { closeSync, openSync, readSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { type Design, printProblem, readDesign, readRemnant } from '../index.js';
import { reasonOf, systemCode } from './machine-error.js';
import { EXIT, Stop } from './stop.js';

/** A design file is a page or two; what is longer is something else. */
export const LARGEST_DESIGN = 256 * 1024;
/** A sheet that was cut full of small parts has some thousand corners. */
export const LARGEST_REMNANT = 1024 * 1024;

/** The design in a file; where there is none, the command ends with what is wrong and where. */
export const readDesignFile = (file: string): Design => readDesignAndText(file).design;

/** The same, with the text that it was read from. */
export function readDesignAndText(file: string): { readonly design: Design; readonly text: string } {
  const { text } = readTextFile(file);
  const result = readDesign(text, file, remnantsOf(file));
  if ('design' in result) return { design: result.design, text };
  throw new Stop(EXIT.wrongCall, result.problems.map(printProblem).join('\n\n'));
}

/** Where a remnant lies that a design names: its path counts from the folder of the design file. */
export const remnantPath = (designFile: string, remnant: string): string => resolve(dirname(designFile), remnant);

/** What reads the remnants that a design file names. */
export const remnantsOf =
  (designFile: string) =>
  (remnant: string): ReturnType<typeof readRemnant> =>
    findRemnant(remnantPath(designFile, remnant));

/** A remnant that was named on the command line; where the file is none, the command ends with what would be taken. */
export function readRemnantFile(
  option: string,
  path: string,
): Exclude<ReturnType<typeof readRemnant>, { what: string }> {
  const found = findRemnant(path);
  if (!('what' in found)) return found;
  const what = found.what.startsWith(path) ? found.what : `${path}: ${found.what}`;
  throw new Stop(
    EXIT.wrongCall,
    `${option}: ${what} ${found.accepted.replace(' from the folder in which the design lies', ' of a remnant')}`,
  );
}

function findRemnant(path: string): ReturnType<typeof readRemnant> {
  const bytes = readBytes(path, LARGEST_REMNANT);
  if (typeof bytes === 'string') {
    if (bytes === 'EIO') throw new Stop(EXIT.machineFailed, `${path}: ${reasonOf(bytes)}.`);
    return {
      what: `${path}: ${reasonOf(bytes)}.`,
      accepted: 'Name the file from the folder in which the design lies.',
    };
  }
  const name = 'Name a file that an earlier build wrote into its folder remnants.';
  if (bytes.length > LARGEST_REMNANT)
    return { what: `The file is larger than ${LARGEST_REMNANT / 1024} KB, so it is no remnant.`, accepted: name };
  return readRemnant(new TextDecoder('utf-8').decode(bytes));
}

/** What none of a kind of file exceeds, in bytes, and what such a file is called. */
interface TextKind {
  readonly noun: string;
  readonly largest: number;
}

/** A file that people write: its bytes, and the text with the mark at its head that some editors put there. */
export function readTextFile(
  file: string,
  { noun, largest }: TextKind = { noun: 'design file', largest: LARGEST_DESIGN },
): { readonly text: string; readonly bytes: Uint8Array } {
  const bytes = readBytes(file, largest);
  if (typeof bytes === 'string')
    throw new Stop(bytes === 'EIO' ? EXIT.machineFailed : EXIT.wrongCall, `${file}: ${reasonOf(bytes)}.`);
  if (bytes.length > largest)
    throw new Stop(EXIT.wrongCall, `${file}: larger than ${largest / 1024} KB, so it is no ${noun}.`);
  // what is not UTF-8 becomes a replacement character, which readDesign finds and shows where it stands
  return { text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes), bytes };
}

/** What a file holds, or its beginning where it holds more than `most` bytes; the system's code where it cannot be read. */
function readBytes(file: string, most: number): Uint8Array | string {
  const bytes = new Uint8Array(most + 1);
  let length = 0;
  try {
    const opened = openSync(file, 'r');
    try {
      for (let read = -1; read !== 0 && length < bytes.length; length += read)
        read = readSync(opened, bytes, length, bytes.length - length, null);
    } finally {
      closeSync(opened);
    }
  } catch (error) {
    const code = systemCode(error);
    if (code === null) throw error;
    return code;
  }
  return bytes.subarray(0, length);
}
