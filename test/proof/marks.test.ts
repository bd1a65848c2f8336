import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import { spanOf } from '../../src/assembly/span-of.js';
import { matrixOf } from '../../src/geometry/facing.js';
import { compose, frame, type Matrix4, shift } from '../../src/geometry/placement.js';
import type { FlatPart, Part } from '../../src/model/part.js';
import { markRules } from '../../src/proof/marks.js';
import { heron } from '../camera/worked.js';
import { placed, rect, tinyBuild, tinyPlate } from './tiny.js';

const found = (rule: string, ...parts: readonly Part[]) =>
  markRules(tinyBuild(...parts)).filter((finding) => finding.rule === rule);

const mirrorX = frame([-1, 0, 0], [0, 1, 0], [0, 0, 1], [0, 0, 0]);
const half = (axis: 'x' | 'y' | 'z'): Matrix4 => {
  const sign = (k: string) => (k === axis ? 1 : -1);
  return frame([sign('x'), 0, 0], [0, sign('y'), 0], [0, 0, sign('z')], [0, 0, 0]);
};

/** A scale of 100 × 20 lying with its words up, one's own y towards the lens. */
const scale = (turn = 0, matrix: Matrix4 = shift(0, 0, 0)): FlatPart =>
  placed(
    tinyPlate({
      id: 'scale',
      across: 'y',
      low: 0,
      outline: rect(-50, -10, 50, 10),
      change: { marks: [{ text: '1:2', x: 0, y: 0, height: 3, turn }] },
    }),
    compose(matrix, matrixOf('up', 0, 4)),
  );

describe('words', () => {
  test.each([
    { turn: 0, why: 'read from behind' },
    { turn: Math.PI / 2, why: 'read from the side' },
    { turn: -Math.PI / 2, why: 'read from the other side' },
  ])('are right when $why', ({ turn }) => expect(found('mirror-text', scale(turn))).toEqual([]));

  test('stand on their heads when the scale lies end for end', () => {
    const [finding] = found('mirror-text', scale(0, half('y')));
    expect(finding).toMatchObject({ level: 'error', value: 1, limit: 0 });
    expect(finding?.message).toBe(
      'What is engraved on scale (plate scale) stands on its head where it is seen, as “1:2”.',
    );
    expect(found('mirror-text', scale(Math.PI, half('y')))).toEqual([]);
  });

  test('are mirrored when the scale is', () =>
    expect(found('mirror-text', scale(0, mirrorX))[0]?.message).toContain('is mirrored where it is seen'));

  test('on a face that is covered do no harm', () => {
    const lid = tinyPlate({ id: 'lid', across: 'y', low: 10, outline: rect(-60, -60, 60, 60) });
    expect(found('mirror-text', scale(0, mirrorX), lid)).toEqual([]);
    const besides = tinyPlate({ id: 'lid', across: 'y', low: 10, outline: rect(10, -60, 60, 60) });
    expect(found('mirror-text', scale(0, mirrorX), besides)).toHaveLength(1);
  });

  test.each([
    { facing: 'rear', low: 0 },
    { facing: 'front', low: 0 },
    { facing: 'left', low: 0 },
    { facing: 'right', low: 0 },
  ] as const)('on a face that looks to the $facing: heads up are right, heads down are not', ({ facing, low }) => {
    const wall = (turn: number) =>
      placed(
        tinyPlate({
          id: 'wall',
          across: 'z',
          low: 0,
          outline: rect(-50, -50, 50, 50),
          change: { marks: [{ text: 'up', x: 0, y: 0, height: 3, turn }] },
        }),
        matrixOf(facing, low, 4),
      );
    expect(found('mirror-text', wall(0))).toEqual([]);
    expect(found('mirror-text', wall(Math.PI))).toHaveLength(1);
  });
});

describe('the mark of a part', () => {
  const below = tinyPlate({ id: 'below', across: 'y', low: 0, outline: rect(-50, -50, 50, 50) });
  const top = (facing: 'up' | 'down') =>
    placed(tinyPlate({ id: 'top', across: 'y', low: 4, outline: rect(-40, -40, 40, 40) }), matrixOf(facing, 4, 4));
  const ofTop = (...parts: readonly Part[]) =>
    found('id-hidden', ...parts).filter(({ message }) => message.startsWith('top'));

  test('on the upper face of what is glued below shows', () => {
    const [finding] = ofTop(below, top('up'));
    expect(finding).toMatchObject({ level: 'warning', value: 100, limit: 50, unit: '%' });
  });
  test('on the glued face does not', () => expect(ofTop(below, top('down'))).toEqual([]));
  test('on a face that looks down does not either', () => expect(ofTop(top('down'))).toEqual([]));
  test('must be somewhere, where both faces show', () =>
    expect(found('id-hidden', tinyPlate({ id: 'wall', across: 'z', low: 0, outline: rect(-40, -40, 40, 40) }))).toEqual(
      [],
    ));
  test('is hidden under what lies on it', () => {
    const lid = tinyPlate({ id: 'lid', across: 'y', low: 8, outline: rect(-40, -40, 40, 40) });
    expect(ofTop(below, top('up'), lid)).toEqual([]);
  });
});

describe('Heron', () => {
  test('reads right, and hides its marks', () => expect(markRules(heron.build)).toEqual([]));

  const changed = (id: string, matrix: (old: Matrix4) => Matrix4): Build => ({
    ...heron.build,
    parts: heron.build.parts.map((part) =>
      part.id === id
        ? { ...part, placements: part.placements.map((one) => ({ ...one, matrix: matrix(one.matrix) })) }
        : part,
    ),
  });

  test('a keeper placed as its own mirror image', () => {
    const [finding] = markRules(changed('T3', (old) => compose(mirrorX, old)));
    expect(finding).toMatchObject({ rule: 'mirror-text', level: 'error' });
    expect(finding?.message).toMatch(/^What is engraved on T3 .*is mirrored/);
  });

  test('a side of the front box with its mark outside', () => {
    // the right-hand side, engraved to the left, in the place of the left-hand one
    const right = heron.build.parts.find(({ id }) => id === 'F2R') as FlatPart;
    const low = spanOf(heron.build, 'F2L').x[0];
    const outwards: FlatPart = {
      ...placed(right, matrixOf('left', low, right.thickness)),
      id: 'F2L',
      name: 'left side',
    };
    const over = { ...heron.build, parts: heron.build.parts.map((part) => (part.id === 'F2L' ? outwards : part)) };
    const rules = markRules(over).map(({ rule, message }) => `${rule}: ${message}`);
    expect(rules).toHaveLength(1);
    expect(rules[0]).toMatch(/^id-hidden: F2L \(left side\) carries its mark on the face that shows/);
  });
});
