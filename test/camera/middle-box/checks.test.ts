import { describe, expect, test } from 'vitest';
import { middleBoxChecks } from '../../../src/camera/middle-box/checks.js';
import { boxClearance, feltCrossing } from '../../../src/camera/rear-box/checks.js';
import { polygon } from '../../../src/geometry/path.js';
import { movePart, toldUnder } from '../../planted.js';
import { altered, cutTo } from '../altered.js';
import { godwit } from './three-boxes.js';

/** Godwit by hand, from the inequalities of camera.md section 7 with a third box: test/camera/three-boxes.test.ts. */

const { build, camera, design } = godwit;
const own = camera.objects.middleBox;
if (own === undefined) throw new Error('Godwit has three boxes');
const told = (changed: typeof build) => middleBoxChecks.flatMap((check) => check(own, changed));

describe('middle-stopped: the stops hold, and let the slide run to its end', () => {
  test('as drawn nothing is told', () => expect(told(build)).toEqual([]));

  test('blocks set farther forward stop the slide short', () => {
    expect(told(movePart(build, 'F14', { z: -0.5 }))).toMatchObject([
      {
        rule: 'middle-stopped',
        level: 'error',
        // travel 153 and the reserve of 7.5, a twentieth of 150
        limit: expect.closeTo(160.5, 6),
        value: expect.closeTo(160, 6),
        message: expect.stringMatching(/hold after 160 mm, and the slide runs 160\.5 mm/),
      },
    ]);
  });

  test('a batten set back takes the middle box along too early, and the drawings tell another place', () => {
    const early = told(movePart(build, 'R10', { z: 5 }));
    expect(early).toHaveLength(2);
    expect(early[1]?.message).toMatch(/said to be drawn along from 83\.3 mm on, .* from 78\.3 mm on/);
  });

  test('a hook that hardly catches its block lets the box be drawn off', () => {
    // the hook reaches 9 mm over the lower edge of its block
    expect(told(movePart(build, 'F14', { y: 6 }))).toEqual([]);
    expect(told(movePart(build, 'F14', { y: 6.1 }))).toMatchObject([
      { value: expect.closeTo(2.9, 6), limit: 3, message: expect.stringMatching(/bars C4 hook on the blocks F14/) },
    ]);
  });

  test('a batten of one ply left off leaves too little', () => {
    // two plies of 4.05 less the 1 mm under the tongue: 7.1; of one 3.05, and lifted by 0.1 less than 3
    const one = altered(build, 'R10', (part) => ({ ...part, placements: part.placements.slice(0, 1) }));
    expect(told(one)).toEqual([]);
    expect(told(movePart(one, 'C3', { y: 0.1 })).map(({ rule }) => rule)).toContain('middle-stopped');
  });
});

describe('the other rules look at the middle box as well', () => {
  test('box-meets-panel: its front edge behind the panel', () =>
    expect(toldUnder('box-meets-panel', movePart(build, 'C2T', { z: -0.01 }), design)).toMatchObject([
      { level: 'error', message: expect.stringMatching(/the middle box stands 6 mm behind the panel/) },
    ]));

  test('back-meets-box: its frame between front box and standard', () => {
    expect(toldUnder('back-meets-box', movePart(build, 'C3', { z: 0.01 }), design)).toHaveLength(1);
    expect(toldUnder('back-meets-box', movePart(build, 'C3', { z: -0.01 }), design)).toHaveLength(1);
  });

  test('overlap-far: each joint at its stop', () => {
    // 35.77 left at both stops, 35 needed
    expect(toldUnder('overlap-far', movePart(build, 'F14', { z: 0.76 }), design)).toEqual([]);
    expect(toldUnder('overlap-far', movePart(build, 'F14', { z: 0.78 }), design)).toMatchObject([
      { level: 'error', message: expect.stringMatching(/front and middle box overlap by 35 mm/) },
    ]);
    expect(toldUnder('overlap-far', movePart(build, 'R10', { z: -0.78 }), design)).toMatchObject([
      { level: 'error', message: expect.stringMatching(/middle and rear box overlap by 35 mm/) },
    ]);
  });

  test('felt-crossing: felt on both sides of one gap, not on two boxes', () => {
    const rear = camera.objects.rearBox;
    expect(feltCrossing(rear, build)).toEqual([]);
    const inFront = altered(build, 'felt-middle-side', (part) => ({
      ...part,
      placements: part.placements.map(({ drawnFrom: _, ...place }) => place),
    }));
    expect(feltCrossing(rear, inFront)).toMatchObject([{ rule: 'felt-crossing', level: 'error' }]);
  });

  test('box-clearance: both gaps', () => {
    const near = movePart(build, 'C2F', { y: -0.6 });
    expect(boxClearance(camera.objects.rearBox, build)).toEqual([]);
    expect(boxClearance(camera.objects.rearBox, near)).toMatchObject([
      { level: 'warning', value: expect.closeTo(0.9, 6), limit: 1 },
    ]);
  });

  test('floor-scrape: over the floor of the middle box', () => {
    const raised = movePart(build, 'C2F', { y: 1.2 });
    expect(toldUnder('floor-scrape', raised, design)).toHaveLength(1);
  });
});

test('a frame that is cut without its tongue is drawn off', () => {
  const bare = cutTo(build, 'C3', ({ outline }) => {
    const low = Math.min(...outline.map(({ y }) => y));
    const corners = outline.map(({ x, y }): [number, number] => [x, y < low + 1 ? y + 30 : y]);
    return { outline: polygon(corners) };
  });
  expect(told(bare).some(({ message }) => /tongue of C3/.test(message))).toBe(true);
});
