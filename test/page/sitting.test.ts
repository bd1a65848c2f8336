import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import type { SittingDocument } from '../../src/model/sitting.js';
import { testedPage, violationsOn } from './browser.js';
import { dunlin, openFiles, QUIET, saved, tailboard, words } from './files.js';

const { open } = testedPage();
let page: Page;
const folder = mkdtempSync(join(tmpdir(), 'tailboard-sitting-'));
beforeAll(async () => {
  ({ page } = await open(QUIET));
  await openFiles(page, 'Open', dunlin('dunlin.yaml'));
  await page.getByText('Dunlin').first().waitFor();
  await page.locator('#tab-sitting').click();
});

const figure = async (label: string): Promise<string> =>
  (await words(page.locator('.sitting-set tr', { hasText: label }).first().locator('td b'))).trim();

const ofJson = (...args: readonly string[]): SittingDocument =>
  JSON.parse(tailboard(['expose', 'dunlin.yaml', ...args, '--json'])) as SittingDocument;

test('before it is said where the sitter is, that is asked for at its field', async () => {
  const field = page.getByLabel('Distance to the eyes');
  await page.locator('.sitting-answer', { hasText: 'Say where the sitter is' }).waitFor();
  // nothing was typed, so nothing is wrong
  expect(await field.getAttribute('aria-invalid')).toBe('false');
  expect(await words(page.locator('#sitting-subject-said'))).toContain(
    'Give “Distance to the eyes” 1.2 m, “the scale” 1:4 or “the head on the glass” 90 mm, or write one',
  );
  await field.fill('1.1 m');
  await page.locator('.sitting-set').waitFor();
  expect(await field.getAttribute('aria-invalid')).toBe('false');
});

test('the setting is that of the command line, and follows what is typed', async () => {
  const first = ofJson('--subject', '1.1m');
  expect(await figure('Flash')).toBe(`1 pop of ${first.energy?.toFixed(1)} J`);
  expect(await figure('Scale')).toBe(`1:${(1 / first.magnification).toFixed(2)}`);
  expect(await figure('Sharp')).toContain(`${Math.round(first.aboutEyes.fore ?? 0)} mm before`);
  const stops = await words(page.locator('.sitting-factors').last().locator('tbody tr').last().locator('td').last());
  expect(Number(stops)).toBeCloseTo(first.stops.total, 2);
  expect(await page.locator('.sitting-remark').count()).toBe(first.remarks.length);
  await page.getByLabel('Densities').fill('0.3, 0.6');
  await page.getByLabel('One pop at full power').fill('1.5 kJ');
  const second = ofJson('--subject', '1.1m', '--density', '0.3', '--density', '0.6', '--flash-most', '1.5kJ');
  await page.locator('.sitting-set', { hasText: `${second.pops} pops of` }).waitFor();
  expect(await figure('Flash')).toBe(`${second.pops} pops of ${Number(second.popEnergy?.toFixed(1))} J`);
  expect(await words(page.locator('#sitting-flashMost-said'))).toContain('the design says 1200 J');
  await page.getByRole('button', { name: 'As the design says' }).click();
  await page.getByLabel('Distance to the eyes').fill('1.1 m');
});

test('what the design says stands in the fields, and a flash is warned of', async () => {
  expect(await page.getByLabel('Stop', { exact: true }).getAttribute('placeholder')).toBe('f/11, by the design');
  expect(await words(page.locator('#sitting-process option').first())).toBe('reversal, by the design');
  await page.locator('.sitting-answer', { hasText: 'dangerous charge' }).waitFor();
});

test('a mistake is told once, at its field', async () => {
  await page.getByLabel('Stop', { exact: true }).fill('f/x');
  await page.locator('#sitting-aperture[aria-invalid="true"]').waitFor();
  const said = await words(page.locator('#sitting-aperture-said'));
  let told = '';
  try {
    execFileSync(
      process.execPath,
      [
        join(dunlin('../..'), 'dist/cli/main.js'),
        'expose',
        dunlin('dunlin.yaml'),
        '--subject',
        '1.1m',
        '--aperture',
        'f/x',
      ],
      { encoding: 'utf8', stdio: 'pipe' },
    );
  } catch (error) {
    told = String((error as { stderr: string }).stderr);
  }
  expect(told.replace(/\s+/g, ' ')).toContain(said.split(' the design says')[0]?.slice(0, 40));
  expect(await page.locator('.sitting [aria-invalid="true"]').count()).toBe(1);
  await page.getByLabel('Stop', { exact: true }).fill('');
  await page.locator('.sitting-set').waitFor();
});

test('the card is saved with the bytes that the command line writes', async () => {
  await page.getByRole('button', { name: 'Draw the card' }).click();
  await page.locator('.sitting-card img').waitFor();
  expect(
    await page
      .locator('.sitting-card img')
      .evaluate((img: HTMLImageElement) => img.decode().then(() => img.naturalWidth > 300)),
  ).toBe(true);
  const out = join(folder, 'card');
  tailboard(['expose', 'dunlin.yaml', '--subject', '1.1m', '--card', out]);
  expect((await saved(page, 'Save as SVG')).equals(readFileSync(join(out, 'exposure-card.svg')))).toBe(true);
  expect((await saved(page, 'Save as PDF')).equals(readFileSync(join(out, 'exposure-card.pdf')))).toBe(true);
});

test('has no barrier, by day and by night', async () => {
  expect(await violationsOn(page, '.sitting')).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await violationsOn(page, '.sitting')).toEqual([]);
  await page.emulateMedia({ colorScheme: 'light' });
});

test('a log is added to at its end, as the command line adds to it', async () => {
  await page.getByRole('button', { name: 'Begin a log' }).click();
  // no sheet waits yet
  expect(await page.getByLabel('It looks').count()).toBe(0);
  await page.getByLabel('Batch of the paper').fill('H 2207');
  await page.locator('.sitting-answer h3', { hasText: 'batch H 2207' }).waitFor();
  const write = page.getByRole('button', { name: 'Write into the log' });
  await write.click();
  await page.getByText('one sheet').waitFor();
  const first = (await saved(page, 'Save the log')).toString();
  await page.getByLabel('It looks').selectOption('too light');
  await page.getByLabel('by how many stops').fill('1.5');
  await page.locator('.sitting-answer', { hasText: 'Sheet 2' }).waitFor();
  await page.locator('.sitting-answer', { hasText: '1 stop less than sheet 1' }).waitFor();
  expect(await words(page.locator('.sitting-answer'))).toContain('gloves, goggles');
  await write.click();
  await page.getByText('2 sheets').waitFor();
  expect(await page.getByLabel('by how many stops').inputValue()).toBe('');
  const second = (await saved(page, 'Save the log')).toString();
  expect(second.startsWith(first)).toBe(true);
  const log = join(folder, 'sitting.yaml');
  tailboard(['expose', 'dunlin.yaml', '--subject', '1.1m', '--log', log, '--batch', 'H 2207']);
  tailboard([
    'expose',
    'dunlin.yaml',
    '--subject',
    '1.1m',
    '--log',
    log,
    '--batch',
    'H 2207',
    '--result',
    'too light',
    '--by',
    '1.5',
  ]);
  const timeless = (text: string) => text.replace(/^ {2}at: .*$/gm, '  at');
  expect(timeless(second)).toBe(timeless(readFileSync(log, 'utf8')));
  expect(await violationsOn(page, '.sitting')).toEqual([]);
});

test('a log that cannot be read is told with its line', async () => {
  await page.getByRole('button', { name: 'Put the log away' }).click();
  writeFileSync(join(folder, 'broken.yaml'), '---\nsetting:\n  sheet: one\n...\n');
  await openFiles(page, 'Open a log…', join(folder, 'broken.yaml'));
  await page.locator('.sitting-refused', { hasText: 'broken.yaml:3' }).waitFor();
});
