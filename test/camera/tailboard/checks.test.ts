import { describe, expect, test } from 'vitest';
import { knobClear, tripodHold } from '../../../src/camera/tailboard/checks.js';
import { boxAt, circle, rectangle } from '../../../src/geometry/shapes.js';
import { altered, bought, cutTo, hole, replaced } from '../altered.js';
import { heron, moving, recut } from '../worked.js';

/** Limits: camera.md section 16, common practice, no source. */
const { tailboard } = heron.camera.objects;

describe('tripod-hold: 12 mm of wood, 60 wide, the flange let in', () => {
  test('lower ply and two plies of doubler', () => {
    const plies = (thickness: number) =>
      tripodHold(
        tailboard,
        altered(heron.build, 'T4', (part) => ({ ...part, thickness })),
      );
    // 4.05 and twice 3.975
    expect(plies(3.976)).toEqual([]);
    expect(plies(3.97)).toMatchObject([
      {
        rule: 'tripod-hold',
        level: 'error',
        limit: 12,
        unit: 'mm',
        message: 'The tripod nut is held in 11.99 mm of wood: the screw tears out.',
        hint: "Glue 1 more of the doubler's plies under the tailboard.",
      },
    ]);
  });
  test('a ply of the doubler that was left off', () =>
    expect(
      tripodHold(
        tailboard,
        replaced(heron.build, 'T4', (places) => places.slice(1)),
      ),
    ).toMatchObject([{ limit: 12, message: expect.stringMatching(/held in 8\.1 mm/) }]));
  test('a doubler of 60', () => {
    const block = (side: number) => recut('T4', rectangle(boxAt(0, 0, side, side)));
    expect(tripodHold(tailboard, block(60))).toEqual([]);
    expect(tripodHold(tailboard, block(59.9))).toMatchObject([
      { level: 'error', limit: 60, hint: expect.stringMatching(/60 mm square/) },
    ]);
  });
  test('a ply as deep as the flange is thick', () => {
    const flange = (thickness: number) => tripodHold(tailboard, bought(heron.build, 'tripod-flange', { thickness }));
    expect(flange(4.05)).toEqual([]);
    expect(flange(4.06)).toMatchObject([
      {
        level: 'error',
        about: 'plywood.thickness',
        message: expect.stringMatching(/is let in 4\.1 mm: it scrapes the sole|is let in 4 mm: it scrapes the sole/),
        hint: expect.stringMatching(/4\.06 mm or more/),
      },
    ]);
  });
  test('in a hole that takes it', () => {
    // a flange of 19 (section 12: bought)
    const holed = (diameter: number) =>
      tripodHold(
        tailboard,
        cutTo(heron.build, 'T1U', ({ holes }) => ({
          holes: holes.map((loop) => {
            const across = Math.abs((loop[0]?.x ?? 0) - (loop[1]?.x ?? 0));
            return loop.length === 2 && Math.abs(across - 19.5) < 0.01
              ? hole(circle(((loop[0]?.x ?? 0) + (loop[1]?.x ?? 0)) / 2, loop[0]?.y ?? 0, diameter))
              : loop;
          }),
        })),
      );
    expect(holed(19)).toEqual([]);
    expect(holed(18.9)).toMatchObject([{ value: 0, message: expect.stringMatching(/is let in 0 mm/) }]);
  });
});

test('knob-clear: 2 mm behind half a tripod plate of 90', () => {
  // the knob is 32 across, 28 behind the standard's front at 167.4; the nut as it is placed, at 127.7 or so
  const nut = heron.camera.objects.tailboard.tripod;
  const behind = (air: number) =>
    knobClear(tailboard, moving('tripod-barrel', { z: 167.4 + 28 - 16 - 45 - air - nut }));
  expect(behind(2.01)).toEqual([]);
  const [told] = behind(1.99);
  expect(told).toMatchObject({
    rule: 'knob-clear',
    level: 'warning',
    limit: 2,
    unit: 'mm',
    hint: expect.stringMatching(/plate/),
  });
  expect(told?.value).toBeCloseTo(1.99, 6);
  expect(behind(-5)[0]?.message).toMatch(/5 mm over a tripod plate/);
  expect(knobClear(tailboard, moving('lock-knob', { z: -200 }))).toHaveLength(1);
});
