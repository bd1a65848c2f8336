import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { area } from '../../src/geometry/path.js';
import { readDesign } from '../../src/index.js';
import { planCamera } from '../../src/pipeline.js';
import { sheetsAtOnce } from '../../src/show-sheets.js';

const text = readFileSync(join(import.meta.dirname, '..', '..', 'designs', 'wren.yaml'), 'utf8');
const read = readDesign(text, 'wren.yaml');
if ('problems' in read) throw new Error(read.problems[0]?.what);
const planned = planCamera(read.design);
const { sheets: atOnce, labels } = sheetsAtOnce(planned);
const { sheets, layout, findings, caution } = atOnce;

/** Corners of path data, arcs by their ends alone. */
const corners = (shape: string): readonly (readonly (readonly [number, number])[])[] =>
  shape
    .split('Z')
    .filter((loop) => loop !== '')
    .map((loop) =>
      [...loop.matchAll(/[ML](\S+) ([^MLA]+)|A\S+ \S+ 0 0 [01] (\S+) ([^MLA]+)/g)].map(
        ([, x, y, ax, ay]) => [Number(x ?? ax), Number(y ?? ay)] as const,
      ),
    );

const polygonArea = (loop: readonly (readonly [number, number])[]): number =>
  loop.reduce((twice, [x, y], i) => {
    const [nextX, nextY] = loop[(i + 1) % loop.length] as readonly [number, number];
    return twice + x * nextY - nextX * y;
  }, 0) / 2;

test('every piece that is made from sheet lies on one, in the first layout', () => {
  const counted = planned.parts.filter(({ kind }) => kind === 'flat');
  const laid = sheets.flatMap(({ parts }) => parts);
  expect(layout).toBe('at once');
  expect(findings.filter(({ level }) => level === 'error')).toEqual([]);
  expect(new Set(laid.map(({ part }) => part))).toEqual(new Set(counted.map(({ id }) => id)));
  for (const { part, count } of laid) expect(laid.filter((one) => one.part === part).length).toBe(count);
});

test('a straight piece is drawn as large as it is, within its sheet, its number on the wood', () => {
  const straight = new Map(
    planned.parts.flatMap((part) =>
      part.kind === 'flat' && part.outline.every(({ bulge }) => bulge === 0) ? [[part.id, part] as const] : [],
    ),
  );
  expect(straight.size).toBeGreaterThan(5);
  for (const sheet of sheets)
    for (const { part, shape, label } of sheet.parts) {
      const [outline = []] = corners(shape);
      for (const [x, y] of outline) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(sheet.width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(sheet.height);
      }
      const own = straight.get(part);
      if (own === undefined) continue;
      // four decimals of a millimetre on a few hundred of them
      expect(Math.abs(polygonArea(outline))).toBeCloseTo(area(own.outline), 0);
      const xs = outline.map(([x]) => x);
      const ys = outline.map(([, y]) => y);
      expect(label.x).toBeGreaterThan(Math.min(...xs));
      expect(label.x).toBeLessThan(Math.max(...xs));
      expect(label.y).toBeGreaterThan(Math.min(...ys));
      expect(label.y).toBeLessThan(Math.max(...ys));
    }
});

test('the caution goes with them', () => expect(caution).toContain('Never leave the laser alone'));

test('labels lie where they lay for the camera before, and are found anew for another shape', () => {
  const again = sheetsAtOnce(planned, labels);
  expect(again.sheets).toEqual(atOnce);
  const moved = new Map([...labels].map(([shape, { at, room }]) => [shape, { at: { ...at, x: at.x + 1 }, room }]));
  const elsewhere = sheetsAtOnce(planned, moved).sheets;
  expect(elsewhere.sheets[0]?.parts[0]?.label).not.toEqual(sheets[0]?.parts[0]?.label);
  const [first = ''] = moved.keys();
  moved.delete(first);
  expect(sheetsAtOnce(planned, moved).labels.get(first)).toEqual(labels.get(first));
});

test('the first layout says nothing of how few sheets would do, for nobody has reckoned it', () => {
  expect(atOnce.summary.join(' ')).not.toMatch(/impossible|at least/);
});
