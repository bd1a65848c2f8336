import { describe, expect, test } from 'vitest';
import { type NestGiven, searchNest } from '../../src/packing/nest.js';
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
/** Chords of a circle, outside it. */
const disc = (diameter: number, corners = 48): Ring =>
  Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners;
    const radius = diameter / 2 / Math.cos(Math.PI / corners);
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });

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

const found = (given: NestGiven, seed = 1): Layout => after(searchNest(given, seed), 12);

function nested(blanks: readonly Blank[], beds: readonly Bed[]): Layout {
  const given = { blanks, beds, spacing: SPACING };
  const layout = found(given);
  expect(faultsOf(layout, given)).toEqual([]);
  return layout;
}

test('what no bed takes is left out, and where it takes nothing at all no sheet is', () => {
  const sheets = (...blanks: readonly Blank[]) =>
    after(searchNest({ blanks, beds: [bed(plate(50, 50))], spacing: SPACING }, 1), 12).sheets;
  expect(sheets(blank(plate(20, 51)), blank(plate(20, 50))).map(({ places }) => places.length)).toEqual([1]);
  expect(sheets(blank(plate(20, 51)))).toEqual([]);
});

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
    // the second, half turned, lies 22 to the right: its arms pass before and behind those of the first
    const angle = shape([
      [0, 0],
      [100, 0],
      [100, 20],
      [20, 20],
      [20, 100],
      [0, 100],
    ]);
    const pair = blank(angle, { turns: [0, 2], count: 2 });
    expect(nested([pair], [bed(plate(122, 100))]).sheets).toHaveLength(1);
    expect(nested([pair], [bed(plate(121.9, 100))]).sheets).toHaveLength(2);
  });

  test('a plate fills the notch of another', () => {
    const notched = shape([
      [0, 0],
      [100, 0],
      [100, 60],
      [70, 60],
      [70, 30],
      [30, 30],
      [30, 60],
      [0, 60],
    ]);
    expect(nested([blank(notched), blank(plate(36, 30))], [bed(plate(100, 62))]).sheets).toHaveLength(1);
    expect(nested([blank(notched), blank(plate(36.1, 30))], [bed(plate(100, 62))]).sheets).toHaveLength(2);
  });

  test('a disc lies in the round window of a ring, with the spacing round it', () => {
    // 60 of window less 2 all round; the square in a circle of 60 has sides of 42 only
    const ring = blank(disc(80), { windows: [clockwise(disc(60))] });
    const sheet = bed(plate(80.4, 80.4));
    expect(nested([ring, blank(disc(55.9))], [sheet]).sheets).toHaveLength(1);
    expect(nested([ring, blank(disc(56.3))], [sheet]).sheets).toHaveLength(2);
  });

  test('a square lies in a round window as far as its corners keep the spacing', () => {
    // the corners of 39.2 are 27.7 from the middle, 2.3 from a circle of 60; those of 41 only 1
    const ring = blank(disc(80), { windows: [clockwise(disc(60))] });
    const sheet = bed(plate(80.4, 80.4));
    expect(nested([ring, blank(plate(39.2, 39.2))], [sheet]).sheets).toHaveLength(1);
    expect(nested([ring, blank(plate(41, 41))], [sheet]).sheets).toHaveLength(2);
  });

  test('the fingers of a joint take no part in it: panels lie at the spacing', () => {
    // fingers 12 wide and 4 deep on two opposite sides; 3 × 100 + 2 × 2 across
    const teeth = (x: number, out: number) =>
      [0, 24, 48].flatMap((y): [number, number][] => [
        [x, y],
        [x, y + 12],
        [x + out, y + 12],
        [x + out, y + 24],
      ]);
    const panel = shape(
      [...teeth(100, -4), [100, 72], [0, 72], ...teeth(0, 4).reverse()].map(([x, y]) => [x ?? 0, y ?? 0]),
    );
    expect(nested([blank(panel, { count: 3 })], [bed(plate(304, 72))]).sheets).toHaveLength(1);
  });
});

describe('sheets that are at hand', () => {
  test('pieces lie round the holes of a remnant', () => {
    // a hole of 40 in the middle of 100: strips of 30 all round, and nothing wider
    const remnant = bed(plate(100, 100), { holes: [clockwise(box(30, 30, 70, 70))], count: 1 });
    const strips = [blank(plate(100, 30), { count: 2 }), blank(plate(30, 36), { count: 2 })];
    expect(nested(strips, [remnant]).sheets).toHaveLength(1);
  });

  test('a remnant with a slanted edge takes what fits under the slant', () => {
    const remnant = bed(
      shape([
        [0, 0],
        [100, 0],
        [100, 40],
        [40, 100],
        [0, 100],
      ]),
      { count: 1 },
    );
    expect(nested([blank(plate(100, 40)), blank(plate(40, 58))], [remnant]).sheets).toHaveLength(1);
  });

  test('a cheap remnant is taken instead of a new sheet', () => {
    const [fresh, remnant] = [bed(plate(200, 100)), bed(plate(60, 60), { count: 1, cost: 0.1 })];
    const { sheets } = nested([blank(plate(50, 50))], [fresh, remnant]);
    expect(sheets.map(({ bed: n }) => n)).toEqual([1]);
  });

  test('a remnant saves the second sheet', () => {
    const [fresh, remnant] = [bed(plate(102, 100)), bed(plate(60, 60), { count: 1, cost: 0.1 })];
    const { sheets } = nested([blank(plate(50, 100), { count: 2 }), blank(plate(60, 20))], [fresh, remnant]);
    expect(sheets.map(({ bed: n }) => n).sort()).toEqual([0, 1]);
  });

  test('no more of a sheet are taken than there are', () => {
    const few = bed(plate(100, 100), { count: 2, cost: 0.5 });
    const { sheets } = nested([blank(plate(90, 90), { count: 5 })], [few, bed(plate(100, 100))]);
    expect(sheets.map(({ bed: n }) => n).sort()).toEqual([0, 0, 1, 1, 1]);
  });

  test('where sheets run out as many pieces as possible find a place', () => {
    const given = {
      blanks: [blank(plate(90, 90), { count: 3 })],
      beds: [bed(plate(100, 100), { count: 2 })],
      spacing: 2,
    };
    expect(faultsOf(found(given), given)).toEqual(['blank 0: 2 of 3']);
  });

  test('a piece larger than any sheet keeps the others from nothing', () => {
    // the two smaller halves of 50 would fill a sheet each if the search stopped at what it cannot place
    const given = {
      blanks: [blank(plate(150, 10)), blank(plate(49, 100), { count: 2 })],
      beds: [bed(plate(100, 100))],
      spacing: SPACING,
    };
    const layout = found(given);
    expect(faultsOf(layout, given)).toEqual(['blank 0: 0 of 1']);
    expect(layout.sheets).toHaveLength(1);
  });
});

describe('the offcut', () => {
  test('is what the pieces leave over the whole height, less the spacing', () => {
    const { offcut } = nested([blank(plate(30, 90), { count: 2 })], [bed(plate(200, 100))]);
    expect(offcut).toEqual({ sheet: 0, left: 64, bottom: 0, right: 200, top: 100 });
  });

  test('is as large as can be, when the pieces are put the other way', () => {
    // four of 40 × 45: two by two take 82 of the length, one row takes 47 of the height, more is left beside the first
    const { offcut } = nested([blank(plate(40, 45), { count: 4 })], [bed(plate(200, 100))]);
    expect(offcut).toEqual({ sheet: 0, left: 84, bottom: 0, right: 200, top: 100 });
  });
});

test('the same seed and steps give the same layout', () => {
  const given = {
    blanks: [20, 30, 45, 60].flatMap((side) => [blank(plate(side, 50)), blank(disc(side))]),
    beds: [bed(plate(150, 120))],
    spacing: SPACING,
  };
  expect(found(given, 7)).toEqual(found(given, 7));
});

test.each([2, 2.025])('a search that cannot be bettered ends, pieces %s apart', (spacing) => {
  // two of 100 above each other: no strip can be narrower
  const search = searchNest(
    { blanks: [blank(plate(100, 100), { count: 2 })], beds: [bed(plate(590, 390))], spacing },
    1,
  );
  const results = Array.from({ length: 20 }, () => search.next().done);
  expect(results).toContain(true);
});
