import { describe, expect, test } from 'vitest';
import { heron, movePart, rulesTelling, shiftPlacement, toldUnder } from '../planted.js';

/** Limits: the table of rules in camera.md section 16, common practice, no source, where nothing else is said. */

const { build, design } = heron;

describe('slide-path: as much free length as the slide is long', () => {
  /*
   * Upright the slide of the processing holder comes out upwards from 214 − 105.7 = 108.3 above the axis, 120.6 + 12 wide
   * and 1 thick from 4.05 behind the seat: at the closest place z 179.55 to 180.55. The holder is 214 long.
   */
  const upright = (place: { readonly when?: readonly string[] }) =>
    place.when?.some((name) => name.endsWith('upright')) ?? false;
  // a hook stands in front of the lane's side; its box begins half a ply under its middle
  const hookAt = (x: number, y: number) =>
    shiftPlacement(build, 'B5', { x, y }, (place, origin) => upright(place) && origin.x > 0 && origin.y > 0);

  test('a hook beside it is no hindrance', () => expect(rulesTelling(hookAt(0, 100))).toEqual([]));

  test('a hook in it is told, with how far the slide comes', () => {
    const told = toldUnder('slide-path', hookAt(-60, 100));
    expect(told).toMatchObject([
      { level: 'error', limit: 210, unit: 'mm', about: 'holders[0].slideDepth' },
      { level: 'error', limit: 214, about: 'holders[1].slideDepth' },
    ]);
    expect(told[1]?.message).toMatch(
      /^processing holder, upright: the dark slide can be drawn .* is 214 mm long; then it meets the cord hook\./,
    );
    expect(rulesTelling(hookAt(-60, 100))).toEqual(['slide-path']);
    // the hooks stand 0.22 of the back's side from the axis, or nearer where a cord would lie on a clip
    const lower = toldUnder('slide-path', hookAt(-60, 90))[1];
    expect((told[1]?.value ?? 0) - (lower?.value ?? 0)).toBeCloseTo(10, 9);
  });

  test('lengthwise it comes out to the left', () => {
    const aside = shiftPlacement(
      build,
      'B5',
      { x: -100, y: -60 },
      (place, { x, y }) => !upright(place) && x < 0 && y > 0,
    );
    expect(toldUnder('slide-path', aside).map(({ message }) => message)).toEqual([
      expect.stringMatching(/^paper holder, lengthwise/),
      expect.stringMatching(/^processing holder, lengthwise/),
    ]);
  });

  test('what stands in its way at the farthest place only is told too', () => {
    // the slide then runs at z 285.75 to 286.75; the end stop, 10 long, hung above the holder
    const stop = movePart(build, 'T5', { y: 270, z: -48 });
    const told = toldUnder('slide-path', stop);
    expect(told.map(({ message }) => message)).toEqual([
      expect.stringMatching(/^paper holder, upright: .* then it meets the end stop\./),
      expect.stringMatching(/^processing holder, upright/),
    ]);
  });

  test('a slide that runs above the fence passes it, one that runs into it does not', () => {
    const depth = (slideDepth: number) => ({ ...design, holders: design.holders.map((h) => ({ ...h, slideDepth })) });
    expect(toldUnder('slide-path', build, depth(2.5))).toEqual([]);
    expect(toldUnder('slide-path', build, depth(2.4))).toHaveLength(4);
  });
});

test('holder-clears: 3 mm over the keepers', () => {
  // upright the closed end of the processing holder hangs lowest: 85.7 + 20 = 105.7 below the axis; the keepers stand
  // 138.775 − 8.1 − 4.05 − 0.3 = 126.325 below it: 20.625
  const higher = (y: number) => movePart(build, 'T3', { y });
  expect(toldUnder('holder-clears', higher(17.62))).toEqual([]);
  const [told, ...more] = toldUnder('holder-clears', higher(17.63));
  expect(more).toEqual([]);
  expect(told).toMatchObject({
    level: 'error',
    limit: 3,
    unit: 'mm',
    about: 'holders[1].closedEnd',
    hint: expect.stringMatching(/closed end/),
  });
  expect(told?.value).toBeCloseTo(2.995, 6);
  expect(told?.message).toMatch(/processing holder hangs 3 mm above the keepers .* fouls the tailboard/);
  expect(toldUnder('holder-clears', movePart(build, 'T3S', { y: 17.63 }))).toHaveLength(1);
});
