import type { DesignForm, FormField, FormGroup, FormList, FormNode } from '../model/design-form.js';
import {
  type DescribedField,
  type DescribedGroup,
  type DescribedKey,
  type DescribedList,
  designKeys,
} from './described-keys.js';
import { plainReader, type Reader } from './reader.js';
import { designFile } from './source.js';
import { isHolding, stepsOf, valueAt, writtenText } from './written-text.js';
import type { Outline } from './yaml.js';

/** The text of a design, and what its YAML says. */
interface Read {
  readonly text: string;
  readonly outline: Outline;
}

/**
 * The keys of the schema, with what a text has written for each of them: a value that no design takes is there as it was
 * written. What the schema does not know is not.
 *
 * @returns null where the text is no group of keys at all
 */
export function designForm(given: string, reader: Reader = plainReader): DesignForm | null {
  const text = given.replace(/^\ufeff/, '');
  if (text.length > designFile.largest) return null;
  const outline = reader.outline({ file: '', text, kind: designFile });
  if (!('value' in outline) || !isHolding(outline.value) || Array.isArray(outline.value)) return null;
  const read: Read = { text, outline };
  return { nodes: designKeys.map((key) => nodeOf(read, key, key.key)) };
}

function nodeOf(read: Read, described: DescribedKey, path: string): FormNode {
  switch (described.kind) {
    case 'field':
      return fieldOf(read, described, path);
    case 'group':
      return groupOf(read, described, path);
    case 'list':
      return listOf(read, described, path);
  }
}

function aboutOf({ outline }: Read, described: DescribedKey, path: string) {
  const { key, description, example, whenAbsent, required } = described;
  const written = valueAt(outline.value, stepsOf(path)) !== undefined;
  return { path, key, label: inWords(key), description, required, written, example, whenAbsent };
}

/** `focalLength` as focal length. */
const inWords = (key: string): string => key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

function fieldOf(read: Read, described: DescribedField, path: string): FormField {
  const { options, unit, several, mayBeNegative } = described;
  const value = writtenText(read.text, read.outline, path, described);
  const about = aboutOf(read, described, path);
  return { kind: 'field', ...about, value, options, unit, mayBeNegative, several: several !== null };
}

function groupOf(read: Read, described: DescribedGroup, path: string): FormGroup {
  return {
    kind: 'group',
    ...aboutOf(read, described, path),
    nodes: described.keys.map((key) => nodeOf(read, key, `${path}.${key.key}`)),
    words: described.words,
    word: read.outline.texts.get(path) ?? null,
  };
}

function listOf(read: Read, described: DescribedList, path: string): FormList {
  const about = aboutOf(read, described, path);
  const value = valueAt(read.outline.value, stepsOf(path));
  const entries = (Array.isArray(value) ? value : []).map((_, index): FormGroup => {
    const label = `${about.label.replace(/s$/, '')} ${index + 1}`;
    return { ...groupOf(read, described.entry, `${path}[${index}]`), key: String(index), label };
  });
  const names = entries.map((_, index) => read.outline.texts.get(`${path}[${index}].name`));
  const single = read.outline.texts.get(path) ?? null;
  const { most } = described;
  const alone = described.alone === null ? null : { ...fieldOf(read, described.alone, path), value: single };
  return { kind: 'list', ...about, entries, alone, fresh: freshEntry(described.entry.example, names), most };
}

/** The example, under a name that is not taken. */
function freshEntry(example: string, taken: readonly (string | undefined)[]): string {
  const name = /^\{ name: ([^,{}]+)/.exec(example)?.[1];
  if (name === undefined || !taken.includes(name)) return example;
  let number = 2;
  while (taken.includes(`${name} ${number}`)) number += 1;
  return example.replace(name, `${name} ${number}`);
}
