import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { scratch, snapshot, tailboard } from '../cli/scratch.js';
import { testedPage, violationsOn } from './browser.js';
import { QUIET } from './files.js';
import { unpacked } from './unpacked.js';

const { open } = testedPage();

const heron = readFileSync(join(import.meta.dirname, '..', '..', 'designs', 'heron.yaml'), 'utf8');

/** What the command line says and writes for the same, the folder's name left out. */
async function spacerByCommand(...args: readonly string[]) {
  const folder = scratch();
  writeFileSync(join(folder, 'heron.yaml'), heron);
  const { code, out, err } = await tailboard(['spacer', 'heron.yaml', ...args, '-o', 'made'], folder);
  expect(code, err).toBe(0);
  const made = Object.entries(snapshot(folder)).filter(([path]) => /^made\/.*[^/]$/.test(path));
  const lines = out.split('\n').filter((line) => line !== '' && !line.startsWith('Wrote '));
  return { lines, says: err.replace(/\s+/g, ' '), files: Object.fromEntries(made.map(([p, t]) => [p.slice(5), t])) };
}

test('a holder that turned up later has its spacer, its index line and its reach, as tailboard spacer has them', async () => {
  const { page, complaints } = await open({ design: heron, ...QUIET });
  await page.getByRole('tab', { name: 'What changed' }).click();
  const form = page.locator('.one-more');
  await form.getByLabel('From its face to the film').fill('12.5 mn');
  await form.getByText('is not a length').waitFor();
  await form.getByLabel('From its face to the film').fill('12.5 mm');
  await form.getByLabel('What you call it').fill('plate holder');
  for (const [typed, ...more] of [[''], ['3.9 mm', '--thickness', '3.9 mm']] as const) {
    await form.getByLabel('Sheet at hand').fill(typed);
    const wanted = await spacerByCommand('--depth', '12.5 mm', '--name', 'plate holder', ...more);
    const said = form.getByRole('status');
    for (const line of wanted.lines) await said.getByText(line).waitFor();
    // spacer-shims: six of them slide about
    expect(wanted.says).toContain('they slide about');
    await said.getByText('they slide about').waitFor();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      form.getByRole('button', { name: 'Save heron-spacer-plate-holder.zip' }).click(),
    ]);
    const files = [...unpacked(readFileSync(await download.path()))].map(([path, bytes]) => [
      path.replace(/^heron-spacer-plate-holder\//, ''),
      bytes.toString('latin1'),
    ]);
    expect(Object.fromEntries(files)).toEqual(wanted.files);
  }
  expect(await violationsOn(page)).toEqual([]);
  expect(complaints).toEqual([]);
});
