import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area, type ClosedPath, flatten, moved, reversed } from '../../src/geometry/path.js';
import { boxAt, circle, rectangle, rounded, stepped } from '../../src/geometry/shapes.js';
import type { FlatPart } from '../../src/model/part.js';
import { layOut, type Piece } from '../../src/sheets/lay-out.js';
import type { Sheet } from '../../src/sheets/sheet.js';
import type { SheetStock } from '../../src/sheets/stock.js';
import { inventedCamera, plate, stock } from './invented-camera.js';
import { loopsGap, polygonArea, within } from './measure.js';

const kerf = 0.15;
const given = { materials: stock, kerf, effort: 0.2 };
const bed = { width: 590, height: 390 };

const rect = (w: number, h: number) => rectangle(boxAt(0, 0, w, h));
const one = (part: FlatPart): readonly Piece[] => [{ part, count: 1 }];
const rules = (part: FlatPart) => layOut(one(part), given).findings.map(({ rule, level }) => `${rule} ${level}`);

const operation = (sheet: Sheet | undefined, layer: string): readonly string[] =>
  sheet?.operations.find((o) => o.layer === layer)?.paths.map(({ id }) => id) ?? [];

describe('a frame with a part in its window', () => {
  const frame = plate('B1', rounded(boxAt(0, 0, 300, 380), 6), {
    holes: [reversed(rect(200, 200)), reversed(circle(130, 170, 5))],
    engraving: [{ closed: false, vertices: [{ x: -140, y: 0, bulge: 0 }, { x: -120, y: 0, bulge: 0 }] }], // biome-ignore format: one line
  });
  const disc = plate('D', circle(0, 0, 90), { holes: [reversed(circle(0, 0, 20))] });
  const wide = plate('W', rect(280, 380));
  const { sheets } = layOut(
    [frame, disc, wide].map((part) => ({ part, count: 1 })),
    given,
  );
  const [sheet] = sheets;

  test('lies on one sheet', () => expect(sheets).toHaveLength(1));
  test('is cut in the promised order, paths named part.instance.n', () => {
    expect(sheet?.operations.map(({ layer }) => layer)).toEqual([
      'engrave',
      'cut-inside',
      'cut-nested',
      'cut-window',
      'cut-outside',
    ]);
    expect(operation(sheet, 'engrave')).toEqual(['B1.1.1']);
    expect([...operation(sheet, 'cut-inside')].sort()).toEqual(['B1.1.3', 'D.1.1']);
    expect(operation(sheet, 'cut-nested')).toEqual(['D.1.2']);
    expect(operation(sheet, 'cut-window')).toEqual(['B1.1.2']);
    expect([...operation(sheet, 'cut-outside')].sort()).toEqual(['B1.1.4', 'W.1.1']);
  });
  test('has its engraving where the part lies, and no wider', () => {
    const placed = sheet?.placed.find(({ part }) => part === 'B1');
    const drawn = sheet?.operations[0]?.paths[0]?.path.vertices.map(({ x, y }) => ({ x, y, bulge: 0 })) ?? [];
    const wanted = moved(frame.engraving[0]?.vertices ?? [], {
      x: placed?.x ?? 0,
      y: placed?.y ?? 0,
      turn: placed?.rotation ?? 0,
    });
    const byX = [...drawn].sort((a, b) => a.x - b.x || a.y - b.y);
    expect(byX).toEqual([...wanted].sort((a, b) => a.x - b.x || a.y - b.y).map((v) => ({ x: expect.closeTo(v.x, 9), y: expect.closeTo(v.y, 9), bulge: 0 }))); // biome-ignore format: one line
  });
  test('uses the area of its parts less their holes', () => {
    const corners = (4 - Math.PI) * 36;
    const net = 300 * 380 - corners - 200 * 200 - Math.PI * 6.25 + Math.PI * (45 * 45 - 100) + 280 * 380;
    expect(sheet?.usedArea).toBeCloseTo(net, 6); // plane geometry
  });
  test('is cut along lines half a kerf out and in', () => {
    const k = kerf;
    const frameLength = 2 * (300 + 380) - 8 * 6 + 2 * Math.PI * (6 + k / 2);
    const length =
      frameLength +
      4 * (200 - k) +
      Math.PI * (5 - k) +
      Math.PI * (90 + k) +
      Math.PI * (20 - k) +
      2 * (280 + 380 + 2 * k);
    expect(sheet?.cutLength).toBeCloseTo(length, 6); // plane geometry
  });
});

describe('grain runs along the sheet', () => {
  test.each([
    { grain: 'x', rotations: [0, Math.PI] },
    { grain: 'y', rotations: [Math.PI / 2, (3 * Math.PI) / 2] },
  ] as const)('a part with grain $grain, half a turn either way', ({ grain, rotations }) => {
    const { sheets } = layOut([{ part: plate('P', rect(120, 100), { grain }), count: 9 }], given);
    const found = sheets.flatMap(({ placed }) => placed.map((p) => p.rotation));
    expect(found).toHaveLength(9);
    for (const rotation of found) expect(rotations).toContain(rotation);
  });
  test('a long strip lies along it even where its grain is free', () => {
    const { sheets, findings } = layOut(one(plate('S', rect(20, 300))), given);
    expect(sheets[0]?.placed[0]?.rotation).toBeCloseTo(Math.PI / 2, 12);
    expect(findings).toEqual([]);
  });
});

describe('spacing', () => {
  test.each([
    { thickness: 3.02, asked: undefined, spacing: 2 },
    { thickness: 4.05, asked: undefined, spacing: 2.025 }, // max(2, t/2): camera.md 15
    { thickness: 9, asked: 3, spacing: 4.5 },
    { thickness: 4.05, asked: 3, spacing: 3 },
  ])('between cut lines in $thickness mm, $asked asked', ({ thickness, asked, spacing }) => {
    const materials = [{ material: 'ply', thickness, sheet: { width: 600, height: 400 } }];
    const part = plate('P', rect(100, 100), { material: 'ply', thickness });
    const { sheets } = layOut([{ part, count: 2 }], {
      materials,
      kerf,
      ...(asked === undefined ? {} : { spacing: asked }),
    });
    expect(sheets[0]?.spacing).toBe(spacing);
    const [a, b] = sheets[0]?.operations.at(-1)?.paths ?? [];
    expect(loopsGap(a?.path.vertices ?? [], b?.path.vertices ?? [])).toBeCloseTo(spacing, 9);
  });
});

describe('findings', () => {
  test.each([
    { what: 'a part wider than the bed', part: plate('P', rect(600, 100)), rule: 'part-on-bed error' },
    {
      what: 'one that fits only across the grain',
      part: plate('P', rect(100, 500), { grain: 'x' }),
      rule: 'part-on-bed error',
    },
    {
      what: 'a part of a material that is not there',
      part: plate('P', rect(50, 50), { material: 'felt' }),
      rule: 'part-on-bed error',
    },
    { what: 'a part under 25 both ways', part: plate('P', rect(24, 12)), rule: 'small-part note' },
    {
      what: 'a long part across its grain',
      part: plate('P', rect(20, 200), { grain: 'x' }),
      rule: 'grain-long warning',
    },
    {
      what: 'a hole narrower than the cut',
      part: plate('P', rect(90, 90), { holes: [reversed(circle(0, 0, 0.1))] }),
      rule: 'kerf-once error',
    },
  ])('$what', ({ part, rule }) => expect(rules(part)).toEqual([rule]));

  test.each([
    { what: 'a part as large as the bed', part: plate('P', rect(589.85, 389.85)) },
    { what: 'a part of 25', part: plate('P', rect(25, 12)) },
    { what: 'four times as long as wide across the grain', part: plate('P', rect(50, 200), { grain: 'x' }) },
  ])('none for $what', ({ part }) => expect(rules(part)).toEqual([]));

  test('a part that is too tall is measured by its height, and a free one is told one size', () => {
    const [tall] = layOut(one(plate('P', rect(300, 500), { grain: 'x' })), given).findings;
    // 500, the cut on both sides half a kerf each, a margin of 5 on both sides; the sheet is 400 high
    expect(tall).toMatchObject({ value: 500 + kerf + 10, limit: 400, unit: 'mm' });
    const [free] = layOut(one(plate('Q', rect(500, 500), { grain: 'any' })), given).findings;
    expect(free?.hint).toBe('A sheet of 510.2 × 510.2 mm would take it.');
  });

  test('name the part, its sheet and the size that would take it', () => {
    const [finding] = layOut(one(plate('T1', rect(700, 120), { name: 'tailboard', grain: 'x' })), given).findings;
    expect(finding?.message).toContain('T1 tailboard');
    expect(finding?.message).toContain('600 × 400 mm');
    expect(finding?.hint).toContain('710.2 × 130.2 mm'); // 700 + kerf 0.15 + two margins of 5, rounded up
    expect(finding).toEqual(
      expect.objectContaining({ value: expect.closeTo(710.15, 9), limit: 600, about: 'plywood.sheet' }),
    );
  });

  test('a small part in a window is held by the waste and needs no note', () => {
    const frame = plate('B', rect(100, 100), { holes: [reversed(rect(80, 80))] });
    expect(layOut([...one(frame), ...one(plate('P', rect(20, 20)))], given).findings).toEqual([]);
  });

  test('two of one part are told once', () =>
    expect(layOut([{ part: plate('P', rect(20, 20)), count: 7 }], given).findings).toHaveLength(1));
});

describe('several sizes and sheets at hand', () => {
  const ply = { material: 'plywood-4.05', thickness: 4.05 };
  const size = (width: number, height: number) => ({ ...ply, sheet: { width, height } });
  const cut = (pieces: readonly Piece[], materials: readonly SheetStock[], effort = 0.2) =>
    layOut(pieces, { materials, kerf, effort });
  const sizes = (sheets: readonly Sheet[]) => sheets.map(({ width, height }) => `${width} × ${height}`);

  test('what needs the large size takes the small parts along', () => {
    const pieces = [...one(plate('P', rect(700, 120))), ...one(plate('Q', rect(70, 120)))];
    const { sheets, findings } = cut(pieces, [size(600, 400), size(1200, 600)]);
    expect(findings).toEqual([]);
    expect(sizes(sheets)).toEqual(['1200 × 600']);
  });

  test('a small sheet before a large one where it suffices', () => {
    const pieces = [{ part: plate('P', rect(180, 180)), count: 2 }];
    expect(sizes(cut(pieces, [size(1200, 600), size(600, 400)]).sheets)).toEqual(['600 × 400']);
    expect(sizes(cut(pieces, [size(600, 400), size(1200, 600)]).sheets)).toEqual(['600 × 400']);
  });

  test('the last sheet is a small one where the rest suffices with that', () => {
    // nine to a large sheet, one is left over
    const pieces = [{ part: plate('P', rect(290, 190)), count: 10 }];
    const { sheets } = cut(pieces, [size(900, 600), size(310, 210)], 2);
    expect([...sizes(sheets)].sort()).toEqual(['310 × 210', '900 × 600']);
  });

  test('what is at hand before a new sheet, as many as there are of it', () => {
    const pieces = [{ part: plate('P', rect(280, 180)), count: 6 }];
    const { sheets, uses } = cut(pieces, [size(600, 400), { ...size(300, 200), count: 2 }]);
    expect([...sizes(sheets)].sort()).toEqual(['300 × 200', '300 × 200', '600 × 400']);
    expect(uses[0]).toMatchObject({ sheets: 3, atHand: 2 });
  });

  test('first of all what says so, though it is larger', () => {
    const pieces = one(plate('P', rect(280, 180)));
    const hand = [{ ...size(300, 200), count: 1 }, { ...size(900, 600), count: 1, first: true }]; // biome-ignore format: one line
    expect(sizes(cut(pieces, [size(600, 400), ...hand]).sheets)).toEqual(['900 × 600']);
    expect(sizes(cut(pieces, [size(600, 400), ...hand.slice(0, 1)]).sheets)).toEqual(['300 × 200']);
  });

  test('what is at hand stays whole where it saves no sheet, but for what is to be used first', () => {
    // three of them take a new sheet, with or without the small one
    const pieces = [{ part: plate('P', rect(280, 180)), count: 3 }];
    const small = { ...size(300, 200), count: 1 };
    expect(sizes(cut(pieces, [size(600, 400), small]).sheets)).toEqual(['600 × 400']);
    const { sheets, findings } = cut(pieces, [size(600, 400), { ...small, first: true }]);
    expect(sizes(sheets)).toEqual(['300 × 200', '600 × 400']);
    expect(sheets.map(({ placed }) => placed.map(({ instance }) => instance))).toEqual([[1], [2, 3]]);
    expect(findings).toEqual([]);
  });

  test('part-on-bed: no more sheets than there are, and what finds no room is told', () => {
    const { sheets, findings } = cut(
      [{ part: plate('P', rect(280, 180)), count: 6 }],
      [{ ...size(300, 200), count: 2 }],
    );
    expect(sizes(sheets)).toEqual(['300 × 200', '300 × 200']);
    expect(findings).toEqual([
      expect.objectContaining({
        rule: 'part-on-bed',
        level: 'error',
        value: 4,
        limit: 0,
        about: 'stock',
        message: '4 of P invented P find no room: the 2 sheets of plywood-4.05 that are there do not suffice.',
      }),
    ]);
    const enough = cut([{ part: plate('P', rect(280, 180)), count: 2 }], [{ ...size(300, 200), count: 2 }]);
    expect(enough.findings).toEqual([]);
  });

  test('no effort leaves nothing out that a short search finds room for', () => {
    // one sheet, sawn into these by hand: what is laid down largest first does not come out
    const sawn = [[184, 236], [164, 237], [249, 150], [151, 236], [82, 237], [180, 151], [155, 151]] as const; // biome-ignore format: one line
    const pieces = sawn.map(([w, h], i) => ({ part: plate(`P${i}`, rect(w, h), { grain: 'x' }), count: 1 }));
    expect(cut(pieces, [{ ...size(600, 400), count: 1 }], 0).findings).toEqual([]);
  });

  test('of as much wood in one large sheet or two small ones, the one', () => {
    const pieces = [{ part: plate('P', rect(580, 380)), count: 2 }];
    expect(sizes(cut(pieces, [size(600, 400), size(1200, 400)]).sheets)).toEqual(['1200 × 400']);
  });

  test('part-on-bed: larger than each size of its material', () => {
    const [finding] = cut(one(plate('P', rect(700, 120))), [size(600, 400), size(690, 300)]).findings;
    expect(finding?.message).toBe('P invented P fits no sheet of plywood-4.05: neither 600 × 400 mm nor 690 × 300 mm.');
    // it misses the larger by least: 700, the cut and two margins
    expect(finding).toMatchObject({ value: expect.closeTo(710.15, 9), limit: 690 });
  });

  test('stock-idle: what was to be used first and is of no use', () => {
    const other = { material: 'plywood-4.1', thickness: 4.1, sheet: { width: 600, height: 400 } };
    const { findings } = cut(one(plate('P', rect(280, 180))), [size(600, 400), { ...other, first: true }]);
    expect(findings).toEqual([expect.objectContaining({ rule: 'stock-idle', level: 'note' })]);
    expect(cut(one(plate('P', rect(280, 180))), [size(600, 400), other]).findings).toEqual([]);
  });
});

describe('an invented camera', () => {
  const laid = layOut(inventedCamera, given);
  const { sheets, uses, findings } = laid;

  test('breaks no rule', () => expect(findings).toEqual([]));

  test('takes at most one sheet more than the area of its parts asks for', () => {
    const net = inventedCamera
      .filter(({ part }) => part.material === 'plywood-4.05')
      .reduce((sum, { part, count }) => sum + count * (polygonArea(flatten(part.outline)) + part.holes.reduce((s, h) => s + polygonArea(flatten(h)), 0)), 0); // biome-ignore format: one line
    const bound = Math.ceil(net / (bed.width * bed.height));
    expect(uses[0]?.bound).toBe(bound);
    expect(sheets.filter(({ material }) => material === 'plywood-4.05').length).toBeLessThanOrEqual(bound + 1);
  });

  test('cut twice comes out the same', () => expect(layOut(inventedCamera, given)).toEqual(laid));
});

/** Small random lists: fingers, frames that hold discs, strips, slots. */
const shapes: fc.Arbitrary<{ outline: ClosedPath; holes: readonly ClosedPath[] }> = fc.oneof(
  fc.tuple(fc.integer({ min: 50, max: 240 }), fc.integer({ min: 50, max: 240 })).map(([w, h]) => ({
    outline: stepped({ left: 0, bottom: 0, right: w, top: h }, { left: [{ from: 15, to: 30, depth: 4.05 }], top: [{ from: 20, to: 35, depth: -4.05 }] }), // biome-ignore format: one line
    holes: [],
  })),
  fc
    .tuple(fc.integer({ min: 80, max: 240 }), fc.integer({ min: 80, max: 240 }), fc.integer({ min: 8, max: 20 }))
    .map(([w, h, rim]) => ({
      outline: rounded(boxAt(0, 0, w, h), 5),
      holes: [reversed(rect(w - 2 * rim, h - 2 * rim))],
    })),
  fc.tuple(fc.integer({ min: 90, max: 200 }), fc.integer({ min: 10, max: 15 })).map(([d, rim]) => ({
    outline: circle(0, 0, d),
    holes: [reversed(circle(0, 0, d - 2 * rim))],
  })),
  fc
    .tuple(fc.integer({ min: 8, max: 60 }), fc.integer({ min: 8, max: 60 }))
    .map(([w, h]) => ({ outline: rect(w, h), holes: [] })),
);
const lists: fc.Arbitrary<readonly Piece[]> = fc
  .array(fc.tuple(shapes, fc.constantFrom('x', 'y', 'any'), fc.integer({ min: 1, max: 3 })), {
    minLength: 1,
    maxLength: 9,
  })
  .map(
    (list) =>
    list.map(([shape, grain, count], i) => ({ part: plate(`P${i}`, shape.outline, { holes: shape.holes, grain: grain as FlatPart['grain'] }), count })), // biome-ignore format: one line
  );

interface Drawn {
  readonly outline: ReturnType<typeof flatten>;
  readonly holes: readonly ReturnType<typeof flatten>[];
}

function drawnPieces(sheet: Sheet): readonly Drawn[] {
  return sheet.placed.map(({ part, instance }) => {
    const loops = (names: readonly string[]) =>
      sheet.operations
        .filter(({ layer }) => names.includes(layer))
        .flatMap(({ paths }) => paths.filter(({ id }) => id.startsWith(`${part}.${instance}.`)))
        .map(({ path }) => flatten(path.vertices, 0.01));
    const [outline] = loops(['cut-outside', 'cut-nested']);
    return { outline: outline ?? [], holes: loops(['cut-inside', 'cut-window']) };
  });
}

/** Distance of the rectangles round two loops. */
function apart(a: ReturnType<typeof flatten>, b: ReturnType<typeof flatten>): number {
  const range = (loop: typeof a, of: 'x' | 'y') =>
    [Math.min(...loop.map((p) => p[of])), Math.max(...loop.map((p) => p[of]))] as const;
  const gap = (of: 'x' | 'y') => Math.max(range(a, of)[0] - range(b, of)[1], range(b, of)[0] - range(a, of)[1]);
  return Math.max(gap('x'), gap('y'));
}

describe('laws of the sheets', () => {
  test('every piece once, areas kept, nothing closer than spacing and margin', () =>
    fc.assert(
      fc.property(lists, (pieces) => {
        const { sheets, findings } = layOut(pieces, { ...given, effort: 0.05 });
        expect(findings.filter(({ level }) => level === 'error')).toEqual([]);
        const lying = sheets.flatMap(({ placed }) => placed.map(({ part, instance }) => `${part}.${instance}`));
        expect(lying.sort()).toEqual(pieces.flatMap(({ part, count }) => Array.from({ length: count }, (_, i) => `${part.id}.${i + 1}`)).sort()); // biome-ignore format: one line
        const wanted = pieces.reduce((sum, { part, count }) => sum + count * (area(part.outline) + part.holes.reduce((s, h) => s + area(h), 0)), 0); // biome-ignore format: one line
        expect(sheets.reduce((sum, { usedArea }) => sum + usedArea, 0)).toBeCloseTo(wanted, 6);
        for (const sheet of sheets) {
          const drawn = drawnPieces(sheet);
          drawn.forEach((a, i) => {
            for (const { x, y } of a.outline) expect(Math.min(x, y, 600 - x, 400 - y)).toBeGreaterThanOrEqual(5 - 1e-6);
            for (const b of drawn.slice(i + 1)) {
              if (apart(a.outline, b.outline) > sheet.spacing) continue;
              // chords of 0.01 can hide that much on either side
              for (const [p, q] of [[a, b], [b, a]] as const) // biome-ignore format: one line
                for (const line of [q.outline, ...q.holes])
                  expect(loopsGap(p.outline, line)).toBeGreaterThanOrEqual(sheet.spacing - 0.02);
              const inOther = (p: Drawn, q: Drawn) => within(p.outline[0] ?? { x: 0, y: 0 }, q.outline);
              for (const [p, q] of [[a, b], [b, a]] as const) // biome-ignore format: one line
                if (inOther(p, q)) expect(q.holes.some((h) => within(p.outline[0] ?? { x: 0, y: 0 }, h))).toBe(true);
            }
          });
        }
      }),
      { numRuns: 80, seed: 1906 },
    ));
});

describe('a layout in a hurry', () => {
  const pieces = inventedCamera;
  const at = { ...given, effort: 0 };
  const [hurried, checked] = [layOut(pieces, { ...at, hurried: true }), layOut(pieces, at)];

  test('puts every piece where one without hurry at the least effort puts it', () =>
    expect(hurried.sheets.map(({ placed }) => placed)).toEqual(checked.sheets.map(({ placed }) => placed)));

  test('cuts the same paths in an order that is allowed', () => {
    const paths = ({ operations }: Sheet) => operations.map(({ layer, paths: all }) => [layer, all.length]);
    expect(hurried.sheets.map(paths)).toEqual(checked.sheets.map(paths));
  });

  test('does not reckon how few sheets would do', () =>
    expect(hurried.uses.map(({ bound }) => bound)).toEqual(hurried.uses.map(() => null)));
});
