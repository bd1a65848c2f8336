import { createHash } from 'node:crypto';
import { realpathSync, statSync } from 'node:fs';
import { dirname, resolve, sep } from 'node:path';
import { readDesign, readRemnant } from '../index.js';
import { reasonOf, systemCode } from './machine-error.js';
import { LARGEST_DESIGN, LARGEST_REMNANT, readTextFile } from './read-design-file.js';
import { replaceFile } from './replace-file.js';
import { type Answer, type Asked, isForeign, namesTag, notAllowed, words } from './server-guard.js';
import { EXIT, Stop } from './stop.js';

const YAML = 'application/yaml';

/** Answers what asks for the design and what lies beside it; null where something else is asked for. */
export type ServedDesign = (asked: Asked, body: () => Promise<Uint8Array | null>) => Promise<Answer | null>;

/**
 * The design file, to read and to save, and the remnants that it names.
 *
 * Saving must say which content it means to replace, by its entity tag, and fails where the file holds another meanwhile
 * (RFC 9110, 13.1.1): nothing is written over unseen.
 */
export const servedDesign =
  (file: string): ServedDesign =>
  async (asked, body) => {
    const { method, target } = asked;
    if (target !== '/design' && target !== '/remnants') return null;
    if (isForeign(asked)) return words(403, 'Only the page itself may read this.');
    try {
      if (method === 'GET' || method === 'HEAD')
        return target === '/design' ? designNow(file, asked) : json(remnantsOf(file));
      if (target === '/remnants') return notAllowed('GET', 'HEAD');
      return method === 'PUT' ? await save(file, asked, body) : notAllowed('GET', 'HEAD', 'PUT');
    } catch (error) {
      if (!(error instanceof Stop)) throw error;
      return words(error.exitCode === EXIT.machineFailed ? 500 : 404, error.message);
    }
  };

function designNow(file: string, { headers }: Asked): Answer {
  const { bytes } = readOrdinary(file, { noun: 'design file', largest: LARGEST_DESIGN });
  const common = { 'cache-control': 'no-store', etag: tagOf(bytes) };
  if (namesTag(headers['if-none-match'], tagOf(bytes))) return { status: 304, headers: common, body: new Uint8Array() };
  return { status: 200, headers: { ...common, 'content-type': YAML }, body: bytes };
}

async function save(file: string, { headers }: Asked, body: () => Promise<Uint8Array | null>): Promise<Answer> {
  if (headers['content-type']?.split(';')[0]?.trim().toLowerCase() !== YAML)
    return words(415, `A design is sent as ${YAML}.`);
  const condition = headers['if-match'];
  if (condition === undefined || condition.trim() === '*')
    return words(428, 'Say by If-Match which content of the file is to be replaced.');
  const after = await body();
  if (after === null) return words(413, `A design file is no larger than ${LARGEST_DESIGN / 1024} KB.`);
  try {
    const { bytes: before } = readOrdinary(file, { noun: 'design file', largest: LARGEST_DESIGN });
    // here the comparison is the strong one: a weak tag names no content to replace (RFC 9110, 13.1.1)
    if (!condition.split(',').some((one) => one.trim() === tagOf(before))) return changedMeanwhile(before);
    replaceFile(file, { before, after });
  } catch (error) {
    if (!(error instanceof Stop) || error.exitCode === EXIT.machineFailed) throw error;
    // between looking and replacing somebody else was quicker, or the file is gone
    return changedMeanwhile(readOrdinary(file, { noun: 'design file', largest: LARGEST_DESIGN }).bytes);
  }
  return { status: 204, headers: { etag: tagOf(after), 'cache-control': 'no-store' }, body: new Uint8Array() };
}

const changedMeanwhile = (now: Uint8Array): Answer => ({
  status: 412,
  headers: { 'content-type': YAML, 'cache-control': 'no-store', etag: tagOf(now) },
  body: now,
});

/** Remnants by the name that the design has for them: their text, or why it is not given. */
type Remnants = Readonly<Record<string, { readonly text: string } | { readonly why: string }>>;

/** What lies outside the design's folder is not shown, whichever way the path leads there. */
function remnantsOf(file: string): Remnants {
  const { text } = readOrdinary(file, { noun: 'design file', largest: LARGEST_DESIGN });
  const folder = realpathSync(dirname(file));
  const found = new Map<string, Remnants[string]>();
  readDesign(text, file, (name) => {
    const remnant = found.get(name) ?? remnantIn(folder, name);
    found.set(name, remnant);
    return 'text' in remnant ? readRemnant(remnant.text) : { what: remnant.why, accepted: '' };
  });
  return Object.fromEntries(found);
}

function remnantIn(folder: string, name: string): Remnants[string] {
  try {
    const path = realpathSync(resolve(folder, name));
    if (!path.startsWith(folder.endsWith(sep) ? folder : folder + sep))
      return { why: `${name} lies outside the folder of the design, and only what lies inside is shown on the page.` };
    return { text: readOrdinary(path, { noun: 'remnant', largest: LARGEST_REMNANT }).text };
  } catch (error) {
    if (error instanceof Stop) return { why: error.message };
    const code = systemCode(error);
    if (code === null) throw error;
    return { why: `${name}: ${reasonOf(code)}.` };
  }
}

/** A pipe would keep the server waiting, and a device has no end. */
export function readOrdinary(file: string, kind: Parameters<typeof readTextFile>[1]): ReturnType<typeof readTextFile> {
  const there = statSync(file, { throwIfNoEntry: false });
  if (there !== undefined && !there.isFile() && !there.isDirectory())
    throw new Stop(EXIT.wrongCall, `${file}: this is no ordinary file.`);
  return readTextFile(file, kind);
}

const tagOf = (bytes: Uint8Array): string => `"${createHash('sha256').update(bytes).digest('base64url')}"`;

const json = (value: unknown): Answer => ({
  status: 200,
  headers: { 'content-type': 'application/json', 'cache-control': 'no-store' },
  body: Buffer.from(JSON.stringify(value)),
});
