import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';

/** What a tray that computes on its own does not wait for. */
export const QUIET = { without: ['proof-worker.js', 'light-worker.js', 'sheets-worker.js'] } as const;

const root = join(import.meta.dirname, '..', '..');

export const dunlin = (file: string): string => join(root, 'designs', 'dunlin', file);

/** What the compiled command line prints, called from the folder of the story. */
export const tailboard = (args: readonly string[], folder = dunlin('.')): string =>
  execFileSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), ...args], {
    cwd: folder,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });

/** Picks files for the button that asks for some. */
export async function openFiles(page: Page, button: string, ...files: readonly string[]): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  await chooser.setFiles([...files]);
}

/** The bytes that a button saves. */
export async function saved(page: Page, button: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  return readFileSync(await download.path());
}

/** The words of a thing, on one line. */
export const words = async (of: Locator): Promise<string> =>
  ((await of.textContent()) ?? '').replace(/\s+/g, ' ').trim();
