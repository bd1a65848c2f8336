import { describe, expect, test } from 'vitest';
import type { Build } from '../../../src/assembly/build.js';
import { spansOf } from '../../../src/assembly/span-of.js';
import { hoodChecks } from '../../../src/camera/hood/checks.js';
import { movePart, reshape, reshapeOutline } from '../../planted.js';
import { spreadAcross } from '../altered.js';
import { heronWith } from '../asked-for.js';

/** Limits: common practice and choices of ours, beside the rules; no source. */

const asked = (key: string) => {
  const { camera, build } = heronWith(key);
  const own = camera.objects.hood;
  if (!own) throw new Error('Heron was asked for a hood');
  return { own, build, told: (changed: Build) => hoodChecks.flatMap((check) => check(own, changed)) };
};
const { own, build, told } = asked('hood: {}');
const under = (rule: string, changed: Build) => told(changed).filter((one) => one.rule === rule);

test('as drawn only what it shades is told', () =>
  expect(told(build).map(({ rule, level }) => `${rule} ${level}`)).toEqual(['hood-shade note']));

describe('filter-clear: half of f/N and the long side of the picture, as far out as the mouth is', () => {
  test('walls that stand 1 mm nearer than drawn are at the light, and nearer than that in it', () => {
    expect(under('filter-clear', spreadAcross(build, 'LH4', -0.99))).toEqual([]);
    expect(under('filter-clear', spreadAcross(build, 'LH4', -1.2))).toMatchObject([
      {
        level: 'warning',
        unit: 'mm',
        about: 'hood.depth',
        message: expect.stringMatching(/^The hood cuts the corners of the picture at infinity: the light is/),
        hint: expect.stringMatching(/^Make it 0\.5 mm wider or 0\.5 mm shorter/),
      },
    ]);
  });
  test('and one that is deeper', () => {
    // 0.405 a side for each mm: 1 mm of room lasts for 2.45
    const deeper = (by: number) => movePart(movePart(build, 'LH4', { z: -by }), 'LH5', { z: -by });
    expect(under('filter-clear', deeper(2.4))).toEqual([]);
    expect(under('filter-clear', deeper(2.5))).toHaveLength(1);
  });
});

describe('hood-shade: a lamp beside the picture', () => {
  const { diameter } = own.hood.lens;
  const [note] = under('hood-shade', build);
  const [wall] = spansOf(build, 'LH4').filter(({ x }) => x[0] > 0);
  if (!wall || note?.value === undefined) throw new Error('there is a wall, and a note');
  /** Rays from all over the front of the lens towards a lamp so far off the axis: how many pass the wall on its side. */
  const lit = (angle: number): number => {
    const away = own.hood.lens.front - wall.z[0];
    const from = Array.from({ length: 201 }, (_, k) => (diameter * (k - 100)) / 200);
    return from.filter((x) => x + away * Math.tan((angle * Math.PI) / 180) < wall.x[0]).length;
  };
  test('farther off the axis than is told none of its light is on the lens, and nearer some is', () => {
    expect(lit((note.value ?? 0) + 0.05)).toBe(0);
    expect(lit((note.value ?? 0) - 0.05)).toBeGreaterThan(0);
    expect(lit(22)).toBeGreaterThan(100);
  });
  test('one that is short warns', () => {
    // 39.5 deep on a lens of 64 the mouth is 82 wide: (41 + 32)/39.5 is the tangent of 61.6°
    const short = asked('hood: { depth: 39.5 mm }');
    expect(short.told(short.build)).toMatchObject([{ rule: 'hood-shade', level: 'warning', limit: 60, unit: '°' }]);
  });
});

test('hood-depth: one that is asked to be shorter than its walls can be', () => {
  const short = asked('hood: { depth: 20 mm }');
  expect(short.told(short.build).filter(({ rule }) => rule === 'hood-depth')).toMatchObject([
    {
      level: 'warning',
      limit: 20,
      unit: 'mm',
      about: 'hood.depth',
      message: expect.stringMatching(/where 20 mm were asked/),
    },
  ]);
});

test('finger-rule: its fingers are read off the walls and the base', () => {
  // every finger of the base planed to half its width
  const planed = reshapeOutline(build, 'LH3', (at) => ({
    ...at,
    x: at.x + (Math.abs(at.x) < 10 ? 5 * Math.sign(at.x) : 0),
  }));
  expect(under('finger-rule', planed)).not.toEqual([]);
});

test('rail-held: 2 mm behind the lip, pushed to the other side', () => {
  // lips lap 4 over the plate, which has 0.15 of play on each side
  const narrow = (by: number) =>
    reshape(build, 'LH1', (at) => (Math.abs(at.x) > 45 ? { ...at, x: at.x - by * Math.sign(at.x) } : at));
  // planed by 1 on both sides it laps 3 and has 1.15 of play
  expect(under('rail-held', narrow(1))).toMatchObject([
    {
      level: 'error',
      limit: 2,
      unit: 'mm',
      message: expect.stringMatching(/^LH1 \(rail plate of the hood\) falls off forward/),
    },
  ]);
  expect(under('rail-held', narrow(0.9))).toEqual([]);
});
