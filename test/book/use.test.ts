import { describe, expect, test } from 'vitest';
import { cureOf, leakTest } from '../../src/book/leak-test.js';
import { onTheGlass } from '../../src/book/on-the-glass.js';
import { combReads } from '../../src/book/test-piece.js';
import { chaptersAround, useRows } from '../../src/book-use.js';
import type { Mark } from '../../src/model/page.js';
import { planCamera, planOf } from '../../src/pipeline.js';
import { lightJoints } from '../../src/proof/light-joints.js';
import { sceneOf } from '../../src/proof/light-scene.js';
import { bareHeron, keptDesign, keptDesigns } from '../designs/kept-design.js';
import { rowsOf, textOf } from './text-rows.js';

const heron = planCamera(bareHeron());
const plan = planOf(heron);
const { before, after } = chaptersAround({ planned: heron, plan, proof: null, since: null, pouring: [] });
const chapter = (title: string) => {
  const found = [...before, ...after].find((one) => one.title === title);
  if (found === undefined) throw new Error(`no chapter ${title}`);
  return found;
};

/** Rows of a lens with these figures that is asked for 1:1. */
const rowsFor = (lens: { focalLength: number; flangeDistance: number; pupilMagnification: number }) =>
  useRows(
    {
      ...heron.design,
      lens: { ...heron.design.lens, ...lens },
      focus: { ...heron.design.focus, farthest: 0, nearest: 1 },
    },
    plan,
  );

describe('the table of distance, draw and exposure', () => {
  // V1.14: f 210, V 202; V1.02 and V1.09 for the distances; V2.06: factors of a table
  const rows = rowsFor({ focalLength: 210, flangeDistance: 202, pupilMagnification: 1 });
  const at = (m: number) => rows.find((row) => Math.abs(row.m - m) < 1e-9);
  test.each([
    { m: 0, film: 202, factor: 1, subject: null },
    { m: 1 / 10, film: 223, factor: 1.21, subject: 2310 },
    { m: 1 / 4, film: 254.5, factor: 1.5625, subject: 1050 },
    { m: 1 / 2, film: 307, factor: 2.25, subject: 630 },
    { m: 1, film: 412, factor: 4, subject: 420 },
  ])('at $m the film stands $film behind the seat, and exposure is $factor times', ({ m, film, factor, subject }) => {
    const row = at(m);
    expect(row?.filmDistance).toBeCloseTo(film, 9);
    expect(row?.extension).toBeCloseTo(film - 202, 9);
    expect(row?.factor).toBeCloseTo(factor, 9);
    if (subject === null) expect(row?.subject).toBeNull();
    else expect(row?.subject).toBeCloseTo(subject, 9);
  });

  test('goes by the pupils, too', () => {
    // V2.10: m 0.5, P 1.5: 1.7778, 0.830 stop; V2.09: m 1, P 0.5: 9
    const wide = rowsFor({ focalLength: 210, flangeDistance: 202, pupilMagnification: 1.5 });
    expect(wide.find(({ m }) => m === 1 / 2)?.factor).toBeCloseTo(1.7778, 4);
    expect(wide.find(({ m }) => m === 1 / 2)?.stops).toBeCloseTo(0.83, 3);
    const long = rowsFor({ focalLength: 210, flangeDistance: 202, pupilMagnification: 0.5 });
    expect(long.at(-1)?.factor).toBeCloseTo(9, 9);
  });

  test('prints Heron’s nearest focus as it stands', () => {
    // f 210, V 203.5, 1:2.5: u = 210·3.5 = 735, film 203.5 + 84, factor 1.4² = 1.96 (V2.04 has the same), 120.6·2.5 × 171.4·2.5
    const row = rowsOf(chapter('Using the camera').blocks).find(([first]) => first === '1:2.5');
    expect(row).toEqual(['1:2.5', '735 mm', '0.3 × 0.43 m', '287.5', '84.0', '1.96', '1 stop']);
  });

  test('an uncovered distance bears a star, and a covered one does not', () => {
    // the lens of Bittern covers from 1:10.2 on: section 17 of the camera's description
    const bittern = planCamera(keptDesign('bittern'));
    const own = useRows(bittern.design, planOf(bittern));
    expect(own.filter(({ covers }) => covers === false).map(({ m }) => m)).toEqual([0, 1 / 50, 1 / 20, 1 / 15]);
    expect(own.filter(({ covers }) => covers).every(({ m }) => m >= 1 / 10.21)).toBe(true);
  });
});

test('what lay under the glass is out before the holder goes in, and pictures follow that order', () => {
  const heronSays = textOf(chapter('Using the camera').blocks);
  const order = [
    'lay the spacer on the seat first',
    'Cords off. Glass and spacer out: the seat is empty.',
    'Holder in, its face to the seat',
  ];
  const at = order.map((words) => heronSays.indexOf(words));
  expect(Math.min(...at)).toBeGreaterThan(0);
  expect([...at].sort((a, b) => a - b)).toEqual(at);
});

test('the seams of the rear box, that the proof takes for shut, are looked at, and no cure lifts a turn-button', () => {
  const joints = lightJoints(sceneOf(heron.build));
  const text = textOf(leakTest({ joints, holders: ['paper holder'], pinless: [] }).blocks);
  for (const seam of ['walls of the', 'rear box in the']) expect(text).toContain(seam);
  expect(text).not.toMatch(/add a card/);
  // strips stand on F1 alone: between a side and the top there are fingers and glue
  expect(joints.find(({ joint }) => joint === 'side to top')?.shutBy).not.toContain('strip');
});

test('index lines stand apart by what the holders differ in depth', () => {
  // 24 − 5.8
  expect(textOf(chapter('Using the camera').blocks)).toContain('Line 2 stands 18.2 mm behind line 1.');
});

test('holders in one place share their line, and it is said so', () => {
  // both holders of Grebe stand on the same plane
  const grebe = planCamera(keptDesign('grebe'));
  const { after } = chaptersAround({ planned: grebe, plan: planOf(grebe), proof: null, pouring: [], since: null });
  const says = textOf(after.find(({ title }) => title === 'Using the camera')?.blocks ?? []);
  expect(says).toContain('All holders share one index line, marked 1+2.');
  expect(says).not.toContain('0 mm behind');
});

test('the example of a spacer is of a holder that has one', () => {
  const careOf = (name: string) => {
    const planned = planCamera(keptDesign(name));
    const { after } = chaptersAround({ planned, plan: planOf(planned), proof: null, pouring: [], since: null });
    return textOf(after.find(({ title }) => title === 'Care')?.blocks ?? []);
  };
  // the glass of Heron lies as deep as the film of its paper holder; the one holder of Wren needs none at all
  expect(careOf('heron')).toContain('--holder "processing holder"');
  expect(careOf('wren')).not.toContain('--holder');
});

test('whoever takes pins out is told so: a holder without holes would stand on them', () => {
  const wren = planCamera(keptDesign('wren'));
  const [first] = wren.design.holders;
  expect(first?.locating).not.toBe('pins');
  const own = chaptersAround({ planned: wren, plan: planOf(wren), proof: null, since: null, pouring: [] }).after;
  expect(textOf(own.flatMap(({ blocks }) => blocks))).toContain('pull the pins out before you put it in');
  // where it is met, too: at the lamp, in the sun, and when the holder goes in for a picture
  const leaks = own.find(({ title }) => title === 'The leak test')?.blocks ?? [];
  expect(textOf(leaks).match(/Pull the seat pins out first/g)).toHaveLength(2);
  expect(textOf(own.find(({ title }) => title === 'Using the camera')?.blocks ?? [])).toContain('seat pins out');
  expect(textOf(chapter('Using the camera').blocks)).not.toContain('pull the pins out');
});

test('on the glass everything stands where half a turn about the middle brings it', () => {
  const { marks } = onTheGlass();
  const frames = marks.flatMap((mark, i) => (mark.kind === 'line' && mark.closed ? [{ mark, i }] : []));
  expect(frames).toHaveLength(4);
  const points = (mark: Mark) => (mark.kind === 'line' ? mark.points : mark.kind === 'circle' ? [mark.centre] : []);
  const inFrame = (n: number) => {
    const [from, to] = [frames[n]?.i ?? 0, frames[n + 1]?.i ?? marks.length];
    const corners = frames[n]?.mark.points ?? [];
    const middle = {
      x: corners.reduce((sum, { x }) => sum + x, 0) / 4,
      y: corners.reduce((sum, { y }) => sum + y, 0) / 4,
    };
    const drawn = marks.slice(from + 1, to).flatMap(points);
    return drawn.map(({ x, y }) => ({ x: x - middle.x, y: y - middle.y }));
  };
  for (const [scene, glass] of [
    [0, 1],
    [2, 3],
  ] as const) {
    const there = inFrame(scene);
    const seen = inFrame(glass);
    expect(seen).toHaveLength(there.length);
    there.forEach((point, i) => {
      expect(seen[i]?.x).toBeCloseTo(-point.x, 9);
      expect(seen[i]?.y).toBeCloseTo(-point.y, 9);
    });
    // the hand with the ball is on one side, so that left can be told from right
    expect(Math.abs(there.reduce((sum, { x }) => sum + x, 0))).toBeGreaterThan(1);
  }
});

test('ten strips of a comb are short by ten cuts', () => {
  // as the piece itself says: kerf = (80 − S)/10
  const text = textOf(chapter('The test piece first').blocks);
  expect(combReads({ combSum: 80, strips: 10 }, 0.15)).toBeCloseTo(78.5, 9);
  expect(text).toContain('They were drawn 80 mm; with a kerf of 0.15 mm');
  const rows = rowsOf(chapter('The test piece first').blocks);
  const measured =
    rows
      .find(([first]) => first === 'measured, mm')
      ?.slice(1)
      .map(Number) ?? [];
  const kerfs =
    rows
      .find(([first]) => first === 'kerf, mm')
      ?.slice(1)
      .map(Number) ?? [];
  expect(measured.length).toBeGreaterThan(4);
  measured.forEach((sum, i) => {
    expect((80 - sum) / 10).toBeCloseTo(kerfs[i] as number, 9);
  });
});

describe.each(keptDesigns.filter((name) => name !== 'kiwi').map((name) => ({ name })))(
  'the leak test of $name',
  ({ name }) => {
    const planned = planCamera(keptDesign(name));
    const joints = lightJoints(sceneOf(planned.build));

    test('looks at every joint once, and has words of its own for each', () => {
      expect(joints.length).toBeGreaterThan(9);
      const own = joints.filter(({ joint }) => !joint.endsWith(' in the well'));
      const rows = rowsOf(
        leakTest({ joints, holders: planned.design.holders.map((one) => one.name), pinless: [] }).blocks,
      );
      const text = rows.map((cells) => cells.join(' '));
      for (const { joint } of own) {
        expect(cureOf(joint)).not.toEqual(cureOf('no such joint'));
        // a long name is broken over lines: its first words begin a row
        const start = joint.split(' ').slice(0, 2).join(' ');
        expect(text.some((line) => line.startsWith(start))).toBe(true);
      }
    });
  },
);
