import { describe, expect, test } from 'vitest';
import type { Build } from '../../../src/assembly/build.js';
import { stopsChecks } from '../../../src/camera/stops/checks.js';
import { circle } from '../../../src/geometry/shapes.js';
import { alterPart, thicken } from '../../planted.js';
import { cutTo, hole } from '../altered.js';
import { heronWith, STOPS } from '../asked-for.js';

/** Limits: choices of ours; the holes: the hole at f/6.3, 30 wide, in the ratio of the exact f-numbers. */

const { camera, build } = heronWith(STOPS);
const own = camera.objects.stops;
if (own === undefined) throw new Error('Heron was asked for stops');
const told = (changed: Build, rule: string) =>
  stopsChecks.flatMap((check) => check(own, changed)).filter((finding) => finding.rule === rule);

test('as drawn nothing is wrong', () => expect(stopsChecks.flatMap((check) => check(own, build))).toEqual([]));

describe('stop-hole', () => {
  const bored = (diameter: number) => cutTo(build, 'WS2', () => ({ holes: [hole(circle(0, 0, diameter))] }));
  // f/11: 30 × 6.3/11.3137 = 16.7054; the nominal 11 would make it 17.182, 0.08 stops more
  test('0.05 off passes, more does not', () => {
    expect(told(bored(16.755), 'stop-hole')).toEqual([]);
    expect(told(bored(16.756), 'stop-hole')).toHaveLength(1);
  });
  test('one for the number as it is marked is found', () =>
    expect(told(bored((30 * 6.3) / 11), 'stop-hole')).toMatchObject([
      {
        level: 'error',
        message: expect.stringMatching(/WS2 is 17\.18 mm wide where f\/11 wants 16\.71 mm: it gives 0\.08 stops more/),
      },
    ]));
  test('a hole too small for a beam is to be drilled', () => {
    const small = heronWith('stops: { fullAperture: 8 mm, marked: f/6.3, slot: [40 mm, 1 mm], series: [f/22, f/32] }');
    const { stops } = small.camera.objects;
    if (stops === undefined) throw new Error('Heron was asked for stops');
    // 8 × 6.3/22.6274 = 2.227 and 8 × 6.3/32 = 1.575
    const findings = stopsChecks.flatMap((check) => check(stops, small.build));
    expect(findings).toMatchObject([{ rule: 'stop-hole', level: 'warning', message: expect.stringMatching(/f\/32/) }]);
  });
});

describe('stop-slot: 0.1 to 0.8 across, 0.05 to 0.5 for the thickness', () => {
  const wide = (width: number) =>
    alterPart(build, 'WS1', (part) =>
      part.kind === 'flat' ? { ...part, outline: part.outline.map((v) => ({ ...v, x: (v.x * width) / 39.7 })) } : part,
    );
  test('across', () => {
    expect(told(wide(39.89), 'stop-slot')).toEqual([]);
    expect(told(wide(39.92), 'stop-slot')).toMatchObject([{ level: 'error', limit: 0.1 }]);
    expect(told(wide(39.21), 'stop-slot')).toEqual([]);
    expect(told(wide(39.18), 'stop-slot')).toMatchObject([
      { level: 'warning', limit: 0.8, message: expect.stringMatching(/light passes beside it/) },
    ]);
  });
  test('thickness', () => {
    expect(told(thicken(build, 'WS1', 0.94), 'stop-slot')).toEqual([]);
    expect(told(thicken(build, 'WS1', 0.96), 'stop-slot')).toMatchObject([{ level: 'error', about: 'stops.board' }]);
    expect(told(thicken(build, 'WS1', 0.49), 'stop-slot')).toMatchObject([{ level: 'warning' }]);
  });
});
