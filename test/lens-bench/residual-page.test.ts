import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/geometry/path.js';
import { residualPage } from '../../src/lens-bench/residual-page.js';
import { takeLens } from '../../src/lens-figures.js';
import { benchA, benchB, benchWith, measured } from './bench.js';

const drawn = (bench = benchB, at: readonly number[] = [0.5]) => {
  const lens = measured(benchWith(bench), { at });
  return { lens, page: residualPage(lens, (m) => 0.5 + Math.abs(m - 0.5) / 10) };
};

describe('the drawing of residuals', () => {
  test('keeps everything on its paper', () => {
    for (const bench of [benchB, benchA]) {
      const { page } = drawn(bench, [0, 1.5]);
      const points = page.marks.flatMap((mark): readonly Point[] =>
        mark.kind === 'line'
          ? mark.points
          : mark.kind === 'strokes'
            ? mark.paths.flat()
            : mark.kind === 'circle'
              ? [mark.centre]
              : [mark.at],
      );
      expect(points.every(({ x, y }) => x >= 0 && x <= page.width && y >= 0 && y <= page.height)).toBe(true);
    }
  });

  test('has each reading twice, above the middle where it lies above the line', () => {
    const { lens, page } = drawn();
    const dots = page.marks.flatMap((mark) => (mark.kind === 'circle' ? [mark.centre] : []));
    expect(dots).toHaveLength(2 * lens.readings);
    const zero = page.marks.find(
      (mark) => mark.kind === 'line' && mark.points.length === 2 && mark.stroke?.width === 0.4,
    );
    const middle = zero?.kind === 'line' ? (zero.points[0]?.y ?? 0) : 0;
    const above = lens.residuals.map((_, i) => (dots[2 * i]?.y ?? 0) < middle);
    expect(above).toEqual(lens.residuals.map(({ residual }) => residual > 0));
  });

  test('is as many millimetres a millimetre everywhere', () => {
    const { lens, page } = drawn();
    const dots = page.marks.flatMap((mark) => (mark.kind === 'circle' ? [mark.centre] : []));
    const of = (i: number) => ({ dot: dots[2 * i] ?? { x: 0, y: 0 }, one: lens.residuals[i] });
    const [a, b, c] = [of(0), of(1), of(5)];
    const scale = (p: typeof a, q: typeof a) => (p.dot.y - q.dot.y) / ((p.one?.residual ?? 0) - (q.one?.residual ?? 0));
    expect(scale(a, b)).toBeCloseTo(scale(b, c), 6);
    expect((a.dot.x - b.dot.x) / -0.1).toBeCloseTo((b.dot.x - c.dot.x) / -0.4, 6);
  });

  test('says its figures and units', () => {
    const texts = drawn().page.marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []));
    expect(texts).toEqual(expect.arrayContaining(['lens seat to film, mm', '1:2: 314.36 mm']));
    expect(texts.some((text) => /^f = 239\.41 ± 0\.9 mm/.test(text))).toBe(true);
  });
});

test('the band is the 95 % interval of the line', () => {
  const rows = benchB.map(({ magnification, distance }) => `${magnification},${distance}\n`).join('');
  const taken = takeLens({ file: 'bench.csv', text: `magnification,distance\n${rows}` }, { at: [], design: null });
  if ('problems' in taken) throw new Error('no lens came of it');
  const { marks } = taken.page;
  const band = marks.flatMap((mark) => (mark.kind === 'line' && mark.fill !== undefined ? mark.points : []));
  const dots = marks.flatMap((mark) => (mark.kind === 'circle' ? [mark.centre.y] : []));
  const { residuals } = taken.lens;
  const millimetre =
    ((dots[2] ?? 0) - (dots[0] ?? 0)) / ((residuals[0]?.residual ?? 0) - (residuals[1]?.residual ?? 0));
  const atInfinity = ((band.at(-1)?.y ?? 0) - (band[0]?.y ?? 0)) / 2 / millimetre;
  // V7.08, common practice, no source: constructed; 2.447 is Student's t for 6 degrees of freedom, from memory:
  // NIST/SEMATECH e-Handbook, 1.3.6.7.2
  expect(atInfinity).toBeCloseTo(2.447 * 0.208673, 3);
});
