/**
 * Takes the pictures of the page that README.md shows, of the page that was compiled last:
 *
 *     npx tsx test/page/pictures.ts <picture folder>
 *
 * The camera is that of the README; the proof and the fine picture are waited for.
 */
import { join } from 'node:path';
import { openBrowser, openPage, serveStatic } from './browser.js';

const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error('a folder is wanted to put the pictures into');

/** A design is proven in some ten seconds; on a busy machine in a minute or two. */
const PROVEN = 300_000;

const wanted = [
  { name: 'page-light', width: 1280, height: 800, dark: false, tray: 'Findings' },
  { name: 'page-dark', width: 1280, height: 800, dark: true, tray: 'Sheets' },
  { name: 'page-narrow', width: 390, height: 844, dark: false, tray: 'Figures' },
] as const;

const site = await serveStatic();
const browser = await openBrowser();
for (const { name, tray, ...look } of wanted) {
  const { page } = await openPage(browser, site.url, look);
  await page
    .getByText(/^proven/i)
    .first()
    .waitFor({ timeout: PROVEN });
  await page.getByRole('tab', { name: tray, exact: true }).click();
  if (tray === 'Sheets') {
    await page.getByText('As they are built.').waitFor({ timeout: PROVEN });
    await page.getByLabel('Sawn open').check();
    await page.getByRole('button', { name: 'Nearest', exact: true }).click();
  }
  // what was pressed last has made a draft of the picture by then
  await page.waitForTimeout(500);
  await page.waitForSelector('canvas.camera-canvas[data-quality=fine]', { timeout: PROVEN });
  await page.evaluate(() => scrollTo(0, 0));
  await page.screenshot({ path: join(folder, `${name}.png`) });
  await page.close();
}
await browser.close();
await site.close();
