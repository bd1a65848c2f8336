import { closeSync, openSync, readSync } from 'node:fs';
import { type Design, printProblem, readDesign } from '../index.js';
import { reasonOf, systemCode } from './machine-error.js';
import { EXIT, Stop } from './stop.js';

/** A design file is a page or two; what is longer is something else. */
const LARGEST_BYTES = 256 * 1024;

/** The design in a file; where there is none, the command ends with what is wrong and where. */
export const readDesignFile = (file: string): Design => readDesignAndText(file).design;

/** The same, with the text that it was read from. */
export function readDesignAndText(file: string): { readonly design: Design; readonly text: string } {
  const text = readText(file);
  const result = readDesign(text, file);
  if ('design' in result) return { design: result.design, text };
  throw new Stop(EXIT.wrongCall, result.problems.map(printProblem).join('\n\n'));
}

function readText(file: string): string {
  const bytes = readBytes(file);
  if (bytes.length > LARGEST_BYTES)
    throw new Stop(EXIT.wrongCall, `${file}: larger than ${LARGEST_BYTES / 1024} KB, so it is no design file.`);
  // what is not UTF-8 becomes a replacement character, which readDesign finds and shows where it stands
  return new TextDecoder('utf-8').decode(bytes);
}

/** What a file holds, or its beginning where it holds more than a design file may. */
function readBytes(file: string): Uint8Array {
  const bytes = new Uint8Array(LARGEST_BYTES + 1);
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
    throw new Stop(code === 'EIO' ? EXIT.machineFailed : EXIT.wrongCall, `${file}: ${reasonOf(code)}.`);
  }
  return bytes.subarray(0, length);
}
