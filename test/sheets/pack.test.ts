import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Bed, type Blank, type Place, pack } from '../../src/sheets/pack.js';

const bed: Bed = { width: 590, height: 390, spacing: 2 };
const effort = 20;
const blank = (width: number, height: number, windows: Blank['stances'][number]['windows'] = []): Blank => ({
  stances: [{ turn: 0, width, height, windows }],
});
const times = (n: number, b: Blank) => Array.from({ length: n }, () => b);
const sheetsOf = (places: readonly Place[]) => new Set(places.map(({ sheet }) => sheet)).size;
const frame = blank(200, 200, [[{ left: 20, bottom: 20, right: 180, top: 180 }]]);

describe('rectangles on a bed', () => {
  test('nothing takes no sheet', () => expect(pack([], bed, { effort })).toEqual([]));

  // arithmetic: 590 = 2 · 294 + 2, 390 = 2 · 194 + 2
  test.each([
    { what: 'four quarters, the spacing between them, fill one sheet', pieces: times(4, blank(294, 194)), sheets: 1 },
    { what: 'the same with a fifth take two', pieces: times(5, blank(294, 194)), sheets: 2 },
    { what: 'a hair wider and only two stand side by side', pieces: times(4, blank(294.1, 194)), sheets: 2 },
    { what: 'a piece as large as the bed fits', pieces: [blank(590, 390)], sheets: 1 },
    {
      what: 'five pieces round a middle fill a bed with no straight cut through',
      pieces: [blank(389, 189), blank(199, 249), blank(389, 139), blank(199, 199), blank(188, 58)],
      sheets: 1,
    },
  ])('$what', ({ pieces, sheets }) => expect(sheetsOf(pack(pieces, bed, { effort: 200 }))).toBe(sheets));

  test('a piece that may turn does where that saves a sheet', () => {
    const across: Blank = {
      stances: [
        { turn: 0, width: 150, height: 300, windows: [] },
        { turn: Math.PI / 2, width: 300, height: 150, windows: [] },
      ],
    };
    const places = pack([blank(590, 190), across], bed, { effort });
    expect(sheetsOf(places)).toBe(1);
    expect(places.find((p) => p.blank === 1)?.stance.turn).toBe(Math.PI / 2);
  });
});

describe('windows', () => {
  test('small parts lie in the window of a frame and save a sheet', () => {
    const places = pack([blank(590, 180), frame, blank(386, 200), blank(156, 156)], bed, { effort });
    expect(sheetsOf(places)).toBe(1);
    expect(places.find((p) => p.blank === 3)?.within).toEqual({ blank: 1, window: 0 });
  });

  test('a part fills its window up to the spacing and no more', () => {
    const inside = (side: number) =>
      pack([frame, blank(side, side)], bed, { effort }).find((p) => p.blank === 1)?.within;
    expect(inside(156)).not.toBeNull(); // 160 less 2 a side
    expect(inside(156.1)).toBeNull();
  });

  test('nothing lies in the window of a part that lies in a window itself', () => {
    const inner = blank(150, 150, [[{ left: 20, bottom: 20, right: 130, top: 130 }]]);
    const places = pack([frame, inner, blank(50, 50)], bed, { effort });
    expect(places.find((p) => p.blank === 1)?.within).toEqual({ blank: 0, window: 0 });
    expect(places.find((p) => p.blank === 2)?.within).toBeNull();
  });
});

const side = fc.integer({ min: 10, max: 380 });
const blanks: fc.Arbitrary<readonly Blank[]> = fc.array(
  fc.tuple(side, side, fc.boolean()).map(([w, h, hollow]) => {
    const rim = 15;
    const windows = hollow && w > 60 && h > 60 ? [[{ left: rim, bottom: rim, right: w - rim, top: h - rim }]] : [];
    return blank(w, h, windows);
  }),
  { minLength: 1, maxLength: 30 },
);

describe('laws of packing', () => {
  test('each piece lies once, on the bed, clear of all others', () =>
    fc.assert(
      fc.property(blanks, (given) => {
        const places = pack(given, bed, { effort: 8 });
        expect(places.map((p) => p.blank).sort((a, b) => a - b)).toEqual(given.map((_, i) => i));
        const right = (p: Place) => p.x + p.stance.width;
        const top = (p: Place) => p.y + p.stance.height;
        for (const p of places) {
          expect(Math.min(p.x, p.y)).toBeGreaterThanOrEqual(-1e-6);
          expect(right(p)).toBeLessThanOrEqual(bed.width + 1e-5);
          expect(top(p)).toBeLessThanOrEqual(bed.height + 1e-5);
          for (const q of places) {
            if (p.blank === q.blank || p.sheet !== q.sheet) continue;
            const gap = Math.max(q.x - right(p), p.x - right(q), q.y - top(p), p.y - top(q));
            const [window] = q.stance.windows;
            if (p.within?.blank === q.blank && window?.[0]) {
              const room = window[0];
              expect(p.x - q.x - room.left).toBeGreaterThanOrEqual(2 - 1e-5);
              expect(p.y - q.y - room.bottom).toBeGreaterThanOrEqual(2 - 1e-5);
              expect(q.x + room.right - right(p)).toBeGreaterThanOrEqual(2 - 1e-5);
              expect(q.y + room.top - top(p)).toBeGreaterThanOrEqual(2 - 1e-5);
            } else if (q.within?.blank !== p.blank) expect(gap).toBeGreaterThanOrEqual(2 - 1e-5);
          }
        }
      }),
      { numRuns: 150, seed: 1906 },
    ));

  test('the same pieces give the same places', () =>
    fc.assert(
      fc.property(blanks, (given) => {
        expect(pack(given, bed, { effort: 8 })).toEqual(pack(given, bed, { effort: 8 }));
      }),
      { numRuns: 20, seed: 1906 },
    ));

  test('more effort never takes more sheets', () =>
    fc.assert(
      fc.property(blanks, (given) => {
        expect(sheetsOf(pack(given, bed, { effort: 40 }))).toBeLessThanOrEqual(
          sheetsOf(pack(given, bed, { effort: 0 })),
        );
      }),
      { numRuns: 20, seed: 1906 },
    ));
});
