import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, expect, test } from 'vitest';
import { designJsonSchema } from '../../src/index.js';
import { testedPage, violationsOn } from './browser.js';
import { REMNANT, REMNANTS } from './remnant.js';

const FOLDER = join(import.meta.dirname, '..', '..', 'designs');
const HERON = await readFile(join(FOLDER, 'heron.yaml'), 'utf8');

const PROOF = ['proof-worker.js', 'light-worker.js'];

const { open } = testedPage();
const folder = await mkdtemp(join(tmpdir(), 'tailboard-design-'));
afterAll(() => rm(folder, { recursive: true, force: true }));

const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const theText = (page: Page) => page.getByLabel('Text of the design');
const turnTo = (page: Page, as: 'Form' | 'Text') => page.getByRole('button', { name: as, exact: true }).click();
const change = (name: string, value: string) => async (page: Page) => {
  await field(page, name).fill(value);
  await field(page, name).press('Enter');
};

/** Waits until the text of the design is this; the form is shown again then. */
async function expectText(page: Page, text: string): Promise<void> {
  await turnTo(page, 'Text');
  await expect.poll(() => theText(page).inputValue(), { timeout: 20000 }).toBe(text);
  await turnTo(page, 'Form');
}

const expectValue = (page: Page, name: string, value: string) =>
  expect.poll(() => field(page, name).inputValue(), { timeout: 20000 }).toBe(value);

const savedOrNot = (page: Page, words: string) => page.locator('.design-file').filter({ hasText: words }).waitFor();

/** Whether steps are a burst must not hang on how busy the machine is. */
const clockAt = (page: Page, ms: number) =>
  page.evaluate((now) => {
    performance.now = () => now;
  }, ms);

test('a value is changed by keyboard: the text keeps every other byte, the camera follows, undo takes it back', async () => {
  const { page, complaints } = await open({ without: PROOF });
  const revision = async () => /revision\s+(\w+)/.exec((await page.locator('.title-block').textContent()) ?? '')?.[1];
  const before = await revision();
  const flange = field(page, 'lens, flange distance');
  expect(await flange.inputValue()).toBe('203.5 mm');
  await flange.focus();
  // ten steps within one moment, the first five of which are written before the others come
  await clockAt(page, 1000);
  for (let i = 0; i < 5; i++) await flange.press('ArrowUp');
  await expect.poll(revision, { timeout: 20000 }).not.toBe(before);
  await savedOrNot(page, 'changed since it was saved');
  for (let i = 0; i < 5; i++) await flange.press('ArrowUp');
  expect(await flange.inputValue()).toBe('204.5 mm');
  const changed = HERON.replace('flangeDistance: 203.5 mm', 'flangeDistance: 204.5 mm');
  expect(changed).toContain('# Measured on the bench');
  await expectText(page, changed);

  // they are one step to whoever undoes them; the design is then the one that was opened
  await page.keyboard.press('Control+z');
  await savedOrNot(page, 'as opened');
  await expectText(page, HERON);
  expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  await page.keyboard.press('Control+Shift+z');
  await savedOrNot(page, 'changed since it was saved');
  await expectValue(page, 'lens, flange distance', '204.5 mm');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+y');
  await expectText(page, changed);

  // what is typed into a field and not written yet is the field's own to take back
  await field(page, 'focus, nearest').focus();
  await page.keyboard.type('5');
  await page.keyboard.press('Control+z');
  await expectValue(page, 'focus, nearest', '1:2.5');
  await expectText(page, changed);
  expect(complaints).toEqual([]);
});

test('form and text say the same, whichever is changed', async () => {
  const { page } = await open({ without: PROOF });
  await turnTo(page, 'Text');
  const typed = HERON.replace('nearest: 1:2.5', 'nearest: 1:3').replace('kerf: 0.15 mm', 'kerf: 0.2 mm');
  await theText(page).fill(typed);
  // the keys rest, and the text is read without anything else being done
  await page.locator('.title-block').getByText('1:3').first().waitFor();
  await turnTo(page, 'Form');
  await expectValue(page, 'focus, nearest', '1:3');
  await page.getByLabel('Find a key').fill('kerf');
  await expectValue(page, 'laser, kerf', '0.2 mm');
  expect(await page.locator('.design-form input').count()).toBe(2);
  await page.getByLabel('Find a key').fill('');

  // an empty field is a key that is left out; what then holds is told, and the way there is a button too
  await change('lens, max aperture', '')(page);
  await expectText(page, typed.replace('  maxAperture: f/6.3\n', ''));
  const aperture = field(page, 'lens, max aperture');
  expect(await aperture.inputValue()).toBe('');
  expect(await aperture.getAttribute('placeholder')).toBe('f/8');
  expect(await page.getByText('If left out: f/8.').count()).toBe(1);
  await aperture.fill('f/9');
  await aperture.press('Enter');
  await page.getByRole('button', { name: 'Leave out lens, max aperture' }).click();
  await expectValue(page, 'lens, max aperture', '');

  // an entry comes and goes with its name
  await page.getByRole('button', { name: 'Add to holders' }).click();
  const third = page.locator('[id="field-holders[2]"]');
  await third.waitFor();
  expect(await third.getAttribute('aria-expanded')).toBe('true');
  const depth = page.locator('[id="field-holders[2].filmDepth"]');
  expect(await depth.getAttribute('aria-label')).toMatch(/^holders, .+, film depth$/);
  await page.getByRole('button', { name: /^Remove / }).click();
  await third.waitFor({ state: 'detached' });
  await expectText(page, typed.replace('  maxAperture: f/6.3\n', ''));
});

test('a bad value stays as it was typed, and its field says what is wrong and what would be taken', async () => {
  const { page } = await open({ without: PROOF });
  await change('lens, flange distance', '203,5 mm')(page);
  const flange = field(page, 'lens, flange distance');
  await expect.poll(() => flange.getAttribute('aria-invalid'), { timeout: 20000 }).toBe('true');
  expect(await flange.inputValue()).toBe('203,5 mm');
  const said = page.locator(`[id="${(await flange.getAttribute('aria-describedby'))?.split(' ').at(-1)}"]`);
  expect(await said.textContent()).toContain('203.5 mm');

  // the way to the line leads into the text, where the token is chosen
  await said.getByRole('button').click();
  await expect.poll(() => page.evaluate(() => String(getSelection())), { timeout: 20000 }).toMatch(/203,5/);
  await theText(page).fill(HERON.replace('focalLength', 'focalLenght'));
  const problems = page.locator('#design-problems');
  await problems.getByText('line 10, column 3').waitFor();
  await turnTo(page, 'Form');
  // a key that the form has not got stands at its head
  expect(await page.locator('.design-elsewhere').textContent()).toContain('focalLength');
  await turnTo(page, 'Text');
  await theText(page).fill('lens: [');
  await problems.getByRole('button').first().waitFor();
  await turnTo(page, 'Form');
  await page.getByText('There is no form of this text').waitFor();
});

test('a design is opened with its remnants, and saved with the bytes that it has', async () => {
  const { page } = await open({ without: PROOF });
  // a mark at the head and the line ends of another system are the user's own
  const egret = `${HERON.replace('name: Heron', 'name: Egret')}stock: [{ remnant: rack/${REMNANT} }]\n`;
  const bytes = Buffer.from(`\ufeff${egret.replaceAll('\n', '\r\n')}`);
  await writeFile(join(folder, 'egret.yaml'), bytes);
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open', exact: true }).click(),
  ]);
  expect(chooser.isMultiple()).toBe(true);
  // what is picked has lost its folder; without the remnant this would be no design
  await chooser.setFiles([join(folder, 'egret.yaml'), join(REMNANTS, REMNANT)]);
  await page.locator('.title-block').getByText('Egret').waitFor();
  const download = async () => {
    const [saved] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
    expect(saved.suggestedFilename()).toBe('egret.yaml');
    return readFile(await saved.path());
  };
  expect((await download()).equals(bytes)).toBe(true);
  await change('name', 'Little Egret')(page);
  await savedOrNot(page, 'changed since it was saved');
  expect((await download()).toString()).toBe(bytes.toString().replace('name: Egret', 'name: Little Egret'));
  await savedOrNot(page, 'is saved');
});

test('a new design begins with what must be known', async () => {
  const { page } = await open({ without: PROOF });
  await page.getByRole('button', { name: 'New', exact: true }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Name of the camera').fill('Little Grebe');
  await dialog.getByLabel('Format').selectOption('4x5');
  await dialog.getByLabel('Focal length').fill('150 mm');
  await dialog.getByLabel('Flange distance').fill('140');
  await dialog.getByLabel('Thickness').fill('4.1 mm');
  await dialog.getByLabel('How wide').fill('a hair');
  await dialog.getByRole('button', { name: 'Begin' }).click();
  await dialog.getByText('"a hair" is not a length').waitFor();
  expect(await violationsOn(page, '#new-design')).toEqual([]);
  await dialog.getByLabel('How wide').fill('0.15 mm');
  await dialog.getByRole('button', { name: 'Begin' }).click();
  await page.locator('.design-file').getByText('little-grebe.yaml').waitFor();
  await expectValue(page, 'lens, flange distance', '140 mm');
  await expectValue(page, 'format', '4x5');
  // no file has it, and it may not be lost for another one unasked
  await savedOrNot(page, 'is not saved yet');
  await page.getByRole('button', { name: 'New', exact: true }).click();
  const leaving = page.getByRole('dialog', { name: 'Another design in place of this one' });
  await leaving.getByText('was never saved').waitFor();
  expect(await violationsOn(page, '#leaving-design')).toEqual([]);
  await leaving.getByRole('button', { name: 'Stay with it' }).click();
  expect(await page.getByRole('dialog').count()).toBe(0);
  await page.getByRole('button', { name: 'New', exact: true }).click();
  const [saved] = await Promise.all([
    page.waitForEvent('download'),
    leaving.getByRole('button', { name: 'Save it first' }).click(),
  ]);
  expect(saved.suggestedFilename()).toBe('little-grebe.yaml');
  await page.getByRole('dialog', { name: 'A new design' }).waitFor();
});

test('what nobody has measured is marked until somebody has, and what is said of the camera hangs on it', async () => {
  const { page } = await open({ without: PROOF });
  await page.getByRole('button', { name: 'New', exact: true }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Name of the camera').fill('Wren');
  await dialog.getByLabel('Focal length').fill('210 mm');
  await dialog.getByLabel('Thickness').fill('4.1 mm');
  await dialog.getByRole('button', { name: 'Begin' }).click();
  // six figures of the barrel, the flange distance and the cut
  const told = page.locator('#tray .design-made-up');
  await told.getByText('8 made-up figures').waitFor();
  expect(await violationsOn(page, '#tray')).toEqual([]);
  await told.getByRole('button', { name: 'lens.flangeDistance', exact: true }).click();
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.id), { timeout: 20000 })
    .toBe('field-lens.flangeDistance');
  await change('lens, flange distance', '203.5 mm')(page);
  await told.getByText('7 made-up figures').waitFor();
  await told.getByRole('button', { name: 'laser.kerf', exact: true }).click();
  await page.getByRole('button', { name: 'laser.kerf measured' }).click();
  await told.getByText('6 made-up figures').waitFor();
  await turnTo(page, 'Text');
  expect(await theText(page).inputValue()).toMatch(/flangeDistance: 203\.5 mm\n[\s\S]*kerf: 0\.15 mm\n/);
  expect((await theText(page).inputValue()).match(/# PLACEHOLDER\b/g)).toHaveLength(6);
});

test('the heading and the tray of findings lead to what keeps a text from being a design', async () => {
  const { page } = await open({ without: PROOF });
  await change('plywood, sheet', '800 by 600')(page);
  const fault = page.getByRole('button', { name: 'To the fault' });
  await fault.waitFor();
  const focused = () => page.evaluate(() => document.activeElement?.id);
  await fault.click();
  await expect.poll(focused, { timeout: 20000 }).toBe('field-plywood.sheet');
  await page.locator('#tray .design-faults').getByRole('button').first().click();
  await expect.poll(focused, { timeout: 20000 }).toBe('field-plywood.sheet');
  expect(await violationsOn(page, '.title-block')).toEqual([]);
  await change('plywood, sheet', '800 x 600')(page);
  await fault.waitFor({ state: 'detached' });
  await expectValue(page, 'plywood, sheet', '800, 600');
  // a key that has no field is found in the text
  await turnTo(page, 'Text');
  await theText(page).fill(HERON.replace('focalLength', 'focalLenght'));
  await fault.click();
  await expect.poll(() => page.evaluate(() => String(getSelection())), { timeout: 20000 }).toContain('focalL');
});

test.each([{ dark: false }, { dark: true }])(
  'form and text can be used by everybody, dark: $dark',
  async ({ dark }) => {
    const { page } = await open({ dark, without: PROOF });
    await field(page, 'lens, flange distance').waitFor();
    // everything open, every key of the schema outside lists has its control, and the tab key comes to each of them
    await page.getByLabel('Find a key').fill('e');
    await page.locator('#field-sitting[aria-expanded="true"]').waitFor();
    const groups = Object.keys(designJsonSchema().properties ?? {});
    expect(groups).toContain('sitting');
    for (const key of groups) expect(await page.locator(`[id="field-${key}"]`).count(), key).toBe(1);
    expect(await violationsOn(page, '.design')).toEqual([]);
    await page.getByLabel('Find a key').fill('');
    await page.locator('#field-sitting[aria-expanded="false"]').waitFor();
    const controls = await page.locator('.design-form :is(input, select, button):visible').count();
    await page.getByLabel('Find a key').focus();
    const reached = new Set<string>();
    for (let i = 0; i < controls; i++) {
      await page.keyboard.press('Tab');
      reached.add(
        await page.evaluate(
          () =>
            document.activeElement?.id ||
            document.activeElement?.ariaLabel ||
            document.activeElement?.textContent ||
            '',
        ),
      );
    }
    expect(reached.size).toBe(controls);
    await turnTo(page, 'Text');
    await theText(page).fill(HERON.replace('210 mm\n', '210 mn\n'));
    await page.locator('#design-problems').getByText('not a length').waitFor();
    expect(await violationsOn(page, '.design')).toEqual([]);
    // the text does not keep the tab key to itself
    await theText(page).focus();
    await page.keyboard.press('Tab');
    expect(await theText(page).evaluate((area) => area === document.activeElement)).toBe(false);
  },
);
