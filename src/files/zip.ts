import { zipSync } from 'fflate';

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
