import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { scratch, snapshot, tailboard } from '../cli/scratch.js';
import { testedPage, violationsOn } from './browser.js';
import { unpacked } from './unpacked.js';

const { open } = testedPage({ solid: true });

/** A busy machine takes its time. */
const WAIT = { timeout: 300_000 };

const design = readFileSync(join(import.meta.dirname, '../../designs/wren.yaml'), 'utf8');
const prices = 'currency: EUR\nsheets: [{ material: plywood, price: 7.50 }]\nlaser: { perMinute: 0.5 }\n';

test('kits for a class are those that build --copies writes, byte for byte', async () => {
  const { page } = await open({ design });
  page.setDefaultTimeout(WAIT.timeout);
  await page.getByRole('tab', { name: 'Take away' }).click();
  const tray = page.locator('#tray');
  const copies = tray.getByLabel('Kits', { exact: true });

  await copies.fill('many');
  await tray.getByText('Write a whole number from 1 to 100.').waitFor();
  expect(await tray.getByRole('button', { name: 'Build the kits' }).isDisabled()).toBe(true);
  await copies.fill('2');

  const take = async (text: string, button: string) => {
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      tray.getByRole('button', { name: button }).click(),
    ]);
    await chooser.setFiles({ name: 'prices.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });
    await tray.getByText('Priced by').waitFor();
  };
  // a mistake is told with its place, and nothing is built
  await take(prices.replace('7.50', 'cheap'), 'Open a price file');
  expect(await violationsOn(page, '#tray')).toEqual([]);
  await tray.getByRole('button', { name: 'Build the kits' }).click();
  await tray.getByText('prices.yaml:2:').waitFor(WAIT);

  await take(prices, 'Open another');
  await tray.getByRole('button', { name: 'Build the kits' }).click();
  const link = tray.getByRole('link', { name: 'Save wren-2-kits.zip' });
  await link.waitFor(WAIT);
  await tray.getByRole('link', { name: 'Look into the papers of the kits' }).waitFor();
  const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
  const files = unpacked(readFileSync(await download.path()));

  const folder = scratch();
  writeFileSync(join(folder, 'wren.yaml'), design);
  writeFileSync(join(folder, 'prices.yaml'), prices);
  const { code, err } = await tailboard(['build', 'wren.yaml', '--copies', '2', '--prices', 'prices.yaml'], folder);
  expect(code, err).toBe(0);
  const wanted = Object.entries(snapshot(join(folder, 'output'))).filter(([path]) => !path.endsWith('/'));
  expect([...files.keys()].sort()).toEqual(wanted.map(([path]) => path).sort());
  expect(wanted.filter(([path, text]) => files.get(path)?.toString('latin1') !== text).map(([path]) => path)).toEqual(
    [],
  );

  // other kits than those that lie here
  await copies.fill('3');
  await tray.getByText('it was built before').waitFor();
}, 600_000);
