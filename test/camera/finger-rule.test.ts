import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { fingerRule } from '../../src/camera/finger-rule.js';
import { box, stepped } from '../../src/geometry/shapes.js';
import { type FingerRow, ownerNotches, partnerFingers } from '../../src/joinery/finger-joint.js';
import { plate } from '../../src/joinery/plate.js';

const FIT = 0.1;

/** Two plates that meet along y, cut to these rows of fingers. */
function corner(ply: number, owner: FingerRow, partner: FingerRow): Build {
  const common = {
    ply: { material: 'ply', thickness: ply, density: 680 },
    group: 'front',
    grain: 'any',
  } as const;
  const panel = plate({
    ...common,
    id: 'P',
    name: 'panel',
    facing: 'rear',
    low: -ply,
    outline: stepped(box(-50, 0, 0, owner.to), { right: ownerNotches(owner, ply) }),
  });
  const side = plate({
    ...common,
    id: 'Q',
    name: 'side',
    facing: 'left',
    low: -ply,
    outline: stepped(box(0, 0, 60, owner.to), { left: partnerFingers(partner, ply, FIT) }),
  });
  return {
    parts: [panel, side],
    stations: [],
    setups: [],
    gate: { z: 0, width: 0, height: 0 },
    opening: { z: 0, diameter: 0 },
  };
}

const row = (length: number, count: number): FingerRow => ({ from: 0, to: length, count, width: length / count });
const look = (length: number, build: Build) =>
  fingerRule('Box', [{ name: 'panel to side', owner: 'P', partner: 'Q', along: 'y', from: 0, to: length }], FIT, build);

/** Width 2t to 5t and at least 8 mm, an odd number of three or more: camera.md section 14, common practice, no source. */
describe('fingers read off the plates', () => {
  test.each([
    // t 4: at least 8; t 6: 12 to 30
    { length: 24, count: 3, ply: 4, told: [] },
    { length: 23.9, count: 3, ply: 4, told: [{ limit: 8, hint: /24 mm or more/ }] },
    { length: 36, count: 3, ply: 6, told: [] },
    { length: 35.9, count: 3, ply: 6, told: [{ limit: 12, hint: /5\.9 mm or less/ }] },
    { length: 90, count: 3, ply: 6, told: [] },
    { length: 90.3, count: 3, ply: 6, told: [{ limit: 30, hint: /6\.1 mm or more/ }] },
    { length: 40, count: 4, ply: 4, told: [{ limit: 3, hint: /./ }] },
    { length: 15, count: 1, ply: 4, told: [{ limit: 3, hint: /./ }] },
  ])('$count fingers on $length mm of $ply mm sheet', ({ length, count, ply, told }) =>
    expect(look(length, corner(ply, row(length, count), row(length, count)))).toMatchObject(
      told.map(({ limit, hint }) => ({
        rule: 'finger-rule',
        level: 'error',
        limit,
        about: 'plywood.thickness',
        message: expect.stringMatching(/^Box, panel to side: /),
        hint: expect.stringMatching(hint),
      })),
    ),
  );

  test('one finger of the partner that was cut too narrow, all others as they should be', () => {
    const cut = (width: number) => {
      const partner = { from: 10, to: 10 + 3 * width, count: 3, width };
      return look(60, corner(4, row(60, 3), partner));
    };
    expect(cut(8)).toEqual([]);
    const [told] = cut(7.95);
    expect(told).toMatchObject({ message: 'Box, panel to side: 3 fingers of 7.95 mm on 60 mm crumble.', limit: 8 });
    expect(told?.value).toBeCloseTo(7.95, 6);
  });

  test.each([
    { owner: 5, partner: 3, count: 4 },
    { owner: 3, partner: 7, count: 5 },
  ])('a partner cut for $partner fingers where the owner is cut for $owner', ({ owner, partner, count }) =>
    expect(look(60, corner(4, row(60, owner), row(60, partner)))).toMatchObject([
      { unit: 'fingers', value: count, limit: owner, message: expect.stringMatching(/do not hold\.$/) },
    ]),
  );

  test('a box that does not close has no edge to look at', () =>
    expect(look(-5, corner(4, row(60, 3), row(60, 3)))).toEqual([]));
});
