import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** An empty folder of its own for one test, taken away afterwards. */
export function scratch(): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'tailboard-test-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Everything in a folder: each file by its path with its text, folders with a slash and no text. */
export function snapshot(folder: string): Readonly<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true })) {
    const path = join(entry.parentPath, entry.name);
    const name = path.slice(folder.length + 1);
    if (entry.isDirectory()) found[`${name}/`] = '';
    else found[name] = entry.isSymbolicLink() ? '(link)' : readFileSync(path, 'latin1');
  }
  return found;
}

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** The compiled program, as `npm run compile` leaves it. */
export const compiled = (path: string): string => new URL(`../../dist/${path}`, import.meta.url).pathname;

/** Runs a program to its end. `meanwhile` is given the process while it runs. */
export function ended(
  words: readonly string[],
  folder: string,
  meanwhile: (signal: (name: NodeJS.Signals) => void) => void = () => {},
): Promise<Ended> {
  const [program = '', ...rest] = words;
  const child = spawn(program, rest, { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] });
  let out = '';
  let err = '';
  child.stdout.setEncoding('utf8').on('data', (text) => {
    out += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text) => {
    err += text;
  });
  meanwhile((name) => child.kill(name));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
  });
}

/** `tailboard` with these words, in a folder. */
export const tailboard = (words: readonly string[], folder: string): Promise<Ended> =>
  ended([process.execPath, compiled('cli/main.js'), ...words], folder);
