import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { openBrowser, serveStatic } from '../page/browser.js';
import { machine } from './machine.js';

const TIMES = 30;
const SIZE = { width: 1280, height: 800 };

/** What has not come of a change after so long, ms, is not waited for: it counts as never. */
const LONGEST = 10_000;

/** How long the slider is dragged, ms. */
const DRAGGED = 8000;

/** The canvas of the camera when nothing of it changes any more. */
const AT_REST = 'canvas.camera-canvas[data-quality=fine]';

/** What runs TypeScript as it stands names functions by this, in the page too. */
const NAMES = 'globalThis.__name = (made) => made';

/** The moments that the page tells the browser's record of times. */
type Moment = 'figures' | 'camera' | 'sheets';

interface Row {
  readonly what: string;
  readonly figure: number;
  readonly unit: string;
  readonly goal: number;
  /** Whether more is better. */
  readonly least?: boolean;
}

/** What the page promises of its speed, measured in a browser that draws by software; nothing fails here. */
export async function measurePage(asJson: boolean): Promise<void> {
  const rows: Row[] = [];
  if (!asJson)
    process.stdout.write(`${machine()}\n\n| what | median of ${TIMES} | goal | |\n| --- | --- | --- | --- |\n`);
  for (const measure of [focusDragged, changes, firstViews]) {
    // each begins with a browser that has done nothing yet
    const browser = await openBrowser();
    for (const row of await measure(browser)) {
      rows.push(row);
      if (!asJson) process.stdout.write(line(row));
    }
    await browser.close();
  }
  if (asJson) process.stdout.write(`${JSON.stringify({ machine: machine(), rows }, null, 2)}\n`);
}

function line({ what, figure, unit, goal, least = false }: Row): string {
  const met = (least ? figure >= goal : figure <= goal) ? 'met' : 'missed';
  return `| ${what} | ${figure.toPrecision(3)} ${unit} | ${least ? '≥' : '≤'} ${goal} ${unit} | ${met} |\n`;
}

/** From asking for the page to its form, its figures and its heading, each time in a browser that has nothing of it yet. */
async function firstViews(browser: Browser): Promise<readonly Row[]> {
  const seconds: number[] = [];
  const kilobytes: number[] = [];
  for (let time = 0; time <= TIMES; time++) {
    const asked: { readonly file: string; readonly at: number }[] = [];
    const site = await serveStatic(undefined, (file) => asked.push({ file, at: Date.now() }));
    const context = await browser.newContext({ viewport: SIZE });
    const page = await context.newPage();
    await page.addInitScript(NAMES);
    await page.goto(site.url);
    const [took, at] = await page.evaluate(async () => {
      const there = () => performance.getEntriesByName('tailboard:figures').length > 0;
      while (!there()) await new Promise((resolve) => requestAnimationFrame(resolve));
      await new Promise((resolve) => requestAnimationFrame(resolve));
      return [performance.now(), performance.timeOrigin + performance.now()];
    });
    // the first one starts the browser's own processes
    if (time > 0) {
      seconds.push((took ?? Infinity) / 1000);
      const before = asked.filter((one) => one.at < (at ?? 0) && /\.(?:js|wasm)$/.test(one.file));
      const bytes = before.map(({ file }) => gzipSync(readFileSync(file)).length);
      kilobytes.push(bytes.reduce((sum, one) => sum + one, 0) / 1000);
    }
    await context.close();
    await site.close();
  }
  return [
    { what: 'first usable view of the static page', figure: median(seconds), unit: 's', goal: 1.5 },
    { what: 'scripts and WASM before it, compressed', figure: median(kilobytes), unit: 'KB', goal: 700 },
  ];
}

/** From a number that was typed to what becomes of the camera, with nothing else under way. */
async function changes(browser: Browser): Promise<readonly Row[]> {
  const { page, close } = await openedPage(browser);
  const found: Record<Moment, number[]> = { figures: [], camera: [], sheets: [] };
  const field = page.locator('[id="field-lens.flangeDistance"]');
  for (let time = 0; time <= TIMES; time++) {
    // no two are the same, so that nothing is remembered
    await field.fill(`${(203 + time / 20).toFixed(2)} mm`);
    await page.evaluate(() => performance.clearMarks());
    await field.press('Enter');
    const took = await page.evaluate(async (longest) => {
      const at: Record<string, number> = {};
      const begun = performance.now();
      const startOf = (name: string) => performance.getEntriesByName(`tailboard:${name}`)[0]?.startTime;
      const { port1, port2 } = new MessageChannel();
      // a task that is asked for at the beginning of a frame comes when the page has drawn it
      const frameDrawn = () =>
        new Promise((resolve) => {
          port1.onmessage = resolve;
          requestAnimationFrame(() => port2.postMessage(null));
        });
      while (Object.keys(at).length < 3 && performance.now() - begun < longest) {
        await frameDrawn();
        for (const name of ['figures', 'camera', 'sheets'])
          if (at[name] === undefined && startOf(name) !== undefined) at[name] = performance.now();
      }
      return Object.fromEntries(Object.entries(at).map(([name, then]) => [name, then - (startOf('asked') ?? 0)]));
    }, LONGEST);
    if (time > 0) for (const name of ['figures', 'camera', 'sheets'] as const) found[name].push(took[name] ?? Infinity);
    await atRest(page);
  }
  await close();
  const row = (what: string, name: Moment, goal: number): Row => ({
    what,
    figure: median(found[name]),
    unit: 'ms',
    goal,
  });
  return [
    row('changed number to new figures and findings that need no solids', 'figures', 50),
    row('changed number to the new camera', 'camera', 250),
    row('changed number to new sheets', 'sheets', 400),
  ];
}

/** Frames while the focus slider is dragged to and fro. */
async function focusDragged(browser: Browser): Promise<readonly Row[]> {
  const { page, close } = await openedPage(browser);
  const slider = page.getByLabel('Focus', { exact: true });
  await slider.waitFor();
  const box = await slider.boundingBox();
  if (box === null) throw new Error('there is no slider for the focus');
  await page.evaluate(() => {
    const frames: number[] = [];
    Object.assign(globalThis, { frames });
    const step = (now: number) => {
      frames.push(now);
      requestAnimationFrame(step);
    };
    requestAnimationFrame(step);
  });
  const y = box.y + box.height / 2;
  const along = (share: number) => box.x + 8 + (box.width - 16) * share;
  await page.mouse.move(along(0), y);
  await page.mouse.down();
  const from = await page.evaluate(() => performance.now());
  // by the clock: on a slow machine a hand goes as fast as on a quick one
  for (const begun = Date.now(); Date.now() - begun < DRAGGED; ) {
    const phase = ((Date.now() - begun) % 2000) / 1000;
    await page.mouse.move(along(phase < 1 ? phase : 2 - phase), y);
    await page.waitForTimeout(5);
  }
  const to = await page.evaluate(() => performance.now());
  await page.mouse.up();
  const frames = (await page.evaluate('frames')) as readonly number[];
  await close();
  const during = frames.filter((at) => at > from && at < to);
  const times = during.slice(1).map((at, i) => at - (during[i] ?? at));
  return [
    { what: 'focus slider dragged, frames a second', figure: 1000 / median(times), unit: '', goal: 30, least: true },
    { what: 'focus slider dragged, 95 % of frames within', figure: quantile(times, 0.95), unit: 'ms', goal: 50 },
  ];
}

/** The page with its camera, its sheets and the proof of it at rest. */
async function openedPage(browser: Browser): Promise<{ readonly page: Page; readonly close: () => Promise<void> }> {
  const site = await serveStatic();
  const context = await browser.newContext({ viewport: SIZE, serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.addInitScript(NAMES);
  await page.goto(site.url);
  await page.getByRole('tab', { name: 'Sheets' }).click();
  await atRest(page);
  return {
    page,
    close: async () => {
      await context.close();
      await site.close();
    },
  };
}

/** Until the camera is proven, its sheets are found, and it has been drawn as fine as it will be. */
async function atRest(page: Page): Promise<void> {
  const limit = { timeout: 120_000 };
  await page
    .getByText(/^proven|^proof finished/)
    .first()
    .waitFor(limit);
  await page.getByText('As they are built.').waitFor(limit);
  await page.waitForSelector(AT_REST, limit);
  await page.waitForTimeout(300);
}

const quantile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length * share)] ?? Infinity;

const median = (values: readonly number[]): number => quantile(values, 0.5);
