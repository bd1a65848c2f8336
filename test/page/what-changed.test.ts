import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { CompareDocument } from '../../src/index.js';
import { scratch, snapshot, tailboard } from '../cli/scratch.js';
import { testedPage, violationsOn } from './browser.js';
import { openFiles, QUIET, words } from './files.js';
import { unpacked } from './unpacked.js';

const { open } = testedPage();

/** A busy machine takes its time. */
const WAIT = { timeout: 300_000 };

const designed = (name: string): string =>
  readFileSync(join(import.meta.dirname, '..', '..', 'designs', `${name}.yaml`), 'utf8');

const heron = designed('heron');
const longer = heron.replace('flangeDistance: 203.5 mm', 'flangeDistance: 206.5 mm');
const built = join(import.meta.dirname, '..', '..', 'output', 'heron');

const tray = (page: Page) => page.locator('#tray');

/** What the command line prints of two files, for a person and as data. */
async function compared(before: string, text: string) {
  const folder = scratch();
  writeFileSync(join(folder, 'after.yaml'), text);
  const [page, data] = await Promise.all(
    [[], ['--json']].map((more) => tailboard(['compare', before, 'after.yaml', ...more], folder)),
  );
  expect(page?.code).toBe(0);
  return { says: onOneLine(page?.out ?? ''), document: JSON.parse(data?.out ?? '') as CompareDocument };
}

const onOneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** Holds all that the tray says against it. */
async function expectSame(page: Page, { says, document }: Awaited<ReturnType<typeof compared>>): Promise<void> {
  const [title = ''] = /^\S+ \S+ to \S+ \S+/.exec(says) ?? [];
  await tray(page).getByText(title).waitFor();
  const rows = await tray(page)
    .locator('tbody tr')
    .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent ?? '')));
  const { recut, why, inOldBoxes, changed } = document;
  const again = rows.splice(0, recut.length);
  // F3 front box top
  expect(again.map(([part, because]) => [onOneLine(part ?? '').split(' ')[0], onOneLine(because ?? '')])).toEqual(
    recut.map((id) => [id, why[id]]),
  );
  for (const { holder, spacer } of inOldBoxes) {
    const [name, , , under = ''] = rows.shift() ?? [];
    expect(name).toBe(holder);
    expect(onOneLine(under)).toContain(
      spacer.under === 'none' ? 'nothing' : `the ${spacer.under}: ${spacer.thickness} mm`,
    );
  }
  expect(rows.map(([figure]) => figure)).toEqual(changed.map(({ figure }) => figure));
  for (const [i, { before, after }] of changed.entries())
    for (const [at, value] of [before, after].entries())
      if (typeof value === 'number') expect(Number(rows[i]?.[at + 1])).toBeCloseTo(value, 2);
  const lines = await tray(page).locator('.changed-kept, .changed-lost li').allTextContents();
  expect(lines.length).toBeGreaterThan(document.lost.length);
  for (const line of lines) expect(says).toContain(onOneLine(line));
}

test('a folder that was built, a plan alone and a design are held against the design, and its edits are followed', async () => {
  const { page, complaints } = await open({ design: longer, ...QUIET });
  await page.getByRole('tab', { name: 'What changed' }).click();
  // the shapes alone are no camera
  await openFiles(page, 'Open an earlier camera', join(built, 'parts.json'));
  await tray(page).getByText('Open the plan.json').waitFor();
  expect(await violationsOn(page, '#tray')).toEqual([]);

  await openFiles(page, 'Open an earlier camera', join(built, 'plan.json'), join(built, 'parts.json'));
  await expectSame(page, await compared(built, longer));
  expect(await violationsOn(page, '#tray')).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await violationsOn(page, '#tray')).toEqual([]);

  // a part to cut again is shown on the camera, and its card says whose it is not
  await tray(page).getByRole('button', { name: 'F3 front box top' }).click();
  await page.locator('.camera-card').getByText('the camera that stands').waitFor();

  const folder = scratch();
  writeFileSync(join(folder, 'earlier.yaml'), heron.replace('nearest: 1:2.5', 'nearest: 1:2'));
  writeFileSync(join(folder, 'heron.yaml'), heron);
  writeFileSync(join(folder, 'plan.json'), (await tailboard(['plan', 'heron.yaml', '--json'], folder)).out);
  writeFileSync(join(folder, 'bad.json'), '{');
  await openFiles(page, 'Open an earlier camera', join(folder, 'earlier.yaml'));
  await expectSame(page, await compared(join(folder, 'earlier.yaml'), longer));
  // the archive of a whole folder says the same as the folder
  const [plan, parts] = ['plan.json', 'parts.json'].map((name) => readFileSync(join(built, name))) as [Buffer, Buffer];
  const others = { 'heron/sheets/plan.json': strToU8('{}'), 'heron/parts.json': parts };
  writeFileSync(join(folder, 'heron.zip'), zipSync({ ...others, 'heron/plan.json': plan }));
  writeFileSync(join(folder, 'empty.zip'), zipSync(others));
  await openFiles(page, 'Open an earlier camera', join(folder, 'empty.zip'));
  await tray(page).getByText('empty.zip is no archive of a camera').waitFor();
  await openFiles(page, 'Open an earlier camera', join(folder, 'heron.zip'));
  await expectSame(page, await compared(built, longer));
  await openFiles(page, 'Open an earlier camera', join(folder, 'plan.json'));
  const flangeDistance = page.locator('[id="field-lens.flangeDistance"]');
  await flangeDistance.fill('203.5 mm');
  await flangeDistance.press('Enter');
  await tray(page).getByText('Nothing: every part is there already.').waitFor();
  await expectSame(page, await compared(join(folder, 'plan.json'), heron));
  // what was done since is seen without any file
  await page.getByRole('button', { name: 'Take the design as it was opened' }).click();
  await tray(page).getByRole('row', { name: 'F3 front box top' }).getByText('was 207.35 × 172.45 mm').waitFor();

  await openFiles(page, 'Open an earlier camera', join(folder, 'bad.json'));
  await tray(page).getByRole('alert').waitFor();
  const refused = await tailboard(['compare', 'bad.json', 'earlier.yaml'], folder);
  expect(refused.code).toBe(2);
  expect(refused.err).toContain(await words(tray(page).getByRole('alert')));
  expect(complaints).toEqual([]);
});

test('only what must be cut is built, as build --since writes it, byte for byte', async () => {
  const wren = designed('wren');
  const earlier = wren.replace('nearest: 0.81 m', 'nearest: 0.9 m');
  expect(earlier).not.toBe(wren);
  const folder = scratch();
  writeFileSync(join(folder, 'wren.yaml'), wren);
  writeFileSync(join(folder, 'earlier.yaml'), earlier);

  const { page } = await open({ design: wren });
  page.setDefaultTimeout(WAIT.timeout);
  await page.getByRole('tab', { name: 'What changed' }).click();
  await openFiles(page, 'Open an earlier camera', join(folder, 'earlier.yaml'));
  await tray(page).getByRole('button', { name: 'Build only what must be cut' }).press('Enter');
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('tab-take-away');
  const begin = tray(page).getByRole('button', { name: /^Build the/ });
  // kits are new cameras
  await tray(page).getByLabel('Kits', { exact: true }).fill('2');
  await tray(page).getByText('take one of the two away').waitFor();
  expect(await begin.isDisabled()).toBe(true);
  await tray(page).getByLabel('Kits', { exact: true }).fill('');
  expect(await violationsOn(page, '#tray')).toEqual([]);
  await begin.click();
  const link = tray(page).getByRole('link', { name: /^Save wren-since-\w+\.zip$/ });
  await link.waitFor(WAIT);
  const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
  const files = unpacked(readFileSync(await download.path()));

  const { code, err } = await tailboard(['build', 'wren.yaml', '--since', 'earlier.yaml'], folder);
  expect(code, err).toBe(0);
  const wanted = Object.entries(snapshot(join(folder, 'output'))).filter(([path]) => !path.endsWith('/'));
  expect([...files.keys()].sort()).toEqual(wanted.map(([path]) => path).sort());
  expect(wanted.filter(([path, text]) => files.get(path)?.toString('latin1') !== text).map(([path]) => path)).toEqual(
    [],
  );
});
