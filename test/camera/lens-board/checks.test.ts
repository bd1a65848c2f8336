import { describe, expect, test } from 'vitest';
import {
  boardHeld,
  boardOut,
  boardWay,
  clampClear,
  ringHolds,
  screwsHold,
  screwsToEdge,
  seatCovered,
} from '../../../src/camera/lens-board/checks.js';
import { boxAt, rectangle } from '../../../src/geometry/shapes.js';
import { heron, recut, without } from '../worked.js';

/** Limits: camera.md section 16, common practice, no source. */
const { lensBoard } = heron.camera.objects;

test('board-out: 2 mm round the widest thing behind the board', () => {
  expect(boardOut({ ...lensBoard, insideWidest: 98, opening: 100 })).toEqual([]);
  expect(boardOut({ ...lensBoard, insideWidest: 98.1, opening: 100 })).toMatchObject([
    { rule: 'board-out', level: 'error', limit: 2, unit: 'mm', hint: expect.stringMatching(/opening 0\.1 mm wider/) },
  ]);
});

describe('board-held: lapped over by 5, drawn by that and 1', () => {
  test.each([
    { overlap: 5, draw: 6, told: [] },
    { overlap: 4.9, draw: 6, told: [{ value: 4.9, limit: 5, hint: /0\.1 mm further in/ }] },
    { overlap: 6, draw: 6.9, told: [{ value: 6.9, limit: 7, hint: /0\.1 mm longer/ }] },
  ])('overlap $overlap, draw $draw', ({ overlap, draw, told }) =>
    expect(boardHeld({ ...lensBoard, overlap, draw })).toMatchObject(
      told.map(({ value, limit, hint }) => ({
        rule: 'board-held',
        level: 'error',
        value,
        limit,
        hint: expect.stringMatching(hint),
      })),
    ),
  );
});

describe('board-way: one cut corner, and its block', () => {
  test('as it is made', () => expect(boardWay(lensBoard, heron.build)).toEqual([]));
  test.each([
    { name: 'no corner cut', build: recut('F6', rectangle(boxAt(0, 0, lensBoard.board, lensBoard.board))) },
    { name: 'no block', build: without('F10') },
  ])('$name', ({ build }) =>
    expect(boardWay(lensBoard, build)).toMatchObject([
      { rule: 'board-way', level: 'warning', value: 0, limit: 1, hint: expect.stringMatching(/[Cc]ut one corner/) },
    ]),
  );
});

test('nut-edge: two diameters of M4 from the screws to the edge of the board', () => {
  const screws = (x: number) =>
    screwsToEdge({ ...lensBoard, board: 120, screws: { places: [{ x, y: 0 }], hole: 4.5, through: true } });
  expect(screws(52)).toEqual([]);
  expect(screws(-52.1)).toMatchObject([
    {
      rule: 'nut-edge',
      level: 'error',
      limit: 8,
      unit: 'mm',
      about: 'lens.mount',
      hint: expect.stringMatching(/0\.2 mm wider/),
    },
  ]);
});

describe('lens-seat-known: 2 mm all round to bear on', () => {
  const seat = (more: Partial<typeof lensBoard>) => seatCovered({ ...lensBoard, hole: 60, plugHole: 70, ...more });
  test.each([
    { by: 'clamp', side: 'inside', disc: 74 },
    { by: 'flange', side: 'front', disc: 64 },
    { by: 'ring', side: 'front', disc: 74 },
    { by: 'ring', side: 'inside', disc: 64 },
  ] as const)('a $by from $side: of the hole that it lies over', ({ by, side, disc }) => {
    expect(seat({ by, side, disc })).toEqual([]);
    expect(seat({ by, side, disc: disc - 0.1 })).toMatchObject([
      { rule: 'lens-seat-known', level: 'error', limit: 2, unit: 'mm', hint: expect.anything() },
    ]);
  });
});

describe('lens-seat-known: a ring', () => {
  const ring = (reach: number, shoulder: number) =>
    ringHolds({ ...lensBoard, hole: 40.3, thread: { shoulder, reach, needed: 9.1 } });
  test('reaches its thread, and draws a shoulder 1 mm wider all round', () => expect(ring(9.1, 42.3)).toEqual([]));
  test('does not reach a thread that ends in the wood', () =>
    expect(ring(9, 42.3)).toMatchObject([
      { rule: 'lens-seat-known', level: 'error', value: 9, limit: 9.1, hint: expect.stringMatching(/thinner sheet/) },
    ]));
  test('has nothing to draw where the lens has no shoulder', () =>
    expect(ring(20, 40)).toMatchObject([
      { rule: 'lens-seat-known', level: 'warning', limit: 1, hint: expect.stringMatching(/washer/) },
    ]));
});

describe('web-least: wood between the hole for the lens and its screws', () => {
  const web = (x: number, through: boolean) =>
    screwsHold({
      ...lensBoard,
      hole: 60,
      plugHole: 64,
      screws: { places: [{ x, y: 0 }], hole: through ? 4.5 : 2, through },
    });
  test('3 mm beside a clamp’s screw in the plug', () => {
    expect(web(32 + 2.25 + 3, true)).toEqual([]);
    expect(web(32 + 2.25 + 2.9, true)).toMatchObject([{ rule: 'web-least', level: 'error', limit: 3, unit: 'mm' }]);
  });
  test('1 mm beside a wood screw', () => {
    expect(web(30 + 1 + 1, false)).toEqual([]);
    expect(web(30 + 1 + 0.9, false)).toMatchObject([{ rule: 'web-least', level: 'error', limit: 1 }]);
    expect(web(20, false)).toMatchObject([{ message: expect.stringMatching(/in the hole/) }]);
  });
});

test('cone-clear: a clamp longer than the barrel behind its seat', () => {
  expect(clampClear({ ...lensBoard, clampRoom: null })).toEqual([]);
  expect(clampClear({ ...lensBoard, clampRoom: 0 })).toEqual([]);
  expect(clampClear({ ...lensBoard, clampRoom: -0.2 })).toMatchObject([
    { rule: 'cone-clear', level: 'error', value: -0.2, limit: 0, unit: 'mm', hint: expect.stringMatching(/flange/) },
  ]);
});
