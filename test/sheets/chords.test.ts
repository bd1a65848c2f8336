import { describe, expect, test } from 'vitest';
import { type ClosedPath, flatten, reversed } from '../../src/geometry/path.js';
import { boxAt, circle, rectangle, rounded, slotAlongX } from '../../src/geometry/shapes.js';
import { chordsInWaste } from '../../src/sheets/chords.js';
import { loopGap, polygonArea, within } from './measure.js';

/** Concave and convex arcs in one outline. */
const bone: ClosedPath = [
  { x: 0, y: 0, bulge: 0 },
  { x: 60, y: 0, bulge: 0.3 },
  { x: 60, y: 40, bulge: 0 },
  { x: 40, y: 40, bulge: -0.7 },
  { x: 10, y: 40, bulge: 0 },
  { x: 0, y: 40, bulge: -0.2 },
];

const loops: readonly { what: string; loop: ClosedPath; hole: boolean }[] = [
  { what: 'a disc', loop: circle(3, 7, 80), hole: false },
  { what: 'a round window', loop: reversed(circle(3, 7, 80)), hole: true },
  { what: 'a rounded plate', loop: rounded(boxAt(0, 0, 90, 50), 6), hole: false },
  { what: 'a rounded window', loop: reversed(rounded(boxAt(0, 0, 90, 50), 6)), hole: true },
  { what: 'a slot', loop: reversed(slotAlongX(0, 0, 60, 6.4)), hole: true },
  { what: 'arcs both ways', loop: bone, hole: false },
];

describe('chords stand in the waste', () => {
  test.each(loops)('of $what', ({ loop, hole }) => {
    const chords = chordsInWaste(loop);
    const fine = flatten(loop, 1e-4);
    for (const [i, p] of chords.entries()) {
      const q = chords[(i + 1) % chords.length] ?? p;
      for (const share of [0, 0.25, 0.5, 0.75]) {
        const between = { x: p.x + (q.x - p.x) * share, y: p.y + (q.y - p.y) * share };
        // on the line, or on the side of the waste; fine chords are 0.0001 off
        if (loopGap(between, fine) > 2e-4) expect(within(between, fine)).toBe(hole);
        expect(loopGap(between, fine)).toBeLessThan(0.051);
      }
    }
    expect(Math.sign(polygonArea(chords))).toBe(hole ? -1 : 1);
  });

  test('the rectangle round a disc is that of the disc, to a rounding', () => {
    const xs = chordsInWaste(circle(3, 7, 80)).map(({ x }) => x);
    expect(Math.min(...xs)).toBeCloseTo(-37, 9);
    expect(Math.max(...xs)).toBeCloseTo(43, 9);
  });

  test('straight edges stay as they are', () => {
    const square = rectangle(boxAt(0, 0, 10, 10));
    expect(chordsInWaste(square)).toEqual(square.map(({ x, y }) => ({ x, y })));
    expect(chordsInWaste([])).toEqual([]);
  });
});
