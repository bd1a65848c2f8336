import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join, sep } from 'node:path';

interface Described {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly author?: string | { readonly name: string };
  readonly dependencies?: Readonly<Record<string, string>>;
}

/** Packages that come as one file with others in it, of which the bundler does not know. */
const WHOLE = ['svgo'];

/** Whose licence file has the terms in full, for packages that come without one. */
const TERMS: Readonly<Record<string, string>> = { MIT: 'fflate', ISC: 'kdbush', 'Apache-2.0': 'manifold-3d' };

/**
 * The licences of everything that was bundled, each as its package gives it.
 *
 * @param inputs files that went into the bundle
 * @param beside packages of which other files are handed on
 */
export function licences(modules: string, inputs: readonly string[], beside: readonly string[]): string {
  const bundled = inputs.flatMap((input) => packageOf(input) ?? []);
  const within = WHOLE.flatMap((name) => withAllWithin(modules, name));
  const folders = [...new Set([...bundled, ...within, ...beside])].sort();
  return [
    'This page is made with the following packages. Each stands under its own licence.\n',
    ...folders.map((folder) => section(titleOf(describe(modules, folder)), licenceOf(modules, folder))),
    section('The letters that parts are engraved with', lettersOf(modules)),
  ].join('\n');
}

const section = (title: string, text: string): string => `${'-'.repeat(80)}\n${title}\n\n${text.trim()}\n`;

/** Where the package lies that a file belongs to, from the folder of all of them. */
const packageOf = (path: string): string | null =>
  /node_modules\/((?:.*node_modules\/)?(?:@[^/]+\/)?[^/]+)\//.exec(path.replaceAll('\\', '/'))?.[1] ?? null;

const describe = (modules: string, folder: string): Described =>
  JSON.parse(readFileSync(join(modules, folder, 'package.json'), 'utf8')) as Described;

const titleOf = ({ name, version, license }: Described): string =>
  `${name} ${version}${license === undefined ? '' : `, ${license}`}`;

/** A package and what it depends on, whether that lies within it or beside it. */
function withAllWithin(modules: string, whole: string, known: readonly string[] = [], name = whole): readonly string[] {
  const within = `${whole}/node_modules/${name}`;
  const folder = existsSync(join(modules, within)) ? within : name;
  if (known.includes(folder)) return known;
  const needs = Object.keys(describe(modules, folder).dependencies ?? {});
  return needs.reduce<readonly string[]>(
    (found, next) => withAllWithin(modules, whole, found, next),
    [...known, folder],
  );
}

function licenceOf(modules: string, folder: string): string {
  const own = licenceFile(join(modules, folder));
  if (own !== null) return own;
  const { name, license = '', author } = describe(modules, folder);
  const holder = typeof author === 'string' ? author : author?.name;
  const terms = TERMS[license];
  if (terms === undefined) throw new Error(`${name} has no file of its licence, and ${license} is not known here`);
  const text = licenceFile(join(modules, terms)) ?? '';
  // the holder of another package is not that of this one
  const head = `Copyright (c) ${holder ?? `the authors of ${name}`}. It comes without a file of its licence, ${license}; the terms:`;
  return `${head}\n\n${text.replace(/^.*Copyright \(c\) \d.*\n+/gim, '').trim()}`;
}

function licenceFile(folder: string): string | null {
  const files = readdirSync(folder).filter((file) => /^(?:licen[cs]e|copying)/i.test(file));
  return files.length === 0 ? null : files.map((file) => readFileSync(join(folder, file), 'utf8').trim()).join('\n\n');
}

/** What must be said of the engraved letters stands in their file. */
function lettersOf(modules: string): string {
  const file = join(modules, 'hersheytext', 'svg_fonts', 'HersheySans1.svg');
  const said = /<metadata>([\s\S]*?)<\/metadata>/.exec(readFileSync(file, 'utf8'))?.[1];
  if (said === undefined)
    throw new Error(`${basename(dirname(file))}${sep}${basename(file)} says nothing of its origin`);
  return said;
}
