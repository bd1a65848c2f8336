import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/assembly/build.js';
import {
  boxOf,
  holeRound,
  type Loop,
  leastBetween,
  leastFrom,
  narrowestBand,
  partOf,
  plateOf,
  platesOf,
  reach,
  sidesOf,
} from '../../src/assembly/measure.js';
import { matrixOf } from '../../src/geometry/facing.js';
import { across } from '../../src/geometry/placement.js';
import { box, boxAt, circle, rectangle, slotAlongY } from '../../src/geometry/shapes.js';
import { type PlateGiven, plate } from '../../src/joinery/plate.js';
import type { Part } from '../../src/model/part.js';

/** Plane geometry, by hand. */

const ply = { material: 'plywood-4', thickness: 4, density: 680 };
const cut = (given: Partial<PlateGiven>): Part =>
  plate({
    id: 'P',
    name: 'plate',
    ply,
    facing: 'rear',
    low: 0,
    group: 'rear',
    grain: 'any',
    outline: rectangle(box(-10, -20, 30, 40)),
    ...given,
  });
const built = (...parts: readonly Part[]): Build => ({
  parts,
  stations: [{ name: 'closest', rear: 0 }],
  setups: [],
  gate: { z: 0, width: 1, height: 1 },
  opening: { z: 0, diameter: 1 },
});

describe('a plate is drawn in the axes of the camera, whichever way it faces', () => {
  test.each([
    { facing: 'rear', thickAlong: 'z' },
    { facing: 'front', thickAlong: 'z' },
    { facing: 'left', thickAlong: 'x' },
    { facing: 'right', thickAlong: 'x' },
    { facing: 'up', thickAlong: 'y' },
    { facing: 'down', thickAlong: 'y' },
  ] as const)('facing $facing', ({ facing, thickAlong }) => {
    const hole = rectangle(box(0, 0, 5, 7));
    const standing = plateOf(built(cut({ facing, low: 100, holes: [hole] })), 'P');
    expect(standing).toMatchObject({ thickAlong, low: 100, high: 104 });
    expect(boxOf(standing.outline)).toEqual({ left: -10, bottom: -20, right: 30, top: 40 });
    expect(standing.holes.map(boxOf)).toEqual([{ left: 0, bottom: 0, right: 5, top: 7 }]);
  });

  test('what slides is slid along z, what stands in front is not', () => {
    const across = (group: 'front' | 'rear') => plateOf(built(cut({ group })), 'P', { rear: 50 });
    expect(across('rear')).toMatchObject({ low: 50, high: 54 });
    expect(across('front')).toMatchObject({ low: 0, high: 4 });
    const wall = plateOf(built(cut({ facing: 'left' })), 'P', { rear: 50 });
    expect(boxOf(wall.outline)).toEqual({ left: 40, bottom: -20, right: 80, top: 40 });
  });

  test('in each of its places, and in those of a set-up', () => {
    const upright = { group: 'back', matrix: matrixOf('rear', 0, 4), when: ['up'] } as const;
    const aside = { group: 'back', matrix: across(100, 0, 8), when: ['aside'] } as const;
    const build = built(cut({ places: [upright, aside] }));
    expect(platesOf(build, 'P').map(({ low }) => low)).toEqual([0, 8]);
    const setup = { name: 'aside', holder: 'h', orientation: 'upright', loads: 'top', focusing: true } as const;
    expect(platesOf(build, 'P', { setup }).map(({ low }) => low)).toEqual([8]);
  });

  test('what is not there is told', () => {
    expect(platesOf(built(), 'P')).toEqual([]);
    expect(() => plateOf(built(), 'P')).toThrow(/no plate P/);
    expect(() => partOf(built(), 'P')).toThrow(/no P/);
  });
});

describe('holes', () => {
  const standing = (...holes: readonly ReturnType<typeof circle>[]) => plateOf(built(cut({ holes })), 'P');

  test('the smallest one round a point', () => {
    const { holes, ...rest } = standing(circle(0, 0, 10), circle(20, 20, 6), rectangle(boxAt(0, 0, 16, 16)));
    expect(sidesOf(holeRound({ ...rest, holes }) ?? []).width).toBeCloseTo(10, 12);
    expect(sidesOf(holeRound({ ...rest, holes }, { x: 20, y: 21 }) ?? []).width).toBeCloseTo(6, 12);
    expect(holeRound({ ...rest, holes }, { x: -9, y: -19 })).toBeNull();
  });

  test('round ends are measured to their farthest points', () => {
    const [slot] = standing(slotAlongY(3, 5, 6.6, 40)).holes;
    expect(sidesOf(slot ?? [])).toEqual({ width: expect.closeTo(6.6, 12), height: expect.closeTo(40, 12) });
  });
});

describe('distances', () => {
  const square: Loop = rectangle(boxAt(0, 0, 20, 20));

  test('from a point along a line, up to the edge', () => {
    expect(reach(square, { x: 0, y: 0 }, { x: 1, y: 0 })).toBe(10);
    expect(reach(square, { x: 4, y: 0 }, { x: -2, y: 0 })).toBe(14);
    expect(reach(square, { x: 0, y: 0 }, { x: 1, y: 1 })).toBeCloseTo(Math.sqrt(200), 12);
    expect(reach(square, { x: 30, y: 0 }, { x: -1, y: 0 })).toBe(20);
    expect(reach(square, { x: 30, y: 0 }, { x: 1, y: 0 })).toBe(Infinity);
  });

  test('from a point to the nearest edge or corner', () => {
    expect(leastFrom({ x: 7, y: 1 }, square)).toBe(3);
    expect(leastFrom({ x: 13, y: 14 }, square)).toBe(5); // 3, 4, 5 from the corner
  });

  test('between two loops: parallel edges, corner to edge, crossing', () => {
    expect(leastBetween(square, rectangle(boxAt(0, 0, 30, 26)))).toBe(3);
    expect(leastBetween(square, rectangle(boxAt(30, 0, 20, 20)))).toBe(10);
    // a diamond that points at the square
    const diamond = [
      { x: 12, y: 0 },
      { x: 20, y: -8 },
      { x: 28, y: 0 },
      { x: 20, y: 8 },
    ];
    expect(leastBetween(square, diamond)).toBe(2);
    expect(leastBetween(square, rectangle(boxAt(8, 0, 20, 8)))).toBe(0);
  });

  test('the narrowest band of a plate: to its edge, between two holes', () => {
    const band = (...holes: readonly ReturnType<typeof rectangle>[]) =>
      narrowestBand(plateOf(built(cut({ holes })), 'P'));
    expect(band()).toBe(Infinity);
    expect(band(rectangle(box(-8, 0, 5, 5)))).toBe(2);
    expect(band(rectangle(box(0, 0, 5, 5)), rectangle(box(6, 0, 11, 5)))).toBe(1);
  });
});
