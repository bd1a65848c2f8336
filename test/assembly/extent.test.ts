import { describe, expect, test } from 'vitest';
import { boxesOf, type Extent, slidBox } from '../../src/assembly/extent.js';
import { across, frame, type Matrix4, quarterTurn } from '../../src/geometry/placement.js';
import { circle, rectangle } from '../../src/geometry/shapes.js';
import { boughtPlate, boughtRod } from '../../src/joinery/plate.js';
import type { Placement } from '../../src/model/part.js';

/** 30 wide, 20 high, 4 thick, its corner in its own origin. */
const card = (...placements: readonly Placement[]) =>
  boughtPlate({
    id: 'card',
    name: 'card',
    thickness: 4,
    outline: rectangle({ left: 0, bottom: 0, right: 30, top: 20 }),
    placements,
    massKg: 0,
  });

const boxOf = (matrix: Matrix4, group: Placement['group'] = 'rear', rear = 0): Extent => {
  const [box] = boxesOf(card({ group, matrix }));
  if (box === undefined) throw new Error('a placed part has a box');
  return slidBox(box, rear);
};

function expectExtent({ x, y, z }: Extent, expected: readonly [number, number, number, number, number, number]) {
  for (const [i, value] of [...x, ...y, ...z].entries()) expect(value).toBeCloseTo(expected[i] ?? Number.NaN, 9);
}

/** Plane geometry: where the eight corners come to. */
describe('the upright box round a placed part', () => {
  const half = Math.SQRT1_2;
  test.each<{ how: string; matrix: Matrix4; extent: [number, number, number, number, number, number] }>([
    { how: 'as it was drawn', matrix: across(5, -2, 7), extent: [5, 35, -2, 18, 7, 11] },
    { how: 'turned by a quarter', matrix: quarterTurn, extent: [-20, 0, 0, 30, 0, 4] },
    {
      how: 'turned over about its own y',
      matrix: frame([-1, 0, 0], [0, 1, 0], [0, 0, -1], [0, 0, 10]),
      extent: [-30, 0, 0, 20, 6, 10],
    },
    {
      how: 'turned by an eighth: 30/√2 to the right, 20/√2 to the left, 50/√2 high',
      matrix: frame([half, half, 0], [-half, half, 0], [0, 0, 1], [0, 0, 0]),
      extent: [-20 * half, 30 * half, 0, 50 * half, 0, 4],
    },
  ])('$how', ({ matrix, extent }) => expectExtent(boxOf(matrix), extent));

  test('slides with the rear, and stands still with the front', () => {
    expect(boxOf(across(0, 0, 7), 'rear', 40).z).toEqual([47, 51]);
    expect(boxOf(across(0, 0, 7), 'front', 40).z).toEqual([7, 11]);
  });

  test('a disc and a rod are as high as they are wide', () => {
    const placements = [{ group: 'rear', matrix: across(0, 0, 0) }] as const;
    const disc = boughtPlate({
      id: 'd',
      name: 'd',
      thickness: 1,
      outline: circle(3, 1, 16),
      placements,
      massKg: 0,
    });
    const rod = boughtRod({ id: 'r', name: 'r', diameter: 6, length: 25, placements, massKg: 0 });
    const [first] = boxesOf(disc);
    const [second] = boxesOf(rod);
    expect(first?.extent).toEqual({ x: [-5, 11], y: [-7, 9], z: [0, 1] });
    expect(second?.extent).toEqual({ x: [-3, 3], y: [-3, 3], z: [0, 25] });
  });

  test('the round end of a button bulges past its corners, turned too', () => {
    const round = boughtPlate({
      id: 'b',
      name: 'b',
      thickness: 4,
      outline: [
        { x: 5, y: -15, bulge: 0 },
        { x: 5, y: 0, bulge: 1 },
        { x: -5, y: 0, bulge: 0 },
        { x: -5, y: -15, bulge: 1 },
      ],
      placements: [across(0, 0, 0), frame([0, 1, 0], [-1, 0, 0], [0, 0, 1], [0, 0, 0])].map((matrix) => ({
        group: 'rear',
        matrix,
      })),
      massKg: 0,
    });
    // half circles of radius 5 round (0, 0) and (0, -15)
    const [upright, turned] = boxesOf(round).map(({ extent }) => extent);
    for (const [extent, x, y] of [
      [upright, [-5, 5], [-20, 5]],
      [turned, [-5, 20], [-5, 5]],
    ] as const)
      for (const end of [0, 1] as const) {
        expect(extent?.x[end]).toBeCloseTo(x[end], 12);
        expect(extent?.y[end]).toBeCloseTo(y[end], 12);
      }
  });

  test('one box for each place', () => {
    const places: readonly Placement[] = [0, 10, 20].map((z) => ({ group: 'rear', matrix: across(0, 0, z) }));
    expect(boxesOf(card(...places)).map(({ extent }) => extent.z[0])).toEqual([0, 10, 20]);
    expect(boxesOf(card(...places), places.slice(1))).toHaveLength(2);
    expect(boxesOf(card())).toEqual([]);
  });
});
