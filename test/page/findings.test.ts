import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { scratch, tailboard } from '../cli/scratch.js';
import { testedPage, violationsOn } from './browser.js';

const { open } = testedPage({ solid: true });

const designed = (name: string): string =>
  readFileSync(join(import.meta.dirname, '..', '..', 'designs', `${name}.yaml`), 'utf8');

/** What the compiled program says against a design, and what it proved. */
async function checked(text: string) {
  const folder = scratch();
  writeFileSync(join(folder, 'design.yaml'), text);
  const { out } = await tailboard(['check', 'design.yaml', '--json'], folder);
  const { findings, proof } = JSON.parse(out) as {
    readonly findings: readonly Partial<Said>[];
    readonly proof: { readonly joints: readonly unknown[]; readonly pieces: number };
  };
  const told = findings.map(
    ({ rule = '', level = '', message = '', hint = '', about = '' }): Said => ({ rule, level, message, hint, about }),
  );
  return { findings: told, proof };
}

interface Said {
  readonly rule: string;
  readonly level: string;
  readonly message: string;
  readonly hint: string;
  readonly about: string;
}

/** What stands in the tray, as one reads it. */
const said = (page: Page): Promise<readonly Said[]> =>
  page.locator('.finding').evaluateAll((entries) =>
    entries.map((entry) => {
      const words = (selector: string) => {
        const found = entry.querySelector(selector)?.cloneNode(true) as Element | undefined;
        for (const aside of found?.querySelectorAll('.unseen, .finding-place') ?? []) aside.remove();
        // a number stays with its unit on the page alone
        return found?.textContent?.replaceAll('\u00a0', ' ').trim() ?? '';
      };
      const level = entry.closest('ul')?.previousElementSibling?.className.replace('level-', '') ?? '';
      return {
        rule: words('.finding-foot > .caption:last-child'),
        level,
        message: words('.finding-message'),
        hint: words('.finding-hint'),
        about: words('.finding-foot button'),
      };
    }),
  );

/** A busy machine takes its time. */
const WAIT = { timeout: 60_000 };

const tray = (page: Page) => page.locator('#tray');
const proven = (page: Page) => tray(page).getByText(/^\s*(?:Proven|Looked at as a whole):/);

/** The page with another design than its own. */
async function withDesign(text: string) {
  const { page } = await open({ design: text });
  page.setDefaultTimeout(WAIT.timeout);
  return page;
}

test('the proof follows in the background, and what stands there then is what check says', async () => {
  const { page, complaints } = await open();
  const bar = tray(page).getByRole('progressbar');
  await bar.waitFor();
  expect(await bar.getAttribute('aria-labelledby')).toBe('findings-stage');
  await expect
    .poll(() => bar.evaluate((one) => (one as HTMLProgressElement).value), { timeout: 60_000 })
    .toBeGreaterThan(0.2);
  // until then it is said that this is not the proof
  expect(await tray(page).textContent()).toContain('found in the figures alone');
  await proven(page).waitFor({ timeout: 90_000 });
  expect(await bar.count()).toBe(0);
  const { findings, proof } = await checked(designed('heron'));
  expect(await said(page)).toEqual(findings);
  expect(complaints).toEqual([]);
  expect(await violationsOn(page, '#tray')).toEqual([]);

  // the key that would cure it is one press away
  const key = tray(page).getByRole('button', { name: 'Change groundGlass.frosted' });
  await key.press('Enter');
  await expect.poll(() => page.evaluate(() => document.activeElement?.id), WAIT).toBe('field-groundGlass.frosted');

  // what was proven can be read
  await tray(page).getByText('Ways in for light, each shut').click();
  expect(await tray(page).locator('details[open] tbody tr').count()).toBe(proof.joints.length);
  expect(await tray(page).textContent()).toContain(`${proof.pieces} pieces were put together`);
});

test('a newer change puts a proof aside, and its own takes the place', async () => {
  const { page } = await open();
  await tray(page).getByRole('progressbar').waitFor();
  const field = page.locator('[id="field-plywood.thickness"]');
  await field.fill('3.2 mm');
  await field.press('Enter');
  // the old one ends, and no second pair of workers is kept beside the new one
  await tray(page).getByText('Not proven yet').waitFor();
  await tray(page).getByRole('progressbar').waitFor();
  const workers = () =>
    page
      .workers()
      .map((worker) => worker.url().replace(/^.*\//, ''))
      .filter((name) => /^(?:proof|light)-worker/.test(name))
      .sort();
  // a worker that was ended is counted by the browser until its thread is gone
  await expect.poll(workers, WAIT).toEqual(['light-worker.js', 'proof-worker.js']);
  await proven(page).waitFor({ timeout: 90_000 });
  const { findings } = await checked(designed('heron').replace('thickness: 4.05 mm', 'thickness: 3.2 mm'));
  expect(findings.map(({ rule }) => rule)).toContain('thin-panel');
  expect(await said(page)).toEqual(findings);
});

test('a design that is refused shows its errors, its leaks, and where they are', async () => {
  const kiwi = designed('kiwi');
  const page = await withDesign(kiwi);
  await proven(page).waitFor({ timeout: 90_000 });
  const { findings } = await checked(kiwi);
  expect(await said(page)).toEqual(findings);
  const streaks = findings.filter(({ message }) => message.startsWith('A streak of fog'));
  expect(await tray(page).locator('img.finding-leak').count()).toBe(streaks.length);
  expect(streaks.length).toBeGreaterThan(0);

  const streak = tray(page)
    .getByRole('button', { name: /^A streak of fog/ })
    .first();
  await streak.press('Enter');
  await expect.poll(() => streak.getAttribute('aria-pressed'), WAIT).toBe('true');
  await page.locator('.camera-pointed').waitFor();
  // the camera lets go of it, and so does the finding
  await page.locator('.camera-pointed button').click();
  await expect.poll(() => streak.getAttribute('aria-pressed'), WAIT).toBe('false');
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await violationsOn(page, '#tray')).toEqual([]);
});
