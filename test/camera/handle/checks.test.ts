import { describe, expect, test } from 'vitest';
import type { Build } from '../../../src/assembly/build.js';
import { handleChecks, holdsOf } from '../../../src/camera/handle/checks.js';
import { movePart, thicken, weigh, widenHole } from '../../planted.js';
import { heronWith } from '../asked-for.js';

/** Limits: common practice, no source; strengths: standards/materials and wood-strength, from memory. */

const { camera, build } = heronWith('handle: true');
const own = camera.objects.handle;
if (own === undefined) throw new Error('Heron was asked for a handle');
const told = (changed: Build, rule: string) =>
  handleChecks.flatMap((check) => check(own, changed)).filter((finding) => finding.rule === rule);

test('as drawn nothing is wrong', () => expect(handleChecks.flatMap((check) => check(own, build))).toEqual([]));

describe('handle-room: 90 by 30 for a hand, the plate on the top', () => {
  const finger = { x: 0, y: 103.675 + 4.05 + 18 + 17, z: own.middle };
  test('a finger hole of 94 by 34 made narrower', () => {
    expect(told(widenHole(build, 'F13', -1.99, finger), 'handle-room')).toEqual([]);
    expect(told(widenHole(build, 'F13', -2.01, finger), 'handle-room')).toMatchObject([
      { level: 'error', message: expect.stringMatching(/leaves 90 mm by 30 mm for a hand/) },
    ]);
  });
  test('the plate pushed out over the rear edge', () => {
    const air = 165.4 - (own.middle + 71);
    expect(told(movePart(build, 'F11', { z: air - 0.01 }), 'handle-room')).toEqual([]);
    expect(told(movePart(build, 'F11', { z: air + 0.1 }), 'handle-room')).toMatchObject([
      { message: expect.stringMatching(/0\.1 mm out over the front box/) },
    ]);
  });
});

describe('handle-balance: 10 mm from the centre of gravity', () => {
  const off = own.middle - camera.balance.closest;
  const moved = (z: number) => movePart(build, 'F12', { z });
  test('moved ahead and behind', () => {
    expect(told(moved(-10 - off + 0.5), 'handle-balance')).toEqual([]);
    expect(told(moved(-10 - off - 0.5), 'handle-balance')).toMatchObject([
      {
        level: 'warning',
        limit: 10,
        message: expect.stringMatching(/ahead of the middle of the weight.*nods backwards/),
      },
    ]);
    expect(told(moved(10 - off + 0.5), 'handle-balance')).toMatchObject([
      { message: expect.stringMatching(/behind the middle of the weight.*nods forwards/) },
    ]);
  });
});

describe('handle-strength: three times the weight on the weakest of what it hangs from', () => {
  const holds = new Map(holdsOf(own, build).map(({ what, holdsN }) => [what, holdsN]));
  const of = (word: RegExp) => [...holds].find(([what]) => word.test(what))?.[1] ?? 0;
  test('by hand', () => {
    // washers of 9 beyond a slot of 4.48: 2 (20.25 acos(0.4978) − 2.24 √(20.25 − 5.0176)) = 25.03 each, at 6.7 N/mm²
    expect(of(/washers/)).toBeCloseTo(2 * 25.03 * 6.7, 0);
    // heads of 7.5 round a hole of 4.48: π/4 (56.25 − 20.07) = 28.42 each
    expect(of(/heads/)).toBeCloseTo(2 * 28.42 * 6.7, 0);
    // bar 20 high and 20.25 thick, 94 between the legs: W = 1350, f = 70 (1 − (1.4/4.05)³) = 67.1; 4 W f/94
    expect(of(/bar/)).toBeCloseTo((4 * 1350 * 67.11) / 94, -1);
    // top 142 wide, 4.05 thick: W = 388.2; from side to side 199.25, the plate 60 of it: 4 W f/139.25
    expect(of(/top, bent/)).toBeCloseTo((4 * 388.2 * 67.11) / 139.25, -1);
    // faces of 60 × 142 at 1 N/mm², a fifth of it
    expect(of(/glued faces/)).toBeCloseTo((60 * 142) / 5, 6);
  });
  test('a heavier camera comes down', () => {
    // the weakest are the washers' seats, 334.6 N: 11.37 kg
    expect(told(weigh(build, 'lens-barrel', 7), 'handle-strength')).toEqual([]);
    const [finding] = told(weigh(build, 'lens-barrel', 9), 'handle-strength');
    expect(finding).toMatchObject({
      level: 'error',
      unit: 'N',
      message: expect.stringMatching(/under the washers of its nuts hold 33\d N/),
    });
  });
  test('a top with its grain from front to rear, or thinner, holds less', () => {
    const turned: Build = {
      ...build,
      parts: build.parts.map((part) => (part.id === 'F3' && part.kind === 'flat' ? { ...part, grain: 'y' } : part)),
    };
    const top = (one: Build) => holdsOf(own, one).find(({ what }) => /top, bent/.test(what))?.holdsN ?? 0;
    expect(top(turned)).toBeLessThan(of(/top, bent/) / 8);
    expect(told(turned, 'handle-strength')).toHaveLength(1);
    expect(top(thicken(build, 'F3', 3))).toBeLessThan(of(/top, bent/));
  });
});
