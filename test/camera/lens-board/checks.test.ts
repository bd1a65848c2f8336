import { describe, expect, test } from 'vitest';
import type { Build } from '../../../src/assembly/build.js';
import {
  boardHeld,
  boardOut,
  boardWay,
  clampClear,
  ringHolds,
  seatCovered,
} from '../../../src/camera/lens-board/checks.js';
import { boxAt, circle, rectangle, slotAlongX } from '../../../src/geometry/shapes.js';
import { planCamera } from '../../../src/pipeline.js';
import { changed, designOf } from '../../design/reading.js';
import { heron as heronText } from '../../design/worked-designs.js';
import { movePart } from '../../planted.js';
import { bought, cutTo, hole, replaced, spreadAcross } from '../altered.js';
import { heron, recut, without } from '../worked.js';

/** Limits: camera.md section 16, common practice, no source. */
const { lensBoard } = heron.camera.objects;

/** A build with another first hole, the one round the axis, in a plate. */
const bored = (build: Build, id: string, loop: ReturnType<typeof circle>): Build =>
  cutTo(build, id, ({ holes: [, ...others] }) => ({ holes: [hole(loop), ...others] }));

describe('board-out: 2 mm round the widest thing behind the board', () => {
  // the clamp's flange: 58.2 + 16 + 14 + 12 = 100.2 across (section 10)
  const opening = (width: number, height = width) =>
    boardOut(lensBoard, bored(heron.build, 'F1', rectangle(boxAt(0, 0, width, height))));
  test('goes through', () => expect(opening(102.21)).toEqual([]));
  test.each([
    { width: 102.1, height: 102.1 },
    { width: 120, height: 102.1 },
    { width: 102.1, height: 120 },
  ])('does not go through $width × $height', ({ width, height }) => {
    const [told, ...more] = opening(width, height);
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      rule: 'board-out',
      level: 'error',
      limit: 2,
      unit: 'mm',
      about: 'lens.barrel',
      message:
        'To change boards the lens would have to be dismounted: behind the board it is 100.2 mm wide, and the opening 102.1 mm.',
      hint: expect.stringMatching(/opening 0\.1 mm wider/),
    });
    expect(told?.value).toBeCloseTo(1.9, 6);
  });
  test('what stands behind the board is measured, not the mount that was meant', () => {
    const wide = bought(bored(heron.build, 'F1', rectangle(boxAt(0, 0, 102.3, 102.3))), 'lens-rear', { diameter: 101 });
    expect(boardOut(lensBoard, wide)).toMatchObject([{ message: expect.stringMatching(/it is 101 mm wide/) }]);
  });
});

describe('board-held: lapped over by 5 on both sides, drawn by that and 1', () => {
  // they lap by 6 as they are made (section 10)
  test('as it is made', () => expect(boardHeld(lensBoard, heron.build)).toEqual([]));
  test('drawn apart', () => {
    expect(boardHeld(lensBoard, spreadAcross(heron.build, 'F9', 0.99))).toEqual([]);
    const [told] = boardHeld(lensBoard, spreadAcross(heron.build, 'F9', 1.1));
    expect(told).toMatchObject({
      rule: 'board-held',
      level: 'error',
      limit: 5,
      message: 'The retainers lap over the lens board by 4.9 mm: it falls out when the camera tips.',
      hint: 'Set them 0.1 mm further in.',
    });
    expect(told?.value).toBeCloseTo(4.9, 6);
  });
  test('one retainer alone holds on one side', () => {
    const single = replaced(heron.build, 'F9', (places) => places.slice(0, 1));
    expect(boardHeld(lensBoard, single)).toMatchObject([{ rule: 'board-held', value: 0, limit: 5 }]);
  });
  test('slots as they are cut', () => {
    // the screw stands 3.3 from the retainer's middle: packing 0.3 off the board and 14 wide, retainer 20 wide, 6 over it
    const slots = (draw: number) =>
      cutTo(heron.build, 'F9', ({ holes }) => ({
        holes: holes.map((slot, i) => {
          const middle = ((slot[0]?.y ?? 0) + (slot[2]?.y ?? 0)) / 2;
          const width = i === 0 ? 4.5 : 5.3;
          return hole(slotAlongX(3.3 - draw / 2, middle, draw + width, width));
        }),
      }));
    expect(boardHeld(lensBoard, slots(7))).toEqual([]);
    const [told, ...more] = boardHeld(lensBoard, slots(6.9));
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      rule: 'board-held',
      level: 'error',
      message: 'The retainers can be drawn 6.9 mm and lap over the board by 6 mm: it does not come out.',
      hint: 'Cut their slots 0.1 mm longer.',
    });
    expect([told?.value, told?.limit].map((v) => Math.round((v ?? 0) * 1e6) / 1e6)).toEqual([6.9, 7]);
  });
});

describe('board-held: 0.1 to 0.5 of air between retainers and board; choices of ours round the 0.2 of card in section 10', () => {
  const nearer = (z: number) => boardHeld(lensBoard, movePart(heron.build, 'F9', { z }));
  test('on thin card, and without it', () => {
    expect(nearer(0.09)).toEqual([]);
    expect(nearer(0.11)).toMatchObject([{ rule: 'board-held', level: 'error', limit: 0.1 }]);
    expect(nearer(0.2)).toMatchObject([
      {
        message: 'The retainers have 0 mm of air over the lens board: they jam on it and cannot be drawn.',
        hint: expect.stringMatching(/0\.2 mm of card under their packing/),
      },
    ]);
  });
  test('on thick card', () => {
    expect(nearer(-0.29)).toEqual([]);
    expect(nearer(-0.4)).toMatchObject([
      { limit: 0.5, message: 'The retainers stand 0.6 mm off the lens board: it rattles, and tilts the lens.' },
    ]);
  });
});

describe('board-way: one cut corner, and its block', () => {
  test('as it is made', () => expect(boardWay(lensBoard, heron.build)).toEqual([]));
  test.each([
    { name: 'no corner cut', build: recut('F6', rectangle(boxAt(0, 0, lensBoard.board, lensBoard.board))), ways: 0 },
    { name: 'no block', build: without('F10'), ways: 4 },
    {
      name: 'two corners cut',
      build: cutTo(heron.build, 'F6', ({ outline }) => ({
        outline: outline.flatMap((v) =>
          v.x < 0 && v.y < 0
            ? [
                { ...v, y: v.y + 12 },
                { ...v, x: v.x + 12 },
              ]
            : [v],
        ),
      })),
      ways: 2,
    },
  ])('$name: goes in $ways ways', ({ build, ways }) =>
    expect(boardWay(lensBoard, build)).toMatchObject([
      {
        rule: 'board-way',
        level: 'warning',
        value: ways,
        limit: 1,
        hint: expect.stringMatching(/[Cc]ut one corner/),
      },
    ]),
  );
});

const mounted = (mount: string, more: readonly (readonly [string, string])[] = []) =>
  planCamera(
    designOf(
      more.reduce((text, [from, to]) => changed(text, from, to), changed(heronText, 'by: clamp, side: inside', mount)),
    ),
  );
const FLANGE = [
  'mass: 640 g }',
  'mass: 640 g }\n  flange: { diameter: 96 mm, boltCircle: 86 mm, screws: 4, thickness: 3 mm }',
] as const;

describe('lens-seat-known: 2 mm all round to bear on, in the face that it lies on', () => {
  test.each([
    // clamp: 58.2 + 16 + 14 + 12 across; ring: thread and 5 a side, on the barrel of 58 or on the front of 64
    { planned: heron, words: 'clamp', plate: 'F7', disc: 100.2, about: 'lens.barrel' },
    { planned: mounted('by: clamp, side: front'), words: 'clamp', plate: 'F6', disc: 100.2, about: 'lens.barrel' },
    {
      planned: mounted('by: flange, side: front', [FLANGE]),
      words: 'flange',
      plate: 'F6',
      disc: 96,
      about: 'lens.flange.diameter',
    },
    {
      planned: mounted('by: flange, side: inside', [FLANGE]),
      words: 'flange',
      plate: 'F7',
      disc: 96,
      about: 'lens.flange.diameter',
    },
    { planned: mounted('by: ring, side: front'), words: 'ring', plate: 'F7', disc: 68, about: 'lens.barrel' },
    { planned: mounted('by: ring, side: inside'), words: 'ring', plate: 'F6', disc: 74, about: 'lens.barrel' },
  ])('a $words of $disc over the hole in $plate', ({ planned, words, plate, disc, about }) => {
    const own = planned.camera.objects.lensBoard;
    const holed = (diameter: number) => seatCovered(own, bored(planned.build, plate, circle(0, 0, diameter)));
    expect(holed(disc - 4.001)).toEqual([]);
    expect(holed(disc - 3.9)).toMatchObject([
      {
        rule: 'lens-seat-known',
        level: 'error',
        limit: 2,
        unit: 'mm',
        about,
        message: expect.stringMatching(new RegExp(`^The ${words} is ${disc} mm across and the hole`)),
        hint: expect.anything(),
      },
    ]);
  });
});

describe('lens-seat-known: a ring on the barrel of 58, the lens’s front of 64 against the board', () => {
  const { camera, build } = mounted('by: ring, side: front');
  const own = camera.objects.lensBoard;
  // board and plug are 8.1 thick, and a ring bites on 1
  test('reaches its thread, and draws a shoulder', () => {
    expect(ringHolds(own, bought(build, 'lens-barrel', { length: 9.11 }))).toEqual([]);
    expect(ringHolds(own, bought(build, 'lens-front', { diameter: 60.31 }))).toEqual([]);
  });
  test('does not reach a thread that ends in the wood', () => {
    const [told, ...more] = ringHolds(own, bought(build, 'lens-barrel', { length: 9 }));
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      rule: 'lens-seat-known',
      level: 'error',
      message: 'The thread reaches 9 mm from the lens seat; through board and plug the ring needs 9.1 mm of it.',
      hint: expect.stringMatching(/thinner sheet/),
    });
    expect(told?.limit).toBeCloseTo(9.1, 9);
  });
  test('has nothing to draw where the lens has no shoulder', () =>
    // the hole is 58.3
    expect(ringHolds(own, bought(build, 'lens-front', { diameter: 60.29 }))).toMatchObject([
      { rule: 'lens-seat-known', level: 'warning', limit: 1, hint: expect.stringMatching(/washer/) },
    ]));
  test('from inside it reaches forwards to the thread on the front', () => {
    const inside = mounted('by: ring, side: inside');
    const told = (length: number) =>
      ringHolds(
        inside.camera.objects.lensBoard,
        replaced(bought(inside.build, 'lens-front', { length }), 'lens-front', ([place]) =>
          place ? [{ ...place, matrix: place.matrix.map((v, i) => (i === 14 ? -length : v)) }] : [],
        ),
      ).filter(({ level }) => level === 'error');
    expect(told(9.11)).toEqual([]);
    expect(told(9)).toMatchObject([{ value: 9 }]);
  });
  test('only a ring is asked for its thread', () => expect(ringHolds(lensBoard, heron.build)).toEqual([]));
});

test('cone-clear: a clamp longer than the barrel behind its seat', () => {
  expect(clampClear({ ...lensBoard, clampRoom: null })).toEqual([]);
  expect(clampClear({ ...lensBoard, clampRoom: 0 })).toEqual([]);
  expect(clampClear({ ...lensBoard, clampRoom: -0.2 })).toMatchObject([
    { rule: 'cone-clear', level: 'error', value: -0.2, limit: 0, unit: 'mm', hint: expect.stringMatching(/flange/) },
  ]);
});
