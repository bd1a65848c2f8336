import { describe, expect, test } from 'vitest';
import type { Build } from '../../../src/assembly/build.js';
import { maskChecks } from '../../../src/camera/masks/checks.js';
import { movePart, thicken, toldUnder, widenHole } from '../../planted.js';
import { heronWith } from '../asked-for.js';

/** Limits: choices of ours and common practice; the soft edge: similar triangles from the rims of the exit pupil. */

const { camera, build } = heronWith('masks: [{ name: square, image: [110 mm, 110 mm], corners: 5 mm }]');
const own = camera.objects.masks;
if (own === undefined) throw new Error('Heron was asked for a mask');
const told = (changed: Build, rule: string) =>
  maskChecks.flatMap((check) => check(own, changed)).filter((finding) => finding.rule === rule);

describe('mask-held: 0.1 to 0.5 below the seat, 0.8 of ledge at two sides', () => {
  test('as drawn', () => expect(told(build, 'mask-held')).toEqual([]));
  test('a ledge too near to the seat lets the mask stand proud', () => {
    expect(told(movePart(build, 'B6', { z: 0.09 }), 'mask-held')).toEqual([]);
    expect(told(movePart(build, 'B6', { z: 0.11 }), 'mask-held')).toMatchObject([
      { level: 'error', limit: 0.1, message: expect.stringMatching(/stands proud, and the holder rocks/) },
    ]);
  });
  test('one too far lets it fall against the film', () => {
    expect(told(movePart(build, 'B6', { z: -0.29 }), 'mask-held')).toEqual([]);
    expect(told(movePart(build, 'B6', { z: -0.31 }), 'mask-held')).toMatchObject([
      { limit: 0.5, message: expect.stringMatching(/falls against the film/) },
    ]);
  });
  test('from thicker sheet than the back it stands proud too', () =>
    expect(told(thicken(build, 'MK1', 4.3), 'mask-held')).not.toEqual([]));
  test('a ledge with a wider opening lets it through', () => {
    // 1.57 at the short ends, play taken off: 87.5 − 85.73 − 0.2
    expect(told(widenHole(build, 'B6', 0.7), 'mask-held')).toEqual([]);
    expect(told(widenHole(build, 'B6', 0.8), 'mask-held')).toMatchObject([
      { limit: 0.8, message: expect.stringMatching(/falls through into the box/) },
    ]);
  });
});

describe('mask-edge', () => {
  test('tells how soft the border is, and what the picture measures', () => {
    // 6 mm ahead of the film, pupil 210/6.3 wide and 210 from it: 6 × 33.333/204 = 0.980; at f/22 0.281
    const [note, ...more] = told(build, 'mask-edge');
    expect(more).toEqual([]);
    expect(note?.level).toBe('note');
    expect(note?.value).toBeCloseTo((6 * (210 / 6.3)) / 204, 6);
    expect(note?.message).toMatch(/soft over 1 mm at f\/6\.3 and 0\.3 mm at f\/22, 6 mm ahead of the film/);
    // at 1:2.5 the pupil is 210 × 1.4 from the film: 106.857/(1 − 6/294) = 109.08
    expect(note?.message).toMatch(/110 mm wide at the farthest focus and 109\.1 mm at the nearest/);
  });
  test('is measured: a mask farther from the film is softer', () =>
    expect(told(movePart(build, 'B6', { z: -0.2 }), 'mask-edge')[0]?.value).toBeGreaterThan(
      told(build, 'mask-edge')[0]?.value ?? 0,
    ));
});

test('cone-clear looks at the ledge', () => {
  expect(toldUnder('cone-clear', build)).toEqual([]);
  expect(toldUnder('cone-clear', widenHole(build, 'B6', -2))).toMatchObject([
    { message: expect.stringMatching(/ledge for masks/) },
  ]);
});
