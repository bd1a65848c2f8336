import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/design.js';
import { alterPart, fillHoles, heron, movePart, rulesTelling, toldUnder, widenHole } from '../planted.js';

/** Limits: the table of rules in camera.md section 16, common practice, no source; the bundle: its section 6, similar triangles. */

const { build, design } = heron;

describe('cone-clear: 2 mm round the light from a rim of 26 at z 53 to the edge of the film', () => {
  /*
   * Tightest at the rear face of the back plate, at the farthest seat with the shallow holder: seat 281.7, film 287.5,
   * half the short side 60.3, half the opening 62.3. 26 + 34.3 x 228.7/234.5 = 59.4516 leaves 2.8484.
   */
  const narrowed = (by: number) => widenHole(build, 'B1', -by);
  test('an opening 0.84 narrower passes, 0.86 narrower is warned of', () => {
    expect(rulesTelling(narrowed(0.84))).toEqual([]);
    const [told, ...more] = toldUnder('cone-clear', narrowed(0.86));
    expect(more).toEqual([]);
    expect(told).toMatchObject({ level: 'warning', limit: 2, unit: 'mm', about: 'lens.barrel.rearDiameter' });
    expect(told?.value).toBeCloseTo(2.8484 - 0.86, 4);
    expect(told?.message).toMatch(/back plate leaves the light .* 2 mm with paper holder/);
    expect(told?.hint).toMatch(/opening of the back plate 2 mm larger/);
    expect(rulesTelling(narrowed(0.86))).toEqual(['cone-clear']);
  });
  test('2.86 narrower cuts the picture', () => {
    expect(toldUnder('cone-clear', narrowed(2.84))).toMatchObject([{ level: 'warning' }]);
    expect(toldUnder('cone-clear', narrowed(2.86))).toMatchObject([
      { level: 'error', limit: 0, message: expect.stringMatching(/^Straight dark edges: with paper holder/) },
    ]);
  });
  test('a back plate out of the middle', () => {
    expect(rulesTelling(movePart(build, 'B1', { x: 0.84 }))).toEqual([]);
    expect(rulesTelling(movePart(build, 'B1', { x: 0.86 }))).toEqual(['cone-clear']);
  });
  test('a ring without an opening lets nothing through', () => {
    const [told] = toldUnder('cone-clear', fillHoles(build, 'B2'));
    expect(told).toMatchObject({ level: 'error', message: expect.stringMatching(/turning ring/) });
  });
  test('a wall of the rear box in the light', () => {
    // half the long side is 85.7: the back turns, so it is what each wall must clear
    const told = toldUnder('cone-clear', movePart(build, 'R2F', { y: 30 }));
    expect(told).toMatchObject([{ level: 'error', message: expect.stringMatching(/rear box/) }]);
  });
});

describe('cone-clear: shims under a holder', () => {
  // they are bought, and Heron has its own under the glass: here they lie where the processing holder is used upright
  const under = alterPart(build, 'SP2-shim-500', (part) => ({
    ...part,
    placements: part.placements
      .filter(({ when }) => when?.some((name) => name.endsWith('upright')))
      .map((place) => ({ ...place, when: ['processing holder, upright'] })),
  }));
  test('with the opening of the back pass, with one smaller than the image cut the picture', () => {
    expect(toldUnder('cone-clear', under)).toEqual([]);
    const [told, ...more] = toldUnder('cone-clear', widenHole(under, 'SP2-shim-500', -6));
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      level: 'error',
      message: expect.stringMatching(/^Straight dark edges: with processing holder .* opening of the shim 0\.5 mm/),
    });
  });
});

describe('cone-clear: a lens wider behind than the image is what is wrong', () => {
  const rim = (radius: number): Design => ({
    ...design,
    lens: { ...design.lens, barrel: { ...design.lens.barrel, rearDiameter: 2 * radius } },
  });
  test('as wide as the image: 2 mm are left everywhere', () =>
    expect(toldUnder('cone-clear', build, rim(60.29))).toEqual([]));
  test('a little wider: the warning', () => {
    const [told] = toldUnder('cone-clear', build, rim(60.5));
    expect(told).toMatchObject({
      level: 'warning',
      limit: 2,
      unit: 'mm',
      hint: expect.stringMatching(/narrower behind/),
    });
    expect(told?.value).toBeLessThan(2);
  });
  test('dark edges where the light is wider than the turning ring', () => {
    // closest, deepest holder: ring at 167.4, film at 199.5, rim at 53: share s = 114.4/146.5 of the way;
    // 62.3 − (R + (60.3 − R) s) = 0 at R = 69.43 (similar triangles)
    const s = 114.4 / 146.5;
    expect(toldUnder('cone-clear', build, rim(69.3))).toMatchObject([{ level: 'warning' }]);
    const [told] = toldUnder('cone-clear', build, rim(72));
    expect(told).toMatchObject({ level: 'error', limit: 0 });
    expect(told?.value).toBeCloseTo(62.3 - (72 + (60.3 - 72) * s), 6);
    expect(told?.message).toMatch(/processing holder.*turning ring/);
  });
});

describe('wall-flare: 6 mm from the image of 171.4 to a wall, of 94.075 − 85.7 = 8.375', () => {
  test.each([
    { wall: 'R1L', by: { x: 2.37 }, more: { x: 2.38 } },
    { wall: 'R1R', by: { x: -2.37 }, more: { x: -2.38 } },
    { wall: 'R2T', by: { y: -2.37 }, more: { y: -2.38 } },
    { wall: 'R2F', by: { y: 2.37 }, more: { y: 2.38 } },
  ])('$wall further in', ({ wall, by, more }) => {
    expect(rulesTelling(movePart(build, wall, by))).toEqual([]);
    const near = movePart(build, wall, more);
    const [told] = toldUnder('wall-flare', near);
    expect(told).toMatchObject({ level: 'warning', limit: 6, unit: 'mm', about: 'format.image' });
    expect(told?.value).toBeCloseTo(5.995, 6);
    expect(told?.message).toMatch(/light that glances off them veils the shadows/);
    expect(rulesTelling(near)).toEqual(['wall-flare']);
  });
});
