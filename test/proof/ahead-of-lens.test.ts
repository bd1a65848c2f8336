import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import { jointFindings, lightJoints } from '../../src/proof/light-joints.js';
import { sceneOf } from '../../src/proof/light-scene.js';
import { prove } from '../../src/proof/prove.js';
import { heronWith } from '../camera/asked-for.js';
import { removePart, widenHole } from '../planted.js';

const planned = heronWith('filterHolder: {}', 'shutter: {}');
const { build, design } = planned;

test('Heron with a filter holder and a shutter goes together, comes apart, and stays dark', {
  timeout: 240_000,
}, async () => {
  const kernel = await loadKernel();
  const { findings, document } = prove(design, build, kernel);
  expect(findings.filter(({ level }) => level !== 'note')).toEqual([]);
  // what closes the lens's own ways in is told as without them
  expect(document.joints.map(({ joint }) => joint)).toEqual(
    expect.arrayContaining(['lens board in the panel', 'lens in the board', 'shutter on the accessory frame']),
  );
});

describe('with the dark slide drawn only the shutter keeps the lens dark', () => {
  const joints = (changed: Build) => lightJoints(sceneOf(changed)).filter(({ joint }) => /shutter|filter/.test(joint));
  const messages = (changed: Build) => jointFindings(joints(changed)).map(({ message }) => message);

  test('two turns, and the land that the plates have on the ring', () => {
    // the ring has an opening of 80, and the rail plate stands 8 above the ring's lower edge at 58.3: 50.3 − 40
    const [plate, filter] = joints(build);
    expect(plate).toMatchObject({ turns: 2, needed: { turns: 2, land: 10 } });
    expect(plate?.land).toBeCloseTo(10.3, 1);
    // the filter holder reaches 18.3 up from the ring's opening of 40 to its edge at 58.3, and its cheeks lie on the rings
    expect(filter).toMatchObject({ turns: 3, parts: expect.arrayContaining(['FH3', 'A1']) });
    expect(filter?.land).toBeCloseTo(18.3, 1);
    expect(messages(build)).toEqual([]);
  });

  test('rings with a wide opening leave too little of it', () => {
    expect(messages(widenHole(build, 'A3', 0.29))).toEqual([]);
    expect(messages(widenHole(build, 'A3', 4))).toEqual([
      'Fog along the shutter on the accessory frame (A3, D1): wood lies on wood for 6.3 mm, and it takes 10 mm (paper holder, upright).',
    ]);
  });

  test('no plate at all', () => expect(joints(removePart(build, 'D1'))).toEqual([]));

  test('without its cheeks the filter holder is a slot for daylight', () => {
    const open = joints(removePart(build, 'FH3')).find(({ joint }) => joint === 'filter holder in its channel');
    expect(open?.turns).toBe(2);
    expect(joints(build).find(({ joint }) => joint === 'filter holder in its channel')?.turns).toBe(3);
  });
});
