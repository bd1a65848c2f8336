import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse, stringify } from 'yaml';
import { designForm } from '../../src/design/form.js';
import type { DesignForm, FormNode } from '../../src/model/design-form.js';

const folder = join(import.meta.dirname, '../../designs');

/** The designs that come with the program, by name. */
export const worked: ReadonlyMap<string, string> = new Map(
  [...readdirSync(folder).filter((file) => file.endsWith('.yaml')), 'dunlin/dunlin.yaml'].map((file) => [
    file.replace(/^.*\/|\.yaml$/g, ''),
    readFileSync(join(folder, file), 'utf8'),
  ]),
);

export function workedDesign(name: string): string {
  const text = worked.get(name);
  if (text === undefined) throw new Error(`there is no design ${name}`);
  return text;
}

/** The same design as others would write it: other line ends, within braces, down the page, its last line not ended. */
export const asOthersWrite: Readonly<Record<string, (text: string) => string>> = {
  'as it is': (text) => text,
  'line ends of the other kind': (text) => text.replaceAll('\n', '\r\n'),
  'a mark at its head': (text) => `\ufeff${text}`,
  'all within braces': (text) => stringify(parse(text), { collectionStyle: 'flow' }),
  'all down the page': (text) => stringify(parse(text), { collectionStyle: 'block' }),
  'lists that are not indented': (text) => stringify(parse(text), { indentSeq: false }),
  'a last line without an end': (text) => text.trimEnd(),
};

export function formOf(text: string): DesignForm {
  const form = designForm(text);
  if (form === null) throw new Error('there is no form of the text');
  return form;
}

/** Each node of a form, groups before what is in them. */
export const nodesOf = (text: string): readonly FormNode[] => formOf(text).nodes.flatMap(withThoseIn);

const withThoseIn = (node: FormNode): readonly FormNode[] => [
  node,
  ...(node.kind === 'group' ? node.nodes : node.kind === 'list' ? node.entries : []).flatMap(withThoseIn),
];

export function nodeAt(text: string, path: string): FormNode {
  const node = nodesOf(text).find((one) => one.path === path);
  if (node === undefined) throw new Error(`${path} is not in the form`);
  return node;
}
