import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { planDesign, readDesign } from '../../src/index.js';
import { kg, magnification } from '../../src/units/print.js';
import { testedPage, violationsOn } from './browser.js';

const heron = readFileSync(join(import.meta.dirname, '..', '..', 'designs', 'heron.yaml'), 'utf8');

/** The plan of a text, in the form in which the tray reads it out. */
function figuresOf(text: string): readonly string[] {
  const read = readDesign(text, 'heron.yaml');
  if ('problems' in read) throw new Error(read.problems[0]?.what);
  const { slide, camera } = planDesign(read.design).plan;
  return [`reaches ${magnification(slide.reachableMagnification)}`, kg(Math.round(camera.mass * 100) / 100)];
}

/** A busy machine takes its time. */
const SOON = { timeout: 30_000 };

const { open } = testedPage();
let page: Page;
let complaints: readonly string[];
beforeAll(async () => {
  ({ page, complaints } = await open());
  await page.locator('#tab-what-if').click({ timeout: 90_000 });
  await page.locator('.what-if-plot').waitFor({ timeout: 120_000 });
});

const input = () => page.getByLabel('What if it were another');
const slider = () => page.locator('.what-if-slider');
/** What is read out, once all of it is known. */
async function readOut(): Promise<string> {
  const output = page.locator('.what-if-reading output');
  let words = '';
  // it may be planned once more right after it was read: what is known is kept as it was then
  const read = async () => {
    words = ((await output.textContent()) ?? '').replaceAll('\u00a0', ' ');
    return words;
  };
  await expect.poll(read, { timeout: 60_000 }).toMatch(/\d sheets?;|no camera/);
  return words;
}
/** Tries another number, which is as it is at first. */
async function tryNumber(path: string, present: string): Promise<void> {
  await input().selectOption(path);
  await expect.poll(said, SOON).toBe(present);
  await slider().focus();
}
const said = () => page.locator('.what-if-reading b').first().textContent();

describe('what if', () => {
  test('the present point is the plan', async () => {
    const words = await readOut();
    for (const own of figuresOf(heron)) expect(words).toContain(own);
    expect(await page.locator('circle.plot-now').count()).toBe(3);
  });

  test('a flat curve is explained: what is asked does not change what the boxes can reach', async () => {
    await page.getByText('Whatever is asked, the boxes can reach 1:2.15 and no nearer').waitFor({ timeout: 60_000 });
  });

  test('what is tried first stands first', async () => {
    const first = await input().locator('optgroup').first().locator('option').allTextContents();
    expect(first).toEqual([
      'nearest focus',
      'film depth of the paper holder',
      'film depth of the processing holder',
      'plywood thickness',
    ]);
  });

  test('the keyboard reads out another value: the plan of the design that has it', async () => {
    await tryNumber('plywood.thickness', '4.05 mm');
    await page.keyboard.press('ArrowLeft');
    await expect.poll(said, SOON).not.toBe('4.05 mm');
    const thinner = (await said()) ?? '';
    await expect.poll(() => slider().getAttribute('aria-valuetext'), SOON).toBe(thinner);
    const words = await readOut();
    for (const own of figuresOf(heron.replace('thickness: 4.05 mm', `thickness: ${thinner}`)))
      expect(words).toContain(own);
  });

  test('the film of a holder that is made is tried well beyond its depth: the holder grows with it', async () => {
    await tryNumber('holders[1].filmDepth', '24 mm');
    await page.keyboard.press('End');
    await expect.poll(async () => Number.parseFloat((await said()) ?? ''), SOON).toBeGreaterThan(30);
    expect(await readOut()).toContain('reaches');
  });

  test('a camera that breaks a rule is marked by a sign and by words', async () => {
    await tryNumber('focus.nearest', '1:2.5');
    await page.keyboard.press('End');
    await expect.poll(said, SOON).toBe('1:1');
    expect(await readOut()).toContain('✕ Breaks reach-near, a portrait that cannot be focused');
    await page.locator('.what-if-broken').first().waitFor();
  });

  test('nobody is shut out, by day and by night', async () => {
    await page.locator('.what-if-table summary').click();
    expect(await violationsOn(page, '#tray')).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violationsOn(page, '#tray')).toEqual([]);
    expect(complaints.filter((words) => !/WebGL/i.test(words))).toEqual([]);
  });

  test('a value that is taken is written into the design', async () => {
    await tryNumber('focus.nearest', '1:2.5');
    await page.keyboard.press('ArrowLeft');
    await expect.poll(said, SOON).not.toBe('1:2.5');
    const farther = (await said()) ?? '';
    await readOut();
    await page.getByRole('button', { name: `Take ${farther}` }).click();
    await expect.poll(said, { timeout: 60_000 }).toBe(farther);
    for (const own of figuresOf(heron.replace('nearest: 1:2.5', `nearest: ${farther}`)))
      await expect.poll(readOut, { timeout: 60_000 }).toContain(own);
  });

  test('where no camera can be, there is a gap, and why, told once', async () => {
    // a lens so near to the film that no two boxes have room behind it
    const field = page.locator('[id="field-lens.flangeDistance"]');
    await field.fill('105 mm');
    await field.press('Enter');
    await tryNumber('lens.flangeDistance', '105 mm');
    await page.keyboard.press('Home');
    await expect.poll(said, SOON).toBe('74 mm');
    expect(await readOut()).toContain('no camera');
    await expect.poll(() => page.locator('rect.what-if-gap').count(), { timeout: 60_000 }).toBeGreaterThan(0);
    await expect
      .poll(() => page.locator('.what-if [role="status"]').textContent(), { timeout: 90_000 })
      .toMatch(/3\d cameras planned\./);
    const gaps = await page.locator('.what-if-gaps li').allTextContents();
    expect(gaps).toHaveLength(1);
    expect(gaps[0]).toMatch(/^No camera between 74 mm and \d+ mm; at \d+ mm: /);
    expect(await page.getByRole('button', { name: /^Take/ }).isDisabled()).toBe(true);
  });
});
