import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { SheetStep } from '../../src/model/step-sheet.js';
import {
  actsOf,
  back,
  elapsed,
  forward,
  goneOn,
  missed,
  movedTo,
  paused,
  standing,
  started,
} from '../../src/page/trays/process/reckon.js';
import { testedPage, violationsOn } from './browser.js';
import { dunlin, openFiles, QUIET, saved, tailboard, words } from './files.js';

const example = readFileSync(dunlin('process.yaml'), 'utf8');

describe('what a step clock reckons', () => {
  const step = (times: Partial<SheetStep>): SheetStep => ({
    name: 'bath',
    time: 90,
    beginsAt: 0,
    coveredAt: null,
    drainAt: null,
    endsAt: 90,
    volume: null,
    poured: false,
    temperature: null,
    agitation: null,
    light: 'safe',
    fixes: false,
    serves: 1,
    need: null,
    caution: null,
    ...times,
  });
  // poured at 0, in by 8, drained from 78, out by 90; then a step without a bath until 150
  const steps = [
    step({ poured: true, coveredAt: 8, drainAt: 78 }),
    step({ beginsAt: 90, endsAt: 150, time: 60 }),
  ] as const;
  const NOON = 1_000_000_000;
  const clock = started({ name: 'trial', prints: 2, steps }, 1, NOON);
  const past = (seconds: number) => NOON + 1000 * seconds;

  test('all that is done, in its order', () =>
    expect(actsOf(steps).map(({ kind, at, step: of }) => `${at} ${kind} ${of}`)).toEqual([
      '0 pour 0',
      '8 stand 0',
      '78 drain 0',
      '90 begin 1',
      '150 done 1',
    ]));

  test('a tank that takes no time has nothing to wait for between', () =>
    expect(actsOf([step({ poured: true, coveredAt: 0, drainAt: 90 })]).map(({ kind }) => kind)).toEqual([
      'pour',
      'done',
    ]));

  test.each([
    [0, 'pour', 8, 90],
    [7.9, 'pour', 0.1, 82.1],
    [8, 'stand', 70, 82],
    [77.9, 'stand', 0.1, 12.1],
    [78, 'drain', 12, 12],
    [90, 'begin', 60, 60],
    [150, 'done', 0, 0],
    [9999, 'done', 0, 0],
    // the clock of the computer was set back
    [-500, 'pour', 8, 90],
  ])('after %s s it stands at %s', (seconds, kind, left, stepLeft) => {
    const where = standing(clock, past(seconds));
    expect(where.act.kind).toBe(kind);
    expect(where.left).toBeCloseTo(left, 6);
    expect(where.stepLeft).toBeCloseTo(stepLeft, 6);
  });

  test('a pause counts for nothing, however long', () => {
    const held = paused(clock, past(20));
    expect(elapsed(held, past(5000))).toBe(20);
    expect(elapsed(goneOn(held, past(5000)), past(5010))).toBe(30);
    expect(paused(held, past(60)).pausedAt).toBe(past(20));
  });

  test.each([
    ['soon after a step began, to the one before', 92, 0],
    ['later, to its beginning', 95, 90],
    ['in the first step, to the beginning', 1, 0],
    ['from the end, into the last step', 160, 90],
  ])('back: %s', (_, at, to) => expect(elapsed(back(clock, past(at)), past(at))).toBe(to));

  test('forward, to where the next one begins, and past the last to the end', () => {
    const next = forward(clock, past(10));
    expect(elapsed(next, past(10))).toBe(90);
    expect(elapsed(forward(next, past(10)), past(10))).toBe(150);
    expect(elapsed(forward(forward(next, past(10)), past(10)), past(10))).toBe(150);
  });

  test('a step that is gone to while it is paused begins when it goes on', () => {
    const held = forward(paused(clock, past(20)), past(50));
    expect(elapsed(held, past(70))).toBe(90);
    expect(elapsed(goneOn(held, past(100)), past(105))).toBe(95);
  });

  test('what was missed is what lay between two looks that are far apart', () => {
    const seen = { ...clock, seenTo: 10 };
    expect(missed(seen, past(12))).toEqual([]);
    expect(missed(seen, past(77))).toEqual([]);
    expect(missed(seen, past(100)).map(({ kind }) => kind)).toEqual(['drain', 'begin']);
    // a second late is no lapse
    expect(missed({ ...clock, seenTo: 77.5 }, past(79))).toEqual([]);
    // what was gone to by hand was not missed
    expect(missed(movedTo(seen, 100, past(10)), past(11))).toEqual([]);
  });
});

const { open } = testedPage();
let page: Page;
let complaints: readonly string[];
const folder = mkdtempSync(join(tmpdir(), 'tailboard-process-'));

/** A process that is open. */
async function opened(): Promise<void> {
  ({ page, complaints } = await open(QUIET));
  await page.locator('#tab-process').click();
  await page.getByRole('button', { name: 'Begin one' }).click();
  await page.locator('.process h3', { hasText: 'Six invented steps' }).waitFor();
}

/** The same, before a clock that stands still unless it is moved. */
async function still(): Promise<void> {
  await opened();
  await page.clock.install({ time: new Date('2026-11-30T20:00:00') });
  await page.clock.pauseAt(new Date('2026-11-30T20:01:00'));
}

async function start(): Promise<void> {
  await page.locator('#tab-process').click();
  await passes(0.02);
  await page.getByRole('button', { name: 'Start the step clock' }).click();
  await shown('1 bath A');
}

/** However far it came. */
async function end(): Promise<void> {
  await passes(0.02);
  if ((await face().count()) === 0) await page.locator('.clock-strip button').click();
  await passes(0.02);
  if ((await face().getByRole('button', { name: 'Pause' }).count()) > 0) await press('Pause');
  await press(/^End/);
}

/** As if the computer had slept: what was due is done once, as it wakes up. */
const sleeps = (seconds: number) => page.clock.fastForward(1000 * seconds);
/** Every tick in its turn. */
const passes = (seconds: number) => page.clock.runFor(1000 * seconds);

const face = () => page.getByRole('dialog');

/** Pictures are drawn by the clock that stands still. */
async function shown(name: string, left?: string): Promise<void> {
  await expect
    .poll(async () => {
      await passes(0.02);
      return (await face().count()) === 0
        ? []
        : [
            await words(face().locator('h2')),
            ...(left === undefined ? [] : [await words(face().locator('.clock-left'))]),
          ];
    })
    .toEqual(left === undefined ? [name] : [name, left]);
}

const press = async (name: string | RegExp): Promise<void> => {
  await face().getByRole('button', { name }).click();
  await passes(0.02);
};

describe('the sheet on the page', () => {
  beforeAll(opened);

  test('is that of the command line', async () => {
    const printed = tailboard(['process', 'process.yaml'])
      .split('\n')
      .filter((line) => /^ {2}\d .*\d:\d\d/.test(line))
      .map((line) => line.trim().split(/\s{2,}/));
    expect(printed).toHaveLength(6);
    const rows = page.getByRole('region', { name: 'The steps' }).locator('tbody tr:has(th)');
    const onPage = await Promise.all(
      (await rows.all()).map(async (row) => (await row.locator('th, td').allTextContents()).map((cell) => cell.trim())),
    );
    expect(onPage).toEqual(printed);
    expect(await words(page.locator('.process'))).toContain('For 4 prints 2.26 l in all.');
    expect(await words(page.locator('.process'))).toContain('Acid into water');
  });

  test('gives the card byte by byte as the command line writes it', async () => {
    await page.getByRole('button', { name: 'Draw the card' }).click();
    await page.locator('.process img').waitFor();
    const out = join(folder, 'card');
    tailboard(['process', 'process.yaml', '-o', out]);
    expect((await saved(page, 'Save as SVG')).equals(readFileSync(join(out, 'process-card.svg')))).toBe(true);
    expect((await saved(page, 'Save as PDF')).equals(readFileSync(join(out, 'process-card.pdf')))).toBe(true);
  });

  test('follows what is typed, tells a mistake with its line, and saves what was typed', async () => {
    const text = page.getByLabel('Process process.yaml');
    await text.fill(example.replace('time: 45 s', 'time: 45'));
    await page.getByText('process.yaml:26:11 steps[1].time: 45 has no unit.').waitFor();
    expect(await page.getByRole('button', { name: 'Start the step clock' }).count()).toBe(0);
    await text.fill(example.replace('time: 45 s', 'time: 15 s'));
    await page.locator('.process-finding .level-error', { hasText: 'filling and draining alone take 20 s' }).waitFor();
    expect(await page.getByRole('button', { name: 'Start the step clock' }).isDisabled()).toBe(true);
    const mine = example.replace('time: 45 s', 'time: 50 s');
    await text.fill(mine);
    await page.getByText('10 min 50 s').first().waitFor();
    expect((await saved(page, 'Save process.yaml')).toString()).toBe(mine);
  });

  test('opens a file of one’s own', async () => {
    const own = join(folder, 'mine.yaml');
    writeFileSync(own, example.replace('Six invented steps', 'My own'));
    await openFiles(page, 'Open a process…', own);
    await page.locator('.process h3', { hasText: 'My own' }).waitFor();
  });
});

test('what the file does not say of the tank is taken from the design, where that is wanted', async () => {
  const heron = readFileSync(join(dunlin('..'), 'heron.yaml'), 'utf8');
  const made = '{ name: tank, make: true, filmDepth: 24 mm, window: { thickness: 2 mm } }';
  const design = heron.replace(/ {2}- \{ name: processing holder.*/, `  - ${made}`);
  writeFileSync(join(folder, 'heron.yaml'), design);
  writeFileSync(join(folder, 'mine.yaml'), example.replace(/^(fill|drain|workingVolume|fullVolume): .*\n/gm, ''));
  const own = await open({ ...QUIET, design });
  await own.page.locator('#tab-process').click();
  await openFiles(own.page, 'Open a process…', join(folder, 'mine.yaml'));
  await own.page.locator('.process-finding', { hasText: 'Nobody says how long the tank takes' }).waitFor();
  await own.page.getByLabel('What the file does not say of the tank').selectOption('tank');
  await own.page.locator('.process-finding', { hasText: 'Nobody says how long' }).waitFor({ state: 'detached' });
  const printed = tailboard(['process', 'mine.yaml', '--design', 'heron.yaml'], folder);
  const [, marks = ''] = /^ {2}4 bath B +any +(.*?) *$/m.exec(printed) ?? [];
  const row = own.page.getByRole('region', { name: 'The steps' }).locator('tr', { hasText: '4 bath B' });
  expect((await row.locator('td').allTextContents()).slice(1).map((cell) => cell.trim())).toEqual(marks.split(/ +/));
});

describe('the step clock', () => {
  beforeAll(still);
  afterEach(end);

  test('shows the step, what is to be done, what is next, and counts to it', async () => {
    await start();
    await shown('1 bath A', '0:08');
    expect(await words(face())).toContain('Pour bath A: 120 ml at 24 °C');
    await passes(8);
    await shown('1 bath A', '1:10');
    expect(await words(face())).toContain('Drain in');
    expect(await words(face())).toContain('Rock'.toLowerCase());
    expect(await words(face())).toContain('Next, at 1:30: Pour rinse: 120 ml at 24 °C');
    await passes(61);
    expect(await words(face().locator('.clock-say'))).toBe('Soon: Drain bath A');
    await passes(10);
    expect(await words(face().locator('.clock-say'))).toBe('Drain bath A');
    await passes(11);
    await shown('2 rinse');
    expect(await face().locator('.clock-say').getAttribute('aria-live')).toBe('assertive');
    expect(await face().locator('.clock-missed').count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  test('after a sleep of minutes it stands where it should, and tells what was missed', async () => {
    await start();
    await sleeps(200);
    // bath B from 195 to 315: in by 203
    await shown('4 bath B', '0:03');
    const missing = await words(face().getByRole('alert'));
    expect(missing).toMatch(/Not seen for 3 min (19|20) s/);
    expect(missing).toContain('1:18 Drain bath A');
    expect(missing).toContain('2:15 Draw the slide, light on: light');
    expect(missing).toContain('3:15 Pour bath B: 150 ml at 24 °C, fresh');
    await press('It was done');
    expect(await face().getByRole('alert').count()).toBe(0);
    await shown('4 bath B', '0:03');
  });

  test('whoever missed something can go on from there', async () => {
    await start();
    await sleeps(100);
    await shown('2 rinse');
    await press(/I am only there now: Drain bath A/);
    await shown('1 bath A', '0:12');
    await passes(12);
    await shown('2 rinse', '0:08');
  });

  test('a page in the background has seen nothing of what it showed', async () => {
    await start();
    const look = (state: 'hidden' | 'visible') =>
      page.evaluate((now) => {
        Object.defineProperty(document, 'visibilityState', { value: now, configurable: true });
        document.dispatchEvent(new Event('visibilitychange'));
      }, state);
    await passes(10);
    await look('hidden');
    await passes(75);
    await look('visible');
    await shown('1 bath A', '0:05');
    expect(await words(face().getByRole('alert'))).toContain('1:18 Drain bath A');
  });

  test('pauses, and goes a step on and back', async () => {
    await start();
    await passes(20);
    await press('Pause');
    expect(await words(face())).toContain('Paused');
    await sleeps(600);
    await press('Go on');
    await shown('1 bath A', '0:58');
    expect(await face().getByRole('alert').count()).toBe(0);
    await press('Next');
    await shown('2 rinse', '0:08');
    await press('Next');
    await shown('3 light', '1:00');
    expect(await words(face())).toContain('white light through the window');
    await passes(10);
    await press('Back');
    await shown('3 light', '1:00');
    await press('Back');
    await shown('2 rinse', '0:08');
  });

  test('comes to its end, and takes the next print with baths that were used', async () => {
    await start();
    await sleeps(700);
    await shown('Done');
    await press('Print 2');
    await shown('1 bath A', '0:08');
    expect(await words(face())).toContain('print 2 of 4');
    await sleeps(140);
    await shown('3 light');
    expect(await words(face())).toContain('Pour bath B: 150 ml at 24 °C, used once');
    await end();
    expect(await face().count()).toBe(0);
    expect(await page.evaluate(() => sessionStorage.length)).toBe(0);
    await start();
  });

  test('goes on in a line over the page while something else is looked at', async () => {
    await start();
    await press('To the page');
    await page.locator('#tab-findings').click();
    await passes(10);
    expect(await words(page.locator('.clock-strip'))).toContain('Step clock: 1 bath A. Drain in 1:08');
    await page.getByRole('button', { name: 'To the clock' }).click();
    await shown('1 bath A');
    await page.keyboard.press('Escape');
    await passes(1);
    expect(await page.locator('.clock-strip').count()).toBe(1);
  });

  test('keeps the screen on while it runs, and no longer', async () => {
    await page.evaluate(() => {
      const locks: string[] = [];
      const request = async () => {
        locks.push('asked');
        return { addEventListener: () => {}, release: async () => void locks.push('let go') };
      };
      Object.assign(globalThis, { locks });
      Object.defineProperty(navigator, 'wakeLock', { value: { request }, configurable: true });
    });
    const locks = () => page.evaluate(() => (globalThis as unknown as { locks: readonly string[] }).locks);
    await start();
    await passes(1);
    expect(await words(face())).toContain('The screen is kept on.');
    expect(await locks()).toEqual(['asked']);
    await press('Pause');
    expect(await locks()).toEqual(['asked', 'let go']);
    await press('Go on');
    await sleeps(700);
    await shown('Done');
    expect(await locks()).toEqual(['asked', 'let go', 'asked', 'let go']);
  });

  test('sounds only where it was asked to, at what is to be done, and not while it is paused', async () => {
    await page.evaluate(() => {
      const notes: { from: number; stopped: boolean }[] = [];
      const node = () => ({ connect: (to: unknown) => to });
      Object.assign(globalThis, {
        notes,
        AudioContext: class {
          readonly currentTime = 1000;
          readonly destination = node();
          readonly resume = () => Promise.resolve();
          readonly createGain = () => ({ ...node(), gain: { value: 1 } });
          readonly createOscillator = () => {
            const note = { from: 0, stopped: false };
            return {
              ...node(),
              frequency: { value: 0 },
              start: (at: number) => notes.push(Object.assign(note, { from: at })),
              stop: (at?: number) => Object.assign(note, { stopped: at === undefined }),
            };
          };
        },
      });
    });
    const heard = () =>
      page.evaluate(() =>
        (globalThis as unknown as { notes: readonly { from: number; stopped: boolean }[] }).notes
          .filter(({ stopped }) => !stopped)
          .map(({ from }) => Math.round(from - 1000)),
      );
    await start();
    expect(await heard()).toEqual([]);
    await press('Tone');
    await passes(0.3);
    // ready at 73 and drain at 78; ready at 85 and pour, twice, at 90
    expect((await heard()).sort((a, b) => a - b)).toEqual([73, 78, 85, 90, 90]);
    await press('Pause');
    expect(await heard()).toEqual([]);
  });

  // the last one here: the process that was open is not, after it
  test('outlives a page that is loaded anew, and what passed meanwhile is told', async () => {
    await start();
    await press('Red on black');
    await passes(30);
    await sleeps(1);
    await page.reload();
    await sleeps(200);
    await shown('4 bath B');
    expect(await face().getAttribute('class')).toContain('safelight');
    // 30 + 1 + 200 s, and what loading took
    expect(await words(face().locator('.clock-head'))).toMatch(/3:5\d of 10:45/);
  });
});

describe('has no barrier', () => {
  /** What looks for barriers waits now and then, so the clock has to go for as long. */
  async function barriers(within: string): Promise<readonly string[]> {
    await page.clock.resume();
    const found = await violationsOn(page, within);
    await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 100);
    return found;
  }
  const NARROW = { width: 390, height: 844 };
  beforeAll(still);

  test('on the sheet, by day and by night', async () => {
    await page.getByRole('button', { name: 'Draw the card' }).click();
    await expect
      .poll(async () => {
        await passes(0.02);
        return page.locator('.process img').count();
      })
      .toBe(1);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await barriers('.process')).toEqual([]);
    }
  });

  test.each([
    ['light', { width: 1280, height: 800 }],
    ['dark', { width: 1280, height: 800 }],
    ['light', NARROW],
  ] as const)('on the clock: %s, %o', async (colorScheme, size) => {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize(size);
    await start();
    await sleeps(100);
    await shown('2 rinse');
    for (const look of ['paper', 'safelight']) {
      expect(await barriers('dialog[open]'), look).toEqual([]);
      await press('Red on black');
    }
    await end();
  });

  test('narrow: nothing is wider than the screen, and what is pressed with gloves is large', async () => {
    await page.setViewportSize(NARROW);
    await start();
    expect(await face().evaluate(({ scrollWidth }) => scrollWidth)).toBeLessThanOrEqual(390);
    const boxes = await Promise.all(
      ['Back', 'Pause', 'Next', 'Tone', 'Red on black', 'To the page'].map((name) =>
        face().getByRole('button', { name }).boundingBox(),
      ),
    );
    for (const box of boxes) expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(56);
    for (const box of boxes.slice(0, 3)) expect(box?.height).toBeGreaterThanOrEqual(80);
    await press('Red on black');
    const colours = await face().evaluate((dialog) =>
      [dialog, ...dialog.querySelectorAll('*')]
        .flatMap((element) => {
          const { color, backgroundColor, borderTopColor } = getComputedStyle(element);
          return [color, backgroundColor, borderTopColor];
        })
        .map((colour) => colour.match(/[\d.]+/g)?.map(Number) ?? []),
    );
    // no green and no blue in anything that is drawn
    expect(colours.filter(([, green = 0, blue = 0, alpha = 1]) => alpha > 0 && green + blue > 0)).toEqual([]);
  });
});
