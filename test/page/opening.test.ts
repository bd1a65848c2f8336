import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { testedPage } from './browser.js';
import { QUIET, saved } from './files.js';
import { REMNANT, REMNANTS } from './remnant.js';

const root = join(import.meta.dirname, '..', '..');
const heron = readFileSync(join(root, 'designs', 'heron.yaml'), 'utf8');
const remnant = readFileSync(join(REMNANTS, REMNANT), 'utf8');

const { open } = testedPage();
const opened = async (): Promise<Page> => (await open(QUIET)).page;

interface Carried {
  readonly name: string;
  readonly text: string;
}

/** Files carried over from another window and let go over the page; it says whether it would take them. */
const drop = (page: Page, ...files: readonly Carried[]): Promise<boolean> =>
  page
    .locator('h1, h2')
    .first()
    .evaluate((over, carried) => {
      const dataTransfer = new DataTransfer();
      for (const { name, text } of carried) dataTransfer.items.add(new File([text], name));
      const event = (kind: string) => new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true });
      // a browser opens a file in place of the page where neither is claimed
      const claimed = [event('dragover'), event('drop')].map((one) => !over.dispatchEvent(one));
      return claimed.every((one) => one);
    }, files);

const title = (page: Page) => page.locator('.title-block');
const fileShown = (page: Page) => page.locator('.design-file');
/** Which file is open, with nothing in it that the file has not. */
async function expectUnchanged(page: Page, file: string): Promise<void> {
  expect(await fileShown(page).textContent()).toContain(file);
  await expect.poll(() => fileShown(page).locator('.design-changed').count()).toBe(0);
}
const length = (page: Page) => page.locator('[id="field-lens.focalLength"]');
const edit = async (page: Page, to: string) => {
  await length(page).fill(to);
  await length(page).press('Enter');
  await page.getByText('changed since it was saved').first().waitFor();
};
const egret = { name: 'egret.yaml', text: heron.replace('name: Heron', 'name: Egret') };
const leaving = (page: Page) => page.getByRole('dialog', { name: 'Another design in place of this one' });

test('a design that is dropped on the page is opened, under the name of its file', async () => {
  const page = await opened();
  expect(await drop(page, egret)).toBe(true);
  await title(page).getByText('Egret').waitFor();
  await expectUnchanged(page, 'egret.yaml');
  // words that are dragged are no file, and fall where they always did
  expect(await drop(page)).toBe(false);
});

test('what is dropped and is no design is said, and nothing is opened', async () => {
  const page = await opened();
  await drop(page, { name: 'notes.txt', text: heron });
  await page.getByText('A design is a file that ends in .yaml').waitFor();
  await drop(page, egret, { ...egret, name: 'another.yaml' });
  await page.getByText('Open one design at a time').waitFor();
  await expectUnchanged(page, 'heron.yaml');
});

test('a design that is dropped takes the place of changes only where that is wanted', async () => {
  const page = await opened();
  await edit(page, '211 mm');
  await drop(page, egret);
  await leaving(page).getByText('was changed since it was saved').waitFor();
  // put away by a key
  await page.keyboard.press('Escape');
  await leaving(page).waitFor({ state: 'hidden' });
  expect(await length(page).inputValue()).toBe('211 mm');
  expect(await fileShown(page).textContent()).toContain('heron.yaml');

  await drop(page, egret);
  await leaving(page).getByRole('button', { name: 'Go on without saving' }).click();
  await title(page).getByText('Egret').waitFor();
  await expect.poll(() => length(page).inputValue()).toBe('210 mm');
});

test('saved first, the older design has its changes, and the newer one is opened', async () => {
  const page = await opened();
  await edit(page, '211 mm');
  await drop(page, egret);
  const kept = await saved(page, 'Save it first');
  expect(kept.toString()).toBe(heron.replace('focalLength: 210 mm', 'focalLength: 211 mm'));
  await title(page).getByText('Egret').waitFor();
});

test('a remnant that is opened alone is laid beside the design that names it', async () => {
  const page = await opened();
  await drop(page, { name: 'egret.yaml', text: `${egret.text}stock: [{ remnant: rack/${REMNANT} }]\n` });
  // it is not beside the design yet, and so this is none
  await page.getByText('This is no design yet: 1 fault').first().waitFor();
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open', exact: true }).click(),
  ]);
  await chooser.setFiles({ name: REMNANT, mimeType: 'application/json', buffer: Buffer.from(remnant) });
  await page.getByText('This is no design yet').first().waitFor({ state: 'hidden' });
  await title(page).getByText('Egret').waitFor();
  // the text is the same, so nothing is there to save
  await expectUnchanged(page, 'egret.yaml');
});

test('the design that is no part of the folder is saved from the tray that builds it', async () => {
  const page = await opened();
  await page.getByRole('tab', { name: 'Take away' }).click();
  expect((await saved(page, 'Save the design again')).toString()).toBe(heron);
  await edit(page, '211 mm');
  expect((await saved(page, 'Save the design')).toString()).toBe(
    heron.replace('focalLength: 210 mm', 'focalLength: 211 mm'),
  );
  await page.getByRole('button', { name: 'Save the design again' }).waitFor();
  await expectUnchanged(page, 'heron.yaml');
});
