import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { testedPage } from './browser.js';

/** What comes with one of the next pictures, on a machine that may be busy. */
const until = <T>(read: () => T | Promise<T>) => expect.poll(read, { timeout: 30_000 });

const { open } = testedPage();
let page: Page;
beforeAll(async () => {
  ({ page } = await open());
});

type Colour = readonly [number, number, number];

/** What the browser makes of a colour of ours, its parts from 0 to 1. */
const coloursNow = async (): Promise<Readonly<Record<string, Colour>>> =>
  page.evaluate(() => {
    const probe = document.createElement('span');
    document.body.append(probe);
    const names = ['paper', 'sheet', 'wash', 'ink', 'faint', 'rule', 'red', 'amber', 'blue', 'wood'];
    const found = names.map((name) => {
      probe.style.color = `var(--${name})`;
      const parts = getComputedStyle(probe).color.match(/[\d.]+/g) ?? [];
      return [name, parts.slice(0, 3).map((part) => Number(part) / 255)];
    });
    probe.remove();
    return Object.fromEntries(found);
  });

/** WCAG 2.2, definitions of relative luminance and of contrast ratio. */
const luminance = (colour: Colour): number => {
  const [r, g, b] = colour.map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
};
const contrast = (a: Colour, b: Colour): number => {
  const [light, dark] = [luminance(a), luminance(b)].sort((p, q) => q - p) as [number, number];
  return (light + 0.05) / (dark + 0.05);
};

test('the formula of contrast gives what is known: 21 for black on white, 4.54 for #767676', () => {
  expect(contrast([0, 0, 0], [1, 1, 1])).toBeCloseTo(21, 6);
  expect(contrast([0x76 / 255, 0x76 / 255, 0x76 / 255], [1, 1, 1])).toBeCloseTo(4.54, 2);
});

test.each(['light', 'dark'] as const)(
  'letters and borders stand out from what they lie on: %s',
  async (colorScheme) => {
    await page.emulateMedia({ colorScheme });
    const colours = await coloursNow();
    const of = (name: string): Colour => colours[name] ?? [0, 0, 0];
    const dark = luminance(of('paper')) < 0.2;
    expect(dark).toBe(colorScheme === 'dark');
    for (const ground of ['paper', 'sheet', 'wash'])
      for (const letters of ['ink', 'faint', 'red', 'amber', 'blue'])
        expect(contrast(of(letters), of(ground)), `${letters} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    for (const ground of ['paper', 'sheet'])
      expect(contrast(of('rule'), of(ground)), `rule on ${ground}`).toBeGreaterThanOrEqual(3);
  },
);

test('light or dark by word goes before the system, lasts, and can be taken back', async () => {
  await page.emulateMedia({ colorScheme: 'light' });
  const isDark = async () => luminance((await coloursNow()).paper ?? [1, 1, 1]) < 0.2;
  const button = page.getByRole('button', { name: /^Paper:/ });
  const pressUntil = async (words: string) => {
    for (let i = 0; i < 3 && !(await button.textContent())?.includes(words); i++) {
      const before = await button.textContent();
      await button.click();
      await until(() => button.textContent()).not.toBe(before);
    }
  };
  await pressUntil('dark');
  expect(await isDark()).toBe(true);
  await page.reload();
  await page.getByText('revision').first().waitFor();
  await until(() => button.textContent()).toContain('dark');
  expect(await isDark()).toBe(true);
  await pressUntil('system');
  expect(await isDark()).toBe(false);
});

test('headings go down one step at a time, and one stands over all', async () => {
  const levels = await page.$$eval('h1, h2, h3, h4', (found) => found.map(({ tagName }) => Number(tagName[1])));
  expect(levels.filter((level) => level === 1)).toHaveLength(1);
  expect(levels[0]).toBe(1);
  for (const [i, level] of levels.entries()) expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1);
});

test('at 390 nothing is wider than the screen in any tray, targets are large enough, and the design is a tray', async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  const tabs = page.getByRole('tab');
  await until(() => tabs.count()).toBe(11);
  for (const tab of await tabs.all()) {
    await tab.click();
    const name = await tab.textContent();
    await until(() => tab.getAttribute('aria-selected')).toBe('true');
    const wide = await page.evaluate(() => [document.scrollingElement?.scrollWidth ?? 0, innerWidth]);
    expect(wide[0], `${name?.trim()} is ${wide[0]} wide`).toBeLessThanOrEqual(390);
  }
  const small = await page.$$eval('button, select, summary, input, [role=tab]', (found) =>
    found
      .filter((element) => element.checkVisibility())
      .map((element) => {
        // a box with its label beside it is as large as both
        const box = (element.closest('label') ?? element).getBoundingClientRect();
        return {
          words: `${element.tagName} ${element.textContent?.trim() || element.id}`,
          least: Math.min(box.width, box.height),
        };
      })
      .filter(({ least }) => least > 0 && least < 24)
      .map(({ words, least }) => `${words}: ${least}`),
  );
  expect(small).toEqual([]);
  await page.getByRole('tab', { name: 'Design' }).click();
  await until(() => page.locator('#design').isVisible()).toBe(true);
  await until(() => page.getByRole('tabpanel').count()).toBe(1);
  expect(await page.locator('#tray').isVisible()).toBe(false);
  // one reads it in the order in which it stands
  const order = await page.$$eval('main > section', (found) => found.map(({ id, className }) => id || className));
  expect(order).toEqual(['camera', 'trays', 'design']);
  await page.setViewportSize({ width: 1280, height: 800 });
  await until(() => tabs.count()).toBe(10);
});

test('a text that is no design leaves the last camera in grey, and says so', async () => {
  await page.getByRole('button', { name: 'Text', exact: true }).click();
  const text = page.locator('#design textarea');
  const good = await text.inputValue();
  await text.fill(good.replace('focalLength: 210 mm', 'focalLength: 210 mn'));
  await page.getByText('Shown: the last camera that could be planned').waitFor();
  expect(await page.locator('.camera-place').evaluate((place) => getComputedStyle(place).filter)).toContain(
    'grayscale(1)',
  );
  expect(await page.locator('.verdict').textContent()).toContain('no design');
  await text.fill(good);
  await page.getByText('Shown: the last camera that could be planned').waitFor({ state: 'detached' });
});

test('the first stop of the keyboard leads past the heading to the camera', async () => {
  await page.reload();
  await page.getByText('revision').first().waitFor();
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('To the camera');
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('camera');
});

test('the next stops lead to the trays and to the design', async () => {
  for (const [words, there] of [
    ['To the trays', 'tab-findings'],
    ['To the design', 'design'],
  ] as const) {
    await page.reload();
    await page.getByText('revision').first().waitFor();
    const link = page.getByRole('link', { name: words });
    await link.focus();
    await page.keyboard.press('Enter');
    await until(() => page.evaluate(() => document.activeElement?.id)).toBe(there);
  }
});

test('a browser that keeps nothing shows the page all the same', async () => {
  await page.addInitScript(() =>
    Object.defineProperty(globalThis, 'localStorage', {
      get: () => {
        throw new DOMException('denied', 'SecurityError');
      },
    }),
  );
  await page.reload();
  await page.getByText('revision').first().waitFor();
  const button = page.getByRole('button', { name: /^Paper:/ });
  await button.press('Enter');
  await until(() => button.textContent()).toContain('light');
});
