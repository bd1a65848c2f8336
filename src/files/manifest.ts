import type { OutputFile } from '../model/output-file.js';

/** What a run wrote, with the digest of each file: so that a later run knows its own from what somebody put beside or changed. */
export const MANIFEST = '.tailboard.json';

/**
 * The list of an output folder's files that lies in the folder itself.
 *
 * @param digestOf SHA-256 of some bytes, in hexadecimal
 */
export function manifestOf(files: readonly OutputFile[], digestOf: (bytes: Uint8Array) => string): OutputFile {
  const seen = new Set<string>([MANIFEST]);
  for (const { path } of files) {
    const key = path.toLowerCase();
    if (!staysInside(path) || seen.has(key)) throw new Error(`${path} cannot be a file of an output folder`);
    seen.add(key);
  }
  const listed = files
    .map(({ path, bytes }) => ({ path, sha256: digestOf(bytes) }))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
  const text = `${JSON.stringify({ schema: 1, files: listed }, null, 2)}\n`;
  return { path: MANIFEST, bytes: new TextEncoder().encode(text) };
}

const staysInside = (path: string): boolean =>
  path.split('/').every((step) => step !== '' && step !== '.' && step !== '..' && !/[\\:\0]/.test(step));
