import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { testedPage, violationsOn } from './browser.js';

const heron = join(import.meta.dirname, '..', '..', 'output', 'heron');
const parts = JSON.parse(readFileSync(join(heron, 'parts.json'), 'utf8')) as {
  readonly parts: readonly {
    readonly id: string;
    readonly joins: readonly { readonly to: string }[];
    readonly kind: string;
    readonly thickness: number;
    readonly outline?: readonly (readonly [number, number])[];
    readonly placements: readonly {
      readonly group: string;
      readonly matrix: readonly number[];
      readonly when?: readonly string[];
    }[];
  }[];
};
const plan = JSON.parse(readFileSync(join(heron, 'plan.json'), 'utf8')) as {
  readonly parts: readonly { readonly id: string; readonly width: number; readonly height: number }[];
};

/** How many pieces stand in a set-up, as the built file says; the holder's own where it is in. */
const standingIn = (setup: string, holder?: string): number =>
  parts.parts
    .flatMap(({ placements }) => placements)
    .filter(({ group, when }) =>
      when === undefined
        ? ['front', 'rear', 'back', 'loose'].includes(group) || group === holder
        : when.includes(setup),
    ).length;

/** From the foremost wood that the plane through the axis meets to the rearmost, pushed in, as the built file has it. */
function woodAlong(setup: string): number {
  const ends = parts.parts.flatMap(({ kind, thickness, outline = [], placements }) =>
    kind !== 'flat'
      ? []
      : placements
          .filter(({ group, when }) => (when === undefined ? group !== 'loose' : when.includes(setup)))
          .flatMap(({ matrix: m }) => {
            const along = (axis: number) =>
              outline.flatMap(([x, y]) =>
                [0, thickness].map(
                  (z) => (m[axis] ?? 0) * x + (m[4 + axis] ?? 0) * y + (m[8 + axis] ?? 0) * z + (m[12 + axis] ?? 0),
                ),
              );
            const across = along(0);
            return Math.min(...across) < 0 && Math.max(...across) > 0 ? along(2) : [];
          }),
  );
  return Math.max(...ends) - Math.min(...ends);
}

const canvas = (page: Page) => page.locator('canvas.camera-canvas');

/** Waits until the last change has been drawn as fine as it will be: it is on the canvas with the next frame but one; then it is drawn roughly, and at rest finely. */
const atRest = async (page: Page) => {
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  await page.waitForSelector('canvas.camera-canvas[data-quality=fine]', { timeout: 60_000 });
};

const slideTo = async (page: Page, name: string, value: number) => {
  await page.getByRole('slider', { name, exact: true }).evaluate((input, to) => {
    (input as HTMLInputElement).value = String(to);
    input.dispatchEvent(new Event('input', { bubbles: true }));
  }, value);
};

/** A picture takes its time where software draws it. */
const SLOW = { timeout: 40_000, interval: 700 };

interface Dots {
  readonly width: number;
  readonly height: number;
  readonly at: (x: number, y: number) => readonly [number, number, number];
}

/** A PNG as the browser reads it. */
async function dotsOf(page: Page, png: Buffer): Promise<Dots> {
  const { width, height, data } = await page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const sheet = new OffscreenCanvas(picture.width, picture.height);
    const context = sheet.getContext('2d');
    if (context === null) throw new Error('no canvas');
    context.drawImage(picture, 0, 0);
    const dots = new Blob([context.getImageData(0, 0, picture.width, picture.height).data]);
    const url = await new Promise<string>((resolve) => {
      const reader = new FileReader();
      reader.onload = () => resolve(String(reader.result));
      reader.readAsDataURL(dots);
    });
    return { width: picture.width, height: picture.height, data: url.slice(url.indexOf(',') + 1) };
  }, png.toString('base64'));
  const dots = Buffer.from(data, 'base64');
  return {
    width,
    height,
    at: (x, y) => {
      const i = 4 * (Math.round(y) * width + Math.round(x));
      return [dots[i], dots[i + 1], dots[i + 2]] as [number, number, number];
    },
  };
}

const isWood = ([red, green, blue]: readonly [number, number, number]) =>
  red > green && green > blue && red - blue > 25;

/** The share of the canvas that shows wood: a camera that fills its picture has more than a tenth of it. */
async function woodOn(page: Page): Promise<number> {
  const { width, height, at } = await dotsOf(page, await canvas(page).screenshot());
  let wood = 0;
  for (let x = 0; x < width; x++) for (let y = 0; y < height; y++) if (isWood(at(x, y))) wood += 1;
  return wood / (width * height);
}

/** Dots of a colour family: how far they reach from the left, and the column that halves them. */
function reach({ width, height, at }: Dots, is: (colour: readonly [number, number, number]) => boolean) {
  const columns: number[] = [];
  for (let x = 0; x < width; x++) for (let y = 0; y < height; y++) if (is(at(x, y))) columns.push(x);
  if (columns.length === 0) throw new Error('nothing of that colour is seen');
  const middle = columns[Math.floor(columns.length / 2)] as number;
  return { left: columns[0] as number, right: columns.at(-1) as number, middle };
}

describe('the camera in three dimensions', () => {
  const { open } = testedPage({ solid: true });
  let page: Page;
  let complaints: readonly string[];

  beforeAll(async () => {
    ({ page, complaints } = await open());
    await atRest(page);
  }, 120_000);

  test('shows as many pieces as stand in the set-up, in a handful of calls', async () => {
    expect(Number(await canvas(page).getAttribute('data-pieces'))).toBe(standingIn('glass for paper holder, upright'));
    expect(Number(await canvas(page).getAttribute('data-calls'))).toBeLessThan(12);
    await page.getByRole('combobox', { name: 'In the back' }).selectOption('processing holder, lengthwise');
    await atRest(page);
    expect(Number(await canvas(page).getAttribute('data-pieces'))).toBe(
      standingIn('processing holder, lengthwise', 'processing holder'),
    );
    await page.getByRole('combobox', { name: 'In the back' }).selectOption('glass for paper holder, upright');
    await atRest(page);
  });

  test('sawn open, the glass goes as far as the slide does', async () => {
    await page.getByLabel('Sawn open').check();
    await page.getByRole('checkbox', { name: 'Light' }).uncheck();
    await page.getByRole('button', { name: 'Left', exact: true }).click();
    await atRest(page);
    // turning takes half a second
    await page.waitForFunction(
      () => {
        const { drawn = '' } = document.querySelector<HTMLCanvasElement>('canvas.camera-canvas')?.dataset ?? {};
        const kept = globalThis as { lastDrawn?: string };
        const same = kept.lastDrawn === drawn;
        kept.lastDrawn = drawn;
        return same;
      },
      null,
      { polling: 700 },
    );
    const focus = page.getByRole('slider', { name: 'Focus' });
    expect(await focus.getAttribute('aria-valuetext')).toContain('infinity');
    const before = await dotsOf(page, await canvas(page).screenshot());
    await page.getByRole('button', { name: 'Nearest', exact: true }).click();
    await expect.poll(() => focus.getAttribute('aria-valuetext')).toContain('1:2.5, 735 mm before the lens');
    await atRest(page);
    const after = await dotsOf(page, await canvas(page).screenshot());
    // the cut of the wood: red before green; from the foremost part that the saw meets to the end of the tailboard
    const wood = reach(before, ([red, green, blue]) => red > 150 && red - green > 40 && green > blue);
    const isGlass = ([red, green, blue]: readonly [number, number, number]) => green - red > 18 && blue - red > 10;
    const way = reach(after, isGlass).middle - reach(before, isGlass).middle;
    const scale = (wood.right - wood.left) / woodAlong('glass for paper holder, upright');
    // f · m = 210 mm / 2.5
    expect(way / scale).toBeCloseTo(84, -1);
    await page.getByLabel('Sawn open').uncheck();
  });

  test('an arrow slides the focus by half a millimetre, with Shift by a tenth', async () => {
    const focus = page.getByRole('slider', { name: 'Focus' });
    await focus.press('Home');
    await page.getByRole('button', { name: 'Infinity', exact: true }).click();
    const drawn = async () =>
      Number(/drawn out ([\d.]+)/.exec((await focus.getAttribute('aria-valuetext')) ?? '')?.[1]);
    // from the closest station, which is past infinity
    await expect.poll(() => focus.getAttribute('aria-valuetext')).toMatch(/^infinity;/);
    const begun = await drawn();
    await focus.press('ArrowRight');
    await expect.poll(async () => (await drawn()) - begun).toBeCloseTo(0.5, 5);
    await focus.press('Shift+ArrowRight');
    await expect.poll(async () => (await drawn()) - begun).toBeCloseTo(0.6, 5);
  });

  test('a part is chosen where it is pointed at, and let go with Escape', async () => {
    await page.getByRole('button', { name: 'Infinity', exact: true }).click();
    await page.getByRole('button', { name: 'Above', exact: true }).click();
    await expect
      .poll(async () => {
        await atRest(page);
        await canvas(page).click();
        // the handle stands over the middle of the weight
        return page.getByRole('region', { name: /^Part (?:F11|F12|F13) / }).count();
      }, SLOW)
      .toBe(1);
    await page.keyboard.press('Escape');
    await page.getByRole('region', { name: /^Part / }).waitFor({ state: 'detached' });
  });

  test('a part is chosen from the list, and its card tells what it is', async () => {
    await page.getByRole('combobox', { name: 'Part', exact: true }).selectOption('R3');
    const card = page.getByRole('region', { name: 'Part R3 rear standard' });
    await card.waitFor();
    const text = (await card.textContent())?.replace(/\s+/g, ' ');
    const { width = 0, height = 0 } = plan.parts.find(({ id }) => id === 'R3') ?? {};
    const tenths = (length: number) => String(Math.round(length * 10) / 10);
    expect(text).toContain(`${tenths(Math.max(width, height))} × ${tenths(Math.min(width, height))} mm`);
    expect(text).toContain('plywood, 4.05 mm');
    for (const { to } of parts.parts.find(({ id }) => id === 'R3')?.joins ?? []) expect(text).toContain(to);
    await card.getByRole('button', { name: 'Where it lies on the sheets' }).click();
    await page.getByRole('tab', { name: 'Sheets', selected: true }).waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id), { timeout: 30_000 }).toBe('sheets-where');
    await card.getByRole('button', { name: 'Let the part go' }).click();
  });

  test.each([
    { width: 1280, height: 800, design: 'Form' },
    { width: 1280, height: 800, design: 'Text' },
    { width: 390, height: 844, design: null },
  ])(
    'what is chosen covers nothing of the picture, and each view can be pressed: $width by $height, $design',
    async ({ width, height, design }) => {
      await page.setViewportSize({ width, height });
      if (design !== null) await page.getByRole('button', { name: design, exact: true }).click();
      await page.getByRole('combobox', { name: 'Part', exact: true }).selectOption('R3');
      await page.getByRole('region', { name: 'Part R3 rear standard' }).waitFor();
      await canvas(page).scrollIntoViewIfNeeded();
      const covered = await page.$$eval('.camera-card, .camera-views, .camera-moves, .camera-top', (fields) => {
        const picture = document.querySelector('canvas.camera-canvas')?.getBoundingClientRect() ?? new DOMRect();
        return fields
          .filter((field) => {
            const { left, right, top, bottom } = field.getBoundingClientRect();
            return left < picture.right && picture.left < right && top < picture.bottom && picture.top < bottom;
          })
          .map(({ className }) => className);
      });
      expect(covered).toEqual([]);
      // as wide as half of the column at least, or nobody sees the part
      const { wide, column } = await canvas(page).evaluate((element) => ({
        wide: element.clientWidth,
        column: element.closest('.camera')?.clientWidth ?? 0,
      }));
      expect(wide).toBeGreaterThan(0.45 * column);
      const cutOff = await page.$$eval('.camera-views button', (buttons) =>
        buttons
          .filter((button) => {
            const { left, right, top, bottom } = button.getBoundingClientRect();
            const corners = [left + 3, right - 3].flatMap((x) => [top + 3, bottom - 3].map((y) => [x, y] as const));
            return corners.some(([x, y]) => document.elementFromPoint(x, y) !== button);
          })
          .map(({ textContent }) => textContent),
      );
      expect(cutOff).toEqual([]);
      await page.setViewportSize({ width: 1280, height: 800 });
      await page.getByRole('button', { name: 'Form', exact: true }).click();
      await page.getByRole('button', { name: 'Let the part go' }).click();
    },
  );

  test('a number keeps its unit on the line, however narrow it is', async () => {
    await page.getByRole('combobox', { name: 'Part', exact: true }).selectOption('R3');
    await page.getByRole('region', { name: 'Part R3 rear standard' }).waitFor();
    await page.getByRole('button', { name: 'Nearest', exact: true }).click();
    const readout = page.locator('.camera-readout').first();
    await expect.poll(() => readout.textContent()).toContain('735');
    const torn = await page.$$eval('.camera-readout, .camera-card dd', (fields) =>
      fields.flatMap((field) => {
        const found: string[] = [];
        const box = (field.closest('.camera-card') ?? field) as HTMLElement;
        for (let width = 60; width <= 240; width += 5) {
          box.style.cssText = `flex: none; width: ${width}px`;
          const walk = document.createTreeWalker(field, NodeFilter.SHOW_TEXT);
          for (let text = walk.nextNode(); text !== null; text = walk.nextNode())
            for (const { index, 0: words } of (text.textContent ?? '').matchAll(/[\d.]+\s(?:mm|m)\b/g)) {
              const range = document.createRange();
              range.setStart(text, index);
              range.setEnd(text, index + words.length);
              const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
              if (lines.size > 1) found.push(`${words} at ${width}`);
            }
        }
        box.style.cssText = '';
        return found;
      }),
    );
    expect(torn).toEqual([]);
    await page.getByRole('button', { name: 'Infinity', exact: true }).click();
    await page.getByRole('button', { name: 'Let the part go' }).click();
  });

  test('a design that cannot be drawn takes the camera away, and the next one brings it back', async () => {
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    const text = page.getByLabel('Text of the design');
    const good = await text.inputValue();
    // a lens that would stand in its own front panel: the boxes would have no length
    await text.fill(good.replace('flangeDistance: 203.5 mm', 'flangeDistance: 60 mm'));
    await page.getByText('There is no camera to put together').waitFor();
    expect(await canvas(page).count()).toBe(0);
    await text.fill(good);
    await canvas(page).waitFor();
    await expect.poll(() => woodOn(page), SLOW).toBeGreaterThan(0.05);
    await page.getByRole('button', { name: 'Form', exact: true }).click();
  });

  test('a camera that grows is seen whole, as it was', async () => {
    const field = page.locator('[id="field-focus.nearest"]');
    await page.getByRole('button', { name: 'Right', exact: true }).click();
    await page.waitForTimeout(600);
    await field.fill('1:1.2');
    await field.press('Enter');
    await expect.poll(() => page.locator('.title-reach').textContent(), SLOW).toContain('1:1.2');
    await page.waitForTimeout(1500);
    await atRest(page);
    const dots = await dotsOf(page, await canvas(page).screenshot());
    const { left, right } = reach(dots, isWood);
    expect(left).toBeGreaterThan(1);
    expect(right).toBeLessThan(dots.width - 2);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => page.locator('.title-reach').textContent(), SLOW).toContain('1:2.5');
  });

  test('a drawing that the browser takes away is told, and is there again when it is given back', async () => {
    const lose = await canvas(page).evaluateHandle((element) =>
      (element as HTMLCanvasElement).getContext('webgl2')?.getExtension('WEBGL_lose_context'),
    );
    await lose.evaluate((extension) => extension?.loseContext());
    const told = page.getByText('The drawing was interrupted by the browser');
    await told.waitFor();
    await lose.evaluate((extension) => extension?.restoreContext());
    await told.waitFor({ state: 'detached' });
    await expect.poll(() => woodOn(page), SLOW).toBeGreaterThan(0.05);
  });

  test('a finding turns the camera to what it is about', async () => {
    await page.getByRole('button', { name: 'Corner', exact: true }).click();
    await page.waitForTimeout(600);
    await atRest(page);
    const whole = await woodOn(page);
    await page.getByRole('tab', { name: 'Findings' }).click();
    await page.getByRole('button', { name: /Show on the camera: lens clamp/ }).click();
    await expect.poll(() => woodOn(page), SLOW).toBeGreaterThan(1.2 * whole);
    await page.getByRole('button', { name: 'Show all of the camera again' }).click();
    await page.getByRole('button', { name: 'Show all of the camera again' }).waitFor({ state: 'detached' });
    // all of it, and no more of the picture than before
    await expect.poll(async () => Math.abs((await woodOn(page)) / whole - 1), SLOW).toBeLessThan(0.3);
  });

  test('what is apart fills no more room than the picture, and the last step leaves first', async () => {
    await page.waitForSelector('#camera-apart:not([disabled])', { timeout: 120_000 });
    const apart = page.getByRole('slider', { name: 'Apart' });
    await slideTo(page, 'Apart', 0.01);
    await expect.poll(() => apart.getAttribute('aria-valuetext'), SLOW).toMatch(/^step \d+ is undone/);
    const first = Number(/step (\d+)/.exec((await apart.getAttribute('aria-valuetext')) ?? '')?.[1]);
    await slideTo(page, 'Apart', 0.5);
    await expect
      .poll(async () => Number(/step (\d+)/.exec((await apart.getAttribute('aria-valuetext')) ?? '')?.[1]), SLOW)
      .toBeLessThan(first);
    await slideTo(page, 'Apart', 0);
  });

  test('the picture is saved twice as fine, with wood in the middle of it', async () => {
    await page.getByRole('button', { name: 'Above', exact: true }).click();
    await atRest(page);
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save picture' }).click();
    const download = await coming;
    expect(download.suggestedFilename()).toBe('heron-camera.png');
    const picture = await dotsOf(page, readFileSync(await download.path()));
    const size = await canvas(page).evaluate(({ clientWidth, clientHeight }) => [2 * clientWidth, 2 * clientHeight]);
    expect([picture.width, picture.height]).toEqual(size);
    expect(isWood(picture.at(picture.width / 2 + 4, picture.height / 2 + 4))).toBe(true);
    // on paper
    expect(Math.min(...picture.at(3, 3))).toBeGreaterThan(240);
  });

  test('arrows turn it and plus comes nearer', async () => {
    await atRest(page);
    const before = await canvas(page).screenshot();
    await canvas(page).focus();
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('+');
    await atRest(page);
    expect((await canvas(page).screenshot()).equals(before)).toBe(false);
  });

  test('in one column the picture covers nothing of what moves the camera, and a finger scrolls past it', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    const canvasBox = await canvas(page).boundingBox();
    const moves = await page.locator('.camera-moves').boundingBox();
    const section = await page.locator('.section-place').boundingBox();
    expect(canvasBox?.height).toBeGreaterThan(200);
    expect((canvasBox?.y ?? 0) + (canvasBox?.height ?? 0)).toBeLessThanOrEqual(moves?.y ?? 0);
    expect((moves?.y ?? 0) + (moves?.height ?? 0)).toBeLessThanOrEqual((section?.y ?? 0) + 0.5);
    expect(await canvas(page).evaluate((element) => getComputedStyle(element).touchAction)).toBe('pan-y');
    await page.setViewportSize({ width: 1280, height: 800 });
    expect(await canvas(page).evaluate((element) => getComputedStyle(element).touchAction)).toBe('none');
  });

  test.each([false, true])('it can be used by everybody (dark: %s)', async (dark) => {
    await page.emulateMedia({ colorScheme: dark ? 'dark' : 'light' });
    await page.getByRole('combobox', { name: 'Part', exact: true }).selectOption('T3');
    expect(await violationsOn(page, '.camera')).toEqual([]);
  });

  test('nothing was complained of', () => {
    // a page that is put together by software reads each picture back, which its driver calls slow; a lost drawing is told
    const told = complaints.filter((words) => !/GPU stall due to ReadPixels|WebGLRenderer: Context Lost/.test(words));
    expect(told).toEqual([]);
  });
});

describe('a browser without three dimensions', () => {
  const { open } = testedPage();

  test('a word stands in their place, and all else is there', async () => {
    const { page } = await open();
    await page.getByText('This browser does not draw in three dimensions').waitFor();
    expect(await canvas(page).count()).toBe(0);
    await page.getByRole('button', { name: 'Nearest', exact: true }).click();
    const focus = page.getByRole('slider', { name: 'Focus' });
    await expect.poll(() => focus.getAttribute('aria-valuetext')).toContain('735 mm');
    await page.getByRole('combobox', { name: 'Part', exact: true }).selectOption('R3');
    await page.getByRole('region', { name: 'Part R3 rear standard' }).waitFor();
    await page.locator('.section-view svg').first().waitFor();
  });
});
