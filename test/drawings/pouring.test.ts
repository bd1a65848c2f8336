import { expect, test } from 'vitest';
import { loadKernel } from '../../src/geometry/kernel.js';
import { boundsOfPoints, type Point } from '../../src/geometry/path.js';
import { drawnCamera } from './camera-drawings.js';
import type { ReadLine } from './read-drawing.js';

const { drawings, plan } = drawnCamera('heron', await loadKernel());
const own = drawings.filter(({ name }) => name.startsWith('pouring'));
const [drawn] = own;
if (drawn === undefined) throw new Error('nothing is poured into Heron');

/** Lower on the paper than the holder is the spout alone, enlarged. */
const title = drawn.words.find(({ text }) => text.includes('cut level'));
const cut = drawn.lines.filter(({ role }) => role === 'cut');
const above = (line: ReadLine, y: number) => line.points.every((point) => point.y < y);
const [upper, lower] = [
  cut.filter((line) => above(line, title?.at.y ?? 0)),
  cut.filter((line) => !above(line, title?.at.y ?? 0)),
];
const boxOf = (lines: readonly ReadLine[]) => boundsOfPoints(lines.flatMap(({ points }) => points));

test('the one holder that is poured into has a drawing', () => {
  expect(own.map(({ title: called }) => called)).toEqual(['Pouring into the processing holder']);
});

test('the holder stands on its closed end, as wide and as high as its chamber plies', () => {
  const ply = plan.parts.find(({ id }) => id === 'KC2');
  const wall = boxOf(upper);
  const scale = drawn.scale ?? 0;
  expect(Math.abs((wall.right - wall.left) / scale - (ply?.width ?? 0))).toBeLessThan(0.05);
  // the plies reach up to the open end; below its highest edge stands nothing but them
  const widest = upper.filter(({ points }) => {
    const { left, right } = boundsOfPoints(points);
    return right - left > 0.9 * (wall.right - wall.left);
  });
  const plies = boxOf(widest);
  expect(Math.abs((plies.top - plies.bottom) / scale - (ply?.height ?? 0))).toBeLessThan(0.05);
  // y runs down the paper
  expect(plies.top).toBeCloseTo(wall.top, 2);
});

test('the funnel is over all, caps and slide are off', () => {
  const called = drawn.words.map(({ text }) => text);
  expect(called).toEqual(expect.arrayContaining(['tank funnel 2', 'tank spout 2', 'tank vent 2', 'chamber']));
  expect(called.join()).not.toMatch(/cap|KY2/);
});

test('no straight line leads through the spout from its neck to the chamber', () => {
  const edges = lower.flatMap(({ points }) => points.slice(1).map((b, i) => [points[i] as Point, b] as const));
  const spout = boxOf(lower);
  const wide = spout.right - spout.left;
  // the rooms at both ends, a tenth of the spout inside its walls
  const room = (at: number) =>
    [0.2, 0.35, 0.5, 0.65, 0.8].flatMap((up) =>
      [-0.03, 0, 0.03].map((aside) => ({
        x: spout.left + (at + aside) * wide,
        y: spout.bottom + up * (spout.top - spout.bottom),
      })),
    );
  for (const from of room(0.15))
    for (const to of room(0.88)) expect(edges.some(([a, b]) => cross(from, to, a, b))).toBe(true);
  // within one room nothing is in the way
  const [first, ...others] = room(0.15);
  if (first === undefined) throw new Error('no points in the room');
  for (const other of others) expect(edges.some(([a, b]) => cross(first, other, a, b))).toBe(false);
});

/** Whether two stretches cross: the ends of each lie on both sides of the other. */
function cross(p: Point, q: Point, a: Point, b: Point): boolean {
  const side = (from: Point, to: Point, at: Point) =>
    Math.sign((to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x));
  return side(p, q, a) !== side(p, q, b) && side(a, b, p) !== side(a, b, q);
}
