import { describe, expect, test } from 'vitest';
import type { Build } from '../../../src/assembly/build.js';
import { dropShutterChecks } from '../../../src/camera/drop-shutter/checks.js';
import { alterPart, movePart, removePart, reshape, reshapeOutline, thicken, weigh } from '../../planted.js';
import { heronWith } from '../asked-for.js';

/** Limits: common practice, no source, beside the rules. */

const asked = (...keys: readonly string[]) => {
  const { camera, build } = heronWith(...keys);
  const own = camera.objects.dropShutter;
  if (!own) throw new Error('Heron was asked for a shutter');
  const told = (changed: Build, rule: string) =>
    dropShutterChecks.flatMap((check) => check(own, changed)).filter((finding) => finding.rule === rule);
  return { own, build, told };
};
const { own, build, told } = asked('shutter: {}', 'filterHolder: {}');
const { slide, openings } = own.shutter;

test('as drawn only notes are told: its time, and how far the slide hangs', () =>
  expect(dropShutterChecks.flatMap((check) => check(own, build)).map(({ rule, level }) => `${rule} ${level}`)).toEqual([
    'shutter-time note',
    'shutter-falls note',
  ]));

describe('shutter-dark: 10 mm over the opening, shut before and after the fall', () => {
  const message = (changed: Build) => told(changed, 'shutter-dark').map((one) => one.message);
  const planed = (by: number, which: (y: number) => boolean) =>
    reshapeOutline(build, 'D4', (at) => (which(at.y) ? { ...at, x: at.x - Math.sign(at.x) * by } : at));
  test('a slide planed at its sides', () => {
    const spare = slide.half - openings.back / 2 - 10;
    expect(message(planed(spare - 0.01, () => true))).toEqual([]);
    expect(message(planed(spare + 0.1, () => true))).toEqual([
      'Fog while the shutter is shut: the slide D4, cocked, laps over the opening of its guide by 9.9 mm, and daylight gets round less than 10 mm.',
    ]);
  });
  test('a slot cut lower', () => {
    // so much higher than it must the slide hangs, for an even picture
    const spare = slide.lower - openings.back - 20;
    const lower = (by: number) =>
      reshape(build, 'D4', (at) => (Math.abs(at.y) < slide.slot ? { ...at, y: at.y - by } : at));
    expect(message(lower(spare - 0.01))).toEqual([]);
    expect(message(lower(spare + 0.2))).toEqual([expect.stringMatching(/the slide D4, cocked, laps.* 9\.8 mm/)]);
  });
  test('a bar set too low stops the slide before it is shut', () => {
    expect(message(movePart(build, 'D6', { y: -0.2 }))).toEqual([
      expect.stringMatching(/the slide D4, when it has fallen, laps.* 9\.8 mm/),
    ]);
    expect(message(movePart(build, 'D7', { y: -0.3 }))).toEqual([
      expect.stringMatching(/the slide D5, let down, laps.* 9\.7 mm/),
    ]);
  });
  test('thick felt does the same', () => {
    expect(message(thicken(build, 'stop-felt', 2.5))).toEqual([expect.stringMatching(/laps.* 9\.5 mm/)]);
  });
  test('a rail plate that is narrow', () => {
    // 100.3 wide over an opening of 80: 10.15
    const narrow = (by: number) => reshapeOutline(build, 'D1', (at) => ({ ...at, x: at.x - Math.sign(at.x) * by }));
    expect(message(narrow(0.14))).toEqual([]);
    expect(message(narrow(0.35))).toEqual([
      expect.stringMatching(/the rail plate D1 laps over the opening of A3 by 9\.8 mm/),
    ]);
  });
});

describe('shutter-crosses', () => {
  test('a slot that is narrower than the light', () => {
    // the slide's front stands 2·4.05 ahead of what is beyond the lips: 50.3 from the seat, 33.33 + 50.3·0.998 = 83.5
    const narrow = (by: number) =>
      reshape(build, 'D4', (at) => (Math.abs(at.x) < slide.half - 5 ? { ...at, x: at.x - Math.sign(at.x) * by } : at));
    expect(told(narrow(0.99), 'shutter-crosses')).toEqual([]);
    const [one] = told(narrow(1.1), 'shutter-crosses');
    expect(one).toMatchObject({ level: 'warning', unit: 'mm', message: expect.stringMatching(/Dark corners/) });
    expect(one?.limit).toBeCloseTo(210 / 6.3 + (2 * 50.35 * 209.566) / 2 / 210, 1);
  });
  test('a slot that is shorter than the light of one point, 33.3', () => {
    expect(
      asked('shutter: { slot: 33.4 mm }').told(asked('shutter: { slot: 33.4 mm }').build, 'shutter-crosses'),
    ).toEqual([]);
    const short = asked('shutter: { slot: 33.2 mm }');
    expect(short.told(short.build, 'shutter-crosses')).toMatchObject([
      {
        level: 'warning',
        unit: 'mm',
        about: 'shutter.slot',
        value: expect.closeTo(33.2, 6),
        limit: expect.closeTo(100 / 3, 6),
      },
    ]);
  });
  test('a third of a stop between above and below', () => {
    // one that hangs as low as it may grows faster by more on its way: the slot is lowered by what it was raised for evenness
    const spare = slide.lower - openings.back - 20;
    expect(spare).toBeGreaterThan(10);
    const low = reshape(build, 'D4', (at) => (Math.abs(at.y) < slide.slot ? { ...at, y: at.y - spare } : at));
    expect(told(low, 'shutter-crosses')).toMatchObject([
      {
        level: 'warning',
        unit: 'stops',
        limit: 1 / 3,
        message: expect.stringMatching(/What is above in the picture gets 0\.\d+ stops more/),
      },
    ]);
  });
});

describe('shutter-time', () => {
  test('what it does, beside the mark of a dial', () => {
    expect(told(build, 'shutter-time')).toMatchObject([
      {
        level: 'note',
        unit: 's',
        value: expect.closeTo(1 / 30, 5),
        limit: 1 / 30,
        // 1/30 stands for 1/32: V5.23, 0.093 stop longer
        message: expect.stringMatching(
          /exposes 1\/30 s, where 1\/30 s was asked: 0\.09 stops more than the 1\/30 s of a dial/,
        ),
      },
    ]);
  });
  test('a time that it cannot give is a warning, with the way out', () => {
    const fast = asked('shutter: { time: 1/125 s }');
    expect(fast.told(fast.build, 'shutter-time')).toMatchObject([
      { level: 'warning', about: 'shutter.time', hint: expect.stringMatching(/^Use elastic/) },
    ]);
    const slow = asked('shutter: { time: 1/2 s }');
    expect(slow.told(slow.build, 'shutter-time')).toMatchObject([
      { level: 'warning', hint: expect.stringMatching(/^Expose by hand/) },
    ]);
  });
  test('is reckoned from the slide as it is cut and weighed', () => {
    const pulled = asked('shutter: { time: 1/60 s, elastic: { pull: 400 g } }');
    const timeOf = (changed: Build) => pulled.told(changed, 'shutter-time')[0]?.value ?? 0;
    expect(timeOf(pulled.build)).toBeCloseTo(1 / 60, 4);
    const { massKg } = pulled.build.parts.find(({ id }) => id === 'D4') ?? { massKg: 0 };
    expect(timeOf(weigh(pulled.build, 'D4', 2 * massKg))).toBeGreaterThan(1.1 * timeOf(pulled.build));
  });
});

describe('shutter-falls: 3 mm of air, all the way down', () => {
  test('a tailboard that reaches out under it', () => {
    // the tailboard begins at z = −20, the slide hangs some 30 mm ahead of that
    const forward = (z: number) => movePart(build, 'T1U', { z });
    expect(told(forward(-20), 'shutter-falls')).toMatchObject([{ level: 'note' }]);
    expect(told(forward(-30), 'shutter-falls')[0]).toMatchObject({
      level: 'error',
      limit: 3,
      message: expect.stringMatching(/falls past T1U/),
    });
  });
  test('a camera that stands high is not told of a table', () => {
    const high = movePart(movePart(build, 'T1L', { y: -200 }), 'T4', { y: -200 });
    expect(told(high, 'shutter-falls')).toEqual([]);
  });
});

test('what is left out of these checks is a mistake of ours', () => {
  expect(() => told(removePart(build, 'D6'), 'shutter-dark')).toThrow(/D6/);
  expect(() =>
    told(
      alterPart(build, 'D3', (part) => ({ ...part, ...(part.kind === 'flat' ? { holes: [] } : {}) })),
      'shutter-dark',
    ),
  ).toThrow(/D3/);
});
