import { describe, expect, test } from 'vitest';
import type { Build } from '../../../src/assembly/build.js';
import { filterClear, frameDeep, glassClear, retainerReach } from '../../../src/camera/accessory-frame/checks.js';
import { movePart, widenHole } from '../../planted.js';
import { replaced, spreadAcross } from '../altered.js';
import { heronWith } from '../asked-for.js';

/** Limits: common practice and choices of ours, beside the rules; no source. */

const { camera, build } = heronWith('filterHolder: {}', 'shutter: {}');
const frame = camera.objects.accessoryFrame;
if (!frame) throw new Error('Heron was asked for a filter holder and a shutter');

test('as drawn nothing is wrong', () =>
  expect([glassClear, filterClear, retainerReach, frameDeep].flatMap((check) => check(frame, build))).toEqual([]));

describe('glass-clear: 2 mm before the lens', () => {
  // lens front at -18; board front at -8.1 and three rings of 4.05: the holder's rear at -20.25
  const nearer = (z: number): Build => movePart(build, 'FH1', { z });
  test('a filter holder pushed in 2.25 mm ahead of the rim', () => {
    expect(glassClear(frame, nearer(0.24))).toEqual([]);
    expect(glassClear(frame, nearer(0.35))).toMatchObject([
      {
        rule: 'glass-clear',
        level: 'error',
        limit: 2,
        unit: 'mm',
        message:
          'FH1 (rear ply of the filter holder) comes within 1.9 mm of the lens: one push, and it is on the glass.',
      },
    ]);
  });
  test('rings that close in on the rim', () => {
    // opening 80, rim 64: 8 each side
    expect(glassClear(frame, widenHole(build, 'A1', -5.9))).toEqual([]);
    expect(glassClear(frame, widenHole(build, 'A1', -6.1))).toMatchObject([{ rule: 'glass-clear' }]);
  });
});

describe('filter-clear: f/N + 2·distance·tan(half field), the distance from the lens seat', () => {
  // 210/6.3 + 2·d·(209.57/2/210); FH2 ends 2·4.05 + 0.8 ahead of -20.25, 29.15 from the seat: 33.33 + 29.09 = 62.4
  test('the opening of the filter holder', () => {
    expect(filterClear(frame, widenHole(build, 'FH2', -0.9))).toEqual([]);
    const [told, ...more] = filterClear(frame, widenHole(build, 'FH2', -1.1));
    expect(more).toEqual([]);
    expect(told).toMatchObject({
      rule: 'filter-clear',
      level: 'warning',
      message: expect.stringMatching(
        /62\.4 mm across 29\.2 mm ahead of the lens seat, and the opening of FH2 .* 62\.2 mm/,
      ),
    });
    expect(told?.limit).toBeCloseTo(62.42, 1);
  });
  test('any plate is looked at, and the worst is told', () =>
    expect(filterClear(frame, widenHole(widenHole(build, 'FH2', -2), 'D9', -4))).toMatchObject([
      { message: expect.stringMatching(/D9/) },
    ]));
  test('the slot of the slide is left to its own rule', () =>
    expect(filterClear(frame, widenHole(build, 'D4', -10))).toEqual([]));
});

describe('retainer-reach: half a millimetre beside the retainers', () => {
  // board 132.2, retainers 6 over it: from 60.1; the rings reach out to 58.3
  test('retainers set nearer', () => {
    expect(retainerReach(frame, spreadAcross(build, 'F9', -1.2))).toEqual([]);
    expect(retainerReach(frame, spreadAcross(build, 'F9', -1.5))).toMatchObject([
      {
        rule: 'retainer-reach',
        level: 'error',
        limit: 0.5,
        message: expect.stringMatching(/within 0\.\d mm of the retainers/),
      },
    ]);
    // 1.2 leaves 0.5 at least, so 5 lie over by 3.3 at most
    expect(retainerReach(frame, spreadAcross(build, 'F9', -5))[0]?.message).toMatch(
      /lies 3(\.\d)? mm over the retainers/,
    );
  });
});

describe('frame-deep: six rings', () => {
  const rings = (count: number): Build =>
    replaced(build, 'A1', ([place]) => (place ? Array.from({ length: count }, () => place) : []));
  test('a lens that stands far out', () => {
    expect(frameDeep(frame, rings(6))).toEqual([]);
    expect(frameDeep(frame, rings(7))).toMatchObject([
      { rule: 'frame-deep', level: 'note', value: 7, limit: 6, message: expect.stringMatching(/7 rings, 28\.4 mm/) },
    ]);
  });
});
