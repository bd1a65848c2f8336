import { describe, expect, test } from 'vitest';
import { engagedTurns, threadDiameters, tripodScrew, tripodThreads } from '../../src/standards/tripod-thread.js';

const INCH = 25.4;

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

describe.each([
  {
    name: '1/4-20',
    major: 6.35, // M2.01 [verified: R11, R13], exact
    pitch: 1.27,
    perInch: 20, // M2.12 [verified: R13 that 1/4 in UNC and BSW interchange]
    pitchDiameter: 5.5251,
    pitchTable: 0.2175, // M2.03 [verified: R11], 1e-4
    internal: 4.9752, // M2.04, 1e-4; formula [from memory: ISO 68-1 / ASME B1.1]
    external: 4.7919,
    externalTable: 0.1887, // M2.05 [verified: R11, R12], 1e-4
    drill: 5.105, // M2.06 [verified: R11, R12, R13], 1e-3
    close: 6.528,
    free: 6.756, // M2.07 [verified: R12], 1e-3
    turns: 3.543, // M2.09 [verified: R10 data], 1e-3
  },
  {
    name: '3/8-16',
    major: 9.525, // M2.02 [verified: R11], exact
    pitch: 1.5875,
    perInch: 16,
    pitchDiameter: 8.4939,
    pitchTable: 0.3344,
    internal: 7.8065,
    external: 7.5773,
    externalTable: 0.2983,
    drill: 7.938,
    close: 9.804,
    free: 10.084,
    turns: 2.835,
  },
] as const)('$name', (row) => {
  const thread = tripodThreads[row.name];

  test('major diameter and pitch', () => {
    within(thread.major.value, row.major, 1e-9);
    within(thread.pitch.value, row.pitch, 1e-9);
    within(INCH / thread.pitch.value, row.perInch, 1e-9);
  });

  test('pitch diameter', () => {
    within(threadDiameters(thread).pitch, row.pitchDiameter, 1e-4);
    within(threadDiameters(thread).pitch / INCH, row.pitchTable, 1e-4);
  });

  test('bore of a nut and root of a screw are two figures', () => {
    within(threadDiameters(thread).minorInternal, row.internal, 1e-4);
    within(threadDiameters(thread).minorExternal, row.external, 1e-4);
    within(threadDiameters(thread).minorExternal / INCH, row.externalTable, 1e-4);
  });

  test('drills and holes', () => {
    within(thread.tapDrill.value, row.drill, 1e-3);
    within(thread.clearance.close.value, row.close, 1e-3);
    within(thread.clearance.free.value, row.free, 1e-3);
  });

  test('turns that hold in a thread flush with the face', () => within(engagedTurns(thread), row.turns, 1e-3));
});

describe('the screw of the tripod', () => {
  test('stands 4.5 ± 0.2 proud', () => {
    // M2.08 [verified: R10, quoting the international standard]
    expect([tripodScrew.proud.value, tripodScrew.tolerance.value]).toEqual([4.5, 0.2]);
  });

  test('bottoms in a hole of 4.7 and never in one of 7.4', () => {
    // M2.11 [verified: R10]; floating point on a sum of decimals
    const longest = tripodScrew.proud.value + tripodScrew.tolerance.value;
    within(longest, 4.7, 1e-12);
    expect(longest).toBeLessThan(7.4);
  });

  test('holds by a third of a turn behind a ply of 4.05, and by nothing behind two', () => {
    // M2.10 [verified: R10 data], 1e-3: to be refused; rule [common practice, no source]
    within(engagedTurns(tripodThreads['1/4-20'], 4.05), 0.354, 1e-3);
    expect(engagedTurns(tripodThreads['1/4-20'], 8.1)).toBe(0);
  });
});
