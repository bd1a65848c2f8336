import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';
import { strip } from '../../src/book/strips.js';
import { type Template, templatePages } from '../../src/book/template-page.js';
import { comesAsBought, type TemplatesGiven, templateSets, templates } from '../../src/book/templates.js';
import { templatesOf } from '../../src/book-use.js';
import { pageSvg } from '../../src/files/page-svg.js';
import { pagePdf } from '../../src/files/pdf.js';
import { boundsOf, type ClosedPath } from '../../src/geometry/path.js';
import { box, circle, rectangle } from '../../src/geometry/shapes.js';
import type { Mark, Page } from '../../src/model/page.js';
import type { BoughtPart } from '../../src/model/part.js';
import { flow } from '../../src/paper/flow.js';
import { TEXT_WIDTH, TOP } from '../../src/paper/sheet-size.js';
import { type Planned, planCamera } from '../../src/pipeline.js';
import { paperSizes } from '../../src/standards/paper-sizes.js';
import { bareHeron, keptDesign, keptDesigns, secondLens } from '../designs/kept-design.js';
import { drawPdf, fonts } from '../files/read-pdf.js';

/** 300 dots to an inch. */
const DOTS = 300 / 25.4;
/** What the issue of templates allows, mm. */
const WITHIN = 0.2;

const [WIDTH, HEIGHT] = paperSizes.A4.value;
const LEFT = (WIDTH - TEXT_WIDTH) / 2;

/** A page with these templates alone and no foot; without its words, where edges are looked for. */
function pageOf(all: readonly Template[], { wordless }: { readonly wordless: boolean }): Page {
  const [block] = templatePages('alone', all);
  const marks = block?.marks({ x: LEFT, y: TOP }) ?? [];
  return {
    title: 'a template',
    description: 'a template alone',
    width: WIDTH,
    height: HEIGHT,
    marks: wordless ? marks.filter(({ kind }) => kind !== 'words') : marks,
  };
}

interface Picture {
  readonly width: number;
  readonly height: number;
  readonly dark: (x: number, y: number) => boolean;
}

async function fromPdf(page: Page): Promise<Picture> {
  const { width, height, pixels } = await drawPdf(pagePdf([page], fonts, { title: 'a template' }), DOTS);
  return { width, height, dark: (x, y) => (pixels[4 * (y * width + x)] ?? 255) < 140 };
}

function fromSvg(page: Page): Picture {
  const image = new Resvg(pageSvg(page), { fitTo: { mode: 'width', value: Math.round(page.width * DOTS) } }).render();
  const { width, height, pixels } = image;
  return { width, height, dark: (x, y) => (pixels[4 * (y * width + x)] ?? 255) < 140 };
}

/** Middles of the dark stretches of a row or column of dots, and how long they are; mm. */
function stretches(length: number, dark: (i: number) => boolean): readonly { at: number; long: number }[] {
  const found: { at: number; long: number }[] = [];
  let start = -1;
  for (let i = 0; i <= length; i++) {
    const here = i < length && dark(i);
    if (here && start < 0) start = i;
    if (!here && start >= 0) {
      found.push({ at: (start + i) / 2 / DOTS, long: (i - start) / DOTS });
      start = -1;
    }
  }
  return found;
}

const row = ({ width, dark }: Picture, y: number) => stretches(width, (x) => dark(x, Math.round(y * DOTS)));
const column = ({ height, dark }: Picture, x: number) => stretches(height, (y) => dark(Math.round(x * DOTS), y));

/** Below the bar. */
const BELOW_BAR = TOP + 20 - 2;

/** What is dark below the bar, from the middle of its first line to the middle of its last. */
function reach({ width, height, dark }: Picture): { left: number; right: number; top: number; bottom: number } {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let y = Math.round(BELOW_BAR * DOTS); y < height; y++)
    for (let x = 0; x < width; x++)
      if (dark(x, y)) {
        left = Math.min(left, x);
        right = Math.max(right, x + 1);
        top = Math.min(top, y);
        bottom = Math.max(bottom, y + 1);
      }
  const half = LINE / 2;
  return {
    left: left / DOTS + half,
    right: right / DOTS - half,
    top: top / DOTS + half,
    bottom: bottom / DOTS - half,
  };
}

/** Width of the lines of a template. */
const LINE = 0.2;

const near = (value: number | undefined, wanted: number) => {
  expect(value).toBeDefined();
  expect(Math.abs((value as number) - wanted)).toBeLessThanOrEqual(WITHIN);
};

const sizeOf = (loop: ClosedPath) => {
  const { left, right, bottom, top } = boundsOf(loop);
  return { width: right - left, height: top - bottom };
};

interface Kept {
  readonly name: string;
  readonly given: TemplatesGiven;
  readonly all: readonly Template[];
}

function keptAs(name: string, planned: Planned): Kept {
  const given = templatesOf(planned);
  return { name, given, all: templateSets(given).flatMap(({ all }) => all) };
}

const kept: readonly Kept[] = keptDesigns.map((name) => keptAs(name, planCamera(keptDesign(name))));

const keptOne = (name: string): Kept => {
  const one = kept.find((each) => each.name === name);
  if (one === undefined) throw new Error(`no ${name}`);
  return one;
};

const plateOf = ({ given }: Kept, id: string): Extract<BoughtPart['shape'], { form: 'plate' }> => {
  const shape = given.bought.find(({ part }) => part.id === id)?.part.shape;
  if (shape?.form !== 'plate') throw new Error(`${id} is no plate`);
  return shape;
};

const templateOf = ({ all }: Kept, id: string): Template => {
  const one = all.find(({ parts }) => parts.includes(id));
  if (one === undefined) throw new Error(`no template for ${id}`);
  return one;
};

describe('templates of Heron, drawn from the document at 300 dots to an inch', { timeout: 180_000 }, () => {
  const heron = keptOne('heron');

  test('the bar is 100 mm long, with a tick each centimetre', async () => {
    const picture = await fromPdf(pageOf([templateOf(heron, 'button-card')], { wordless: true }));
    // along the bar, and a hair above it where the ticks alone stand
    const bar = row(picture, TOP + 11.5).filter(({ long }) => long > 50);
    expect(bar).toHaveLength(1);
    near((bar[0]?.long ?? 0) - LINE, 100);
    const ticks = row(picture, TOP + 11.5 - 0.6);
    expect(ticks).toHaveLength(11);
    ticks.forEach(({ at }, i) => {
      near(at - (ticks[0]?.at ?? 0), 10 * i);
    });
  });

  test('the ground glass is 132.6 × 183.4, its corners cut by 14', async () => {
    // 5x7 less the rebates is 120.6 × 171.4 (section 2 of the camera's description), and 12 more for the glass (section 9)
    const page = pageOf([templateOf(heron, 'ground-glass')], { wordless: true });
    for (const picture of [await fromPdf(page), fromSvg(page)]) {
      const { left, right, top, bottom } = reach(picture);
      near(right - left, 120.6 + 12);
      near(bottom - top, 171.4 + 12);
      // half way along a corner that is cut at 45°, the edge stands half the cut further in
      const cut = row(picture, top + 7);
      near((cut[0]?.at ?? 0) - left, 7);
      near(right - (cut.at(-1)?.at ?? 0), 7);
      const low = row(picture, bottom - 3);
      near((low[0]?.at ?? 0) - left, 11);
    }
  });

  test('shims are drawn round a ply that is cut', () => {
    const all = [...kept, keptAs('second lens', planCamera(secondLens()))];
    const named = all.map(({ name, given: { cut }, all: drawn }) => {
      const said = drawn.flatMap(({ marks }) =>
        marks({ x: 0, y: 0 }).flatMap((mark) => (mark.kind === 'words' ? [mark.text] : [])),
      );
      return { name, cut, plies: [...said.join(' ').matchAll(/lay the ply (\w+) on/g)].map(([, ply = '']) => ply) };
    });
    for (const { name, cut, plies } of named) for (const ply of plies) expect.soft(cut, name).toContain(ply);
    expect(named.some(({ plies }) => plies.some((ply) => ply.startsWith('SP')))).toBe(true);
    // the spacer of the second lens is of shims alone
    expect(named.at(-1)?.plies.filter((ply) => ply.startsWith('SP'))).toEqual([]);
  });

  test.each([
    { id: 'glass-shim-500', pins: 0 },
    { id: 'SP2-shim-500', pins: 2 },
  ])('the frame $id, its window and its $pins holes', async ({ id, pins }) => {
    const { outline, holes } = plateOf(heron, id);
    const picture = await fromPdf(pageOf([templateOf(heron, id)], { wordless: true }));
    const { left, right, top, bottom } = reach(picture);
    const outer = boundsOf(outline);
    near(right - left, outer.right - outer.left);
    near(bottom - top, outer.top - outer.bottom);
    const [window, ...others] = [...holes].sort((a, b) => sizeOf(b).width - sizeOf(a).width).map(boundsOf);
    if (window === undefined) throw new Error('a frame has a window');
    const across = row(picture, (top + bottom) / 2);
    expect(across).toHaveLength(4);
    near((across[1]?.at ?? 0) - left, window.left - outer.left);
    near((across[2]?.at ?? 0) - left, window.right - outer.left);
    const down = column(picture, (left + right) / 2);
    const inside = down.filter(({ at }) => at > BELOW_BAR);
    near((inside[1]?.at ?? 0) - top, outer.top - window.top);
    near((inside[2]?.at ?? 0) - top, outer.top - window.bottom);
    expect(others).toHaveLength(pins);
    for (const hole of others) {
      // beside its cross: a chord a millimetre above the middle
      const radius = (hole.right - hole.left) / 2;
      const chord = 2 * Math.sqrt(radius * radius - 1);
      const middle = (hole.left + hole.right) / 2 - outer.left + left;
      const found = row(picture, top + outer.top - (hole.top + hole.bottom) / 2 - 1).filter(
        ({ at }) => Math.abs(at - middle) < radius + 1,
      );
      expect(found).toHaveLength(3);
      near((found[2]?.at ?? 0) - (found[0]?.at ?? 0), chord);
      near(found[1]?.at, middle);
    }
  });

  test.each(['retainer-card', 'button-card', 'glass-pad', 'glass-clip', 'fence-open'])('%s', async (id) => {
    const { width, height } = sizeOf(plateOf(heron, id).outline);
    const picture = await fromPdf(pageOf([templateOf(heron, id)], { wordless: true }));
    const { left, right, top, bottom } = reach(picture);
    near(right - left, Math.max(width, height));
    near(bottom - top, Math.min(width, height));
  });

  test('the card of the rails in two pieces: as long together as the card, its holes where they are', async () => {
    const { outline, holes } = plateOf(heron, 'rail-card');
    const outer = boundsOf(outline);
    const long = outer.top - outer.bottom;
    const picture = await fromPdf(pageOf([templateOf(heron, 'rail-card')], { wordless: true }));
    // edges along a strip are the long dark stretches
    const edges = column(picture, LEFT + 60).filter(({ at }) => at > BELOW_BAR);
    expect(edges).toHaveLength(4);
    near((edges[1]?.at ?? 0) - (edges[0]?.at ?? 0), outer.right - outer.left);
    near((edges[3]?.at ?? 0) - (edges[2]?.at ?? 0), outer.right - outer.left);
    const ends = [0, 2].map((i) => row(picture, edges[i]?.at ?? 0).filter(({ long }) => long > 50)[0]);
    const lengths = ends.map((end) => (end?.long ?? 0) - LINE);
    near(
      lengths.reduce((sum, one) => sum + one, 0),
      long,
    );
    // crosses through the holes, from the end that is drawn whole
    const middles = [0, 2].flatMap((i) => {
      const start = (ends[i / 2]?.at ?? 0) - (lengths[i / 2] ?? 0) / 2;
      const across = ((edges[i]?.at ?? 0) + (edges[i + 1]?.at ?? 0)) / 2;
      return row(picture, across)
        .filter(({ long }) => Math.abs(long - 5) < 0.5)
        .map(({ at }) => at - start + (i === 0 ? 0 : (lengths[0] ?? 0)));
    });
    // a quarter turn, by which what was above is at the right or at the left
    const along = holes
      .map((hole) => (boundsOf(hole).top + boundsOf(hole).bottom) / 2 - outer.bottom)
      .sort((a, b) => a - b);
    const turned = along.map((one) => long - one).sort((a, b) => a - b);
    const [first = 0] = middles;
    const wanted = Math.abs(first - (along[0] ?? 0)) < Math.abs(first - (turned[0] ?? 0)) ? along : turned;
    expect(middles).toHaveLength(holes.length);
    middles.forEach((at, i) => {
      near(at, wanted[i] ?? 0);
    });
  });

  test('the corners of a holder that is bought: holes for the pins of the seat, as far from its edges as in the stand-in that the proof knows', async () => {
    const bare = planCamera(bareHeron());
    const heron = keptAs('bare', bare);
    const { outline, holes } = plateOf(heron, 'holder-1');
    const outer = boundsOf(outline);
    const seatPins = bare.camera.objects.back.pins.map(({ x }) => x);
    const first = heron.all.findIndex(({ parts }) => parts.includes('holder-1'));
    const [leftOne, rightOne] = heron.all.slice(first, first + 2);
    if (leftOne === undefined || rightOne === undefined) throw new Error('two corners');
    for (const [template, isLeft] of [
      [leftOne, true],
      [rightOne, false],
    ] as const) {
      const picture = await fromPdf(pageOf([template], { wordless: true }));
      const { left, right, bottom } = reach(picture);
      // seen on its face, what is at the right from behind is at the left
      const own = holes
        .map(boundsOf)
        .filter((hole) => (isLeft ? hole.left > 0 : hole.right < 0))
        // no holder of Heron lies on a spacer for a picture: it has no holes for the pins of one
        .filter((hole) => seatPins.some((x) => Math.abs(x - (hole.left + hole.right) / 2) < 0.01))
        .map((hole) => ({
          side: isLeft ? outer.right - (hole.left + hole.right) / 2 : (hole.left + hole.right) / 2 - outer.left,
          end: (hole.top + hole.bottom) / 2 - outer.bottom,
          wide: hole.right - hole.left,
        }));
      expect(own.length).toBe(1);
      for (const { side, end, wide } of own) {
        const at = isLeft ? left + side : right - side;
        // the upright of its cross, above the hole
        const upright = row(picture, bottom - end - wide / 2 - 1);
        expect(upright.some((one) => Math.abs(one.at - at) <= WITHIN)).toBe(true);
        const level = column(picture, at - wide / 2 - 1);
        expect(level.some((one) => Math.abs(one.at - (bottom - end)) <= WITHIN)).toBe(true);
      }
    }
  });

  test('the block under the tailboard is 60 × 60', async () => {
    const block = heron.all.at(-2);
    if (block === undefined) throw new Error('no block');
    const { left, right, top, bottom } = reach(await fromPdf(pageOf([block], { wordless: true })));
    near(right - left, 60);
    near(bottom - top, 60);
  });
});

describe.each(kept)('what is bought as a plate for $name', ({ given, all }) => {
  const plates = given.bought.filter(({ part, count }) => part.shape.form === 'plate' && count > 0);

  test('has one template each, or comes as it is', () => {
    for (const { part } of plates) {
      const own = all.filter(({ parts }) => parts.includes(part.id));
      expect({ id: part.id, templates: own.length }).toEqual({ id: part.id, templates: comesAsBought(part) ? 0 : 1 });
    }
    expect(plates.length).toBeGreaterThan(12);
  });

  test('a plate that nobody has thought of is not passed over', () => {
    const [first] = plates;
    if (first === undefined) throw new Error('no plates');
    const strange = { count: 1, part: { ...first.part, id: 'new-thing' } };
    expect(() => templateSets({ ...given, bought: [...given.bought, strange] })).toThrow('new-thing');
  });

  test.each(['A4', 'Letter'] as const)(
    'nothing comes nearer than 10 mm to the edge of %s, and each page has its bar',
    (size) => {
      const [width, height] = paperSizes[size].value;
      const pages = flow(() => templates(given).blocks, { paper: { width, height }, foot: 'foot' });
      const withTemplates = pages.slice(1);
      expect(withTemplates.length).toBeGreaterThan(4);
      for (const { marks } of withTemplates) {
        const points = marks.flatMap(pointsOf);
        expect(Math.min(...points.map(({ x }) => x))).toBeGreaterThanOrEqual(10);
        expect(Math.max(...points.map(({ x }) => x))).toBeLessThanOrEqual(width - 10);
        expect(Math.min(...points.map(({ y }) => y))).toBeGreaterThanOrEqual(10);
        // the foot begins 15.6 above the edge, and no template runs into it
        const drawn = marks.filter((mark) => mark.role !== undefined).flatMap(pointsOf);
        expect(Math.max(...drawn.map(({ y }) => y))).toBeLessThanOrEqual(height - 16);
        const words = marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []));
        expect(words).toContain('Print at 100 %, measure the bar:');
        expect(Math.min(...marks.flatMap((mark) => (mark.kind === 'words' ? [mark.size] : [])))).toBeGreaterThanOrEqual(
          3.175,
        );
      }
    },
  );

  test('the glass is drawn true or told in figures', () => {
    const glass = plates.find(({ part }) => part.id === 'ground-glass')?.part.shape;
    if (glass?.form !== 'plate') throw new Error('no glass');
    const { width, height } = sizeOf(glass.outline);
    const template = all.find(({ parts }) => parts.includes('ground-glass'));
    const words = (template?.marks({ x: 0, y: 0 }) ?? []).flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []));
    const drawn = (template?.marks({ x: 0, y: 0 }) ?? []).some(({ role }) => role === 'cut');
    if (drawn) expect(template).toMatchObject({ width, height });
    else {
      expect(words).toContain(String(Math.round(100 * width) / 100));
      expect(words).toContain(String(Math.round(100 * height) / 100));
    }
  });
});

const pointsOf = (mark: Mark) => {
  switch (mark.kind) {
    case 'line':
      return mark.points;
    case 'strokes':
      return mark.paths.flat();
    case 'circle':
      return [
        { x: mark.centre.x - mark.radius, y: mark.centre.y },
        { x: mark.centre.x + mark.radius, y: mark.centre.y },
      ];
    case 'words':
      return [mark.at];
  }
};

test('a strip is never parted in a hole', () => {
  const holes = [20, 140, 171, 180, 330].map((x) => circle(x, 8, 6));
  const own = strip(['long'], { outline: rectangle(box(0, 0, 344, 16)), holes }, ['a long strip']);
  const circles = own.marks({ x: 0, y: 0 }).filter(({ kind }) => kind === 'circle');
  expect(circles).toHaveLength(holes.length);
});
