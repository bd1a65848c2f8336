import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { testedPage, violationsOn } from './browser.js';
import { openFiles } from './files.js';

/** As it is read from a rule. */
const mm = (length: number) => `${Number(length.toFixed(1))} mm`;

/** As the command line wrote it: what is drawn is judged by it. */
const plan = JSON.parse(readFileSync('output/heron/plan.json', 'utf8'));

/** What comes with one of the next pictures, on a machine that may be busy. */
const until = <T>(read: () => T | Promise<T>) => expect.poll(read, { timeout: 30_000 });

// without three dimensions: the section needs none
const { open } = testedPage();
let page: Page;
let complaints: readonly string[];
beforeAll(async () => {
  ({ page, complaints } = await open());
  await page.locator('.section-film').first().waitFor({ state: 'attached' });
  await page.getByRole('slider', { name: 'Focus' }).waitFor();
});

/** Where something stands on the screen, in the units of the drawing: mm of the camera. */
const placesOf = (selector: string) =>
  page.$$eval(`.section-sheet ${selector}`, (elements) =>
    elements.map((element) => {
      const svg = element.closest('svg') as SVGSVGElement;
      const back = svg.getScreenCTM()?.inverse();
      const { left, right, top, bottom } = element.getBoundingClientRect();
      const at = (x: number, y: number) => new DOMPoint(x, y).matrixTransform(back);
      const [from, to] = [at(left, top), at(right, bottom)];
      const names = element.getAttribute('data-names') ?? element.getAttribute('data-part') ?? '';
      return {
        names,
        words: element.textContent?.trim() ?? '',
        left: from.x,
        right: to.x,
        middle: (from.x + to.x) / 2,
      };
    }),
  );

/** @returns how far it was drawn: the slider has steps */
const slideTo = async (rear: number): Promise<number> => {
  const slider = page.getByRole('slider', { name: 'Focus' });
  await slider.fill(String(rear));
  // it moves with the next picture
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  return Number(await slider.inputValue());
};

const view = async (width: number, height: number, colorScheme: 'light' | 'dark') => {
  await page.setViewportSize({ width, height });
  await page.emulateMedia({ colorScheme });
  const wide = () => page.$eval('.section-sheet', (sheet) => sheet.getBoundingClientRect().width);
  const drawn = () =>
    page.$eval(
      '.section-sheet svg',
      (svg) => (svg as SVGSVGElement).viewBox.baseVal.width * ((svg as SVGSVGElement).getScreenCTM()?.a ?? 0),
    );
  // drawn anew for the room that there is
  await until(async () => Math.abs((await wide()) - (await drawn()))).toBeLessThan(1);
};

test('at both ends of the slide the film of each holder is drawn where the plan has it', async () => {
  const { slide, holders, groundGlass } = plan;
  for (const end of [0, slide.farthest - slide.closest]) {
    const rear = await slideTo(end);
    expect(Math.abs(rear - end)).toBeLessThan(0.11);
    const films = await placesOf('.section-film');
    for (const { name, effectiveDepth } of [...holders, { name: 'ground glass', ...groundGlass }]) {
      const drawn = films.find(({ names }) => names.split(', ').includes(name));
      // to half a pixel
      expect(
        Math.abs((drawn?.middle ?? 0) - (slide.closest + rear + effectiveDepth)),
        `${name} at ${rear}`,
      ).toBeLessThan(0.5);
    }
    // the rear standard has gone along, the panel has not
    const standard = (await placesOf('[data-part="R3"].plywood'))[0];
    const panel = (await placesOf('[data-part="F1"].plywood'))[0];
    expect(Math.abs((standard?.left ?? 0) - (slide.closest + rear - slide.stackBehindBoxes))).toBeLessThan(1);
    expect(Math.abs(panel?.right ?? 9)).toBeLessThan(1);
  }
  expect(complaints).toEqual([]);
});

test('the dimensions are those of the plan, and move with the slide', async () => {
  const { slide, optics, holders } = plan;
  const told = async (name: string) => (await placesOf(`[data-dimension="${name}"] text`))[0]?.words ?? '';
  await view(1600, 1000, 'light');
  const rear = await slideTo(90);
  const rearBoxFront = slide.closest + rear - slide.stackBehindBoxes - slide.rearBoxLength;
  const film = slide.closest + rear + holders[0].effectiveDepth - optics.seatZ;
  expect(await told('overlap')).toBe(`overlap ${mm(slide.frontBoxLength - rearBoxFront)}`);
  expect(await told('film')).toContain(mm(film));
  expect(await told('extension')).toBe(`extension ${mm(film - optics.infinity.filmDistance)}`);
  expect(await told('seat')).toContain(mm(slide.closest + rear));
  expect(await told('rear-box')).toBe(`rear box ${mm(slide.rearBoxLength)}`);
  expect(await told('front-box')).toBe(`front box ${mm(slide.frontBoxLength)}`);
  const { seat } = holders[0];
  await slideTo(seat.infinity - slide.closest);
  expect(await told('film')).toContain(`${optics.infinity.filmDistance} mm`);
  expect(await told('extension')).toBe('');
  // in words too, for who cannot see it: once the slide is at rest
  await expect
    .poll(() => page.locator('#section-words').textContent())
    .toContain(
      `paper holder and ground glass ${optics.infinity.filmDistance} mm behind the lens seat, sharp at infinity`,
    );
});

test('light falls from the exit pupil to the edges of the film', async () => {
  const { optics, slide } = plan;
  await slideTo(20);
  const [light] = await placesOf('.section-light');
  expect(Math.abs((light?.left ?? 0) - optics.exitPupil.z)).toBeLessThan(0.6);
  expect(Math.abs((light?.right ?? 0) - (slide.closest + 20 + plan.holders[0].effectiveDepth))).toBeLessThan(0.6);
});

test('a face that is clicked is the part that is chosen, in both views', async () => {
  await page
    .locator('.section-face.plywood[data-part="F1"]')
    .first()
    .click({ position: { x: 2, y: 12 } });
  await page.locator('.section-face.chosen[data-part="F1"]').first().waitFor({ state: 'attached' });
});

test.each([
  [1280, 800, 'light'],
  [1280, 800, 'dark'],
  [1280, 1500, 'light'],
  [390, 844, 'light'],
] as const)(
  'no words lie over other words, and nothing is said against it: %i by %i, %s',
  async (width, height, scheme) => {
    await view(width, height, scheme);
    const { slide } = plan;
    for (const rear of [0, 30, slide.farthest - slide.closest]) {
      await slideTo(rear);
      const overlaps = await page.$$eval('.section-sheet text, .section-limit', (elements) => {
        const boxes = elements.map((element) => ({
          words: element.textContent ?? '',
          box: element.getBoundingClientRect(),
        }));
        return boxes.flatMap((a, i) =>
          boxes
            .slice(i + 1)
            .filter(
              (b) =>
                a.box.left < b.box.right - 1 &&
                b.box.left < a.box.right - 1 &&
                a.box.top < b.box.bottom - 4 &&
                b.box.top < a.box.bottom - 4,
            )
            .map((b) => `${a.words} / ${b.words}`),
        );
      });
      expect(overlaps, `at ${rear}`).toEqual([]);
      const crossed = await page.$$eval('.section-dimension text', (elements) => {
        const films = [...document.querySelectorAll('.section-film')].map((film) => film.getBoundingClientRect());
        return elements
          .filter((element) => {
            const box = element.getBoundingClientRect();
            return films.some(
              ({ left, right, top, bottom }) =>
                box.left < right && left < box.right && box.top < bottom - 4 && top < box.bottom - 4,
            );
          })
          .map(({ textContent }) => textContent);
      });
      expect(crossed, `over a film at ${rear}`).toEqual([]);
      const outside = await page.$$eval('.section-sheet text', (elements) =>
        elements
          .filter((element) => {
            const box = element.getBoundingClientRect();
            const sheet = (element.closest('.section-sheet') as Element).getBoundingClientRect();
            return (
              box.left < sheet.left - 1 ||
              box.right > sheet.right + 1 ||
              box.top < sheet.top - 1 ||
              box.bottom > sheet.bottom + 1
            );
          })
          .map(({ textContent }) => textContent),
      );
      expect(outside, `at ${rear}`).toEqual([]);
    }
    expect(await violationsOn(page, '.section-view')).toEqual([]);
  },
);

test('what is drawn is never that of before: another text, undone, no camera at all, another set-up, a finding, another design', async () => {
  await view(1280, 800, 'light');
  const marks = () => page.$$eval('.section-scale text', (found) => found.map(({ textContent }) => textContent));
  await page.getByRole('button', { name: 'Text', exact: true }).click();
  const text = page.getByLabel('Text of the design');
  const good = await text.inputValue();
  await text.fill(good.replace('nearest: 1:2.5', 'nearest: 1:3.5'));
  await until(marks).toContain('1:3.5');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await until(marks).toContain('1:2.5');
  expect(await marks()).not.toContain('1:3.5');

  // the film would stand in the front panel: no box has a length
  await text.fill(good.replace('flangeDistance: 203.5 mm', 'flangeDistance: 60 mm'));
  await page.getByText('There is no camera to cut').waitFor();
  await text.fill(good);
  const standard = async () => (await placesOf('[data-part="R3"].plywood'))[0]?.left ?? 0;
  const { slide, holders } = plan;
  const { seat } = holders[0];
  await slideTo(seat.infinity - slide.closest);
  await until(async () => Math.abs((await standard()) - (seat.infinity - slide.stackBehindBoxes))).toBeLessThan(1);
  expect(await marks()).toContain('1:2.5');

  await page.getByRole('combobox', { name: 'In the back' }).selectOption('processing holder, lengthwise');
  await until(() => page.locator('.section-now').textContent()).toMatch(/^processing holder, lengthwise: /);

  await page.getByRole('button', { name: /Show on the camera: lens clamp/ }).click();
  const pointed = () => page.locator('.section-face.pointed').count();
  await until(pointed).toBeGreaterThan(0);
  await page.getByRole('button', { name: 'Show all of the camera again' }).click();
  await until(pointed).toBe(0);

  await openFiles(page, 'Open', 'designs/wren.yaml');
  // it has one holder alone
  const films = async () => (await placesOf('.section-film')).flatMap(({ names }) => names.split(', ')).sort();
  await until(films).toEqual(['film holder', 'ground glass']);
  expect(complaints).toEqual([]);
});
