import { describe, expect, test } from 'vitest';
import {
  backClearsSole,
  buttonClears,
  racking,
  ribUnderFloor,
  soleMeetsFront,
  standardOverRails,
} from '../../../src/camera/rear-standard/checks.js';
import { box, boxAt, rectangle } from '../../../src/geometry/shapes.js';
import { planCamera } from '../../../src/pipeline.js';
import { changed, designOf } from '../../design/reading.js';
import { heron as heronText } from '../../design/worked-designs.js';
import { movePart } from '../../planted.js';
import { cutTo } from '../altered.js';
import { heron, moving, recut } from '../worked.js';

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
      hint: /^Take 0\.1 mm off pastInfinity; or give up what lies beyond 1:/,
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
      hint: /larger/,
    },
    // the notch begins 9 inside the sole's edge, the keeper lies 8 over the sole, 0.25 off it (section 8): 1.25
    {
      rule: 'standard-over-rails',
      check: standardOverRails,
      part: 'T3S',
      inside: { x: -0.44 },
      outside: { x: -0.46 },
      value: 0.79,
      limit: 0.8,
      hint: /larger/,
    },
    // 138.775 − 8.1 − 4.05 − 0.3 − 116.125 = 10.2
    {
      rule: 'back-clears-sole',
      check: backClearsSole,
      part: 'T3S',
      inside: { y: 8.19 },
      outside: { y: 8.21 },
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
  ])('$rule: $part', ({ rule, check, part, inside, outside, value, limit, hint }) => {
    expect(check(own, heron.build)).toEqual([]);
    expect(check(own, moving(part, inside))).toEqual([]);
    const [told, ...more] = check(own, moving(part, outside));
    expect(more).toEqual([]);
    expect(told).toMatchObject({ rule, level: 'error', limit, unit: 'mm', hint: expect.stringMatching(hint) });
    expect(told?.value).toBeCloseTo(value, 6);
  });

  test('a standard that was cut without its notch stands in its keepers', () => {
    const [told] = standardOverRails(own, recut('R3', rectangle(boxAt(0, -11, 232, 255))));
    expect(told?.value).toBeLessThan(0);
  });

  test.each([
    { side: 'right', build: (more: number) => moving('B3', { x: more }) },
    { side: 'left', build: (more: number) => moving('B3', { x: -more }) },
    { side: 'lower', build: (more: number) => moving('B3', { y: -more }) },
  ])('back-clears-sole: what hangs over its $side edge comes down in one of its turns', ({ build }) => {
    // fences that stand out of the square of 116.125 by 8.2 when they are 124.325 from the axis
    expect(backClearsSole(own, build(5))).toEqual([]);
    expect(backClearsSole(own, build(40))).toMatchObject([
      { rule: 'back-clears-sole', level: 'error', message: expect.stringMatching(/it will not turn, or sits on them/) },
    ]);
  });
});

describe('sole-meets-front names a cure that cures', () => {
  // a lens whose flange distance is short for the sole: 110 + 40 − 24 − 8.1 − 90 leaves it in the panel's foot
  const short = changed(heronText, 'flangeDistance: 203.5 mm', 'flangeDistance: 118 mm');
  const toldOf = (text: string) =>
    planCamera(designOf(text)).findings.filter(({ rule }) => rule === 'sole-meets-front');

  test('by a nearer farthest', () => {
    const [told] = toldOf(short);
    const farthest = /beyond (1:[\d.]+): write it as farthest/.exec(told?.hint ?? '')?.[1];
    expect(farthest).toBeDefined();
    expect(toldOf(changed(short, 'nearest: 1:2.5,', `nearest: 1:2.5, farthest: ${farthest},`))).toEqual([]);
  });

  test('by pastInfinity only where there is as much of it', () => {
    const [told] = toldOf(short);
    expect((told?.limit ?? 0) - (told?.value ?? 0)).toBeGreaterThan(4);
    expect(told?.hint).not.toMatch(/pastInfinity/);
  });

  test('by mounting from inside only where the lens seats in front', () => {
    expect(toldOf(short)[0]?.hint).not.toMatch(/from inside/);
    const front = changed(changed(heronText, 'side: inside', 'side: front'), '203.5 mm', '150 mm');
    expect(toldOf(front)[0]?.hint).toMatch(/mount the lens from inside/);
  });
});

describe('racking: a sole of 135 pushed at the edge of the standard', () => {
  // jams at L = 2 μ e, e half the width: 135/(0.35 x B) [verified: R34, the formula]
  const wide = (side: number) => racking({ ...own, friction: 0.35 }, recut('R3', rectangle(boxAt(0, 0, side, 255))));
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
      message: expect.stringMatching(/135 mm of the sole lie between the rails/),
      hint: expect.stringMatching(/^Wax/),
    });
    expect(told?.value).toBeCloseTo(value, 4);
  });

  test('what never runs between the rails is no question of wax', () => {
    const [told] = racking({ ...own, friction: 0.35 }, moving('T2', { z: 1000 }));
    expect(told?.message).toContain(': 0 mm of the sole lie between the rails');
    expect(told?.hint).toMatch(/^No wax .* pastInfinity/);
  });

  test('what runs out of the rails does not guide', () => {
    // 232.25 wide, 0.35: it takes 81.3 of sole; rails from 0 leave the whole of it at the closest, where it begins at 77.4
    const rails = (z: number) => racking({ ...own, friction: 0.35 }, moving('T2', { z }));
    expect(rails(77.4 + 135 - 81.4)).toEqual([]);
    expect(rails(77.4 + 135 - 81.2)).toMatchObject([{ rule: 'racking', level: 'warning', limit: 1 }]);
    // at full draw it begins at 183.6, and rails of 329.1 (section 17: a tailboard of 359.1, less 20 and the end stop)
    expect(rails(183.6 + 81.4 - 329.1)).toEqual([]);
    expect(rails(183.6 + 81.2 - 329.1)).toHaveLength(1);
  });
});

describe('button-clears', () => {
  /** A turn-button in its own frame, the pivot as origin. */
  const button = (arm: number, width = 12) =>
    buttonClears(own, recut('R6', rectangle(box(-8, -width / 2, arm, width / 2))));

  // pivot 9 from both edges, corners clipped 30: the clipped edge is 12/√2 = 8.485 from the pivot
  test('the arm lies 8 over the back', () => {
    expect(button(16.49)).toEqual([]);
    expect(button(16.48)).toMatchObject([
      {
        rule: 'button-clears',
        level: 'error',
        limit: 8,
        message: 'A turn-button lies 8 mm over the back: it slips off, and the back falls.',
        hint: expect.stringMatching(/longer/),
      },
    ]);
  });
  test('open, it is 0.5 off the back', () => {
    expect(button(16.5, 15.96)).toEqual([]);
    expect(button(16.5, 15.98)).toMatchObject([
      { level: 'error', limit: 0.5, hint: expect.stringMatching(/[Cc]lip the corners/) },
    ]);
  });
  test('a back whose corners are clipped less than it was drawn is held, and not let go', () => {
    // at 45° to both edges: a clip of 27.2 leaves (27.2 − 18)/√2 = 6.505 from the pivot, 6 of them the button's
    const clip = (cut: number) =>
      cutTo(heron.build, 'B1', () => {
        const half = 116.125;
        const corner = (x: number, y: number) => ({ x, y, bulge: 0 });
        return {
          outline: [
            corner(-half + cut, -half),
            corner(half - cut, -half),
            corner(half, -half + cut),
            corner(half, half - cut),
            corner(half - cut, half),
            corner(-half + cut, half),
            corner(-half, half - cut),
            corner(-half, -half + cut),
          ],
        };
      });
    expect(buttonClears(own, clip(27.2))).toEqual([]);
    expect(buttonClears(own, clip(27.1))).toMatchObject([{ level: 'error', limit: 0.5 }]);
  });
  test('where a wide tongue begins on the clipped corner, a button opens to the other side', () => {
    // a step that reaches to the corner's clip from below, under the button when it opens that way alone
    const stepped = (...more: readonly (readonly [number, number])[]) =>
      cutTo(heron.build, 'B1', () => ({
        outline: [
          [-86.125, -116.125],
          [86.125, -116.125],
          [116.125, -86.125],
          ...more,
          [-86.125, 116.125],
          [-116.125, 86.125],
          [-116.125, -86.125],
        ].map(([x = 0, y = 0]) => ({ x, y, bulge: 0 })),
      }));
    const tongueUp = [
      [116.125, 86.125],
      [96, 106.25],
      [96, 130],
      [-86.125, 130],
    ] as const;
    expect(buttonClears(own, stepped(...tongueUp))).toEqual([]);
    const tongueBoth = [
      [130, 96],
      [106.25, 96],
      [96, 106.25],
      [96, 130],
      [-86.125, 130],
    ] as const;
    expect(buttonClears(own, stepped([130, -86.125], ...tongueBoth)).map(({ limit }) => limit)).toContain(0.5);
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
  test('fences that lie behind the buttons are out of the way', () => {
    const behind = ['B3', 'B4', 'fence-open'].reduce((build, id) => movePart(build, id, { z: 50 }), heron.build);
    expect(buttonClears(own, behind)).toEqual([]);
  });
  test('its screw is flush with the standard', () => {
    expect(buttonClears(own, moving('button-screw', { z: 0.01 }))).toEqual([]);
    expect(buttonClears(own, moving('button-screw', { z: -0.01 }))).toMatchObject([
      { level: 'error', limit: 0, hint: expect.stringMatching(/[Cc]ountersink/) },
    ]);
  });
});
