import { describe, expect, test } from 'vitest';
import { type NestGiven, searchNest } from '../../src/packing/nest.js';
import { searchSheets } from '../../src/packing/pack-sheets.js';
import { seeded } from '../../src/packing/random.js';
import { after } from '../../src/packing/search.js';
import type { Bed, Blank, Layout, Ring } from '../../src/packing/shapes.js';
import { faultsOf } from './faults-of.js';

const SPACING = 2;
const STEPS = 600;

const plate = (width: number, height: number): Ring => [
  { x: 0, y: 0 },
  { x: width, y: 0 },
  { x: width, y: height },
  { x: 0, y: height },
];
const bed = (width: number, height: number): Bed => ({
  outline: plate(width, height),
  holes: [],
  count: Infinity,
  cost: 1,
});
const blank = (outline: Ring, count = 1, windows: readonly Ring[] = []): Blank => ({
  outline,
  windows,
  turns: [0],
  count,
});

function packed(given: NestGiven, steps = STEPS): Layout {
  const layout = after(searchSheets(given, 1), steps);
  expect(faultsOf(layout, given)).toEqual([]);
  return layout;
}

/**
 * Nine squares fill 33 × 32: Z. Moroń, Przegląd Matematyczno-Fizyczny 3 (1925). Ten millimetres a unit, a spacing taken off
 * each side that has a neighbour. [from memory: Moroń 1925; the areas add up: 1056]
 */
const SQUARES = [18, 15, 14, 10, 9, 8, 7, 4, 1];
const squares = SQUARES.map((side) => blank(plate(10 * side - SPACING, 10 * side - SPACING)));

describe('squares that fill a rectangle', () => {
  test('add up to it', () => expect(SQUARES.reduce((sum, side) => sum + side * side, 0)).toBe(33 * 32));

  test('leave all else of the sheet clear', () => {
    const given = { blanks: squares, beds: [bed(330 - SPACING, 500)], spacing: SPACING };
    expect(packed(given).offcut).toEqual({ sheet: 0, left: 0, bottom: 320, right: 328, top: 500 });
  });

  test('leave all else clear where the sheet is filled from its other side', () => {
    const given = { blanks: squares, beds: [bed(500, 330 - SPACING)], spacing: SPACING };
    expect(packed(given).offcut).toEqual({ sheet: 0, left: 320, bottom: 0, right: 500, top: 328 });
  });
});

test('what lies in a window goes along with the piece round it', () => {
  const window = [...plate(70, 70)].reverse().map(({ x, y }) => ({ x: x + 5, y: y + 5 }));
  const given = {
    blanks: [...squares.slice(1), blank(plate(178, 178), 1, [window]), blank(plate(60, 60))],
    beds: [bed(328, 500)],
    spacing: SPACING,
  };
  const { offcut, sheets } = packed(given);
  expect(offcut?.bottom).toBe(320);
  expect(sheets[0]?.places.filter(({ within }) => within !== null).map(({ blank }) => blank)).toEqual([9]);
});

test('is never behind nesting alone after as many of its steps', () => {
  const given = { blanks: squares, beds: [bed(400, 260)], spacing: SPACING };
  const size = ({ sheets, offcut: o }: Layout) =>
    [sheets.length, o === null ? 0 : (o.right - o.left) * (o.top - o.bottom)] as const;
  // of three steps at least two are the nesting's
  const [sheets, offcut] = size(packed(given, 301));
  const [alone, left] = size(after(searchNest(given, 1), 200));
  expect(sheets).toBeLessThanOrEqual(alone);
  if (sheets === alone) expect(offcut).toBeGreaterThanOrEqual(left);
});

test('finds the same again', () => {
  const given = { blanks: squares, beds: [bed(400, 260)], spacing: SPACING };
  expect(packed(given, 200)).toEqual(packed(given, 200));
});

/** Plates of a sheet of 300 × 200 that was cut right across again and again, each cut a spacing wide. */
function cutUp(pieces: number, seed: number): readonly Blank[] {
  const random = seeded(seed);
  const parts = [{ width: 300, height: 200 }];
  while (parts.length < pieces) {
    parts.sort((a, b) => b.width * b.height - a.width * a.height);
    const [part] = parts.splice(Math.floor(3 * random()) % parts.length, 1) as [{ width: number; height: number }];
    const along = part.width >= part.height ? 'width' : 'height';
    const first = Math.round((0.2 + 0.6 * random()) * (part[along] - SPACING));
    parts.push({ ...part, [along]: first }, { ...part, [along]: part[along] - SPACING - first });
  }
  return parts.map(({ width, height }) => blank(plate(width, height)));
}

test.each([1, 2, 3, 4])('plates of a sheet that was cut up lie as close again (%i)', (seed) => {
  const given = { blanks: cutUp(24, seed), beds: [bed(300, 400)], spacing: SPACING };
  expect(packed(given, 500).offcut).toEqual({ sheet: 0, left: 0, bottom: 202, right: 300, top: 400 });
});

test.each([7, 10, 31])('plates that fill two sheets nearly whole take two (%i)', (seed) => {
  const random = seeded(seed);
  const side = () => 20 + Math.floor(90 * random());
  const blanks: Blank[] = [];
  let covered = 0;
  for (;;) {
    const [width, height] = [side(), side()];
    covered += (width + SPACING) * (height + SPACING);
    // as much as searches of this kind reach; one sheet would be too little by far
    if (covered > 0.945 * 2 * (300 + SPACING) ** 2) break;
    blanks.push(blank(plate(width, height)));
  }
  expect(packed({ blanks, beds: [bed(300, 300)], spacing: SPACING }, 500).sheets).toHaveLength(2);
});

test('what is as wide and as high after another turn still lies as its own face grain asks, where a disc lies in a ring', () => {
  const round = (radius: number): Ring =>
    Array.from({ length: 48 }, (_, k) => ({
      x: 60 + radius * Math.cos((k * Math.PI) / 24),
      y: 60 + radius * Math.sin((k * Math.PI) / 24),
    }));
  const given = {
    blanks: [
      { ...blank(plate(110, 40)), turns: [1, 3] },
      { ...blank(plate(40, 110), 2), turns: [0, 2] },
      blank(plate(120, 120), 1, [[...round(50)].reverse()]),
      blank(round(46)),
    ],
    beds: [bed(300, 260)],
    spacing: SPACING,
  };
  const { sheets } = packed(given);
  // the disc lies in the ring, whose window no rectangle would leave it room in
  expect(sheets.flatMap(({ places }) => places).find(({ blank: n }) => n === 3)?.within).not.toBeNull();
});
