import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { testedPage, violationsOn } from './browser.js';

/** What `build` wrote for Heron with the compiled program: the test of the kept outputs sees to it that it would again. */
const layout = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', 'output', 'heron', 'sheets', 'layout.json'), 'utf8'),
) as {
  readonly layouts: readonly {
    readonly material: string;
    readonly sheets: readonly {
      readonly file: string;
      readonly cutLength: number;
      readonly estimatedMinutes: number;
      readonly usedArea: number;
      readonly width: number;
      readonly height: number;
      readonly parts: readonly { readonly id: string; readonly instance: number }[];
    }[];
  }[];
};
const plan = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', 'output', 'heron', 'plan.json'), 'utf8'),
) as {
  readonly hardware: readonly { readonly name: string; readonly count: number }[];
  readonly parts: readonly { readonly name: string; readonly count: number; readonly material: string }[];
};
const built = layout.layouts.flatMap(({ sheets }) => sheets);

/** A busy machine takes its time. */
const SOON = { timeout: 30_000 };

const { open } = testedPage();
let page: Page;
let complaints: readonly string[];
beforeAll(async () => {
  ({ page, complaints } = await open());
  await page.locator('#tab-sheets').click({ timeout: 90_000 });
  await page.locator('.sheets figure').first().waitFor({ timeout: 90_000 });
});

/** Pieces that are drawn on a sheet, by part. */
const drawnOn = (name: string): Promise<readonly string[]> =>
  page
    .locator('.sheets figure', { hasText: name })
    .locator('[data-part]')
    .evaluateAll((pieces) => pieces.map((piece) => piece.getAttribute('data-part') ?? ''));

describe('sheets', () => {
  test('all pieces lie in the first layout too', async () => {
    const drawn = await page.locator('.sheets figure [data-part]').count();
    expect(drawn).toBe(built.reduce((sum, { parts }) => sum + parts.length, 0));
  });

  test('become those that the compiled program builds: count, use, cutting length, minutes, parts', async () => {
    await page.getByText('As they are built').waitFor({ timeout: 60_000 });
    expect(await page.locator('.sheets figure').count()).toBe(built.length);
    for (const sheet of built) {
      const name = sheet.file.replace('.svg', '');
      const words = await page.locator('.sheets figcaption', { hasText: name }).locator('span').textContent();
      // a number stays with its unit on one line
      expect(words).toMatch(/about \d+\u00a0minute/);
      const facts = words?.replaceAll('\u00a0', ' ');
      const minutes = Math.max(1, Math.round(sheet.estimatedMinutes));
      const use = Math.round((100 * sheet.usedArea) / (sheet.width * sheet.height));
      expect(facts).toContain(`${Number((sheet.cutLength / 1000).toFixed(2))} m to cut`);
      expect(facts).toContain(`about ${minutes} minute`);
      expect(facts).toContain(`${use} % used`);
      expect([...(await drawnOn(name))].sort()).toEqual(sheet.parts.map(({ id }) => id).sort());
    }
  });

  test('what to buy for them stands with them: the sheets, the print, and the hardware of the plan', async () => {
    await page.getByText('What to buy: sheets, prints, hardware').click();
    const rows = await page.locator('.sheets-buy tbody tr').allTextContents();
    const said = rows.map((row) => row.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim());
    // 600 × 400 mm is the sheet that the design names
    for (const { material, sheets } of layout.layouts)
      expect(said).toContain(`${sheets.length} ${material}, 600 × 400 mm`);
    const prints = plan.parts.filter((part) => part.material === 'PETG');
    for (const { name, count } of prints)
      expect(
        said.some((row) => row.startsWith(`${count} ${name}, PETG`)),
        name,
      ).toBe(true);
    expect(said.length).toBeGreaterThanOrEqual(layout.layouts.length + prints.length + plan.hardware.length);
    for (const { name, count } of plan.hardware)
      expect(said.some((row) => row.startsWith(`${count} ${name}`))).toBe(true);
  });

  test('say the caution where the laser is met', async () => {
    expect(await page.locator('.sheets-caution').first().textContent()).toContain('Never leave the laser alone');
  });

  test('a part that is chosen is marked on its sheets, and let go again', async () => {
    await page.locator('.sheets figure summary').first().click();
    const button = page.locator('.sheets-parts button').first();
    const part = (await button.locator('b').textContent()) ?? '';
    await button.click();
    await expect.poll(() => page.locator('.piece.chosen').count(), SOON).toBeGreaterThan(0);
    const chosen = await page
      .locator('.piece.chosen')
      .evaluateAll((all) => all.map((one) => one.getAttribute('data-part')));
    expect(new Set(chosen)).toEqual(new Set([part]));
    expect(await button.getAttribute('aria-pressed')).toBe('true');
    await button.click();
    await expect.poll(() => page.locator('.piece.chosen').count(), SOON).toBe(0);
  });

  test('a part that is chosen in another tray is in sight on its sheet, which is told in words', async () => {
    await page.locator('#tray').evaluate((tray) => tray.scrollTo(0, 0));
    await page.locator('#tab-figures').click();
    await page.locator('.figures-parts button.quiet', { hasText: /^R3 / }).click();
    const figuresAt = await page.locator('#tray').evaluate((tray) => tray.scrollTop);
    expect(figuresAt).toBeGreaterThan(500);
    await page.locator('#tab-sheets').click();
    const on = built
      .filter(({ parts }) => parts.some(({ id }) => id === 'R3'))
      .map(({ file }) => file.replace('.svg', ''));
    const where = page.locator('.sheets-where');
    await where.waitFor();
    expect(await where.locator('button').allTextContents()).toEqual(on);
    const within = async (selector: string) => {
      const [tray, own] = await Promise.all([
        page.locator('#tray').boundingBox(),
        page.locator(selector).first().boundingBox(),
      ]);
      if (tray === null || own === null) return false;
      return own.y >= tray.y - 1 && own.y + own.height <= tray.y + tray.height + 1;
    };
    await expect.poll(() => within('.piece.chosen'), SOON).toBe(true);
    await expect.poll(() => within('.sheets-where'), SOON).toBe(true);
    // each tray is found again where it was left
    await page.locator('#tab-figures').click();
    await page.locator('.figures-parts').first().waitFor();
    await expect.poll(() => page.locator('#tray').evaluate((tray) => tray.scrollTop), SOON).toBe(figuresAt);
    await page.locator('.figures-parts button.quiet', { hasText: /^R3 / }).click();
    await page.locator('#tab-sheets').click();
    await page.locator('.sheets figure').first().waitFor();
  });

  test('one opened large can be read: its letters are 13 px at least, and it can be drawn larger', async () => {
    await page.getByRole('button', { name: 'Open large: plywood-4.05-2' }).click();
    const drawing = page.locator('.sheets-large svg');
    await drawing.waitFor();
    const heights = () =>
      drawing.evaluate((svg) => {
        const scale = svg.getBoundingClientRect().width / (svg as SVGSVGElement).viewBox.baseVal.width;
        return [...svg.querySelectorAll('text')].map((text) => scale * Number(text.getAttribute('font-size')));
      });
    const first = await heights();
    expect(first.length).toBeGreaterThan(3);
    expect(Math.min(...first)).toBeGreaterThan(12.5);
    await page.getByRole('button', { name: 'Larger' }).click();
    await expect.poll(async () => (await heights()).length, SOON).toBeGreaterThan(first.length);
  });

  test('lines take the colours of the laser file when that is asked', async () => {
    await page.getByText('Lines in the colours of the laser file').click();
    await page.locator('.sheets-layers').waitFor();
    const colours = await page
      .locator('.sheets-large .beam')
      .evaluateAll((all) => all.map((one) => one.getAttribute('stroke')));
    const file = readFileSync(
      join(import.meta.dirname, '..', '..', 'output', 'heron', 'sheets', 'plywood-4.05-2.svg'),
      'utf8',
    );
    const own = [...file.matchAll(/<g[^>]* stroke="(#\w+)"/g)].map(([, colour]) => colour);
    expect(own.length).toBe(5);
    expect(colours).toEqual(own);
    await page.getByRole('button', { name: 'Back to all sheets' }).click();
    await page.locator('.sheets figure').first().waitFor();
  });

  test('nobody is shut out, by day and by night', async () => {
    expect(await violationsOn(page, '#tray')).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violationsOn(page, '#tray')).toEqual([]);
    expect(complaints.filter((words) => !/WebGL/i.test(words))).toEqual([]);
  });
});
