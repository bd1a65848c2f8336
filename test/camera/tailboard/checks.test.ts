import { describe, expect, test } from 'vitest';
import { knobClear, tripodHold } from '../../../src/camera/tailboard/checks.js';
import { boxAt, rectangle } from '../../../src/geometry/shapes.js';
import { heron, moving, recut } from '../worked.js';

/** Limits: camera.md section 16, common practice, no source. */
const { tailboard } = heron.camera.objects;
const ofPly = (thickness: number) => ({
  ...tailboard,
  wood: { ...tailboard.wood, ply: { ...tailboard.wood.ply, thickness } },
});

describe('tripod-hold: 12 mm of wood, 60 wide, the flange let in', () => {
  test('lower ply and two plies of doubler: 4 mm sheet', () => {
    expect(tripodHold(ofPly(4), heron.build)).toEqual([]);
    expect(tripodHold(ofPly(3.99), heron.build)).toMatchObject([
      { rule: 'tripod-hold', level: 'error', limit: 12, unit: 'mm', hint: expect.stringMatching(/1 more/) },
    ]);
  });
  test('a doubler of 60', () => {
    const block = (side: number) => recut('T4', rectangle(boxAt(0, 0, side, side)));
    expect(tripodHold(tailboard, block(60))).toEqual([]);
    expect(tripodHold(tailboard, block(59.9))).toMatchObject([
      { level: 'error', limit: 60, hint: expect.stringMatching(/60 mm square/) },
    ]);
  });
  test('a ply as thick as the flange', () => {
    const flange = (t: number) => tripodHold(ofPly(t), heron.build).filter(({ limit }) => limit === 1.6);
    expect(flange(1.6)).toEqual([]);
    expect(flange(1.59)).toMatchObject([
      { level: 'error', about: 'plywood.thickness', hint: expect.stringMatching(/1\.6 mm or more/) },
    ]);
  });
});

test('knob-clear: 2 mm behind half a tripod plate of 90', () => {
  // the knob is 32 across, 28 behind the standard's front at 167.4
  const behind = (air: number) => ({ ...tailboard, tripod: 167.4 + 28 - 16 - 45 - air });
  expect(knobClear(behind(2.01), heron.build)).toEqual([]);
  const [told] = knobClear(behind(1.99), heron.build);
  expect(told).toMatchObject({
    rule: 'knob-clear',
    level: 'warning',
    limit: 2,
    unit: 'mm',
    hint: expect.stringMatching(/plate/),
  });
  expect(told?.value).toBeCloseTo(1.99, 6);
  expect(knobClear(behind(-5), heron.build)[0]?.message).toMatch(/5 mm over a tripod plate/);
  expect(knobClear(tailboard, moving('lock-knob', { z: -200 }))).toHaveLength(1);
});
