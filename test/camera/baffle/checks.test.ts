import { describe, expect, test } from 'vitest';
import { baffleChecks } from '../../../src/camera/baffle/checks.js';
import { movePart, removePart, toldUnder, widenHole } from '../../planted.js';
import { heronWith } from '../asked-for.js';

/** Limits: common practice, no source; the rest plane geometry of Heron (section 17 of the description of the camera). */

const { camera, build } = heronWith('baffle: true');
const own = camera.objects.baffle;
if (own === undefined) throw new Error('Heron was asked for a baffle');
const told = (changed: typeof build) => baffleChecks.flatMap((check) => check(own, changed));

describe('baffle-room: 2 mm to the lens, and from the strips to the turning ring', () => {
  // lens to 53, frame of 4.05 in the middle of 53 to 167.4: 55.175 free ahead; its strips are 10 wide: 45.175 behind
  test('as drawn there is room', () => expect(told(build)).toEqual([]));
  test('moved towards the lens', () => {
    expect(told(movePart(build, 'R8', { z: -53.17 }))).toEqual([]);
    expect(told(movePart(build, 'R8', { z: -53.18 }))).toMatchObject([
      { rule: 'baffle-room', level: 'error', limit: 2, message: expect.stringMatching(/2 mm to the lens/) },
    ]);
  });
  test('its strips moved towards the ring', () => {
    expect(told(movePart(build, 'R9', { z: 43.17 }))).toEqual([]);
    expect(told(movePart(build, 'R9', { z: 43.18 }))).toMatchObject([
      { rule: 'baffle-room', message: expect.stringMatching(/2 mm to the turning ring/) },
    ]);
  });
});

test('cone-clear looks at its opening too', () => {
  // what D.cone of an independent look at the camera wants is 3.8 wider than the picture and 2 mm
  expect(toldUnder('cone-clear', build)).toEqual([]);
  expect(toldUnder('cone-clear', widenHole(build, 'R8', -8))).toMatchObject([
    { level: 'error', message: expect.stringMatching(/opening of the baffle/) },
  ]);
});

describe('wall-flare is content with a baffle that stands 6 mm out of the walls', () => {
  const near = movePart(build, 'R2T', { y: -4 });
  test('with it and without', () => {
    expect(toldUnder('wall-flare', near)).toEqual([]);
    expect(toldUnder('wall-flare', removePart(near, 'R8'))).toMatchObject([
      { level: 'warning', hint: expect.stringMatching(/Write baffle: true/) },
    ]);
  });
  test('one that is too wide does not count', () =>
    expect(toldUnder('wall-flare', widenHole(near, 'R8', 14))).toHaveLength(1));
});
