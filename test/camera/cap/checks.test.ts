import { describe, expect, test } from 'vitest';
import type { Build } from '../../../src/assembly/build.js';
import { spanOf } from '../../../src/assembly/span-of.js';
import { capChecks } from '../../../src/camera/cap/checks.js';
import { movePart, removePart, reshapeOutline, widenHole } from '../../planted.js';
import { heronWith } from '../asked-for.js';

/** Limits: common practice and choices of ours, beside the rules; no source. */

const asked = (...keys: readonly string[]) => {
  const { camera, build } = heronWith(...keys);
  const own = camera.objects.cap;
  if (!own) throw new Error('Heron was asked for a cap');
  const told = (changed: Build, rule: string) =>
    capChecks.flatMap((check) => check(own, changed)).filter((finding) => finding.rule === rule);
  return { own, build, told };
};
const { own, build, told } = asked('cap: true');

test('as drawn nothing is wrong, whatever else hangs there', () => {
  for (const keys of [['cap: true'], ['cap: true', 'filterHolder: {}'], ['cap: true', 'shutter: {}', 'hood: {}']]) {
    const one = asked(...keys);
    expect(capChecks.flatMap((check) => check(one.own, one.build))).toEqual([]);
  }
});

describe('cap-covers: 10 mm over the opening of the ring', () => {
  // the ring of 80 leaves 40, the plate is 100 wide
  test('a cap planed at one side, or a ring cut wider', () => {
    const planed = (by: number) => reshapeOutline(build, 'LC1', (at) => ({ ...at, x: at.x > 0 ? at.x - by : at.x }));
    expect(told(planed(0), 'cap-covers')).toEqual([]);
    expect(told(planed(0.2), 'cap-covers')).toMatchObject([
      {
        level: 'error',
        limit: 10,
        unit: 'mm',
        message: expect.stringMatching(/laps over the opening of A1 by 9\.8 mm/),
      },
    ]);
    expect(told(widenHole(build, 'A1', 1), 'cap-covers')).toMatchObject([
      { message: expect.stringMatching(/by 9 mm/) },
    ]);
  });
  test('one that is cut off above', () => {
    const low = reshapeOutline(build, 'LC1', (at) => ({ ...at, y: Math.min(at.y, 49.5) }));
    expect(told(low, 'cap-covers')).toMatchObject([{ message: expect.stringMatching(/by 9\.5 mm/) }]);
  });
});

describe('cap-held: on the road a peg stands in the cap and in the ring', () => {
  test('one that is pulled, or left at home', () => {
    // it stands 4.05 in the ring
    expect(told(movePart(build, 'cap-peg', { z: -1.54 }), 'cap-held')).toEqual([]);
    expect(told(movePart(build, 'cap-peg', { z: -1.6 }), 'cap-held')).toMatchObject([
      {
        level: 'error',
        limit: 2.5,
        unit: 'mm',
        message: expect.stringMatching(/^Carried head down the camera loses its cap/),
      },
    ]);
    expect(told(removePart(build, 'cap-peg'), 'cap-held')).toHaveLength(1);
  });
  test('it lets the cap move by no more than its play, and stands in the hole of every layer', () => {
    const [peg, cap] = [spanOf(build, 'cap-peg'), spanOf(build, 'LC1')];
    const ring = build.parts.find(({ id }) => id === own.restsOn);
    if (ring?.kind !== 'flat') throw new Error('there is a ring');
    const [, hole] = ring.holes;
    if (!hole) throw new Error('the ring has a hole');
    const [right, left] = hole;
    expect(Math.abs((right?.x ?? 0) - (left?.x ?? 0))).toBeCloseTo(peg.x[1] - peg.x[0] + 0.2, 9);
    expect(cap.z[1] - peg.z[0]).toBeGreaterThan(0);
  });
});

test('rail-held: 2 mm behind the lip, pushed to the other side', () => {
  const narrow = (by: number) => reshapeOutline(build, 'LC1', (at) => ({ ...at, x: at.x - by * Math.sign(at.x) }));
  // lips lap 4 over it, with 0.15 of play on each side: planed by 1 on both it laps 3 and has 1.15 of play
  expect(told(narrow(0.9), 'rail-held')).toEqual([]);
  expect(told(narrow(1), 'rail-held')).toMatchObject([
    { level: 'error', limit: 2, message: expect.stringMatching(/^LC1 \(cap of the lens\) falls off forward/) },
  ]);
});
