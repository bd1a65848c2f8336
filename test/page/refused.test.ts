import { expect, test } from 'vitest';
import { testedPage } from './browser.js';

const { open } = testedPage();

test('what cannot be written safely is said, the text stays, and the field has again what the text has', async () => {
  const { page } = await open({ without: ['proof-worker.js', 'light-worker.js'] });
  const theText = page.getByLabel('Text of the design');
  await page.getByRole('button', { name: 'Text', exact: true }).click();
  const named = (await theText.inputValue()).replace('pastInfinity: 4 mm', 'pastInfinity: &a 4 mm, pastNearest: *a');
  await theText.fill(named);
  await page.getByRole('button', { name: 'Form', exact: true }).click();
  const field = page.getByLabel('focus, past nearest', { exact: true });
  await expect.poll(() => field.inputValue(), { timeout: 20000 }).toBe('4 mm');
  await field.fill('3 mm');
  await field.press('Enter');
  const notice = page.getByRole('alert').filter({ hasText: 'Not written' });
  await notice.waitFor();
  expect(await notice.textContent()).toMatch(/focus\.pastNearest, line 25 of the text\. This value is an alias/);
  await expect.poll(() => field.inputValue(), { timeout: 20000 }).toBe('4 mm');
  await page.getByRole('button', { name: 'Text', exact: true }).click();
  expect(await theText.inputValue()).toBe(named);
});
