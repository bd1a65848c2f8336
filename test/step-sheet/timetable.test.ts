import { describe, expect, test } from 'vitest';
import { timetable } from '../../src/step-sheet/timetable.js';

const steps = [
  { time: 90, volume: 'tank' },
  { time: 60, volume: 'none' },
  { time: 45, volume: 150 },
] as const;

// worked by hand, for a tank that fills in 8 s and drains in 12 s
describe('when things are done', () => {
  test('from pouring in: filling and draining are part of the time', () => {
    expect(timetable(steps, { timesFrom: 'pouring-in', fillSeconds: 8, drainSeconds: 12 })).toEqual([
      // in by 8; 90 - 12 = 78; over at 90
      { beginsAt: 0, coveredAt: 8, drainAt: 78, endsAt: 90 },
      // nothing is poured: 90 + 60
      { beginsAt: 90, coveredAt: null, drainAt: null, endsAt: 150 },
      // 150 + 8; 150 + 45 - 12; 150 + 45
      { beginsAt: 150, coveredAt: 158, drainAt: 183, endsAt: 195 },
    ]);
  });

  test('covered: filling and draining come on top', () => {
    expect(timetable(steps, { timesFrom: 'covered', fillSeconds: 8, drainSeconds: 12 })).toEqual([
      // 8; 8 + 90; 8 + 90 + 12
      { beginsAt: 0, coveredAt: 8, drainAt: 98, endsAt: 110 },
      { beginsAt: 110, coveredAt: null, drainAt: null, endsAt: 170 },
      // 170 + 8; 178 + 45; 223 + 12
      { beginsAt: 170, coveredAt: 178, drainAt: 223, endsAt: 235 },
    ]);
  });

  test('where pouring takes no time, both rules are one', () => {
    const open = { fillSeconds: 0, drainSeconds: 0 };
    expect(timetable(steps, { timesFrom: 'covered', ...open })).toEqual(
      timetable(steps, { timesFrom: 'pouring-in', ...open }),
    );
  });
});
