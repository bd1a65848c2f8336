import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { testedPage } from './browser.js';

/** A script that cannot be had, and one that has a mistake in it, are told; and nothing waits for what will not come. */
const { browser, url, open } = testedPage();

const REST = ['proof-worker.js', 'light-worker.js', 'sheets-worker.js'];

/** A worker that answers whatever it is asked by a mistake. */
const MISTAKEN = "onmessage = () => postMessage({ kind: 'mistake', words: 'made for this test' });";

const opened = async (without: readonly string[]): Promise<Page> => {
  const { page } = await open({ without });
  page.setDefaultTimeout(60_000);
  return page;
};

const tray = (page: Page, name: string) => page.getByRole('tab', { name }).click();

test('a desk that cannot be had is told in words', async () => {
  const context = await browser().newContext({ serviceWorkers: 'block' });
  await context.route('**/desk-worker.js', (route) => route.abort());
  const page = await context.newPage();
  const thrown: string[] = [];
  page.on('pageerror', ({ message }) => thrown.push(message));
  await page.goto(url());
  await page.getByRole('alert').getByText('could not be loaded').waitFor();
  expect(thrown).toEqual([]);
});

test('a build that waits for a proof ends when the proof comes to nothing', async () => {
  const page = await opened(REST);
  await tray(page, 'Take away');
  await page.getByRole('button', { name: 'Build the folder' }).click();
  await page.getByText('Being proven first').waitFor();
  await page
    .context()
    .route('**/proof-worker.js', (route) => route.fulfill({ contentType: 'text/javascript', body: MISTAKEN }));
  // the workers that say nothing are ended, and the next ones are these
  const length = page.locator('[id="field-lens.focalLength"]');
  await length.fill('211 mm');
  await length.press('Enter');
  await page.getByText('The design was changed meanwhile').waitFor();
  await page.getByRole('button', { name: 'Build the folder' }).click();
  await page.getByText('It came to nothing by a mistake of the page').waitFor();
  await page.getByRole('alert').getByText('made for this test').waitFor();
});

test('a survey ends in words when one of its threads cannot be had, or makes a mistake', async () => {
  const page = await opened(REST);
  const survey = async () => {
    await page.getByRole('button', { name: /^Survey \d+ cameras?$/ }).click();
    return page.getByText('The survey came to nothing').textContent();
  };
  await tray(page, 'Lens drawer');
  await page.getByRole('button', { name: 'Begin a list' }).click();
  await page.context().route('**/survey-worker.js', (route) => route.abort());
  expect(await survey()).toContain('could not be loaded');
  await page
    .context()
    .route('**/survey-worker.js', (route) => route.fulfill({ contentType: 'text/javascript', body: MISTAKEN }));
  await expect.poll(survey).toContain('made for this test');
});
