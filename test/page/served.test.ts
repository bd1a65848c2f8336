import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { heronDesign, spoiled } from '../cli/heron-design.js';
import { scratch } from '../cli/scratch.js';
import { serving } from '../cli/serving.js';
import { openPage, testedPage, violationsOn } from './browser.js';

/** The page looks at the file every second, on a busy machine less often. */
const PATIENTLY = { timeout: 60_000 };

/** What looks for light and for better sheets has no part in this. */
const AT_REST = ['proof-worker.js', 'light-worker.js', 'sheets-worker.js'];

const { browser } = testedPage();

const opened = async (text = heronDesign, dark = false) => {
  const folder = scratch();
  const file = join(folder, 'heron.yaml');
  writeFileSync(file, text);
  const server = await serving(folder, 'heron.yaml');
  const { page, complaints } = await openPage(browser(), server.url, { dark, without: AT_REST });
  page.setDefaultTimeout(60_000);
  return { file, folder, server, page, complaints, onDisk: () => readFileSync(file, 'utf8') };
};

const focalLength = (page: Page) => page.locator('[id="field-lens.focalLength"]');

async function type(page: Page, length: string): Promise<void> {
  await focalLength(page).fill(length);
  await focalLength(page).press('Enter');
}

const save = (page: Page) => page.getByRole('button', { name: 'Save', exact: true }).click();
const isSaved = (page: Page) => page.getByText('is saved').first().waitFor();

test('what is changed on the page and saved is in the file, and nothing else of it is another', async () => {
  const { page, complaints, onDisk } = await opened(heronDesign.replaceAll('\n', '\r\n'));
  await type(page, '211 mm');
  await save(page);
  await isSaved(page);
  await expect.poll(onDisk, PATIENTLY).toBe(spoiled('210 mm\n', '211 mm\n').replaceAll('\n', '\r\n'));
  expect(complaints).toEqual([]);
});

test('what somebody else wrote meanwhile is not written over: it is shown, and may be taken or replaced knowingly', async () => {
  const { file, page, onDisk } = await opened();
  await type(page, '211 mm');
  const theirs = spoiled('4.05 mm', '3.95 mm');
  writeFileSync(file, theirs);
  await save(page);
  const strip = page.getByRole('alert', { name: 'The file was changed' });
  await strip.waitFor();
  expect(onDisk()).toBe(theirs);
  await strip.getByText('Show the difference').click();
  const items = strip.getByRole('listitem');
  // the page may have seen the file before it had written what was typed
  await expect.poll(() => items.count(), PATIENTLY).toBe(2);
  const told = await items.allTextContents();
  expect(told.join('\n')).toMatch(
    /211 mm[\s\S]*in the file[\s\S]*210 mm[\s\S]*4\.05 mm[\s\S]*in the file[\s\S]*3\.95 mm/,
  );
  expect(await violationsOn(page, '.meanwhile')).toEqual([]);
  await strip.getByRole('button', { name: 'Keep mine and write over the file' }).click();
  await isSaved(page);
  expect(onDisk()).toBe(spoiled('210 mm\n', '211 mm\n'));
  expect(await strip.count()).toBe(0);
});

test('what is in the file can be taken, and undoing brings back what was here', async () => {
  const { file, page, onDisk } = await opened(heronDesign, true);
  await type(page, '211 mm');
  await page.locator('.design-changed').waitFor();
  const theirs = spoiled('4.05 mm', '3.95 mm');
  writeFileSync(file, theirs);
  // nobody saves: the page looks by itself
  const strip = page.getByRole('alert', { name: 'The file was changed' });
  await strip.waitFor();
  expect(await violationsOn(page, '.meanwhile')).toEqual([]);
  await strip.getByRole('button', { name: 'Take what is in the file' }).click();
  await expect.poll(() => focalLength(page).inputValue(), PATIENTLY).toBe('210 mm');
  await isSaved(page);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => focalLength(page).inputValue(), PATIENTLY).toBe('211 mm');
  expect(onDisk()).toBe(theirs);
});

/** Lets no saving through to the program before it is released. */
async function holdSavings(page: Page): Promise<() => void> {
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.route('**/design', async (route) => {
    if (route.request().method() === 'PUT') await held;
    await route.continue();
  });
  return release;
}

test('one saving follows another, and neither is taken for somebody else’s', async () => {
  const { page, onDisk, complaints } = await opened();
  const release = await holdSavings(page);
  await type(page, '211 mm');
  await page.locator('.design-changed').waitFor();
  await save(page);
  await type(page, '212 mm');
  await save(page);
  release();
  await expect.poll(onDisk, PATIENTLY).toBe(spoiled('210 mm\n', '212 mm\n'));
  await isSaved(page);
  expect(await page.getByRole('alert').count()).toBe(0);
  expect(complaints).toEqual([]);
});

test('a design that is opened while another one is being saved is no part of that', async () => {
  const { page, onDisk, complaints } = await opened();
  const release = await holdSavings(page);
  await type(page, '211 mm');
  await page.locator('.design-changed').waitFor();
  await save(page);
  const [picking] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open' }).click(),
  ]);
  const egret = Buffer.from(spoiled('name: Heron', 'name: Egret'));
  await picking.setFiles({ name: 'egret.yaml', mimeType: 'application/yaml', buffer: egret });
  await page.getByRole('button', { name: 'Go on without saving' }).click();
  const title = page.locator('.design-file');
  await title.getByText('egret.yaml').waitFor();
  release();
  await expect.poll(onDisk, PATIENTLY).toBe(spoiled('210 mm\n', '211 mm\n'));
  // the answer has come when the page can save again, and has changed nothing of the other design
  await type(page, '213 mm');
  const [download] = await Promise.all([page.waitForEvent('download'), save(page)]);
  expect(download.suggestedFilename()).toBe('egret.yaml');
  expect(await title.textContent()).toContain('egret.yaml');
  expect(onDisk()).toBe(spoiled('210 mm\n', '211 mm\n'));
  expect(complaints).toEqual([]);
});

test('where nothing is unsaved, what others write is shown at once', async () => {
  const { file, page, complaints } = await opened();
  writeFileSync(file, spoiled('210 mm\n', '212 mm\n'));
  await expect.poll(() => focalLength(page).inputValue(), PATIENTLY).toBe('212 mm');
  await page.getByText('heron.yaml was changed outside').waitFor();
  await isSaved(page);
  expect(await violationsOn(page, '.said-of-file')).toEqual([]);
  expect(complaints).toEqual([]);
});

test('a remnant that the design names lies beside it; one outside its folder does not, and the page says so', async () => {
  const folder = scratch();
  const remnant = {
    format: 'tailboard remnant 1',
    name: 'plywood-4.05-6',
  };
  mkdirSync(join(folder, 'designs'));
  writeFileSync(join(folder, 'outside.json'), JSON.stringify(remnant));
  writeFileSync(join(folder, 'designs', 'heron.yaml'), `${heronDesign}\nstock:\n  - { remnant: ../outside.json }\n`);
  const server = await serving(join(folder, 'designs'), 'heron.yaml');
  const context = await browser().newContext();
  const page = await context.newPage();
  await page.goto(server.url);
  await page.getByText('../outside.json lies outside the folder of the design').first().waitFor();
});

test('where the program is gone the page says so, and keeps what is here', async () => {
  const { server, page, file } = await opened();
  await type(page, '211 mm');
  await page.locator('.design-changed').waitFor();
  server.signal('SIGINT');
  await server.ended;
  await save(page);
  await page.getByText('Not saved. The program that serves this page does not answer').waitFor();
  expect(await focalLength(page).inputValue()).toBe('211 mm');
  expect(readFileSync(file, 'utf8')).toBe(heronDesign);
});

test('where the file is gone the page says so, and nothing is made', async () => {
  const { page, file, folder } = await opened();
  await type(page, '211 mm');
  rmSync(file);
  await save(page);
  await page.getByText('Not saved. heron.yaml: there is no such file').waitFor();
  expect(readdirSync(folder)).toEqual([]);
});

test('a design that is none is opened, and what is wrong with it stands on the page', async () => {
  const folder = scratch();
  writeFileSync(join(folder, 'heron.yaml'), spoiled('4.05 mm', '4.05 mn'));
  const server = await serving(folder, 'heron.yaml');
  const page = await browser().newPage();
  await page.goto(server.url);
  await page.getByText('"4.05 mn" is not a length').first().waitFor();
});

test('without a design the sample is open, and saving touches no file of the server', async () => {
  const server = await serving(scratch());
  const { page, complaints } = await openPage(browser(), server.url, { without: AT_REST });
  const [download] = await Promise.all([page.waitForEvent('download'), save(page)]);
  expect(download.suggestedFilename()).toBe('heron.yaml');
  expect(complaints).toEqual([]);
});
