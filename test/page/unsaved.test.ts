import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { testedPage } from './browser.js';
import { QUIET, saved } from './files.js';

const { open } = testedPage();
const opened = async (): Promise<Page> => (await open(QUIET)).page;

/** Whether the browser asks before the page is left; it is not left then. */
async function isAskedOnLeaving(page: Page): Promise<boolean> {
  const asked = page.waitForEvent('dialog').then(async (dialog) => {
    await dialog.dismiss();
    return dialog.type() === 'beforeunload';
  });
  const left = page.waitForEvent('close').then(() => false);
  await page.close({ runBeforeUnload: true });
  return Promise.race([asked, left]);
}

test('a changed design is not left without a word, a saved one is', async () => {
  const page = await opened();
  const length = page.locator('[id="field-lens.focalLength"]');
  await length.fill('211 mm');
  await length.press('Enter');
  await page.getByText('changed since it was saved').first().waitFor();
  expect(await isAskedOnLeaving(page)).toBe(true);
  expect(await length.inputValue()).toBe('211 mm');
  expect((await saved(page, 'Save')).toString()).toContain('focalLength: 211 mm');
  expect(await isAskedOnLeaving(page)).toBe(false);
});

test('a list of lenses that was typed can be saved, and the page is not left before without a word', async () => {
  const page = await opened();
  await page.getByRole('tab', { name: 'Lens drawer' }).click();
  await page.getByRole('button', { name: 'Begin a list' }).click();
  const list = page.getByLabel('List drawer.yaml');
  const typed = (await list.inputValue()).replace('214 mm', '215 mm');
  await list.fill(typed);
  expect(await isAskedOnLeaving(page)).toBe(true);
  expect((await saved(page, 'Save drawer.yaml')).toString()).toBe(typed);
  expect(await isAskedOnLeaving(page)).toBe(false);
});

test('readings of the bench are kept until they are saved, or let go with a word', async () => {
  const page = await opened();
  await page.getByRole('tab', { name: 'Lens on the bench' }).click();
  const cell = page.getByRole('textbox', { name: /image$/ }).first();
  await cell.fill('60 mm');
  const asked = page.waitForEvent('dialog');
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open readings…' }).click();
  const name = 'bench.csv';
  await (await choosing).setFiles({
    name,
    mimeType: 'text/csv',
    buffer: Buffer.from('image,object,distance\n30 mm,90 mm,280 mm\n'),
  });
  const dialog = await asked;
  expect(dialog.message()).toContain('not saved');
  await dialog.dismiss();
  expect(await cell.inputValue()).toBe('60 mm');
  expect(await isAskedOnLeaving(page)).toBe(true);
  await saved(page, 'Save as YAML');
  expect(await isAskedOnLeaving(page)).toBe(false);
});
