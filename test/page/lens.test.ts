import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import type { LensDocument } from '../../src/model/lens-bench.js';
import { testedPage, violationsOn } from './browser.js';
import { dunlin, openFiles, QUIET, saved, tailboard, words } from './files.js';

const { open } = testedPage();
const folder = mkdtempSync(join(tmpdir(), 'tailboard-lens-'));

async function bench({ dark = false, width = 1280 } = {}): Promise<Page> {
  const { page } = await open({ ...QUIET, dark, width });
  await page.locator('#tab-lens').click();
  return page;
}

const ofJson = (args: readonly string[], at?: string): LensDocument =>
  JSON.parse(tailboard(['lens', ...args, '--json'], at)) as LensDocument;

const rowOf = (page: Page, label: string) =>
  page
    .locator('.lens-figures tr')
    .filter({ has: page.getByRole('rowheader', { name: label, exact: true }) })
    .locator('td');

describe('a lens from the readings of the story', () => {
  let page: Page;
  beforeAll(async () => {
    page = await bench();
    await openFiles(page, 'Open readings…', dunlin('bench.yaml'));
    await page.getByLabel('Tell where the film stands at').fill('1:4');
    await rowOf(page, 'At 1:4').waitFor();
  });

  test('has the figures of the command line', async () => {
    const lens = ofJson(['bench.yaml', '--at', '1:4']);
    const { focalLength, flangeDistance, intervals, standardErrors, pupilMagnification, coverage, predictions } = lens;
    const shown = async (label: string) => (await words(rowOf(page, label))).replace(/\s+/g, ' ');
    expect(await shown('Focal length')).toBe(`${focalLength.toFixed(2)} ± ${intervals.focalLength.toFixed(2)} mm`);
    expect(await shown('Flange distance')).toContain(
      `${flangeDistance.toFixed(2)} ± ${intervals.flangeDistance.toFixed(2)} mm`,
    );
    expect(await shown('Standard errors')).toContain(`${standardErrors.focalLength.toFixed(2)} mm of the focal length`);
    expect(Number((await shown('Pupil magnification')).split(' ')[0])).toBeCloseTo(pupilMagnification?.value ?? 0, 3);
    expect(Number((await shown('Image circle')).split(' ')[0])).toBeCloseTo(coverage?.value ?? 0, -0.4);
    expect(await shown('At 1:4')).toContain(predictions[0]?.distance.toFixed(2));
    const off = await page.locator('.lens-table tbody .lens-off').allTextContents();
    expect(off.map(Number)).toEqual(lens.residuals.map(({ residual }) => Number(residual.toFixed(2))));
  });

  test('draws what the readings leave over: a dot for each, in both frames', async () => {
    expect(await page.locator('.drawing-box circle').count()).toBe(18);
    const drawn = join(folder, 'plot.svg');
    tailboard(['lens', 'bench.yaml', '--at', '1:4', '--plot', drawn]);
    expect((await saved(page, 'Save the drawing')).equals(readFileSync(drawn))).toBe(true);
  });

  test('is the same from the files that are saved', async () => {
    writeFileSync(join(folder, 'bench.yaml'), await saved(page, 'Save as YAML'));
    expect(ofJson(['bench.yaml'], folder)).toEqual(ofJson(['bench.yaml']));
    writeFileSync(join(folder, 'bench.csv'), await saved(page, 'Save as CSV'));
    expect(ofJson(['bench.csv'], folder).focalLength).toBe(ofJson(['bench.yaml']).focalLength);
  });

  test('has no barrier, by day and by night', async () => {
    expect(await violationsOn(page, '.lens')).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violationsOn(page, '.lens')).toEqual([]);
    await page.emulateMedia({ colorScheme: 'light' });
  });

  test('stays when another tray was looked at', async () => {
    await page.locator('#tab-figures').click();
    await page.locator('#tab-lens').click();
    expect(await page.getByLabel('Reading 4, image').inputValue()).toBe('79.5 mm');
  });

  test('tells a mistake at its row, and what was right before stays in sight', async () => {
    const cell = page.getByLabel('Reading 3, distance');
    await cell.fill('249.1 mn');
    await page.locator('[aria-label="Reading 3, distance"][aria-invalid="true"]').waitFor();
    const said = page.locator('.lens-table-box tr.lens-said');
    expect(await said.count()).toBe(1);
    expect(await words(said)).toContain('"249.1 mn" is not a length.');
    expect(await cell.getAttribute('aria-describedby')).toBe(await said.locator('td[id]').getAttribute('id'));
    expect(await page.locator('.lens-old .lens-figures').count()).toBe(1);
    expect(await page.locator('.lens-write').isDisabled()).toBe(true);
    await cell.fill('249.1 mm');
    await page.locator('.lens-answer:not(.lens-old)').waitFor();
    expect(await said.count()).toBe(0);
  });

  test('names an outlier at its row, and goes into the design with a warning, as --write does', async () => {
    await page.getByLabel('Reading 4, distance').fill('276.8 mm');
    await page.locator('tr.lens-far').waitFor();
    writeFileSync(join(folder, 'off.yaml'), readFileSync(dunlin('bench.yaml'), 'utf8').replace('266.8', '276.8'));
    expect(ofJson(['off.yaml'], folder).outliers).toEqual([4]);
    expect(await words(page.locator('tr.lens-far th'))).toBe('4');
    expect(await words(page.locator('.lens-table-box tr.lens-said'))).toContain('Outlier');
    expect(await words(page.locator('.lens-answer'))).toContain('Settle it before you cut wood.');
    copyFileSync(join(dunlin('..'), 'heron.yaml'), join(folder, 'heron.yaml'));
    tailboard(['lens', 'off.yaml', '--write', 'heron.yaml'], folder);
    await page.locator('.lens-write').click();
    await page.locator('.lens-written').waitFor();
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    expect(await page.locator('section.design textarea').inputValue()).toBe(
      readFileSync(join(folder, 'heron.yaml'), 'utf8'),
    );
  });
});

test('readings are pasted out of a spreadsheet and typed on with Enter', async () => {
  const page = await bench({ width: 390 });
  await page.getByLabel('Reading 1, image').focus();
  await page.evaluate(() => {
    const cells = 'magnification\tdistance\n0,25\t249,58\n0,5\t303,01\n1\t409,86\n';
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', cells);
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
    );
  });
  await rowOf(page, 'Focal length').waitFor();
  // 303.01 less 249.58 is a quarter of it, 409.86 less 303.01 half of it, nearly
  expect(await words(rowOf(page, 'Focal length'))).toMatch(/^213\.7\d /);
  await page.getByLabel('Reading 3, distance').press('Enter');
  await page.waitForFunction(() => document.activeElement?.getAttribute('aria-label') === 'Reading 4, scale');
  await page.keyboard.type('1:3');
  await page.keyboard.press('Tab');
  await page.keyboard.type('267.4');
  await page.locator('.lens-answer', { hasText: '4 readings' }).waitFor();
  expect(await words(page.locator('.lens-table tbody .lens-off').nth(3))).toMatch(/^[+-]?0\.\d\d$/);
  // Tab too goes on to the next reading, and leaves the table from an empty one
  await page.getByLabel('Reading 4, distance').press('Tab');
  await page.waitForFunction(() => document.activeElement?.getAttribute('aria-label') === 'Reading 5, scale');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  const where = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
  await expect.poll(where).toBe('Take out reading 5');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('.lens-table-box .lens-out').count()).toBe(4);
  expect(await violationsOn(page, '.lens')).toEqual([]);
  await page.close();
});
