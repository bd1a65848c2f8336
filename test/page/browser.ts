import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createServer, type RequestListener } from 'node:http';
import { join, normalize } from 'node:path';
import axe from 'axe-core';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';

/** Where Debian, Fedora and macOS put it, beside what the environment names. */
const PLACES = [
  process.env.CHROMIUM ?? '',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/**
 * A real browser which asks nothing of the world. Its WebGL is drawn by SwiftShader, all else of the page by its own
 * software compositor: as on a machine without graphics hardware.
 */
export function openBrowser(more: readonly string[] = []): Promise<Browser> {
  const executablePath = PLACES.find((place) => place !== '' && existsSync(place));
  if (executablePath === undefined)
    throw new Error('The tests of the page need Chromium: install it, or name it in the variable CHROMIUM.');
  return chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--use-angle=swiftshader-webgl',
      '--enable-unsafe-swiftshader',
      ...more,
    ],
  });
}

export interface StaticSite {
  /** Ends in a slash. */
  readonly url: string;
  readonly close: () => Promise<void>;
}

const KINDS: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  wasm: 'application/wasm',
  yaml: 'text/yaml; charset=utf-8',
  json: 'application/json',
  txt: 'text/plain; charset=utf-8',
};

/** Where the page was bundled to. */
export const pageFolder = process.env.TAILBOARD_PAGE ?? join(import.meta.dirname, '..', '..', 'dist', 'page');

/**
 * The page as any web server would serve it, which knows nothing of it.
 *
 * @param heard is told each file that is asked for
 */
export function serveStatic(folder = pageFolder, heard: (file: string) => void = () => {}): Promise<StaticSite> {
  return listening((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://any').pathname));
    const file = join(folder, path.endsWith('/') ? `${path}index.html` : path);
    heard(file);
    readFile(file).then(
      (bytes) => {
        response.writeHead(200, { 'content-type': KINDS[file.split('.').at(-1) ?? ''] ?? 'application/octet-stream' });
        response.end(bytes);
      },
      () => response.writeHead(404).end(),
    );
  });
}

/** @param port 0 for any that is free */
export async function listening(answer: RequestListener, port = 0): Promise<StaticSite> {
  const server = createServer(answer);
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the server has no port');
  return {
    url: `http://127.0.0.1:${address.port}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

interface PageWanted {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  /** Scripts of workers that do nothing, where what they do is not what is looked at and would take the time of it. */
  readonly without?: readonly string[];
  /** Text of the design that it begins with; that of the README where left out. */
  readonly design?: string;
}

interface OpenedPage {
  readonly page: Page;
  readonly complaints: readonly string[];
}

/** A page that has come up and shows its camera; what it says on its console or throws is kept. */
export async function openPage(
  browser: Browser,
  url: string,
  { width = 1280, height = 800, dark = false, without = [], design }: PageWanted = {},
): Promise<OpenedPage> {
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    // keeping the whole page for later takes time from what is looked at; it has a test of its own
    serviceWorkers: 'block',
  });
  for (const script of without)
    await context.route(`**/${script}`, (route) => route.fulfill({ contentType: 'text/javascript', body: '' }));
  if (design !== undefined)
    await context.route('**/heron.yaml', (route) =>
      route.fulfill({ contentType: 'text/yaml; charset=utf-8', body: design }),
    );
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (/Service Worker registration blocked/.test(message.text())) return;
    // software that draws beside the page's own compositor hands each picture over in memory, and the driver says so
    if (/GL Driver Message \(OpenGL, Performance,.*GPU stall due to ReadPixels/.test(message.text())) return;
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(url);
  await page.getByText('revision').first().waitFor();
  return { page, complaints };
}

interface TestedPage {
  readonly browser: () => Browser;
  /** Where the page is served as by any web server; ends in a slash. */
  readonly url: () => string;
  /** Opens it; what is opened in a test is closed after it, for a page that stays open goes on proving its camera. */
  readonly open: (wanted?: PageWanted) => Promise<OpenedPage>;
}

/**
 * A browser and the page for the tests of a file, or of the group in which this is called: there before the first of them
 * begins, and gone after the last.
 *
 * @param solid whether the camera is drawn in three dimensions: software does that slowly, and takes the time of all else
 */
export function testedPage({ solid = false } = {}): TestedPage {
  const there: { browser?: Browser; site?: StaticSite; before: readonly BrowserContext[] } = { before: [] };
  const opened = <What>(what: What | undefined): What => {
    if (what === undefined) throw new Error('nothing is open before the tests begin');
    return what;
  };
  beforeAll(async () => {
    [there.browser, there.site] = await Promise.all([openBrowser(solid ? [] : ['--disable-3d-apis']), serveStatic()]);
  });
  afterAll(async () => {
    await there.browser?.close();
    await there.site?.close();
  });
  beforeEach(() => {
    there.before = there.browser?.contexts() ?? [];
  });
  afterEach(async () => {
    const now = there.browser?.contexts() ?? [];
    await Promise.all(now.filter((context) => !there.before.includes(context)).map((context) => context.close()));
  });
  const browser = () => opened(there.browser);
  const url = () => opened(there.site).url;
  return { browser, url, open: (wanted) => openPage(browser(), url(), wanted) };
}

/**
 * What axe-core finds against WCAG 2.2 A and AA, one line each.
 *
 * @param within a selector; the whole page where left out
 */
export async function violationsOn(page: Page, within = 'body'): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async (selector) => {
    const run = (globalThis as unknown as { axe: typeof axe }).axe.run;
    const { violations } = await run(selector, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    });
    return violations.flatMap(({ id, help, nodes }) =>
      nodes.map(({ target }) => `${id}: ${help} at ${target.join(' ')}`),
    );
  }, within);
}
