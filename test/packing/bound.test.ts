import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leastBins, leastSheets } from '../../src/packing/bound.js';
import type { Bed, Blank, Rectangle, Ring } from '../../src/packing/shapes.js';
import { cutSheets } from './cut-sheets.js';

const times = (count: number, width: number, height: number): Rectangle => ({ width, height, count });

describe('fewest bins for rectangles', () => {
  // known by hand: each row says why fewer are impossible; that so many are enough is plain
  test.each([
    { why: 'there is nothing', items: [], turns: false, least: 0 },
    { why: 'a speck takes a bin', items: [times(1, 0.01, 0.01)], turns: false, least: 1 },
    { why: 'two bins full, to the last bit', items: [times(8, 50, 50)], turns: false, least: 2 },
    { why: 'and a sliver more', items: [times(8, 50, 50), times(1, 1, 1)], turns: false, least: 3 },
    { why: 'three thirds, though a third has no end', items: [times(9, 100 / 3, 100 / 3)], turns: false, least: 1 },
    { why: 'no two squares over half share', items: [times(6, 51, 51)], turns: true, least: 6 },
    { why: 'of boards 34 wide only two stand side by side', items: [times(5, 34, 100)], turns: false, least: 3 },
    { why: 'of boards 26 wide only three', items: [times(10, 26, 100)], turns: false, least: 4 },
    { why: 'of squares of 34 only four', items: [times(13, 34, 34)], turns: true, least: 4 },
    {
      why: 'beside 70 × 70 nothing of 31 × 31 stands',
      items: [times(2, 70, 70), times(3, 31, 31)],
      turns: false,
      least: 3,
    },
    {
      why: 'two boards side by side are too wide',
      items: [times(3, 60, 30), times(3, 50, 80)],
      turns: false,
      least: 3,
    },
    { why: 'turned, two go into a bin where upright only one did', items: [times(2, 60, 40)], turns: true, least: 1 },
    {
      why: 'a board of 90 has but one way in the bin of 100 × 60',
      items: [times(4, 90, 31)],
      turns: true,
      height: 60,
      least: 4,
    },
    { why: 'one is larger than the bin', items: [times(1, 101, 5)], turns: false, least: Infinity },
    { why: 'one fits neither way', items: [times(1, 101, 5)], turns: true, least: Infinity },
    { why: 'none is wanted of what is too large', items: [times(0, 101, 5)], turns: true, least: 0 },
  ])('$least where $why', ({ items, turns, height = 100, least }) =>
    expect(leastBins({ width: 100, height, items, turns })).toBe(least),
  );

  const cut = { width: 100, height: 70, sheets: 3, web: 0, pieces: 6 };
  test('never more than the sheets from which the pieces were cut', () =>
    fc.assert(
      fc.property(cutSheets(cut), (items) => {
        // the pieces fill their sheets, so the area alone gives as many
        expect(leastBins({ ...cut, items, turns: false })).toBe(3);
      }),
      { numRuns: 60, seed: 1 },
    ));

  test('nor with turns, however the pieces are handed over', () =>
    fc.assert(
      fc.property(cutSheets({ ...cut, web: 4 }), fc.integer(), (pieces, mask) => {
        const items = pieces.map((piece, i) =>
          (mask >> i) & 1 ? { ...piece, width: piece.height, height: piece.width } : piece,
        );
        expect(leastBins({ ...cut, items, turns: true })).toBeLessThanOrEqual(3);
        expect(leastBins({ ...cut, items: pieces, turns: false })).toBeLessThanOrEqual(3);
      }),
      { numRuns: 60, seed: 2 },
    ));

  test('nor in a square bin, where the two ways are weighed together', () =>
    fc.assert(
      fc.property(cutSheets({ ...cut, height: 100, web: 3, pieces: 5 }), fc.integer(), (pieces, mask) => {
        const items = pieces.map((piece, i) =>
          (mask >> i) & 1 ? { ...piece, width: piece.height, height: piece.width } : piece,
        );
        expect(leastBins({ width: 100, height: 100, items, turns: true })).toBeLessThanOrEqual(3);
      }),
      { numRuns: 60, seed: 3 },
    ));
});

const rectangle = (width: number, height: number, left = 0, bottom = 0): Ring => [
  { x: left, y: bottom },
  { x: left + width, y: bottom },
  { x: left + width, y: bottom + height },
  { x: left, y: bottom + height },
];
const clockwise = (ring: Ring): Ring => [...ring].reverse();
const bed = (width: number, height: number, count = Infinity): Bed => ({
  outline: rectangle(width, height),
  holes: [],
  count,
  cost: 1,
});
const plate = (count: number, width: number, height: number, turns: readonly number[] = [0, 2]): Blank => ({
  outline: rectangle(width, height),
  windows: [],
  turns,
  count,
});
/** A square frame, its rim 20 wide. */
const frame = (count: number, side: number): Blank => ({
  ...plate(count, side, side),
  windows: [clockwise(rectangle(side - 40, side - 40, 20, 20))],
});
/** A regular polygon round a circle. */
const disc = (count: number, radius: number): Blank => ({
  outline: Array.from({ length: 48 }, (_, i) => {
    const angle = ((2 * i + 1) * Math.PI) / 48;
    const reach = radius / Math.cos(Math.PI / 48);
    return { x: reach * Math.cos(angle), y: reach * Math.sin(angle) };
  }),
  windows: [],
  turns: [0],
  count,
});
/** Two legs of this length and breadth, a right angle between them. */
const bracket = (count: number, leg: number, breadth: number): Blank => ({
  outline: [
    { x: 0, y: 0 },
    { x: leg, y: 0 },
    { x: leg, y: breadth },
    { x: breadth, y: breadth },
    { x: breadth, y: leg },
    { x: 0, y: leg },
  ],
  windows: [],
  turns: [0, 1, 2, 3],
  count,
});

describe('fewest sheets for true outlines', () => {
  // by hand; the spacing is 2
  test.each([
    { why: 'there is nothing', blanks: [], beds: [bed(200, 200)], least: 0 },
    { why: 'four quarters and the spacing are a sheet', blanks: [plate(4, 99, 99)], beds: [bed(200, 200)], least: 1 },
    { why: 'and a fifth', blanks: [plate(5, 99, 99)], beds: [bed(200, 200)], least: 2 },
    { why: 'large ones never share', blanks: [plate(3, 101, 101)], beds: [bed(200, 200)], least: 3 },
    {
      why: 'each square lies in a frame, so frames alone count',
      blanks: [frame(5, 200), plate(5, 156, 156)],
      beds: [bed(200, 200)],
      least: 5,
    },
    {
      why: 'a square 1 mm too large for the frames lies on its own sheet',
      blanks: [frame(5, 200), plate(5, 157, 157)],
      beds: [bed(200, 200)],
      least: 10,
    },
    {
      why: 'one frame holds one square, the others take a sheet each',
      blanks: [frame(1, 200), plate(5, 120, 120)],
      beds: [bed(200, 200)],
      least: 5,
    },
    { why: 'two brackets lie one in the other', blanks: [bracket(2, 200, 60)], beds: [bed(262, 262)], least: 1 },
    { why: 'discs over half never share', blanks: [disc(3, 80)], beds: [bed(200, 200)], least: 3 },
    { why: 'with the grain a long plate stands upright', blanks: [plate(2, 90, 190)], beds: [bed(200, 200)], least: 1 },
    { why: 'across it fits no bed', blanks: [plate(1, 90, 190)], beds: [bed(200, 100)], least: Infinity },
    { why: 'turned it does', blanks: [plate(1, 90, 190, [0, 1])], beds: [bed(200, 100)], least: 1 },
    {
      why: 'a remnant may hold what a sheet would have',
      blanks: [plate(5, 99, 99)],
      beds: [bed(99, 99, 1), bed(200, 200)],
      least: 2,
    },
    { why: 'there are no more remnants', blanks: [plate(5, 99, 99)], beds: [bed(200, 200, 1)], least: Infinity },
    {
      why: 'a hole cut already takes its room',
      blanks: [plate(1, 198, 40)],
      beds: [{ ...bed(200, 50, 1), holes: [clockwise(rectangle(60, 48, 70, 1))] }],
      least: Infinity,
    },
  ])('$least where $why', ({ blanks, beds, least }) => expect(leastSheets({ blanks, beds, spacing: 2 })).toBe(least));

  test('two squares corner to corner need the spacing only in a straight line', () => {
    // 2 · 50 + 10/√2 = 107.07: they lie in opposite corners of a bed that is too narrow to have them side by side
    expect(leastSheets({ blanks: [plate(2, 50, 50)], beds: [bed(107.08, 107.08)], spacing: 10 })).toBe(1);
  });

  test('chords that stand out over the arc do not make a disc larger', () => {
    // as many corners as keep within the contract's 0.01 mm; a disc of 100 lies in a bed of 200 exactly
    expect(leastSheets({ blanks: [disc(2, 100)], beds: [bed(200, 200)], spacing: 0 })).toBe(2);
    const round = disc(1, 100);
    const corners = 320;
    const outline = Array.from({ length: corners }, (_, i) => {
      const angle = ((2 * i + 1) * Math.PI) / corners;
      const reach = 100 / Math.cos(Math.PI / corners);
      return { x: reach * Math.cos(angle), y: reach * Math.sin(angle) };
    });
    expect(leastSheets({ blanks: [{ ...round, outline }], beds: [bed(200, 200)], spacing: 0 })).toBe(1);
  });
});

/** A cut piece made less than the rectangle that it was: so it still fits where it was cut. */
const SHAPES = ['plain', 'toothed', 'bracket', 'disc', 'frame', 'full frame'] as const;
type Shape = (typeof SHAPES)[number];

const WEB = 2;
const RIM = 6;

/** What is cut from one rectangle: a blank, or a frame and the plates in its window. */
function shaped({ width, height }: Rectangle, shape: Shape, turns: readonly number[]): readonly Blank[] {
  const whole: Blank = { outline: rectangle(width, height), windows: [], turns, count: 1 };
  const tooth = Math.min(width, height) / 5;
  switch (shape) {
    case 'plain':
      return [whole];
    case 'toothed':
      return [
        {
          ...whole,
          outline: [
            { x: 0, y: 0 },
            { x: width, y: 0 },
            { x: width, y: height },
            { x: 3 * tooth, y: height },
            { x: 3 * tooth, y: height - tooth },
            { x: 2 * tooth, y: height - tooth },
            { x: 2 * tooth, y: height },
            { x: 0, y: height },
            { x: 0, y: 3 * tooth },
            { x: tooth, y: 3 * tooth },
            { x: tooth, y: 2 * tooth },
            { x: 0, y: 2 * tooth },
          ],
        },
      ];
    case 'bracket':
      return [{ ...bracket(1, Math.min(width, height), 2 * tooth), turns }];
    case 'disc':
      return [{ ...disc(1, (Math.min(width, height) / 2) * Math.cos(Math.PI / 48)), turns }];
    case 'frame':
    case 'full frame': {
      const [w, h] = [width - 2 * RIM, height - 2 * RIM];
      if (w < 12 || h < 12) return [whole];
      const framed = { ...whole, windows: [clockwise(rectangle(w, h, RIM, RIM))] };
      if (shape === 'frame') return [framed];
      // two plates side by side fill the window, the web between them and round them
      const half = (w - 3 * WEB) / 2;
      return [framed, { ...whole, outline: rectangle(half, h - 2 * WEB), count: 2 }];
    }
  }
}

/** A quarter turn of the drawing, undone by the turns that are allowed. */
const drawnTurned = (blank: Blank): Blank => {
  const turn = (ring: Ring): Ring => ring.map(({ x, y }) => ({ x: -y, y: x }));
  return {
    ...blank,
    outline: turn(blank.outline),
    windows: blank.windows.map(turn),
    turns: blank.turns.map((quarters) => (quarters + 3) % 4),
  };
};

describe('laws of the bound on sheets', () => {
  const sheet = { width: 230, height: 170, sheets: 3, web: WEB, pieces: 7 };
  const piece = fc.record({
    shape: fc.constantFrom(...SHAPES),
    turns: fc.constantFrom([0], [0, 2], [0, 1, 2, 3]),
    drawnTurned: fc.boolean(),
  });
  const pieces = fc.tuple(cutSheets(sheet), fc.array(piece, { minLength: 21, maxLength: 21 }));
  const blanksOf = ([rectangles, ways]: readonly [
    readonly Rectangle[],
    readonly { shape: Shape; turns: readonly number[]; drawnTurned: boolean }[],
  ]) =>
    rectangles.flatMap((rectangle, i) => {
      const way = ways[i % ways.length] as (typeof ways)[number];
      const blanks = shaped(rectangle, way.shape, way.turns);
      return way.drawnTurned ? blanks.map(drawnTurned) : blanks;
    });

  test('never more than the sheets from which the blanks were cut, what lies in windows included', () =>
    fc.assert(
      fc.property(pieces, (given) => {
        expect(leastSheets({ blanks: blanksOf(given), beds: [bed(230, 170)], spacing: WEB })).toBeLessThanOrEqual(3);
      }),
      { numRuns: 30, seed: 4 },
    ));

  test('nor where larger beds or remnants lie about', () =>
    fc.assert(
      fc.property(pieces, (given) => {
        const beds = [bed(120, 90, 2), bed(230, 170, 3), bed(300, 100, 1)];
        expect(leastSheets({ blanks: blanksOf(given), beds, spacing: WEB })).toBeLessThanOrEqual(3);
      }),
      { numRuns: 15, seed: 5 },
    ));

  test('plain pieces that fill their sheets are known to need as many', () =>
    fc.assert(
      fc.property(cutSheets(sheet), (rectangles) => {
        const blanks = rectangles.map(({ width, height }) => plate(1, width, height));
        expect(leastSheets({ blanks, beds: [bed(230, 170)], spacing: WEB })).toBe(3);
      }),
      { numRuns: 30, seed: 6 },
    ));
});
