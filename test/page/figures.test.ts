import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Explanation, FigureList } from '../../src/model/explanation.js';
import { scratch, tailboard } from '../cli/scratch.js';
import { testedPage, violationsOn } from './browser.js';

const heron = join(import.meta.dirname, '..', '..', 'designs', 'heron.yaml');

/** What the command line says of a figure. */
async function explainJson<What>(...figure: readonly string[]): Promise<What> {
  const { out } = await tailboard(['explain', heron, ...figure, '--json'], scratch());
  return JSON.parse(out) as What;
}

/** A busy machine takes its time. */
const SOON = { timeout: 30_000 };

const { open } = testedPage();
let page: Page;
let complaints: readonly string[];
beforeAll(async () => {
  ({ page, complaints } = await open());
  await page.locator('#tab-figures').click({ timeout: 90_000 });
  await page.locator('.figures-figure').first().waitFor({ timeout: 90_000 });
});

const figure = (name: string) => page.locator(`[data-figure="${name}"]`).first();

/** Symbols are set with their index below the line; the program prints W_ri. */
const plain = (formula: string): string => formula.replace(/_/g, '').replace(/\s+/g, '');

async function formulaShown(): Promise<readonly string[]> {
  const lines = await page.locator('.explained-formula dd').allTextContents();
  return lines.map((line) => plain(line.replace(/^\s*=/, '')));
}

describe('figures', () => {
  test('all that the plan explains are there, but the plies and shims one by one', async () => {
    const { figures } = await explainJson<FigureList>();
    const shown = new Set(
      await page.locator('[data-figure]').evaluateAll((all) => all.map((one) => one.getAttribute('data-figure'))),
    );
    const missing = figures.filter(({ figure: name }) => !shown.has(name)).map(({ figure: name }) => name);
    // where the depth is not changed by a spacer it is told once, and no spacer has no thickness
    expect(missing.filter((name) => !/\.(?:plies|shims)\[|effectiveDepth$|^spacers\[0\]\./.test(name))).toEqual([]);
  });

  test.each(['slide.rearBoxInside', 'tailboard.length', 'optics.nearest.filmDistance'])(
    'on focus %s shows the formula of the command line',
    async (name) => {
      const { formula, what } = await explainJson<Explanation>(name);
      await figure(name).focus();
      await page.locator('.explained h4', { hasText: new RegExp(what, 'i') }).waitFor();
      const numbers = formula === null ? [] : [plain(formula.symbols), plain(formula.numbers)];
      expect(await formulaShown()).toEqual(numbers);
      // under the explanation nobody sees what has the focus
      const [panel, own] = await Promise.all([page.locator('.explained').boundingBox(), figure(name).boundingBox()]);
      expect((own?.y ?? 0) + (own?.height ?? 0)).toBeLessThanOrEqual((panel?.y ?? 0) + 1);
    },
  );

  test('what moves a figure fills in, as the command line has it', async () => {
    const { changes } = await explainJson<Explanation>('slide.frontBoxLength');
    await figure('slide.frontBoxLength').focus();
    await page.locator('.explained h4', { hasText: 'Front box, length' }).waitFor();
    await page.locator('.explained-moves tbody tr').first().waitFor();
    const keys = await page.locator('.explained-moves tbody .explained-link').allTextContents();
    expect(keys).toEqual(changes.map(({ path }) => path));
  });

  test('a change that moves a figure is written by a button, and undone', async () => {
    await figure('slide.rearBoxInside').focus();
    const write = page.locator('.explained-write').first();
    await write.waitFor();
    const [, path = '', value = ''] =
      /^Write it: (\S+) (.+)$/.exec((await write.getAttribute('aria-label')) ?? '') ?? [];
    const field = page.locator(`[id="field-${path.replace(/\[\d+\]$/, '')}"]`);
    const before = await field.inputValue();
    await write.click();
    await expect.poll(() => field.inputValue()).toContain(value);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => field.inputValue()).toBe(before);
  });

  test('Enter goes on to the explanation, an input leads to its own, Escape back to the list', async () => {
    await figure('slide.frontBoxLength').focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.id), SOON).toBe('explained');
    await page.locator('.explained-inputs .explained-link', { hasText: 'slide.closest' }).click();
    await page.locator('.explained h4', { hasText: /holder seat, closest/i }).waitFor();
    await page.getByRole('button', { name: 'Back', exact: true }).click();
    await page.locator('.explained h4', { hasText: 'Front box, length' }).waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.explained').count(), SOON).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-figure'))).toBe('slide.frontBoxLength');
  });

  test('what there is to buy is one press from the top', async () => {
    const tray = page.locator('#tray');
    await tray.evaluate((box) => box.scrollTo(0, 0));
    await page.locator('.figures-contents').getByRole('button', { name: 'What to buy' }).click();
    const heading = page.getByRole('heading', { name: 'What to buy' });
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent), SOON).toBe('What to buy');
    const [box, own] = await Promise.all([tray.boundingBox(), heading.boundingBox()]);
    expect(own?.y).toBeGreaterThanOrEqual((box?.y ?? 0) - 1);
    expect(own?.y).toBeLessThan((box?.y ?? 0) + (box?.height ?? 0));
  });

  test('a pointer that rests on a figure has it explained', async () => {
    await figure('optics.exitPupil.diameter').hover();
    await page.locator('.explained h4', { hasText: 'Diameter of the exit pupil' }).waitFor();
  });

  test('parts are those of the plan, and one that is chosen is marked', async () => {
    const { parts } = JSON.parse(
      readFileSync(join(import.meta.dirname, '..', '..', 'output', 'heron', 'plan.json'), 'utf8'),
    ) as { readonly parts: readonly { readonly id: string; readonly name: string; readonly count: number }[] };
    const rows = await page
      .locator('.figures-parts tbody tr')
      .evaluateAll((all) => all.map((row) => [...row.children].slice(0, 2).map((cell) => cell.textContent?.trim())));
    expect([...rows].sort()).toEqual(parts.map(({ id, name, count }) => [`${id} ${name}`, `${count}`]).sort());
    const button = page.locator('.figures-parts tbody button.quiet').first();
    await button.click();
    await expect.poll(() => button.getAttribute('aria-pressed'), SOON).toBe('true');
  });

  test('nobody is shut out, by day and by night', async () => {
    await figure('slide.frontBoxLength').focus();
    await page.locator('.explained-moves').waitFor();
    expect(await violationsOn(page, '#tray')).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violationsOn(page, '#tray')).toEqual([]);
    expect(complaints.filter((words) => !/WebGL/i.test(words))).toEqual([]);
  });
});
