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
import { boxAt, rectangle } from '../../../src/geometry/shapes.js';
import { heron, moving, recut } from '../worked.js';

/** Limits: camera.md section 16, common practice, no source. Heron's rear box is 188.15 inside, its image 120.6 x 171.4. */
const { back } = heron.camera.objects;
const ring = (width: number, height = width) => recut('B2', rectangle(boxAt(0, 0, width, height)));

describe('back-square: the turning ring in an opening of 188.15', () => {
  test.each([187.15, 187.55, 187.75])('%d mm square', (side) => expect(backSquare(back, ring(side))).toEqual([]));
  test.each([
    { side: 187.76, limit: 0.2, message: /binds/, hint: /187\.[56] mm square/ },
    { side: 187.14, limit: 0.5, message: /rattles/, hint: /187\.[56] mm square/ },
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
});

test('ring-width: one and a half thicknesses, 6.075, beyond an opening of 175.4', () => {
  expect(ringWidth(back, ring(187.56))).toEqual([]);
  const [told] = ringWidth(back, ring(187.54));
  expect(told).toMatchObject({
    rule: 'ring-width',
    level: 'error',
    unit: 'mm',
    hint: expect.stringMatching(/wider inside/),
  });
  expect(told?.value).toBeCloseTo(6.07, 9);
  expect(told?.limit).toBeCloseTo(6.075, 9);
});

describe('trap-land: 10 at the sides, 8 at the corners clipped by 30', () => {
  // 188.15 + 20; 188.15 + 30 + 8 √2 = 229.464
  test('229.5 wide', () => expect(trapLand({ ...back, side: 229.5 })).toEqual([]));
  test('229.4 wide', () => {
    const [told, ...more] = trapLand({ ...back, side: 229.4 });
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      rule: 'trap-land',
      level: 'error',
      limit: 8,
      hint: expect.stringMatching(/sheet of 4\.1 mm/),
    });
    expect(told?.value).toBeCloseTo(7.955, 3);
  });
  test('208.1 wide', () =>
    expect(trapLand({ ...back, side: 208.1 })).toMatchObject([
      { level: 'error', limit: 10, hint: expect.stringMatching(/wider/) },
      { level: 'error', limit: 8 },
    ]));
});

test('seat-flat: 45 thicknesses of 4.05 are 182.25', () => {
  const long = (height: number) => seatFlat({ ...back, opening: { width: 124.6, height } });
  expect(long(182.2)).toEqual([]);
  expect(long(182.3)).toMatchObject([
    { rule: 'seat-flat', level: 'warning', limit: 45, hint: expect.stringMatching(/sheet of 4\.1 mm/) },
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
  expect(tongueNote({ ...back, tongue: null })).toEqual([]);
  expect(tongueNote({ ...back, tongue: 130 })).toMatchObject([
    { rule: 'holder-clears', level: 'note', value: 130, hint: expect.stringMatching(/never down/) },
  ]);
});

describe('web-least: 3 mm of the seat beside a groove, Heron’s opening reaching to 87.7 and its holders to 108.3', () => {
  const grooved = (from: number, to: number) => grooveWeb({ ...back, grooves: [{ from, to }] });
  test.each([
    { from: 90.7, to: 95 },
    { from: 100, to: 105.3 },
  ])('from $from to $to', ({ from, to }) => expect(grooved(from, to)).toEqual([]));
  test.each([
    { from: 90.6, to: 95, message: /2\.9 mm of the seat/ },
    { from: 100, to: 105.4, message: /2\.9 mm of the seat/ },
    { from: 85, to: 90, message: /into the picture/ },
  ])('from $from to $to', ({ from, to, message }) =>
    expect(grooved(from, to)).toMatchObject([
      {
        rule: 'web-least',
        level: 'error',
        limit: 3,
        unit: 'mm',
        about: 'holders',
        message: expect.stringMatching(message),
        hint: expect.stringMatching(/middle of the rib/),
      },
    ]),
  );
});
