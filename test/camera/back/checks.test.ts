import { describe, expect, test } from 'vitest';
import {
  backSquare,
  grooveWeb,
  registerSoft,
  ringWidth,
  seatFlat,
  tongueNote,
  trapLand,
} from '../../../src/camera/back/checks.js';
import { box, boxAt, clipped, rectangle } from '../../../src/geometry/shapes.js';
import { cutTo, hole } from '../altered.js';
import { heron, moving, recut } from '../worked.js';

/** Limits: camera.md section 16, common practice, no source. Heron's rear box is 188.15 inside, its image 120.6 x 171.4. */
const { back } = heron.camera.objects;
const ring = (width: number, height = width) => recut('B2', rectangle(boxAt(0, 0, width, height)));

/** Heron with another first hole, the opening round the axis, in a plate of the back. */
const opened = (id: string, width: number, height: number, x = 0) =>
  cutTo(heron.build, id, ({ holes: [, ...others] }) => ({
    holes: [hole(rectangle(boxAt(x, 0, width, height))), ...others],
  }));

describe('back-square: the turning ring in an opening of 188.15', () => {
  test.each([187.15, 187.55, 187.75])('%d mm square', (side) => expect(backSquare(back, ring(side))).toEqual([]));
  test.each([
    {
      side: 187.76,
      limit: 0.2,
      message: /0\.195 mm a side in the standard: the back binds/,
      hint: /187\.[56] mm square/,
    },
    {
      side: 187.14,
      limit: 0.5,
      message: /0\.505 mm a side in the standard: the back rattles/,
      hint: /187\.[56] mm square/,
    },
  ])('$side mm square', ({ side, limit, message, hint }) => {
    const [told] = backSquare(back, ring(side));
    expect(told).toMatchObject({
      rule: 'back-square',
      level: 'error',
      limit,
      unit: 'mm a side',
      message: expect.stringMatching(message),
      hint: expect.stringMatching(hint),
    });
    expect(told?.value).toBeCloseTo((188.15 - side) / 2, 9);
  });
  test('0.05 out of square', () => {
    expect(backSquare(back, ring(187.55, 187.5))).toEqual([]);
    expect(backSquare(back, ring(187.55, 187.49))).toMatchObject([
      { rule: 'back-square', level: 'error', limit: 0.05, hint: expect.stringMatching(/187\.49 mm/) },
    ]);
  });
  test('the opening counts as it is cut in the standard, at its narrowest', () => {
    // 187.55 and twice 0.2
    expect(backSquare(back, opened('R3', 187.95, 187.95))).toEqual([]);
    expect(backSquare(back, opened('R3', 188.15, 187.94))).toMatchObject([{ limit: 0.2 }]);
  });
  test('in every turn: a ring of 187.45 × 187.4 in an opening of 188.15 × 187.84 binds lengthwise', () => {
    // upright (187.84 − 187.4)/2 = 0.22, lengthwise (187.84 − 187.45)/2 = 0.195
    const narrow = opened('R3', 188.15, 187.84);
    const cut = cutTo(narrow, 'B2', () => ({ outline: rectangle(boxAt(0, 0, 187.45, 187.4)) }));
    expect(backSquare(back, cut)).toMatchObject([{ limit: 0.2, message: expect.stringMatching(/0\.195 mm a side/) }]);
  });
});

describe('ring-width: one and a half thicknesses, 6.075', () => {
  test('beyond an opening of 175.4', () => {
    expect(ringWidth(back, ring(187.56))).toEqual([]);
    const [told] = ringWidth(back, ring(187.54));
    expect(told).toMatchObject({
      rule: 'ring-width',
      level: 'error',
      unit: 'mm',
      about: 'format.image',
      message: 'The turning ring is 6.07 mm wide at its ends: it snaps when it is glued.',
      hint: 'Make the rear box 0.1 mm wider inside, or the image as much shorter.',
    });
    expect(told?.value).toBeCloseTo(6.07, 9);
    expect(told?.limit).toBeCloseTo(6.075, 9);
  });
  // (187.55 − 124.6)/2 = 31.475 of wood at each side, if the opening stands in the middle
  test('beside it too', () => {
    expect(ringWidth(back, opened('B2', 124.6, 175.3, 25.39))).toEqual([]);
    expect(ringWidth(back, opened('B2', 124.6, 175.3, 25.41))).toHaveLength(1);
    expect(ringWidth(back, opened('B2', 124.6, 175.3, -25.41))).toHaveLength(1);
  });
});

describe('trap-land: 10 at the sides, 8 at the corners clipped by 30', () => {
  const plate = (side: number) => recut('B1', clipped(boxAt(0, 0, side, side), 30));
  // 188.15 + 20; 188.15 + 30 + 8 √2 = 229.464
  test('229.5 wide', () => expect(trapLand(back, plate(229.5))).toEqual([]));
  test('229.4 wide', () => {
    const [told, ...more] = trapLand(back, plate(229.4));
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      rule: 'trap-land',
      level: 'error',
      limit: 8,
      message: 'At its clipped corners the back lies 7.95 mm on the standard: light creeps in there.',
      hint: expect.stringMatching(/sheet of 4\.1 mm/),
    });
    expect(told?.value).toBeCloseTo(7.955, 3);
  });
  test('208.1 wide', () =>
    expect(trapLand(back, plate(208.1))).toMatchObject([
      { level: 'error', limit: 10, hint: expect.stringMatching(/wider/) },
      { level: 'error', limit: 8 },
    ]));
  // 94.075 + 10 = 104.075
  test.each([
    { name: 'its open end', edges: (far: number) => box(-116.125, -116.125, 116.125, far) },
    { name: 'its closed end', edges: (far: number) => box(-116.125, -far, 116.125, 116.125) },
    { name: 'one side', edges: (far: number) => box(-far, -116.125, 116.125, 116.125) },
  ])('cut short at $name', ({ edges }) => {
    expect(trapLand(back, recut('B1', rectangle(edges(104.08))))).toEqual([]);
    expect(trapLand(back, recut('B1', rectangle(edges(104.07))))).toMatchObject([
      { limit: 10, message: expect.stringMatching(/lies 9\.99 mm on the standard: too little/) },
    ]);
  });
  test('the standard must be there to lie on', () => {
    expect(trapLand(back, recut('R3', rectangle(box(-116, -130, 116, 104.08))))).toEqual([]);
    expect(trapLand(back, recut('R3', rectangle(box(-116, -130, 116, 104.07))))).toHaveLength(1);
  });
});

test('seat-flat: 45 thicknesses of 4.05 are 182.25', () => {
  expect(seatFlat(back, opened('B1', 124.6, 182.2))).toEqual([]);
  expect(seatFlat(back, opened('B1', 124.6, 182.3))).toMatchObject([
    {
      rule: 'seat-flat',
      level: 'warning',
      limit: 45,
      about: 'plywood.thickness',
      message: expect.stringMatching(/45 times as long as it is thick, and bends/),
      hint: expect.stringMatching(/sheet of 4\.1 mm/),
    },
  ]);
});

test('register-soft: nothing soft between holder and standard', () => {
  expect(registerSoft(back, heron.build)).toEqual([]);
  // the felt bands end 16 and more ahead of the standard
  expect(registerSoft(back, moving('felt-side', { z: 200 }))).toMatchObject([
    { rule: 'register-soft', level: 'error', value: 1, limit: 0, hint: expect.stringMatching(/bare wood/) },
  ]);
});

test('holder-clears: a tongue is told, and how the back is used with it', () => {
  const plate = (top: number) => recut('B1', rectangle(box(-116.125, -116.125, 116.125, top)));
  expect(tongueNote(back, plate(116.125))).toEqual([]);
  expect(tongueNote(back, plate(130))).toMatchObject([
    { rule: 'holder-clears', level: 'note', value: 130, limit: 116.125, hint: expect.stringMatching(/never down/) },
  ]);
});

test('web-least: 3 mm of the holder close a groove for lock ribs, Heron’s holders reaching to 108.3', () => {
  // 214 − 85.7 − 20
  const grooved = (to: number) =>
    grooveWeb(
      back,
      cutTo(heron.build, 'B1', ({ holes }) => ({ holes: [...holes, hole(rectangle(box(-78, 100, 78, to)))] })),
    );
  expect(grooved(105.3)).toEqual([]);
  expect(grooved(105.4)).toMatchObject([
    {
      rule: 'web-least',
      level: 'error',
      limit: 3,
      unit: 'mm',
      about: 'holders',
      message: expect.stringMatching(/2\.9 mm of the seat/),
      hint: expect.stringMatching(/middle of the rib/),
    },
  ]);
  expect(grooved(110)).toMatchObject([{ message: expect.stringMatching(/beyond the holder's open end/) }]);
});
