import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { testedPage, violationsOn } from './browser.js';
import { dunlin, openFiles, QUIET, saved, tailboard, words } from './files.js';

const { open } = testedPage();
let page: Page;
const folder = mkdtempSync(join(tmpdir(), 'tailboard-survey-'));
beforeAll(async () => {
  ({ page } = await open(QUIET));
  await page.locator('#tab-survey').click();
});

const survey = async (): Promise<void> => {
  await page.locator('.survey-go').click();
  await page.locator('.survey-result:not(.survey-old)').waitFor();
};

const list = () => page.getByLabel('List drawer.yaml');

test('the drawer of the story gives the tables of the command line, byte by byte', async () => {
  await openFiles(page, 'Open lists…', dunlin('drawer.yaml'));
  await page.getByRole('button', { name: 'Survey 24 cameras' }).waitFor();
  await survey();
  expect((await saved(page, 'Save as CSV')).toString()).toBe(tailboard(['survey', 'drawer.yaml', '--csv']));
  expect((await saved(page, 'Save as JSON')).toString()).toBe(tailboard(['survey', 'drawer.yaml', '--json']));
  const chart = join(folder, 'chart.svg');
  tailboard(['survey', 'drawer.yaml', '--chart', chart]);
  expect((await saved(page, 'Save the chart')).equals(readFileSync(chart))).toBe(true);
});

test('a click on the title of a column sorts as --sort does', async () => {
  await page.locator('.survey-sort', { hasText: 'reach' }).click();
  await page.locator('th[aria-sort="descending"]', { hasText: 'reach' }).waitFor();
  await page.waitForFunction(() => document.querySelector('.survey-pair')?.textContent?.trim() === 'process lens');
  expect((await saved(page, 'Save as CSV')).toString()).toBe(
    tailboard(['survey', 'drawer.yaml', '--csv', '--sort', 'reach']),
  );
  const printed = tailboard(['survey', 'drawer.yaml', '--sort', 'reach'])
    .split('\n')
    .filter((line) => /\d×\d/.test(line))
    .map((line) => line.trim().split(/\s{2,}/)[0]);
  expect((await page.locator('.survey-pair').allTextContents()).map((text) => text.trim())).toEqual(printed);
});

test('what a lens covers is told by a sign and in words', async () => {
  const row = page.locator('.survey-table tbody tr', { hasText: 'projection lens' }).first();
  expect(await words(row)).toMatch(/all|on|never/);
  expect(await row.locator('.survey-sign').count()).toBe(1);
});

test('has no barrier, by day and by night', async () => {
  await page.getByRole('button', { name: 'copying lens, 5x7' }).click();
  await page.locator('.survey-plan').waitFor();
  expect(await violationsOn(page, '.survey')).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await violationsOn(page, '.survey')).toEqual([]);
  await page.emulateMedia({ colorScheme: 'light' });
});

test('a pair is opened as a design, and one that was changed is not lost unasked', async () => {
  await page.locator('.survey-plan').click();
  await page.getByText('copying lens 5x7').first().waitFor();
  await page.getByRole('button', { name: 'Text', exact: true }).click();
  const text = page.locator('section.design textarea');
  expect(await text.inputValue()).toContain('flangeDistance: 196.16 mm');
  await text.fill(`${await text.inputValue()}# mine\n`);
  await page.locator('.survey-plan').click();
  const asked = page.getByRole('dialog', { name: 'Another design in place of this one' });
  await asked.getByText('was never saved').waitFor();
  await asked.getByRole('button', { name: 'Stay with it' }).click();
  expect(await text.inputValue()).toContain('# mine');
});

test('two threads share a long list and give what one would', async () => {
  const every = readFileSync(dunlin('drawer.yaml'), 'utf8').replace(/^formats:.*\n/m, '');
  await list().fill(every);
  await page.getByRole('button', { name: 'Survey 66 cameras' }).waitFor();
  expect(await page.locator('.survey-old').count()).toBe(1);
  await survey();
  writeFileSync(join(folder, 'drawer.yaml'), every);
  await page.getByRole('button', { name: 'Order of the lists' }).click();
  await page.waitForFunction(() => document.querySelector('.survey-pair')?.textContent?.trim() === 'copying lens');
  expect((await saved(page, 'Save as CSV')).toString()).toBe(tailboard(['survey', 'drawer.yaml', '--csv'], folder));
});

test('a survey that takes long can be stopped, and nothing is lost by it', async () => {
  const lenses = Array.from({ length: 400 }, (_, i) => `  - { name: lens ${i}, focalLength: ${100 + i} mm }`);
  await list().fill(`plywood: { thickness: 4 mm }\nlenses:\n${lenses.join('\n')}\n`);
  await page.getByRole('button', { name: 'Survey 4400 cameras' }).click();
  await page.waitForFunction(
    () => ((document.querySelector('#survey-progress') as HTMLProgressElement | null)?.value ?? 0) > 0,
  );
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByRole('button', { name: 'Survey 4400 cameras' }).waitFor();
  expect(await page.locator('.survey-table tbody tr').count()).toBeGreaterThanOrEqual(66);
});

test('a mistake in a list is told with its line while it is typed', async () => {
  await list().fill('plywood: { thickness: 4.05 mn }\nlenses: [{ name: a, focalLength: 200 mm }]\n');
  await page.locator('.survey-trouble', { hasText: 'drawer.yaml:1:23' }).waitFor();
  expect(await page.locator('.survey-go').count()).toBe(0);
});
