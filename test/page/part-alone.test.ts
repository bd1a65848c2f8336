import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { scratch, snapshot, tailboard } from '../cli/scratch.js';
import { testedPage, violationsOn } from './browser.js';
import { openFiles, QUIET, words } from './files.js';
import { unpacked } from './unpacked.js';

const { open } = testedPage();

const heron = readFileSync(join(import.meta.dirname, '..', '..', 'designs', 'heron.yaml'), 'utf8');

/** The card of a part of Heron. */
async function cardOf(page: Page, part: string): Promise<Locator> {
  await page.getByLabel('Part', { exact: true }).selectOption(part);
  const card = page.locator('.camera-card');
  await card.getByRole('button', { name: `Save ${part} alone` }).waitFor();
  return card;
}

/** What the command line says and writes for the same, the folder's name left out. */
const partByCommand = (...args: readonly string[]) => partBeside({}, ...args);

/** The same, with other files beside the design. */
async function partBeside(others: Readonly<Record<string, string>>, ...args: readonly string[]) {
  const folder = scratch();
  for (const [name, text] of Object.entries({ ...others, 'heron.yaml': heron }))
    writeFileSync(join(folder, name), text);
  const { code, err } = await tailboard(['part', 'heron.yaml', ...args, '-o', 'made'], folder);
  const made = Object.entries(snapshot(folder)).filter(([path]) => /^made\/.*[^/]$/.test(path));
  return { code, err: err.replace(/\s+/g, ' '), files: Object.fromEntries(made.map(([p, t]) => [p.slice(5), t])) };
}

/** The files that the card saves, without the folder that they lie in. */
async function saved(page: Page, card: Locator, part: string): Promise<Readonly<Record<string, string>>> {
  const button = card.getByRole('button', { name: `Save ${part} alone` });
  const [download] = await Promise.all([page.waitForEvent('download'), button.click()]);
  expect(download.suggestedFilename()).toBe(`heron-${part}.zip`);
  const files = unpacked(readFileSync(await download.path()));
  return Object.fromEntries(
    [...files].map(([path, bytes]) => [path.replace(/^[^/]*\//, ''), bytes.toString('latin1')]),
  );
}

test('a part is saved alone as tailboard part writes it, byte for byte, a print as well', async () => {
  const { page, complaints } = await open({ design: heron, ...QUIET });
  for (const part of ['F3', 'lens-clamp']) {
    const card = await cardOf(page, part);
    const wanted = await partByCommand(part);
    expect(wanted.code).toBe(0);
    expect(await saved(page, card, part)).toEqual(wanted.files);
  }
  // what is printed is cut from no sheet, and what is bought is not made
  expect(await page.locator('.camera-card').getByRole('textbox').count()).toBe(0);
  await page.getByLabel('Part', { exact: true }).selectOption('ground-glass');
  await page.locator('.camera-card').getByText('glass, bought').waitFor();
  expect(await page.locator('.camera-card').getByRole('button', { name: 'alone' }).count()).toBe(0);
  expect(complaints).toEqual([]);
});

test('from a sheet of another thickness: what changes is told, and what stops the command line stops it here', async () => {
  const { page } = await open({ design: heron, ...QUIET });
  const card = await cardOf(page, 'F3');
  const sheet = card.getByRole('textbox', { name: 'Sheet at hand' });
  const told = card.getByRole('status');

  // by the keyboard alone
  await sheet.focus();
  await page.keyboard.type('3.9 mm');
  await told.getByText('cut from 3.9 mm').waitFor();
  const thinner = await partByCommand('F3', '--thickness', '3.9 mm');
  const [, message = ''] = /other-thickness (.*?) measured/.exec(thinner.err) ?? [];
  expect(message).not.toBe('');
  expect(await words(told)).toContain(message);
  expect(await saved(page, card, 'F3')).toEqual(thinner.files);
  expect(await violationsOn(page, '.camera-card')).toEqual([]);

  await sheet.fill('5 mn');
  const misread = await partByCommand('F3', '--thickness', '5 mn');
  await told.getByText('is not a length').waitFor();
  expect(misread.err).toContain(await words(told));

  await sheet.fill('4.5 mm');
  await told.getByText('cut from 4.5 mm').waitFor();
  await page.keyboard.press('Enter');
  const stopped = await partByCommand('F3', '--thickness', '4.5 mm');
  expect(stopped.files).toEqual({});
  await told.getByText('Not built, nothing written').waitFor();
  expect(stopped.err).toContain('Not built, nothing written: other-thickness.');
  expect(await words(told)).toContain('Not built, nothing written: other-thickness.');
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await violationsOn(page, '.camera-card')).toEqual([]);
  await card.getByRole('checkbox', { name: 'Save despite other-thickness' }).check();
  const despite = await partByCommand('F3', '--thickness', '4.5 mm', '--despite', 'other-thickness');
  expect(await saved(page, card, 'F3')).toEqual(despite.files);
});

test('from a remnant that is picked, as --remnant cuts it; what is none is refused in the same words', async () => {
  const { page, complaints } = await open({ design: heron, ...QUIET });
  const card = await cardOf(page, 'R6');
  const told = card.getByRole('status');
  const pieces = scratch();
  const piece = { schema: 1, material: 'plywood-4.05', thickness: 4.05, outline: [[0, 0], [300, 0], [300, 260], [0, 260]] }; // biome-ignore format: one line
  const pick = async (name: string, content: object) => {
    writeFileSync(join(pieces, name), JSON.stringify(content));
    await openFiles(page, 'Cut it from a remnant', join(pieces, name));
    await card.getByText(`From ${name}`).waitFor();
    return partBeside({ [name]: JSON.stringify(content) }, 'R6', '--remnant', name);
  };

  const small = { ...piece, outline: [[0, 0], [30, 0], [30, 30], [0, 30]] }; // biome-ignore format: one line
  // what does not fit a remnant is cut from a sheet
  for (const [name, content] of [
    ['shelf.json', piece],
    ['small.json', small],
  ] as const) {
    // biome-ignore format: one line
    const wanted = await pick(name, content);
    expect(wanted.code, wanted.err).toBe(0);
    expect(wanted.files['sheets/layout.json']?.includes(name)).toBe(name === 'shelf.json');
    expect(await violationsOn(page, '.camera-card')).toEqual([]);
    expect(await saved(page, card, 'R6')).toEqual(wanted.files);
    await card.getByRole('button', { name: 'Forget it' }).click();
  }
  for (const [name, content, says] of [
    ['none.json', {}, 'it is no remnant'],
    ['birch.json', { ...piece, material: 'birch-4.05' }, 'is birch-4.05'],
  ] as const) {
    const refused = await pick(name, content);
    expect(refused.files, name).toEqual({});
    await card.getByRole('button', { name: 'Save R6 alone' }).click();
    await told.getByText(says).first().waitFor();
    const [first = ''] = (await words(told)).split('. ');
    expect(refused.err).toContain(first);
    await card.getByRole('button', { name: 'Forget it' }).click();
  }
  expect(complaints).toEqual([]);
});
