import { createHash, randomBytes } from 'node:crypto';
import {
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { MANIFEST, manifestOf, type OutputFile } from '../index.js';
import { onInterrupt } from './interrupt.js';
import { machineStop, systemCode } from './machine-error.js';
import { EXIT, Stop } from './stop.js';

/** Other runs into the same folder may come between our two renames this often before we give up. */
const TRIES = 20;

/**
 * Puts files into a folder, all of them or none: they are written into a folder beside it, which then takes its place.
 * Whatever goes wrong before that, the earlier content stays as it was and nothing is left lying about. Of two runs
 * into one folder the later wins, and never a mixture.
 */
export async function writeFolder(folder: string, files: readonly OutputFile[]): Promise<void> {
  const target = resolve(folder);
  const manifest = manifestOf(files, digestOf);
  refuseForeign(folder);
  const staging = join(dirname(target), `.tailboard-${randomBytes(6).toString('hex')}.tmp`);
  let firstMade: string | undefined;
  const clear = () => {
    rmSync(staging, { recursive: true, force: true });
    removeEmpty(firstMade, dirname(target));
  };
  const release = onInterrupt(clear);
  try {
    firstMade = mkdirSync(dirname(target), { recursive: true });
    mkdirSync(staging);
    for (const { path, bytes } of [...files, manifest]) {
      const file = join(staging, ...path.split('/'));
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, bytes, { flag: 'wx', flush: true });
      // a signal is heard only between two files, so nothing is under way when it clears up
      await setImmediate();
    }
    refuseForeign(folder);
    putInPlace(staging, target);
  } catch (error) {
    clear();
    throw machineStop(folder, error);
  } finally {
    release();
  }
}

/** Ends the command where the folder is no folder, or holds anything that an earlier run did not write. */
export function refuseForeign(folder: string): void {
  try {
    const foreign = settled(resolve(folder));
    if (foreign !== null) throw new Stop(EXIT.wrongCall, `${folder}: ${foreign}`);
  } catch (error) {
    throw machineStop(folder, error);
  }
}

/** Another run may put its output here while we look: then what we saw was a mixture, and we look again. */
function settled(target: string): string | null {
  for (let tries = 1; ; tries++) {
    const before = identity(target);
    if (before === null) return null;
    const foreign = ifStillThere(() => foreignIn(target));
    if (identity(target) === before || tries === TRIES) return foreign;
  }
}

function ifStillThere(look: () => string | null): string | null {
  try {
    return look();
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return null;
    throw error;
  }
}

/** Tells a folder from the one that took its place; null where there is none. */
const identity = (path: string): string | null => {
  const stats = lstatSync(path, { throwIfNoEntry: false });
  return stats === undefined ? null : `${stats.dev}:${stats.ino}`;
};

/** Why what stands at a path may not be replaced; null where it may. */
function foreignIn(target: string): string | null {
  const stats = lstatSync(target);
  if (stats.isSymbolicLink()) return 'this is a link. Name the folder that it leads to.';
  if (!stats.isDirectory()) return 'this is a file, not a folder.';
  if (!relative(target, process.cwd()).startsWith('..'))
    return 'you are standing in this folder, and it would be replaced. Go out of it first.';
  const written = readManifest(target);
  const folders = new Set([...written.keys()].flatMap(foldersOf));
  for (const path of contents(target)) {
    if (folders.has(path) || (path === MANIFEST && written.size > 0)) continue;
    const digest = written.get(path);
    if (digest === undefined) return `holds ${path}, which no earlier run wrote. Move it away, or name another folder.`;
    if (digest !== digestOf(readFileSync(join(target, ...path.split('/')))))
      return `${path} was changed since it was written. Move it away, or name another folder.`;
  }
  return null;
}

/** The folders on the way to a file, each with a slash at the end. */
const foldersOf = (path: string): readonly string[] =>
  path
    .split('/')
    .slice(0, -1)
    .map((_, i, steps) => `${steps.slice(0, i + 1).join('/')}/`);

/** Everything in a folder: files and links by their paths, folders with a slash at the end; links are not followed. */
function contents(folder: string, prefix = ''): readonly string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = `${prefix}${entry.name}`;
    if (entry.isDirectory()) return [`${path}/`, ...contents(join(folder, entry.name), `${path}/`)];
    return [entry.isFile() ? path : `${path} (not an ordinary file)`];
  });
}

/** Digests by path; none where there is no manifest, or none that a run of ours can have written. */
function readManifest(target: string): ReadonlyMap<string, string> {
  const file = join(target, MANIFEST);
  if (lstatSync(file, { throwIfNoEntry: false })?.isFile() !== true) return new Map();
  try {
    const { files } = JSON.parse(readFileSync(file, 'utf8')) as { files: readonly { path: string; sha256: string }[] };
    return new Map(files.map(({ path, sha256 }) => [path, sha256]));
  } catch (error) {
    if (systemCode(error) !== null) throw error;
    return new Map();
  }
}

const digestOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Two renames with nothing between them; the earlier content comes back where the second one fails. */
function putInPlace(staging: string, target: string): void {
  const aside = `${staging.slice(0, -'.tmp'.length)}-earlier.tmp`;
  for (let tries = 1; ; tries++) {
    const moved = renameIfThere(target, aside);
    try {
      renameSync(staging, target);
    } catch (error) {
      const code = systemCode(error);
      // another run was quicker: its folder stands there now, and goes the same way
      if ((code === 'ENOTEMPTY' || code === 'EEXIST') && tries < TRIES) {
        rmSync(aside, { recursive: true, force: true });
        continue;
      }
      if (moved && !existsSync(target)) renameSync(aside, target);
      throw error;
    }
    rmSync(aside, { recursive: true, force: true });
    return;
  }
}

function renameIfThere(from: string, to: string): boolean {
  try {
    renameSync(from, to);
    return true;
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return false;
    throw error;
  }
}

/** Takes away the folders that a failed run made on the way to its target, from the last up to the first one made. */
function removeEmpty(firstMade: string | undefined, last: string): void {
  if (firstMade === undefined) return;
  for (let folder = last; folder.startsWith(firstMade); folder = dirname(folder)) {
    try {
      rmdirSync(folder);
    } catch {
      return;
    }
  }
}
