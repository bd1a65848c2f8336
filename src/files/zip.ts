import { unzipSync, zipSync } from 'fflate';

export interface ZipEntry {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/**
 * One archive of the entries, in their order. A zip stores wall-clock time without a zone: a fixed time that names none
 * gives the same bytes everywhere, and noon exists on every clock.
 */
export const zip = (entries: readonly ZipEntry[]): Uint8Array =>
  zipSync(Object.fromEntries(entries.map(({ path, bytes }) => [path, bytes])), { mtime: '1980-01-01T12:00:00' });

/** An entry that unpacks to more is none of ours, and a small archive can hold an endless one; bytes. */
const LARGEST = 2 ** 26;

/** The entries of an archive whose paths are wanted, in their order; null where it is no archive, or a broken one. */
export function unzip(bytes: Uint8Array, wanted: (path: string) => boolean): readonly ZipEntry[] | null {
  try {
    const found = unzipSync(bytes, { filter: ({ name, originalSize }) => wanted(name) && originalSize <= LARGEST });
    return Object.entries(found).map(([path, entry]) => ({ path, bytes: entry }));
  } catch {
    return null;
  }
}
