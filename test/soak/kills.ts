import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';

/** A build is killed so long after it began to write at the latest, ms: writing takes about that. */
const WRITING = 400;

export interface Kill {
  /** From 0 to 1. */
  readonly at: number;
  /** Counted from when it begins to write; else from its beginning. */
  readonly whileWriting: boolean;
}

/** Moments to kill a build at, as many of them while it writes as before. */
export const moments = (seed: number, count: number): readonly Kill[] =>
  fc
    .sample(fc.noBias(fc.integer({ min: 0, max: 1000 })), { seed, numRuns: count })
    .map((thousandths, i) => ({ at: thousandths / 1000, whileWriting: i % 2 === 1 }));

/** A folder that one camera was built into, and the design of another that is built over it. */
export interface Stage {
  readonly folder: string;
  readonly earlier: string;
  readonly newer: string;
  /** How long the build of it took, ms. */
  readonly took: number;
}

/** Builds a camera in a folder of its own. */
export async function staged(folder: string, text: string): Promise<Stage> {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder);
  const content = async (design: string) => {
    writeFileSync(join(folder, 'camera.yaml'), design);
    const { code, said } = await building(folder, () => {});
    if (code !== 0) throw new Error(said);
    return contentOf(join(folder, 'built'));
  };
  // the same camera under another name: most of its files are others
  const another = text.replace(/^name: .*$/m, 'name: Another');
  const newer = await content(another);
  const begun = performance.now();
  const earlier = await content(text);
  const took = performance.now() - begun;
  cpSync(join(folder, 'built'), join(folder, 'kept'), { recursive: true });
  writeFileSync(join(folder, 'camera.yaml'), another);
  return { folder, earlier, newer, took };
}

/** Kills a build at a moment; what is wrong with what it leaves, or null where that is the earlier output or the new one. */
export async function killed(
  { folder, earlier, newer, took }: Stage,
  { at, whileWriting }: Kill,
): Promise<string | null> {
  await building(folder, (kill) => {
    if (!whileWriting) return void setTimeout(kill, at * took);
    const watch = setInterval(() => {
      if (!readdirSync(folder).some((name) => name.startsWith('.tailboard-'))) return;
      clearInterval(watch);
      setTimeout(kill, at * WRITING);
    }, 1);
    setTimeout(() => clearInterval(watch), 3 * took).unref();
  });
  // what a killed run leaves beside its folder: nobody can clear up after that
  const aside = readdirSync(folder).filter((name) => name.startsWith('.tailboard-'));
  const places = ['built', ...aside].filter((name) => readdirSync(folder).includes(name));
  // between its two renames the earlier output stands beside its place, whole
  const isWhole = places.some((name) => contentOf(join(folder, name)) === earlier);
  const isNew = places.includes('built') && contentOf(join(folder, 'built')) === newer;
  for (const name of ['built', ...aside]) rmSync(join(folder, name), { recursive: true, force: true });
  cpSync(join(folder, 'kept'), join(folder, 'built'), { recursive: true });
  return isWhole || isNew ? null : `killed ${whileWriting ? 'while it wrote' : 'before'} (${at}): ${places.join(', ')}`;
}

function building(
  folder: string,
  meanwhile: (kill: () => void) => void,
): Promise<{ code: number | null; said: string }> {
  return new Promise((resolve) => {
    const words = [
      'dist/cli/main.js',
      'build',
      join(folder, 'camera.yaml'),
      '--effort',
      '0',
      '--output',
      join(folder, 'built'),
    ];
    const child = spawn(process.execPath, words, { stdio: ['ignore', 'ignore', 'pipe'] });
    let said = '';
    child.stderr.on('data', (more) => {
      said += more;
    });
    child.on('close', (code) => resolve({ code, said }));
    meanwhile(() => child.kill('SIGKILL'));
  });
}

/** Everything in a folder, paths and bytes. */
const contentOf = (folder: string): string =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
    .map((path) => `${path.slice(folder.length)}\0${readFileSync(path, 'latin1')}`)
    .join('\0');
