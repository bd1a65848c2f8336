import { quoted } from '../units/quantity.js';

export interface NameTrouble {
  readonly what: string;
  readonly accepted: string;
}

/** A folder of that length still leaves room for the files in it on every system. */
const LONGEST_NAME = 60;

/** Names that one common system keeps for devices, with any ending: no folder can be called so there. */
const DEVICES = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/;

/** Control characters, lone halves of pairs, and marks that turn the writing round. */
const UNWRITABLE = /[\p{Cc}\p{Cs}\p{Co}\p{Zl}\p{Zp}\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff\ufffd]/u;

/** In lower case, its words joined by hyphens: letters, their marks and digits of any script stay. */
export const slugOf = (name: string): string =>
  name
    .normalize('NFC')
    .toLowerCase()
    .split(/[^\p{L}\p{M}\p{N}]+/u)
    .filter((word) => word !== '')
    .join('-');

/** A line of text that can be printed and engraved. */
export function lineTrouble(text: string, longest = LONGEST_NAME): NameTrouble | null {
  if (text.trim() === '') return { what: 'The text is empty.', accepted: 'Write at least one letter or digit.' };
  if ([...text].length > longest)
    return { what: `The text is longer than ${longest} characters.`, accepted: 'Write a shorter one.' };
  if (UNWRITABLE.test(text))
    return {
      what: `${quoted(text)} holds a character that cannot be written.`,
      accepted: 'Write plain text on one line.',
    };
  return null;
}

/** Longer paths are refused by one common system. */
const LONGEST_PATH = 250;

/** The name of a file that is read, with folders before it. */
export function pathTrouble(path: string): NameTrouble | null {
  const accepted = 'Write the name of a file, such as rack/plywood-4.05-6.json.';
  if (path.trim() === '') return { what: 'The text is empty.', accepted };
  if ([...path].length > LONGEST_PATH) return { what: `The text is longer than ${LONGEST_PATH} characters.`, accepted };
  if (UNWRITABLE.test(path)) return { what: `${quoted(path)} holds a character that no file name has.`, accepted };
  return null;
}

/** A name that a file or a folder is called after. */
export function nameTrouble(name: string): NameTrouble | null {
  const trouble = lineTrouble(name);
  if (trouble !== null) return trouble;
  const accepted = 'Write a name of letters, digits and spaces, such as Heron.';
  if (/[/\\]/.test(name)) return { what: `${quoted(name)} would lead to another folder.`, accepted };
  const slug = slugOf(name);
  if (slug === '') return { what: `${quoted(name)} has neither a letter nor a digit.`, accepted };
  if (DEVICES.test(slug)) return { what: `No folder can be called ${quoted(name)} on every system.`, accepted };
  return null;
}
