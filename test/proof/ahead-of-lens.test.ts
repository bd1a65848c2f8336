import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import { capDark, underCap } from '../../src/proof/cap-dark.js';
import { jointFindings, lightJoints } from '../../src/proof/light-joints.js';
import { sceneOf } from '../../src/proof/light-scene.js';
import { prove } from '../../src/proof/prove.js';
import { heronWith } from '../camera/asked-for.js';
import { removePart, reshapeOutline, widenHole } from '../planted.js';

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

describe('with the dark slide drawn only the cap keeps the lens dark', () => {
  const capped = heronWith('cap: true', 'hood: {}', 'filterHolder: {}');
  const joints = (changed: Build) => lightJoints(sceneOf(changed)).filter(({ joint }) => /^cap/.test(joint));
  const dark = (changed: Build) => capDark(changed, 4).findings.map(({ message }) => message);

  test('Heron with hood and cap goes together, comes apart, and stays dark', { timeout: 240_000 }, async () => {
    const kernel = await loadKernel();
    const { findings } = prove(capped.design, capped.build, kernel);
    expect(findings.filter(({ level }) => level !== 'note')).toEqual([]);
  });

  test('two turns, and the land that the cap has on the ring', () => {
    // as the shutter's plate it stands 8 above the ring's lower edge at 58.3, and the ring has an opening of 80: 50.3 − 40
    const [joint] = joints(capped.build);
    expect(joint).toMatchObject({
      turns: 2,
      needed: { turns: 2, land: 10 },
      setup: 'paper holder, upright, the cap on',
    });
    expect(joint?.land).toBeCloseTo(10.3, 1);
    expect(jointFindings(joints(widenHole(capped.build, 'A3', 4)))).toMatchObject([
      { rule: 'light-path', message: expect.stringMatching(/^Fog along the cap on the accessory frame/) },
    ]);
  });

  test('the hole of its peg is no way in: the land of the ring lies before it', () => {
    // a cut through it: hole of 4.2 in the middle of the ring's upper limb, 10 above the opening of 80
    const [, hole] = capped.build.parts.flatMap((part) => (part.id === 'A3' && part.kind === 'flat' ? part.holes : []));
    const lowest = Math.min(...(hole ?? []).map(({ y }) => y)) - 2.1;
    expect(lowest - 40).toBeCloseTo(10, 6);
  });

  test('no straight line falls on the lens, as cut and worn', () => expect(dark(capped.build)).toEqual([]));

  test('nor is anything looked for where there is no cap', () => expect(underCap(build)).toBeNull());

  test('a cap that does not reach over the opening lets light in', () => {
    const short = reshapeOutline(capped.build, 'LC1', (at) => ({ ...at, y: Math.min(at.y, 36) }));
    expect(dark(short)).toEqual(expect.arrayContaining([expect.stringMatching(/^Fog with the cap on: light falls/)]));
    const narrow = reshapeOutline(capped.build, 'LC1', (at) => ({ ...at, x: Math.max(at.x, -36) }));
    expect(dark(narrow)).not.toEqual([]);
  });

  test('a hole in it does too, and one that is not there at all', () => {
    expect(dark(widenHole(capped.build, 'LC1', 14, { x: 0, y: 52.1, z: 0 }))).not.toEqual([]);
    expect(dark(removePart(removePart(capped.build, 'LC1'), 'LC2'))).not.toEqual([]);
  });
});
