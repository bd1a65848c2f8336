import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { scratch, snapshot, tailboard } from '../cli/scratch.js';
import { testedPage, violationsOn } from './browser.js';
import { unpacked } from './unpacked.js';

const { open } = testedPage({ solid: true });

/** A busy machine takes its time. */
const WAIT = { timeout: 300_000 };

const designed = (name: string): string =>
  readFileSync(join(import.meta.dirname, '..', '..', 'designs', `${name}.yaml`), 'utf8');

/** The page with a design, its tray open. */
async function opened(text: string): Promise<Page> {
  const { page } = await open({ design: text });
  page.setDefaultTimeout(WAIT.timeout);
  await page.getByRole('tab', { name: 'Take away' }).click();
  return page;
}

const tray = (page: Page) => page.locator('#tray');

/** The folder that the compiled program writes, as its user finds it. */
async function folderOf(name: string): Promise<Readonly<Record<string, string>>> {
  const folder = scratch();
  writeFileSync(join(folder, `${name}.yaml`), designed(name));
  const { code, err } = await tailboard(['build', `${name}.yaml`], folder);
  expect(code, err).toBe(0);
  return Object.fromEntries(Object.entries(snapshot(join(folder, 'output'))).filter(([path]) => !path.endsWith('/')));
}

test.each([
  'heron',
  // its lens by its flange, no print, another tripod thread
  'curlew',
])('the archive of %s holds the folder that build writes, byte for byte', async (name) => {
  const page = await opened(designed(name));
  await tray(page).getByRole('button', { name: 'Build the folder' }).click();
  // where the proof is still under way it is waited for, since its light is used
  await tray(page)
    .getByText(/Being proven first|Building:/)
    .waitFor();
  await tray(page).getByText('Building:').waitFor(WAIT);
  await tray(page).getByRole('progressbar').waitFor();
  const link = tray(page).getByRole('link', { name: `Save ${name}.zip` });
  await link.waitFor(WAIT);
  const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
  expect(download.suggestedFilename()).toBe(`${name}.zip`);
  const files = unpacked(readFileSync(await download.path()));
  const wanted = await folderOf(name);
  expect([...files.keys()].sort()).toEqual(Object.keys(wanted).sort());
  const other = Object.entries(wanted).filter(([path, text]) => files.get(path)?.toString('latin1') !== text);
  expect(other.map(([path]) => path)).toEqual([]);

  if (name !== 'heron') return;
  // each file alone, and the book to look into
  const links = await tray(page)
    .locator('a.take-away-file')
    .evaluateAll((all) => all.map((one) => one.textContent ?? ''));
  expect(links.map((path) => `${name}/${path}`).sort()).toEqual(Object.keys(wanted).sort());
  const alone = async (path: string): Promise<Buffer> => {
    const link = tray(page).locator('a.take-away-file', { hasText: path });
    const [download] = await Promise.all([page.waitForEvent('download'), link.dispatchEvent('click')]);
    return readFileSync(await download.path());
  };
  for (const path of ['sheets/plywood-4.05-1.dxf', 'prints/lens-clamp.stl'])
    expect((await alone(path)).toString('latin1')).toBe(wanted[`heron/${path}`]);
  const book = tray(page).getByRole('link', { name: 'Look into the book' });
  expect(await book.getAttribute('target')).toBe('_blank');
  expect(await violationsOn(page, '#tray')).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await violationsOn(page, '#tray')).toEqual([]);
});

test('broken rules are waived one by one or nothing is built, and a build can be stopped', async () => {
  const page = await opened(designed('kiwi'));
  const begin = tray(page).getByRole('button', { name: 'Build the folder' });
  const folder = scratch();
  writeFileSync(join(folder, 'kiwi.yaml'), designed('kiwi'));
  const { out } = await tailboard(['check', 'kiwi.yaml', '--json'], folder);
  const { findings } = JSON.parse(out) as { findings: readonly { rule: string; level: string }[] };
  const broken = [...new Set(findings.filter(({ level }) => level === 'error').map(({ rule }) => rule))];
  const boxes = tray(page).getByRole('checkbox');
  await expect.poll(() => boxes.count(), WAIT).toBe(broken.length);
  for (const rule of broken) {
    expect(await begin.isDisabled()).toBe(true);
    await tray(page)
      .getByRole('checkbox', { name: `Build despite ${rule}` })
      .check();
  }
  expect(await violationsOn(page, '#tray')).toEqual([]);
  // what is wrong is told once, and the way there stands here
  const errors = findings.filter(({ level }) => level === 'error').length;
  await tray(page).getByText(`${errors} errors stop the build`).waitFor();
  await tray(page).getByRole('button', { name: 'under Findings' }).click();
  await tray(page).locator('.finding').first().waitFor();
  await page.locator('#tab-take-away').click();
  await begin.click();
  await tray(page).getByText('Building:').waitFor(WAIT);
  await tray(page).getByRole('button', { name: 'Stop' }).click();
  await tray(page).getByText('Stopped: nothing was written.').waitFor();
  // its thread ends with it, not when it would have been done
  await expect
    .poll(() => page.workers().some((worker) => worker.url().endsWith('proof-worker.js')), { timeout: 5000 })
    .toBe(false);

  // a change puts a build aside as well, and says so
  await begin.click();
  await tray(page).getByText('Building:').waitFor(WAIT);
  const name = page.locator('[id="field-name"]');
  await name.fill('Kakapo');
  await name.press('Enter');
  await tray(page).getByText('The design was changed meanwhile.').waitFor();
});
