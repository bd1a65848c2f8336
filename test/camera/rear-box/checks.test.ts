import { describe, expect, test } from 'vitest';
import { boxClearance, damp, feltCrossing, feltGap, rearFingers, shelf } from '../../../src/camera/rear-box/checks.js';
import { boxAt, rectangle } from '../../../src/geometry/shapes.js';
import { bought, cutTo } from '../altered.js';
import { heron, moving, regrouped } from '../worked.js';

/** Limits: camera.md section 16, common practice, no source. Heron's boxes have 1.5 a side between them (section 2). */
const { rearBox } = heron.camera.objects;

/** Heron with this much air on one side: a wall of the front box stands elsewhere. */
const SIDES = {
  'on the right': (air: number) => moving('F2R', { x: air - 1.5 }),
  'on the left': (air: number) => moving('F2L', { x: 1.5 - air }),
  above: (air: number) => moving('F3', { y: air - 1.5 }),
  below: (air: number) => moving('F4', { y: 1.5 - air }),
} as const;
const sides = Object.entries(SIDES);

describe('box-clearance: 1.0 to 2.5, never below 0.5, on all four sides', () => {
  test.each(sides.flatMap(([where, airOf]) => [1, 1.5, 2.5].map((air) => ({ where, airOf, air }))))(
    '$air mm $where',
    ({ airOf, air }) => expect(boxClearance(rearBox, airOf(air))).toEqual([]),
  );
  test.each(
    sides.flatMap(([where, airOf]) =>
      [
        { air: 0.49, level: 'error', limit: 0.5, words: /they jam on the first damp day/ },
        { air: 0.5, level: 'warning', limit: 1, words: /they may scrape/ },
        { air: 0.99, level: 'warning', limit: 1, words: /they may scrape/ },
        { air: 2.51, level: 'warning', limit: 2.5, words: /light gets in/ },
      ].map((row) => ({ ...row, where, airOf })),
    ),
  )('$air mm $where: $level', ({ where, airOf, air, level, limit, words }) => {
    const [told, ...more] = boxClearance(rearBox, airOf(air));
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      rule: 'box-clearance',
      level,
      limit,
      unit: 'mm',
      about: 'workshop.slideClearance',
      message: expect.stringMatching(words),
      hint: expect.stringMatching(/slideClearance: 1\.5 mm/),
    });
    expect(told?.value).toBeCloseTo(air, 9);
    expect(told?.message).toContain(`The boxes have ${air} mm ${where} between them`);
  });
});

describe('felt-gap', () => {
  // 1.3 × 1.5 in half millimetres is 2 (section 14): it suits gaps of 1.11 to 1.67
  test.each([1.12, 1.5, 1.66])('felt of 2 in a gap of %d', (air) =>
    expect(feltGap(rearBox, SIDES.above(air))).toEqual([]),
  );
  test.each([
    {
      air: 1.67,
      limit: 1.2,
      value: 1.1976,
      message: 'Felt of 2 mm in a gap of 1.67 mm is 1.2 times as thick: it leaks.',
    },
    {
      air: 1.11,
      limit: 1.8,
      value: 1.8018,
      message: 'Felt of 2 mm in a gap of 1.11 mm is 1.8 times as thick: it drags.',
    },
  ])('felt of 2 in a gap of $air', ({ air, limit, value, message }) => {
    const [told] = feltGap(rearBox, SIDES.above(air));
    expect(told).toMatchObject({
      rule: 'felt-gap',
      level: 'warning',
      limit,
      about: 'workshop.slideClearance',
      message,
      hint: 'Felt of 2 mm suits a slideClearance of 1.4 mm.',
    });
    expect(told?.value).toBeCloseTo(value, 4);
  });

  test('two bands stand one behind the other', () => {
    // 1 behind the front edge, and 1 before the overlap of 39.25 ends (sections 7, 17): 39.25 - 2 for two bands
    const wide = (width: number) =>
      feltGap(rearBox, bought(heron.build, 'felt-long', { outline: rectangle(boxAt(0, 0, rearBox.outside, width)) }));
    expect(wide(22.2)).toEqual([]);
    const [told, ...more] = wide(22.3);
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      rule: 'felt-gap',
      level: 'warning',
      limit: 0,
      about: 'focus.nearest',
      message: expect.stringMatching(/^Two felt bands of 22\.3 mm do not fit/),
      hint: 'Cut the bands 22 mm wide.',
    });
    expect(told?.value).toBeCloseTo(-0.05, 6);
  });
});

test('felt-crossing: a band on the front box has to be passed by the one on the rear box', () => {
  expect(feltCrossing(rearBox, heron.build)).toEqual([]);
  expect(feltCrossing(rearBox, regrouped('felt-side', 'front'))).toMatchObject([
    { rule: 'felt-crossing', level: 'error', value: 2, limit: 1, hint: expect.stringMatching(/rear box/) },
  ]);
});

test('damp: told below 1.2 on any side', () => {
  expect(damp(rearBox, SIDES.below(1.2))).toEqual([]);
  expect(damp(rearBox, SIDES.below(1.19))).toMatchObject([{ rule: 'damp', level: 'note', limit: 1.2 }]);
});

describe('finger-rule: both edges of the rear box are looked at', () => {
  test('as it is made', () => expect(rearFingers(rearBox, heron.build)).toEqual([]));

  test('a long edge of the side', () => {
    // the first finger of the side on its upper edge, 2 t = 8.1: section 14, common practice, no source
    const cut = (width: number) =>
      cutTo(heron.build, 'R1L', ({ outline }) => {
        const top = Math.max(...outline.map(({ y }) => y));
        const front = Math.max(...outline.map(({ x }) => x));
        const ends = [...new Set(outline.filter(({ y }) => y > top - 5).map(({ x }) => x))].sort((a, b) => b - a);
        const second = ends[1] ?? 0;
        return {
          outline: outline.map((v) =>
            v.y > top - 5 && Math.abs(v.x - second) < 1e-4 ? { ...v, x: front - width } : v,
          ),
        };
      });
    expect(rearFingers(rearBox, cut(8.11))).toEqual([]);
    expect(rearFingers(rearBox, cut(8.05))).toMatchObject([
      {
        rule: 'finger-rule',
        level: 'error',
        message: expect.stringMatching(/^Rear box, long: \d+ fingers of 8\.05 mm/),
      },
    ]);
  });

  test('the notches in the opening of the standard', () => {
    const filled = cutTo(heron.build, 'R3', ({ holes: [opening = [], ...others] }) => {
      const top = Math.max(...opening.map(({ y }) => y));
      // one notch of the upper edge is left uncut
      const notch = opening
        .filter(({ y }) => Math.abs(y - top) < 1e-6)
        .map(({ x }) => x)
        .sort((a, b) => a - b);
      const [from = 0, to = 0] = notch;
      const inNotch = (x: number) => x > from - 1e-6 && x < to + 1e-6;
      return { holes: [opening.filter(({ x, y }) => !(y > top - 5 && inNotch(x))), ...others] };
    });
    expect(rearFingers(rearBox, filled)).toMatchObject([
      { unit: 'fingers', message: expect.stringMatching(/^Rear box, standard: .* do not hold\.$/) },
    ]);
  });
});

test('shelf: whoever has felt is told where its care is written', () => {
  expect(shelf(rearBox, heron.build)).toMatchObject([{ rule: 'shelf', level: 'note' }]);
  const parts = heron.build.parts.filter(({ id }) => !id.startsWith('felt'));
  expect(shelf(rearBox, { ...heron.build, parts })).toEqual([]);
});
