import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import type { LightJoint } from '../../src/model/proof.js';
import { jointFindings, lightJoints } from '../../src/proof/light-joints.js';
import { sceneOf } from '../../src/proof/light-scene.js';
import { heron, moving } from '../camera/worked.js';

const joints = (build: Build = heron.build): readonly LightJoint[] => lightJoints(sceneOf(build));
const without = (...ids: readonly string[]): Build => ({
  ...heron.build,
  parts: heron.build.parts.filter(({ id }) => !ids.includes(id)),
});
const messages = (build: Build): readonly string[] => jointFindings(joints(build)).map(({ message }) => message);

describe('turns and land of Heron', () => {
  // section 11 of the camera's description, common practice; lengths worked out there for t = 4.05
  test.each([
    // fingers as long as the panel is thick, then the strip of 8: 4.05 + 8, or 4.05 and 4.05 along its other face
    { joint: 'panel to side', turns: 2, least: 8 },
    { joint: 'lens board in the panel', turns: 2, least: 14 },
    { joint: 'lens in the board', turns: 2, least: 0 },
    // 18 of the plate over the standard beyond the rear box, section 9: 18 + t to the ring
    { joint: 'back in the standard', turns: 2, least: 18 },
    { joint: 'back in the standard, at its clipped corners', turns: 2, least: 8 },
    // (150 − 124.6)/2 and (156 − 124.6)/2 to the edge of the gate, less nothing: 12.7 and 15.7
    { joint: 'paper holder in the well', turns: 2, least: 12.7 },
    { joint: 'processing holder in the well', turns: 2, least: 15.7 },
  ])('$joint: $turns turns at least, and $least mm of land', ({ joint, turns, least }) => {
    const one = joints().find((j) => j.joint === joint);
    expect(one?.turns).toBeGreaterThanOrEqual(turns);
    expect(one?.land).toBeGreaterThanOrEqual(least - 1e-6);
  });

  test('the gap between the boxes does not turn: two bands of felt shut it over all the overlap', () => {
    // overlap at full draw 53.15, section 17
    const one = joints().find(({ joint }) => joint === 'rear box in the front box');
    expect(one).toMatchObject({ turns: 1, felt: 2 });
    expect(one?.land).toBeCloseTo(53.15, 0);
  });

  test('nothing is missing', () => expect(messages(heron.build)).toEqual([]));
});

describe('what a search with straight lines does not notice', () => {
  test.each([
    {
      left: ['F7'],
      told: 'Fog along the lens board in the panel (F1, F6): light comes in with 1 turn, and it takes 2',
    },
    { left: ['B2'], told: 'Fog along the back in the standard (B1, R3' },
    { left: ['felt-long'], told: 'Fog along the rear box in the front box' },
    { left: ['F5'], told: 'Fog along the panel to side (F1, F2L): wood lies on wood for 4.1 mm, and it takes 7 mm' },
    { left: ['B4'], told: 'Fog along the paper holder in the well (holder-1, B1): light comes in with 1 turn' },
    { left: ['fence-open'], told: 'Fog along the paper holder in the well (holder-1, B1): light comes in with 1 turn' },
  ])('without $left', ({ left, told }) =>
    expect(messages(without(...left)).some((message) => message.startsWith(told))).toBe(true),
  );

  test('one band of felt is not two', () => {
    const one = {
      ...heron.build,
      parts: heron.build.parts.map((part) =>
        part.id === 'felt-long' ? { ...part, placements: part.placements.filter((_, i) => i % 2 === 0) } : part,
      ),
    };
    expect(messages(one).some((message) => message.startsWith('Fog along the rear box in the front box'))).toBe(true);
  });

  test('a board that lies off to one side has too little land on the other', () => {
    // board and panel overlap by 14 all round; 1 mm off leaves 13 on one side
    const told = messages(moving('F6', { y: 1 }));
    expect(told).toContainEqual(
      expect.stringMatching(
        /^Fog along the lens board in the panel .*: wood lies on wood for 13(\.\d)? mm, and it takes 14 mm/,
      ),
    );
    // a hair off is rounding
    expect(messages(moving('F6', { y: 1e-9 }))).toEqual([]);
  });
});
