import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';
import { servedPage } from '../../src/cli/served-page.js';
import { GUARDING_HEADERS } from '../../src/cli/server-guard.js';
import { scratch } from '../cli/scratch.js';
import { listening, pageFolder, serveStatic, testedPage } from './browser.js';

const { browser } = testedPage();

/** The page under a path of its own, on a server that knows nothing of it. */
async function site() {
  const folder = scratch();
  const under = join(folder, 'some', 'where');
  mkdirSync(join(folder, 'some'));
  cpSync(pageFolder, under, { recursive: true });
  const server = await serveStatic(folder);
  onTestFinished(() => server.close());
  const page = await (await browser().newContext()).newPage();
  return { under, server, page, url: `${server.url}some/where/` };
}

const cameUp = (page: Page) => page.getByText('revision').first().waitFor();

/** Until the page has drawn it, as its own record of times says. */
const drawn = (page: Page, what: 'camera' | 'sheets') =>
  page.waitForFunction((name) => performance.getEntriesByName(name).length > 0, `tailboard:${what}`);

/** Until the browser has all of the page, as its own list says. */
const kept = (page: Page) =>
  page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    while (active?.state !== 'activated')
      await new Promise((resolve) => active?.addEventListener('statechange', resolve, { once: true }));
  });

test('after one visit the page comes up without its server, all of it, under any path', async () => {
  const { server, page, url } = await site();
  await page.goto(url);
  await cameUp(page);
  await kept(page);
  await server.close();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.reload();
  await cameUp(page);
  for (const name of readdirSync(pageFolder).filter((file) => !/LEGAL|(?:offline|stand-down)-worker/.test(file))) {
    const length = await page.evaluate(
      async (file) => {
        const reply = await fetch(file);
        return reply.ok ? (await reply.arrayBuffer()).byteLength : -1;
      },
      name === 'index.html' ? './' : name,
    );
    expect(length, name).toBe(readFileSync(join(pageFolder, name)).length);
  }
  expect(complaints).toEqual([]);
});

test('at the first visit too, what is loaded late comes without the server', async () => {
  const { server, page, url } = await site();
  page.setDefaultTimeout(90_000);
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(url);
  await cameUp(page);
  await kept(page);
  // what is on its way when the server goes is lost with it, as anywhere
  await drawn(page, 'camera');
  await drawn(page, 'sheets');
  await server.close();
  // the letters of the card and what writes it are loaded by a worker that was there before anything was kept
  await page.getByRole('tab', { name: 'Sitting' }).click();
  await page.getByLabel('Distance to the eyes').fill('1.2 m');
  await page.locator('.sitting-set').waitFor();
  await page.getByRole('button', { name: 'Draw the card' }).click();
  await page.locator('.sitting-card img').waitFor();
  // the worker that surveys begins now
  await page.getByRole('tab', { name: 'Lens drawer' }).click();
  await page.getByRole('button', { name: 'Begin a list' }).click();
  await page.getByRole('button', { name: /^Survey \d+ cameras?$/ }).click();
  await page.locator('.survey table').first().waitFor();
  expect(await page.getByRole('alert').count()).toBe(0);
  expect(complaints).toEqual([]);
});

test('a page that was kept makes way for the program that serves one at the same address', async () => {
  const before = await serveStatic();
  const context = await browser().newContext();
  const page = await context.newPage();
  await page.goto(before.url);
  await cameUp(page);
  await kept(page);
  await before.close();
  const answer = servedPage(pageFolder, '');
  if (answer === null) throw new Error('no page is served');
  const program = await listening(
    ({ method = '', url = '', headers }, response) => {
      const { status, headers: own, body } = answer({ method, target: url, headers, hosts: [] });
      response.writeHead(status, { ...GUARDING_HEADERS, ...own }).end(body);
    },
    Number(new URL(before.url).port),
  );
  onTestFinished(() => program.close());
  // opened once, and not again by hand
  await page.goto(program.url);
  await page.locator('meta[name=tailboard-served]').waitFor({ state: 'attached', timeout: 60_000 });
  await cameUp(page);
  const left = () =>
    page.evaluate(async () => [
      ...(await navigator.serviceWorker.getRegistrations()).map(({ scope }) => scope),
      ...(await caches.keys()),
    ]);
  await expect.poll(left).toEqual([]);
});

test('a newer page takes the place of the older one, and nothing of that is left', async () => {
  const { under, page, url } = await site();
  await page.goto(url);
  await cameUp(page);
  await kept(page);
  const [before] = await page.evaluate(() => caches.keys());
  newBuild(under, 'Tailboard, newer');
  await page.reload();
  // fetched behind the page, then put in its place the next time it begins; that takes a moment, which the next reload
  // must leave it: nobody reloads twice a second
  await expect
    .poll(
      async () => {
        await page.reload();
        await cameUp(page);
        return page.title();
      },
      { timeout: 60_000, interval: 2500 },
    )
    .toBe('Tailboard, newer');
  await expect.poll(() => page.evaluate(() => caches.keys()), { timeout: 10_000 }).toHaveLength(1);
  expect(await page.evaluate(() => caches.keys())).not.toEqual([before]);
});

test('a build of which a file is not what it should be is not kept: the older one stays', async () => {
  const { under, server, page, url } = await site();
  await page.goto(url);
  await cameUp(page);
  await kept(page);
  newBuild(under, 'Tailboard, newer');
  writeFileSync(join(under, 'heron.yaml'), 'half of it');
  await page.reload();
  await cameUp(page);
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    const worker = registration.installing;
    while (worker !== null && worker.state === 'installing')
      await new Promise((resolve) => worker.addEventListener('statechange', resolve, { once: true }));
  });
  await server.close();
  await page.reload();
  await cameUp(page);
  expect(await page.title()).toBe('Tailboard');
});

test('the licences of all that the page is made of lie in its folder, and the page leads there', async () => {
  const { page, url } = await site();
  await page.goto(url);
  await cameUp(page);
  const link = page.getByRole('link', { name: 'Licences' });
  expect(await link.getAttribute('href')).toBe('licences.txt');
  const text = readFileSync(join(pageFolder, 'licences.txt'), 'utf8');
  const packages = [...text.matchAll(/^-+\n(\S+) \d/gm)].map(([, name]) => name);
  expect(packages).toEqual(
    expect.arrayContaining([
      '@jscad/modeling',
      'clipper2-ts',
      'css-tree',
      'dejavu-fonts-ttf',
      'fflate',
      'fontkit',
      'lit-html',
      'makerjs',
      'manifold-3d',
      'pdfkit',
      'svgo',
      'three',
      'yaml',
      'zod',
    ]),
  );
  // the words that the file of the letters itself asks for
  expect(text.includes('The Hershey Fonts were originally created by')).toBe(true);
  expect(text.includes('Fonts are (c) Bitstream')).toBe(true);
  expect(text.includes('undefined')).toBe(false);
});

test('no file of the page names an address that is not its own', async () => {
  for (const name of readdirSync(pageFolder).filter((file) => /\.(?:html|css)$/.test(file)))
    expect(
      readFileSync(join(pageFolder, name), 'utf8').match(/(?:src|href)="(?:\/|https?:)[^"]*"|url\((?!#)[^)]*\)/g),
      name,
    ).toBeNull();
});

test('the page has the policy of the program that serves it, but for what a page cannot say of itself', () => {
  const html = readFileSync(join(pageFolder, 'index.html'), 'utf8');
  const policy = /http-equiv="content-security-policy"\s+content="([^"]*)"/.exec(html)?.[1];
  const rules = (text = '') => text.split('; ').sort();
  // W3C, Content Security Policy Level 3, 3.3: a page's own words on who frames it are not heeded
  const served = rules(GUARDING_HEADERS['content-security-policy']).filter((one) => !one.startsWith('frame-ancestors'));
  expect(rules(policy)).toEqual(served);
  // scripts that were put into a page are what it is for
  expect(
    served.filter((one) => /unsafe-(?:inline|eval)|https?:|\*/.test(one.replace("'wasm-unsafe-eval'", ''))),
  ).toEqual([]);
});

test('the page asks nothing of any other server', async () => {
  const { page, url } = await site();
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.goto(url);
  await cameUp(page);
  await kept(page);
  expect(asked.filter((one) => !/^(?:data|blob):/.test(one) && !one.startsWith(url))).toEqual([]);
});

/** The same page with another title, and the list of its files with its new hash, as bundling it anew would write them. */
function newBuild(folder: string, title: string): void {
  const index = join(folder, 'index.html');
  const worker = join(folder, 'offline-worker.js');
  const before = integrity(readFileSync(index));
  writeFileSync(index, readFileSync(index, 'utf8').replace('<title>Tailboard</title>', `<title>${title}</title>`));
  const script = readFileSync(worker, 'utf8');
  expect(script).toContain(before);
  writeFileSync(worker, script.replace(before, integrity(readFileSync(index))).replace(/name:"\w+"/, 'name:"newer"'));
}

const integrity = (bytes: Uint8Array): string => `sha256-${createHash('sha256').update(bytes).digest('base64')}`;
