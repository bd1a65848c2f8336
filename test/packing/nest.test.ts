import { describe, expect, test } from 'vitest';
import { searchNest } from '../../src/packing/nest.js';
import { after } from '../../src/packing/search.js';
import type { Bed, Blank, Layout, Ring } from '../../src/packing/shapes.js';
import { faultsOf } from './faults-of.js';

const SPACING = 2;

const box = (left: number, bottom: number, right: number, top: number): Ring => [
  { x: left, y: bottom },
  { x: right, y: bottom },
  { x: right, y: top },
  { x: left, y: top },
];
const plate = (width: number, height: number): Ring => box(0, 0, width, height);
const clockwise = (ring: Ring): Ring => [...ring].reverse();
const shape = (points: readonly (readonly [number, number])[]): Ring => points.map(([x, y]) => ({ x, y }));
const blank = (outline: Ring, more: Partial<Blank> = {}): Blank => ({
  outline,
  windows: [],
  turns: [0],
  count: 1,
  ...more,
});
const bed = (outline: Ring, more: Partial<Bed> = {}): Bed => ({
  outline,
  holes: [],
  count: Infinity,
  cost: 1,
  ...more,
});

function nested(blanks: readonly Blank[], beds: readonly Bed[], steps = 40): Layout {
  const given = { blanks, beds, spacing: SPACING };
  const layout = after(searchNest(given, 1), steps);
  expect(faultsOf(layout, given)).toEqual([]);
  return layout;
}

describe('what was one sheet before it was cut', () => {
  // 200 × 100 cut with webs of 2: 98 + 2 + 100 across; the right part 58 + 2 + 40 up, the top of that 60 + 2 + 38 across
  const pieces = [plate(98, 100), plate(100, 58), plate(60, 40), plate(38, 40)];

  test('is one sheet again', () => {
    const { sheets } = nested(
      pieces.map((ring) => blank(ring)),
      [bed(plate(200, 100))],
    );
    expect(sheets).toHaveLength(1);
  });

  test('is one sheet again when the pieces were turned by a quarter', () => {
    const { sheets } = nested(
      pieces.map((ring) =>
        blank(
          ring.map(({ x, y }) => ({ x: -y, y: x })),
          { turns: [0, 1] },
        ),
      ),
      [bed(plate(200, 100))],
    );
    expect(sheets).toHaveLength(1);
  });

  test('is more than one where the grain forbids the turn', () => {
    const { sheets } = nested(
      pieces.map((ring) => blank(ring.map(({ x, y }) => ({ x: -y, y: x })))),
      [bed(plate(200, 100))],
    );
    expect(sheets.length).toBeGreaterThan(1);
  });
});

describe('windows', () => {
  const frame = blank(plate(100, 100), { windows: [clockwise(box(20, 20, 80, 80))] });

  test('a piece that leaves the spacing all round lies in one', () => {
    const { sheets } = nested([frame, blank(plate(56, 56))], [bed(plate(100, 100))]);
    expect(sheets).toHaveLength(1);
    expect(sheets[0]?.places.map(({ within }) => within)).toEqual([null, { place: 0, window: 0 }]);
  });

  test('a piece a hair wider does not', () => {
    expect(nested([frame, blank(plate(56.1, 56))], [bed(plate(100, 100))]).sheets).toHaveLength(2);
  });

  test('what lies in a window has nothing in its own', () => {
    const inner = blank(plate(56, 56), { windows: [clockwise(box(8, 8, 48, 48))] });
    expect(nested([frame, inner, blank(plate(30, 30))], [bed(plate(100, 100))]).sheets).toHaveLength(2);
  });
});

describe('true outlines', () => {
  test('two angles hook into each other where the rectangles round them would not lie side by side', () => {
    // the second, half turned, is pushed into the corner of the first: 20 + 2 + 20 more than one alone
    const angle = shape([
      [0, 0],
      [100, 0],
      [100, 20],
      [20, 20],
      [20, 100],
      [0, 100],
    ]);
    const { sheets } = nested([blank(angle, { turns: [0, 2], count: 2 })], [bed(plate(122, 122))]);
    expect(sheets).toHaveLength(1);
  });
});
