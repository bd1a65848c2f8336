import { describe, expect, test } from 'vitest';
import { register, spacerHeld, spacerShims } from '../../../src/camera/spacer/checks.js';
import type { PlacedSpacer } from '../../../src/camera/spacer/size.js';
import { heron } from '../worked.js';

/** Limits: camera.md section 16, common practice, no source. Heron's spacer: 18.2 = 4 plies of 4.05 and 4 shims of 0.5. */
const [placed] = heron.camera.objects.spacers;
if (!placed) throw new Error('Heron has a spacer');
const made = (change: Partial<PlacedSpacer['spacer']['made']>): PlacedSpacer => ({
  ...placed,
  spacer: { ...placed.spacer, made: { ...placed.spacer.made, ...change } },
});

describe('register: 0.22006, a quarter of the depth of focus at infinity', () => {
  test.each([0.22, -0.22])('%d mm left', (remainder) => expect(register(made({ remainder }))).toEqual([]));
  test.each([
    { remainder: 0.221, message: /ahead of its place/ },
    { remainder: -0.221, message: /behind its place/ },
  ])('$remainder mm left', ({ remainder, message }) =>
    expect(register(made({ remainder }))).toMatchObject([
      {
        rule: 'register',
        level: 'error',
        value: remainder,
        unit: 'mm',
        about: 'shims',
        message: expect.stringMatching(message),
        hint: expect.stringMatching(/shim of 0\.2 mm/),
      },
    ]),
  );
});

test('spacer-shims: four, not five', () => {
  expect(spacerShims(made({ shims: [0.5, 0.5, 0.5, 0.5] }))).toEqual([]);
  expect(spacerShims(made({ shims: [0.5, 0.5, 0.5, 0.5, 0.5] }))).toMatchObject([
    {
      rule: 'spacer-shims',
      level: 'warning',
      value: 5,
      limit: 4,
      hint: expect.stringMatching(/near 2\.5 mm.*6\.6 mm|near 2\.5 mm.*6\.5 mm/),
    },
  ]);
});

test('spacer-held: thicker than the fence it needs a ply for pins', () => {
  const bare = (thickness: number): PlacedSpacer => {
    const own = made({ plies: [] });
    return { ...own, fence: 4.05, spacer: { ...own.spacer, thickness } };
  };
  expect(spacerHeld(placed)).toEqual([]);
  expect(spacerHeld(bare(4.05))).toEqual([]);
  expect(spacerHeld(bare(4.06))).toMatchObject([
    {
      rule: 'spacer-held',
      level: 'error',
      value: 4.06,
      limit: 4.05,
      about: 'stock',
      hint: expect.stringMatching(/sheet of 4\.05 mm or less/),
    },
  ]);
});
