import { describe, expect, test } from 'vitest';
import { polygon } from '../../src/geometry/path.js';
import { cornerOwners } from '../../src/proof/corner-owner.js';
import { heron, moving, recut } from '../camera/worked.js';
import { rect, tinyBuild, tinyPlate } from './tiny.js';

/** A panel across z that keeps the edge but for one notch, and a side across x with a finger in it, `open` short on each side. */
const edge = (open: number, reach = 0) =>
  tinyBuild(
    tinyPlate({
      id: 'panel',
      across: 'z',
      low: 0,
      outline: polygon([
        [0, 0],
        [100, 0],
        [100, 100],
        [0, 100],
        [0, 60],
        [4, 60],
        [4, 40],
        [0, 40],
      ]),
    }),
    tinyPlate({
      id: 'side',
      across: 'x',
      low: 0,
      outline: polygon([
        [4, 0],
        [60, 0],
        [60, 100],
        [4, 100],
        [4, 60 - open],
        [reach, 60 - open],
        [reach, 40 + open],
        [4, 40 + open],
      ]),
    }),
  );
const atEdge = (open: number, reach?: number) => cornerOwners(edge(open, reach), [['panel', 'side']]);

describe('an edge of two panels', () => {
  test.each([
    { open: 0, what: 'tight' },
    { open: 0.04, what: 'the usual glue slip, 0.08 in all' },
    { open: 0.2, what: 'as far open as a glued joint may be' },
    { open: -0.01, what: 'a press fit' },
  ])('$what: every cell has one owner', ({ open }) => expect(atEdge(open)).toEqual([]));

  test('a finger 0.4 narrower on each side leaves two slits without an owner', () => {
    const found = atEdge(0.4);
    expect(found.map(({ value }) => value?.toFixed(2))).toEqual(['0.40', '0.40']);
    expect(found[0]).toMatchObject({ rule: 'corner-owner', level: 'error' });
    expect(found[0]?.message).toBe(
      'Where panel and side meet, 0.4 mm of the corner belong to neither, round x 2 mm, y 40.2 mm, z 2 mm: light comes in.',
    );
  });

  test('a finger half a millimetre short leaves a hollow in the face', () =>
    expect(atEdge(0, 0.5).map(({ value }) => value?.toFixed(2))).toEqual(['0.50']));

  test('a finger a millimetre wider on each side has cells that the panel has too', () => {
    const found = atEdge(-1);
    expect(found.map(({ value }) => value?.toFixed(2))).toEqual(['1.00', '1.00']);
    expect(found[0]?.message).toContain('panel and side both have the corner round x 2 mm, y 39.5 mm, z 2 mm');
  });
});

describe('a corner of three panels', () => {
  /** @param corner y from which on the side has the corner, instead of the panel */
  const corner = (from: number) =>
    tinyBuild(
      tinyPlate({
        id: 'panel',
        across: 'z',
        low: 0,
        outline: polygon([
          [0, 0],
          [100, 0],
          [100, 100],
          [60, 100],
          [60, 96],
          [40, 96],
          [40, 100],
          [4, 100],
          ...(from < 100 ? ([[4, from]] as const) : []),
          [0, from],
          [0, 60],
          [4, 60],
          [4, 40],
          [0, 40],
        ]),
      }),
      tinyPlate({
        id: 'side',
        across: 'x',
        low: 0,
        outline: polygon([
          [4, 0],
          [60, 0],
          [60, 100],
          [50, 100],
          [50, 96],
          [30, 96],
          [30, 100],
          ...(from < 100
            ? ([
                [0, 100],
                [0, from],
                [4, from],
              ] as const)
            : ([[4, 100]] as const)),
          [4, 60],
          [0, 60],
          [0, 40],
          [4, 40],
        ]),
      }),
      tinyPlate({
        id: 'top',
        across: 'y',
        low: 96,
        outline: polygon([
          [4, 4],
          [40, 4],
          [40, 0],
          [60, 0],
          [60, 4],
          [100, 4],
          [100, 60],
          [4, 60],
          [4, 50],
          [0, 50],
          [0, 30],
          [4, 30],
        ]),
      }),
    );
  const at = (from: number) => cornerOwners(corner(from), [['panel', 'side', 'top']]);

  test('kept whole by the panel', () => expect(at(100)).toEqual([]));
  test('kept whole by the side', () => expect(at(96)).toEqual([]));
  test('divided between the two', () => {
    const found = at(98);
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toMatch(/^The corner where panel, side and top meet.*is divided between panel and side/);
  });
});

describe('Heron', () => {
  const outlineOf = (id: string) => {
    const part = heron.build.parts.find((one) => one.id === id);
    if (part?.kind !== 'flat') throw new Error(`there is no plate ${id}`);
    return part.outline;
  };

  test('has one owner for every cell of both boxes', () => expect(cornerOwners(heron.build)).toEqual([]));

  test('a side one finger too high has two owners here and none there', () => {
    const found = cornerOwners(moving('F2L', { y: 12 })).map(({ message }) => message);
    expect(found.some((told) => /F1 and F2L both have the corner/.test(told))).toBe(true);
    expect(found.some((told) => /Where F1 and F2L meet, .* belong to neither/.test(told))).toBe(true);
  });

  test('a panel whose upper corner was clipped lets light in there', () => {
    const top = Math.max(...outlineOf('F1').map(({ y }) => y));
    const left = Math.min(...outlineOf('F1').map(({ x }) => x));
    const clipped = outlineOf('F1').map((v) => (v.x === left && v.y === top ? { ...v, x: v.x + 4, y: v.y - 4 } : v));
    const [first] = cornerOwners(recut('F1', clipped));
    expect(first?.message).toMatch(/Where F1 and F2[LR] meet, .* belong to neither/);
  });

  test('a top a millimetre too wide wants what the sides have', () => {
    const wide = outlineOf('F3').map((v) => ({ ...v, x: v.x + (Math.abs(v.x) > 99 ? Math.sign(v.x) : 0) }));
    expect(cornerOwners(recut('F3', wide)).some(({ message }) => /F2[LR] and F3 both have/.test(message))).toBe(true);
  });
});

test('two plates that only touch have no edge in common', () =>
  expect(
    cornerOwners(
      tinyBuild(
        tinyPlate({ id: 'panel', across: 'z', low: 0, outline: rect(0, 0, 100, 100) }),
        tinyPlate({ id: 'side', across: 'x', low: 0, outline: rect(4, 0, 60, 100) }),
      ),
      [['panel', 'side']],
    ),
  ).toEqual([]));
