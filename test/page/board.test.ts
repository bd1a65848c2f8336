import { expect, test } from 'vitest';
import { testedPage, violationsOn } from './browser.js';

const { open } = testedPage({ solid: true });

test('the page comes up with the camera of the README, and complains of nothing', async () => {
  const { page, complaints } = await open();
  await page.getByText('Heron').first().waitFor();
  expect(complaints).toEqual([]);
  expect(await violationsOn(page)).toEqual([]);
});
