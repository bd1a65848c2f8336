import { describe, expect, test } from 'vitest';
import {
  backClearsSole,
  buttonClears,
  nutEdge,
  racking,
  ribUnderFloor,
  soleMeetsFront,
  standardOverRails,
} from '../../../src/camera/rear-standard/checks.js';
import { heron, moving } from '../worked.js';

/** Limits: camera.md section 16, common practice, no source, where nothing else is said. */
const own = heron.camera.objects.rearStandard;

describe('what passes what, measured on the placed parts', () => {
  test.each([
    // 175.5 − 8.1 − 90 = 77.4 behind the panel (camera.md sections 5, 17)
    {
      rule: 'sole-meets-front',
      check: soleMeetsFront,
      part: 'R4L',
      inside: { z: -72.39 },
      outside: { z: -72.41 },
      value: 4.99,
      limit: 5,
      hint: /shallower holder/,
    },
    // notch t + 1.3 above the sole, keeper t + 0.3 (section 8)
    {
      rule: 'standard-over-rails',
      check: standardOverRails,
      part: 'T3',
      inside: { y: 0.19 },
      outside: { y: 0.21 },
      value: 0.79,
      limit: 0.8,
      hint: /higher/,
    },
    // 138.775 − 8.1 − 4.05 − 0.3 − 116.125 = 10.2
    {
      rule: 'back-clears-sole',
      check: backClearsSole,
      part: 'B1',
      inside: { y: -8.19 },
      outside: { y: -8.21 },
      value: 1.99,
      limit: 2,
      hint: /[Rr]aise the axis/,
    },
    // 2 above ribs of 25 (section 8)
    {
      rule: 'rib-under-floor',
      check: ribUnderFloor,
      part: 'R5',
      inside: { y: 0.49 },
      outside: { y: 0.51 },
      value: 1.49,
      limit: 1.5,
      hint: /[Rr]aise the axis/,
    },
  ])('$rule', ({ rule, check, part, inside, outside, value, limit, hint }) => {
    expect(check(own, heron.build)).toEqual([]);
    expect(check(own, moving(part, inside))).toEqual([]);
    const [told, ...more] = check(own, moving(part, outside));
    expect(more).toEqual([]);
    expect(told).toMatchObject({ rule, level: 'error', limit, unit: 'mm', hint: expect.stringMatching(hint) });
    expect(told?.value).toBeCloseTo(value, 6);
  });
});

describe('racking: a sole of 135 pushed at the edge of the standard', () => {
  // jams at L = 2 μ e, e half the width: 135/(0.35 x B) [verified: R34, the formula]
  const wide = (side: number) => racking({ ...own, side, friction: 0.35 });
  test('385.7 wide', () => expect(wide(385.7)).toEqual([]));
  test.each([
    { side: 386, level: 'warning', limit: 1, value: 0.9993 },
    { side: 482, level: 'warning', limit: 1, value: 0.8002 },
    { side: 482.5, level: 'error', limit: 0.8, value: 0.7994 },
  ])('$side wide: $level', ({ side, level, limit, value }) => {
    const [told] = wide(side);
    expect(told).toMatchObject({
      rule: 'racking',
      level,
      limit,
      about: 'workshop.friction',
      hint: expect.stringMatching(/^Wax/),
    });
    expect(told?.value).toBeCloseTo(value, 4);
  });
});

describe('button-clears', () => {
  // pivot 9 from both edges, corners clipped 30: the clipped edge is 12/√2 = 8.485 from the pivot
  test('the arm lies 8 over the back', () => {
    const arm = (length: number) => buttonClears({ ...own, button: { ...own.button, arm: length } }, heron.build);
    expect(arm(16.49)).toEqual([]);
    expect(arm(16.48)).toMatchObject([
      { rule: 'button-clears', level: 'error', limit: 8, hint: expect.stringMatching(/longer/) },
    ]);
  });
  test('open, it is 0.5 off the back', () => {
    const wide = (width: number) => buttonClears({ ...own, button: { ...own.button, width } }, heron.build);
    expect(wide(15.96)).toEqual([]);
    expect(wide(15.98)).toMatchObject([
      { level: 'error', limit: 0.5, hint: expect.stringMatching(/[Cc]lip the corners/) },
    ]);
  });
  test('the arm passes the long fence by 0.5', () => {
    // 116.125 − 9 − 25/√2 − (78 + 0.4 + 10) = 1.047
    expect(buttonClears(own, moving('B3', { x: 0.54 }))).toEqual([]);
    const [told] = buttonClears(own, moving('B3', { x: 0.56 }));
    expect(told).toMatchObject({
      level: 'error',
      limit: 0.5,
      about: 'holders',
      hint: expect.stringMatching(/narrower/),
    });
    expect(told?.value).toBeCloseTo(0.487, 3);
  });
  test('its screw is flush with the standard', () => {
    expect(buttonClears(own, moving('button-screw', { z: 0.01 }))).toEqual([]);
    expect(buttonClears(own, moving('button-screw', { z: -0.01 }))).toMatchObject([
      { level: 'error', limit: 0, hint: expect.stringMatching(/[Cc]ountersink/) },
    ]);
  });
});

describe('nut-edge: two diameters where a screw carries load (section 14)', () => {
  const { bolt, front } = own;
  test('the lock bolt: 12 to the sole’s rear edge', () => {
    expect(nutEdge({ ...own, soleRear: bolt + 12 })).toEqual([]);
    expect(nutEdge({ ...own, soleRear: bolt + 11.9 })).toMatchObject([
      { rule: 'nut-edge', level: 'error', limit: 12, unit: 'mm', hint: expect.stringMatching(/sheet of 11 mm/) },
    ]);
  });
  test('its head: 3 to the tenons', () => {
    // tenons of 4.05, head 16.5/2
    expect(nutEdge({ ...own, bolt: front + 15.31 })).toEqual([]);
    expect(nutEdge({ ...own, bolt: front + 15.29 })).toMatchObject([
      { level: 'error', limit: 3, hint: expect.stringMatching(/thinner/) },
    ]);
  });
  test('a button’s screw: 5 to every edge', () => {
    expect(nutEdge({ ...own, button: { ...own.button, pivot: 5 } })).toEqual([]);
    expect(nutEdge({ ...own, button: { ...own.button, pivot: 4.9 } })).toMatchObject([
      { level: 'error', limit: 5, hint: expect.stringMatching(/5 mm/) },
    ]);
  });
});
