import { describe, expect, test } from 'vitest';
import { frostedSide, glassPacking } from '../../../src/camera/ground-glass-frame/checks.js';
import { planCamera } from '../../../src/pipeline.js';
import { changed, designOf } from '../../design/reading.js';
import { heron as heronText } from '../../design/worked-designs.js';
import { heron } from '../worked.js';

/** Limits: camera.md section 16, common practice, no source. */
const { groundGlassFrame } = heron.camera.objects;
const withGlass = (keys: string) => changed(heronText, '{ thickness: 2 mm, depth: 5.8 mm, frosted: lens }', keys);
const frameOf = (keys: string) => planCamera(designOf(withGlass(keys))).camera.objects.groundGlassFrame;

describe('glass-packing: behind one ply of 4.05', () => {
  test('as deep as the ply', () => expect(glassPacking(frameOf('{ depth: 4.05 mm }'))).toEqual([]));
  test('shallower', () => {
    const [told] = glassPacking(frameOf('{ depth: 4.04 mm }'));
    expect(told).toMatchObject({
      rule: 'glass-packing',
      level: 'error',
      limit: 0,
      unit: 'mm',
      about: 'groundGlass.depth',
    });
    expect(told?.value).toBeCloseTo(-0.01, 9);
    expect(told?.hint).toMatch(/depth: 4\.05 mm/);
  });
  test('with the frosted side to the eye the glass itself comes before it: 6.05', () => {
    expect(glassPacking(frameOf('{ thickness: 2 mm, depth: 6.05 mm, frosted: eye }'))).toEqual([]);
    expect(glassPacking(frameOf('{ thickness: 2 mm, depth: 6 mm, frosted: eye }'))).toMatchObject([
      { level: 'error', hint: expect.stringMatching(/depth: 6\.05 mm/) },
    ]);
  });
  test('what plies and shims leave: half the tolerance, 0.110', () => {
    const left = (remainder: number) =>
      glassPacking({ ...groundGlassFrame, packing: { ...groundGlassFrame.packing, remainder } });
    expect([...left(0.11), ...left(-0.11)]).toEqual([]);
    expect(left(-0.111)).toMatchObject([
      {
        rule: 'glass-packing',
        level: 'error',
        value: 0.111,
        about: 'shims',
        hint: expect.stringMatching(/shim of 0\.1 mm/),
      },
    ]);
  });
  test('spacer-shims: four do not slide about, five do', () => {
    const packed = (count: number) =>
      glassPacking({
        ...groundGlassFrame,
        packing: { ...groundGlassFrame.packing, shims: Array.from({ length: count }, () => 0.5) },
      });
    expect(packed(4)).toEqual([]);
    expect(packed(5)).toMatchObject([
      { rule: 'spacer-shims', level: 'warning', value: 5, limit: 4, hint: expect.stringMatching(/near 2\.5 mm/) },
    ]);
  });
});

describe('frosted-side: glass of 0.060 in put in the wrong way round is 1.016 mm out', () => {
  // M1.20 and M1.21: frosted side to the eye the camera works at 0.190 in = 4.826, frosted side to the lens at
  // 0.150 in = 3.810, glass of n = 1.5 [verified: R4 data, the poster's puzzle; resolution computed]
  test.each([
    {
      keys: '{ thickness: 0.060 in, depth: 0.210 in, frosted: eye, refractiveIndex: 1.5 }',
      works: 4.826,
      turned: 3.81,
    },
    {
      keys: '{ thickness: 0.060 in, depth: 0.150 in, frosted: lens, refractiveIndex: 1.5 }',
      works: 3.81,
      turned: 4.826,
    },
  ])('$keys', ({ keys, works, turned }) => {
    const [told] = frostedSide(frameOf(keys));
    expect(told).toMatchObject({ rule: 'frosted-side', level: 'note', about: 'groundGlass.frosted' });
    expect(told?.value).toBeCloseTo(1.016, 3);
    expect(told?.message).toContain(`${works} mm`);
    expect(told?.message).toContain(`${turned} mm`);
  });
  test('Heron: 1.3158 of 0.22, six times the tolerance', () =>
    // 2/1.52
    expect(frostedSide(groundGlassFrame)[0]?.message).toMatch(/1\.316 mm out of focus, 6 times/));
});
