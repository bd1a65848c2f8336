import { describe, expect, test } from 'vitest';
import { boardHeld, boardOut, boardWay, screwsToEdge } from '../../../src/camera/lens-board/checks.js';
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
