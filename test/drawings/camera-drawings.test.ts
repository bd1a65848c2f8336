import { beforeAll, describe, expect, test } from 'vitest';
import { spanOf } from '../../src/assembly/span-of.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import type { Point } from '../../src/geometry/path.js';
import { wordsWidth } from '../../src/paper/words-width.js';
import { keptDesigns } from '../designs/kept-design.js';
import { type Drawn, drawnCamera, ROOM } from './camera-drawings.js';
import type { ReadWords } from './read-drawing.js';

const kernel = await loadKernel();

/** What each dimension is, from the plan, the design and Newton’s equation, never from the drawing. */
function figuresOf({ plan, design, build }: Drawn): Readonly<Record<string, number>> {
  const { optics, slide, holders, tailboard, camera } = plan;
  const part = (id: string) => {
    const found = plan.parts.find((one) => one.id === id);
    if (found === undefined) throw new Error(`the plan has no ${id}`);
    return found;
  };
  const [first] = holders;
  const [widest] = design.holders;
  if (first === undefined || widest === undefined) throw new Error('a camera has a holder');
  const depths = [...new Set(holders.map(({ effectiveDepth }) => effectiveDepth))];
  const extension = optics.focalLength * optics.nearest.magnification;
  return {
    ply: part('F1').thickness,
    'front-box-length': slide.frontBoxLength,
    'seat-infinity': first.seat.infinity,
    'film-distance-infinity': optics.infinity.filmDistance,
    'axis-height': tailboard.axisHeight,
    ...overlapsOf(build, slide, first.seat.nearest),
    'rear-box-length': slide.rearBoxLength,
    'seat-nearest': first.seat.nearest,
    'film-distance-nearest': optics.nearest.filmDistance,
    extension,
    'front-box-inside': slide.frontBoxInside,
    'rear-box-inside': slide.rearBoxInside,
    'front-box-outside': slide.frontBoxOutside,
    'lens-board': part('F6').height,
    height: camera.height,
    width: camera.width,
    travel: slide.travel,
    tripod: tailboard.tripod,
    depth: camera.depthClosed,
    'back-side': part('B1').width,
    // camera.md, section 6: 2 mm more than the image on each side
    'opening-width': design.format.image.short + 4,
    'opening-height': design.format.image.long + 4,
    'tailboard-length': tailboard.length,
    'tailboard-width': tailboard.width,
    land: (part('B1').width - slide.rearBoxInside) / 2,
    rim: (widest.width - build.gate.width) / 2,
    ...Object.fromEntries(depths.map((depth, i) => [`film-depth-${i + 1}`, depth])),
  };
}

/** Where the boxes overlap at the nearest; a middle box goes along once the rear box is so far out of it. */
function overlapsOf(build: Drawn['build'], slide: Drawn['plan']['slide'], seat: number) {
  const rear = seat - slide.stackBehindBoxes - slide.rearBoxLength;
  const { middleBox } = slide;
  if (middleBox === undefined) return { overlap: Math.abs(slide.frontBoxLength - rear) };
  const drawn = Math.max(0, seat - slide.closest - middleBox.rearRun);
  return {
    'overlap-in-front': slide.frontBoxLength - (spanOf(build, 'C1L').z[0] + drawn),
    'overlap-of-rear': spanOf(build, 'C3').z[1] + drawn - rear,
  };
}

/** Both ends are rounded to a hundredth of a millimetre on paper: together they stray by that at most. */
const ROUNDING = 0.01 + 1e-9;

const dimensionsOf = ({ drawings }: Drawn) =>
  drawings.flatMap((drawing) =>
    drawing.lines.flatMap((line) =>
      line.id?.startsWith('dimension-') === true ? [{ drawing, line, is: line.id.slice('dimension-'.length) }] : [],
    ),
  );

/** What the words beside a figure stand for, in the trade’s sense of them. */
const CALLED: Readonly<Record<string, readonly string[]>> = {
  ply: ['ply'],
  'front box': ['front-box-length', 'front-box-outside'],
  'rear box': ['rear-box-length'],
  inside: ['front-box-inside', 'rear-box-inside'],
  'panel to holder seat': ['seat-infinity', 'seat-nearest'],
  'lens seat to film': ['film-distance-infinity', 'film-distance-nearest'],
  'axis height': ['axis-height'],
  overlap: ['overlap', 'overlap-in-front', 'overlap-of-rear'],
  // boxes that do not reach each other
  gap: ['overlap'],
  extension: ['extension'],
  'lens board': ['lens-board'],
  'height over all': ['height'],
  'width over all': ['width'],
  travel: ['travel'],
  'panel to tripod nut': ['tripod'],
  'depth without lens and accessories': ['depth'],
  'back plate': ['back-side'],
  opening: ['opening-width', 'opening-height'],
  tailboard: ['tailboard-length', 'tailboard-width'],
  land: ['land'],
  rim: ['rim'],
  'film depth': ['film-depth-1', 'film-depth-2', 'film-depth-3', 'film-depth-4'],
};

/** Lines that no words may stand on. */
const MATTERS = ['outline', 'cut', 'hidden', 'film', 'axis', 'way', 'dimension', 'leader'];

/** How far the letters of a line of print rise and hang, of their size: l and g of DejaVu Sans (from memory). */
const RISE = 0.76;
const HANG = 0.24;

/** What words cover. */
function boxOf({ text, size, heavy, anchor, at, turned }: ReadWords) {
  const width = wordsWidth(text, { size, heavy });
  const before = { start: 0, middle: width / 2, end: width }[anchor];
  if (turned === 0)
    return { left: at.x - before, right: at.x + width - before, top: at.y - RISE * size, bottom: at.y + HANG * size };
  expect(turned).toBe(-90);
  return { left: at.x - RISE * size, right: at.x + HANG * size, top: at.y - width + before, bottom: at.y + before };
}

/** Points along a line, a tenth of a millimetre apart. */
function* along(points: readonly Point[]): Generator<Point> {
  for (const [i, b] of points.entries()) {
    const a = points[Math.max(0, i - 1)] as Point;
    const steps = Math.ceil(Math.max(Math.abs(b.x - a.x), Math.abs(b.y - a.y)) / 0.1);
    for (let k = 0; k <= steps; k++) {
      const share = steps === 0 ? 0 : k / steps;
      yield { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
    }
  }
}

describe.each(keptDesigns)('the drawings of %s', (name) => {
  let drawn: Drawn;
  let figures: Readonly<Record<string, number>>;
  let dimensions: ReturnType<typeof dimensionsOf>;
  beforeAll(() => {
    drawn = drawnCamera(name, kernel);
    figures = figuresOf(drawn);
    dimensions = dimensionsOf(drawn);
  }, 180_000);

  test('have every dimension that matters, and none twice', () => {
    expect(dimensions.map(({ is }) => is).sort()).toEqual(Object.keys(figures).sort());
  });

  test('measure what the plan says', () => {
    for (const { drawing, line, is } of dimensions) {
      const [a, b] = line.points;
      if (a === undefined || b === undefined || drawing.scale === null) throw new Error(`${is} cannot be measured`);
      const onPaper = Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
      expect(Math.min(Math.abs(a.x - b.x), Math.abs(a.y - b.y)), `${is} lies level or upright`).toBe(0);
      expect(Math.abs(onPaper - (figures[is] as number) * drawing.scale), is).toBeLessThanOrEqual(ROUNDING);
    }
  });

  test('say the figure beside the line', () => {
    const said = drawn.drawings.flatMap(({ words }) => words.filter(({ role }) => role === 'dimension'));
    const numbers = said.map(({ text }) => Number(/[\d.]+$/.exec(text)?.[0])).sort((a, b) => a - b);
    const asPlanned = Object.values(figures).sort((a, b) => a - b);
    expect(numbers).toHaveLength(asPlanned.length);
    // printed with two decimals
    for (const [i, number] of numbers.entries())
      expect(Math.abs(number - (asPlanned[i] as number))).toBeLessThanOrEqual(0.005 + 1e-9);
  });

  // a right figure under another's name misleads as much as a wrong one
  test('call each figure by what it is, where they call it anything', () => {
    const dimensionWords = drawn.drawings.flatMap(({ words }) => words.filter(({ role }) => role === 'dimension'));
    const named = dimensionWords.flatMap(({ text }) => {
      const [, words = '', figure = ''] = /^(\D*?)\s*([\d.]+)$/.exec(text) ?? [];
      return words === '' ? [] : [{ words, figure: Number(figure) }];
    });
    expect(named.length).toBeGreaterThan(15);
    for (const { words, figure } of named) {
      const meant = (CALLED[words] ?? []).flatMap((is) =>
        is in figures ? [Math.abs((figures[is] as number) - figure)] : [],
      );
      expect(Math.min(...meant), words).toBeLessThanOrEqual(0.005 + 1e-9);
    }
  });

  test('begin and end each dimension at a corner of what is drawn', () => {
    for (const { drawing, line, is } of dimensions) {
      const [a, b] = line.points;
      if (a === undefined || b === undefined) throw new Error(`${is} has no ends`);
      const axis = a.y === b.y ? 'x' : 'y';
      const corners = drawing.lines
        .filter(({ role }) => ['outline', 'cut', 'hidden', 'film', 'axis', 'way'].includes(role))
        .flatMap(({ points }) => points.map((point) => point[axis]));
      for (const end of [a, b])
        expect(Math.min(...corners.map((corner) => Math.abs(corner - end[axis]))), `${is}, ${axis}`).toBeLessThan(
          0.021,
        );
    }
  });

  test('measure the front box inside where no other box stands in it', () => {
    const across = (of: (is: string) => boolean) =>
      dimensions.flatMap(({ line, is }) => (of(is) ? line.points.map(({ x }) => x) : []));
    const inner = Math.min(...across((is) => is.startsWith('overlap')));
    for (const x of across((is) => is === 'front-box-inside')) expect(x).toBeLessThan(inner);
  });

  test('have no words on a line that matters, or on other words', () => {
    for (const { name: drawing, lines, words } of drawn.drawings) {
      const boxes = words.map((each) => ({ text: each.text, ...boxOf(each) }));
      for (const [i, a] of boxes.entries())
        for (const b of boxes.slice(i + 1)) {
          const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
          expect(apart, `${drawing}: ${a.text} and ${b.text}`).toBe(true);
        }
      for (const { role, points } of lines) {
        if (!MATTERS.includes(role)) continue;
        for (const p of along(points)) {
          const under = boxes.find((b) => p.x > b.left && p.x < b.right && p.y > b.top && p.y < b.bottom);
          if (under !== undefined)
            expect.fail(`${drawing}: ${under.text} stands on a line of ${role} at ${p.x}, ${p.y}`);
        }
      }
    }
  });

  test('put the film of each holder, and the light to its edges, where the plan has them', () => {
    const { plan, design, build, drawings } = drawn;
    const depths = plan.holders.map(({ effectiveDepth }) => effectiveDepth);
    const rear = build.parts
      .flatMap((part) =>
        part.kind === 'bought' && part.role === 'lens' && part.placements.length > 0 && part.shape.form === 'cylinder'
          ? [{ z: spanOf(build, part.id).z[1], radius: part.shape.diameter / 2 }]
          : [],
      )
      .reduce((last, one) => (one.z > last.z ? one : last));
    for (const at of ['infinity', 'nearest'] as const) {
      const drawing = drawings.find(({ name: own }) => own === `section-${at}`);
      const scale = drawing?.scale ?? 0;
      const line = (id: string) => drawing?.lines.find((one) => one.id === id)?.points ?? [];
      // by the front face of the board, where the lens is seated, the place of all lengths on paper is known
      const seat = Math.min(...line(`dimension-film-distance-${at}`).map(({ x }) => x));
      const axis = line('optical-axis')[0]?.y ?? 0;
      const onPaper = (z: number) => seat + (z - plan.optics.seatZ) * scale;
      const film = plan.optics.seatZ + plan.optics[at].filmDistance;
      depths.forEach((depth, i) => {
        for (const { x } of line(`film-holder-${i + 1}`))
          expect(Math.abs(x - onPaper(film + depth - (depths[0] ?? 0))), `${at}, holder ${i + 1}`).toBeLessThan(0.021);
        const mark = drawing?.marks.find((one) => one.id === `film-holder-${i + 1}`);
        const dashed = mark?.kind === 'line' && mark.stroke?.dash !== undefined;
        expect(dashed, `${at}, holder ${i + 1}`).toBe(i > 0);
      });
      for (const { x } of line('film-at-infinity'))
        expect(Math.abs(x - onPaper(plan.optics.seatZ + plan.optics.infinity.filmDistance))).toBeLessThan(0.021);
      const cone = drawing?.lines.find(({ role, filled }) => role === 'light' && filled)?.points ?? [];
      const half = design.format.image.long / 2;
      for (const [z, y] of [
        [film, half],
        [film, -half],
        [rear.z, rear.radius],
        [rear.z, -rear.radius],
      ] as const)
        expect(
          cone.some((p) => Math.abs(p.x - onPaper(z)) < 0.021 && Math.abs(p.y - (axis - y * scale)) < 0.021),
          `${at}: light at ${z}, ${y}`,
        ).toBe(true);
    }
  });

  test('name what a reader looks for', () => {
    const said = (drawing: string) =>
      drawn.drawings.find((one) => one.name === drawing)?.words.map(({ text }) => text) ?? [];
    for (const text of ['lens seat', 'holder seat', 'frosted glass,', 'F1', 'R3', 'B1', 'B2', 'T1L'])
      expect(said('section-infinity'), name).toContain(text);
    for (const section of ['section-infinity', 'section-nearest'])
      for (const { name: holder } of drawn.plan.holders)
        expect(said(section).some((text) => text.startsWith(holder))).toBe(true);
    for (const text of ['R3', 'B1', 'B2', 'B3', 'turn 1', 'turn 2', 'light'])
      expect(said('light-trap'), name).toContain(text);
  });

  test('fit the page, at a standard scale, their letters no smaller than 9 pt', () => {
    for (const { width, height, words, scale, lines } of drawn.drawings) {
      expect(width).toBeLessThanOrEqual(ROOM.width);
      expect(height).toBeLessThanOrEqual(ROOM.height);
      expect([2, 1, 1 / 2, 1 / 2.5, 1 / 3, 1 / 4, 1 / 5]).toContain(scale);
      for (const { size } of words) expect(size).toBeGreaterThanOrEqual((9 * 25.4) / 72);
      for (const { points } of lines)
        for (const { x, y } of points) {
          expect(Math.min(x, y, width - x, height - y)).toBeGreaterThanOrEqual(0);
        }
    }
  });
});
