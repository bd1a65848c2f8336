import { describe, expect, test } from 'vitest';
import { area, type ClosedPath, reversed } from '../../src/geometry/path.js';
import { across, apply } from '../../src/geometry/placement.js';
import { rectangle } from '../../src/geometry/shapes.js';
import {
  boughtPlate,
  boughtRod,
  fourCorners,
  joined,
  type PlateGiven,
  plate,
  standing,
} from '../../src/joinery/plate.js';

const board = rectangle({ left: 0, bottom: 0, right: 600, top: 400 });
const window = rectangle({ left: 100, bottom: 100, right: 400, top: 300 });

const given: PlateGiven = {
  id: 'P1',
  name: 'plate',
  ply: { material: 'plywood-4.05', thickness: 4.05, density: 680 },
  facing: 'rear',
  low: 10,
  group: 'front',
  grain: 'x',
  outline: board,
};

/** Corners without the sign of nothing, in an order of their own: where a loop starts does not matter. */
const corners = (loop: ClosedPath) => loop.map(({ x, y }) => `${x + 0} ${y + 0}`).sort();

describe('a plate of sheet', () => {
  test('says what it is', () =>
    expect(plate(given)).toMatchObject({
      kind: 'flat',
      id: 'P1',
      name: 'plate',
      material: 'plywood-4.05',
      thickness: 4.05,
    }));

  test.each([
    { of: 'a whole board', holes: [], mass: 0.66096 }, // M4.04 [common practice, no source]
    { of: 'one with a quarter of it cut out', holes: [window], mass: 0.49572 }, // three quarters of that
    {
      of: 'one with both windows cut out',
      holes: [window, rectangle({ left: 420, bottom: 0, right: 540, top: 100 })],
      mass: 0.462672,
    }, // 14/20 of it: 12 000 mm² more of 240 000
  ])('weighs what its wood weighs: $of', ({ holes, mass }) =>
    expect(plate({ ...given, holes }).massKg).toBeCloseTo(mass, 9),
  );

  test.each(['anticlockwise', 'clockwise'] as const)(
    'drawn %s, its outline runs anticlockwise, its holes clockwise',
    (sense) => {
      const drawn = (loop: ClosedPath) => (sense === 'clockwise' ? reversed(loop) : loop);
      const { outline, holes } = plate({ ...given, outline: drawn(board), holes: [drawn(window)] });
      expect(area(outline)).toBe(240000);
      expect(holes.map(area)).toEqual([-60000]);
      expect(corners(outline)).toEqual(corners(board));
      expect(corners(holes[0] ?? [])).toEqual(corners(window));
    },
  );

  // A plate across the axis, 10 to 14.05, seen from behind as it is drawn, from the front mirrored: a drawing board
  test.each([
    { facing: 'rear' as const, own: { x: 100, y: 300 }, z: 10 },
    { facing: 'front' as const, own: { x: -100, y: 300 }, z: 14.05 },
  ])('looking to the $facing it is cut as seen on that face', ({ facing, own, z }) => {
    const part = plate({
      ...given,
      facing,
      holes: [window],
      strokes: [{ closed: false, vertices: [{ x: 100, y: 300, bulge: 0 }] }],
      marks: [{ text: 'P1', x: 100, y: 300, height: 4, turn: 0 }],
    });
    expect(corners(part.holes[0] ?? [])).toContain(`${own.x} ${own.y}`);
    expect(part.engraving).toEqual([{ closed: false, vertices: [{ ...own, bulge: 0 }] }]);
    expect(part.marks).toEqual([{ text: 'P1', ...own, height: 4, turn: 0 }]);
    expect(part.placements).toHaveLength(1);
    expect(part.placements[0]?.group).toBe('front');
    // its material runs away from the face that the laser sees, and ends up where it was drawn
    expect(apply(part.placements[0]?.matrix ?? [], { ...own, z: 0 })).toEqual({ x: 100, y: 300, z });
  });

  test.each([
    { facing: 'left', grain: 'z', own: 'x' },
    { facing: 'left', grain: 'y', own: 'y' },
    { facing: 'up', grain: 'z', own: 'y' },
    { facing: 'rear', grain: 'any', own: 'any' },
  ] as const)('grain along $grain of a plate that looks $facing lies along its own $own', ({ facing, grain, own }) =>
    expect(plate({ ...given, facing, grain }).grain).toBe(own),
  );

  test('has no holes, strokes, words or joins of its own accord', () =>
    expect(plate(given)).toMatchObject({ holes: [], engraving: [], marks: [], joins: [] }));

  test('stands and joins as told', () => {
    const places = [standing('rear', across(1, 2, 3)), standing('rear', across(-1, 2, 3))];
    const part = plate({ ...given, places, joins: joined('glue', 'P2') });
    expect(part.placements).toEqual(places);
    expect(part.joins).toEqual([{ to: 'P2', by: 'glue' }]);
  });
});

describe('a bought piece', () => {
  const placements = [standing('rear', across(0, 0, 5))];

  test('a plate: its outline anticlockwise, its holes clockwise, however drawn', () => {
    const glass = boughtPlate({
      id: 'glass',
      name: 'ground glass',
      thickness: 2,
      outline: reversed(board),
      holes: [window],
      placements,
      joins: joined('rest', 'G1'),
      massKg: 0.3,
      role: 'ground-glass',
    });
    if (glass.shape.form !== 'plate') throw new Error('a plate is a plate');
    const { outline, holes, thickness } = glass.shape;
    expect(thickness).toBe(2);
    expect(area(outline)).toBe(240000);
    expect(holes.map(area)).toEqual([-60000]);
    expect(glass).toMatchObject({
      kind: 'bought',
      id: 'glass',
      name: 'ground glass',
      role: 'ground-glass',
      placements,
      joins: [{ to: 'G1', by: 'rest' }],
      massKg: 0.3,
    });
  });

  test('a plate with nothing more to say', () =>
    expect(boughtPlate({ id: 'felt', name: 'felt', thickness: 1, outline: board, placements, massKg: 0.01 })).toEqual({
      kind: 'bought',
      id: 'felt',
      name: 'felt',
      shape: { form: 'plate', thickness: 1, outline: board, holes: [] },
      placements,
      joins: [],
      massKg: 0.01,
    }));

  test('a rod', () => {
    const rod = { id: 'pin', name: 'pin', diameter: 5, length: 12, placements, massKg: 0.002 };
    const pin = { kind: 'bought', id: 'pin', name: 'pin', placements, joins: [], massKg: 0.002 };
    expect(boughtRod(rod)).toEqual({ ...pin, shape: { form: 'cylinder', diameter: 5, length: 12 } });
    expect(boughtRod({ ...rod, role: 'lens', joins: joined('press', 'B1') })).toMatchObject({
      role: 'lens',
      joins: [{ to: 'B1', by: 'press' }],
    });
  });
});

describe('places and joins', () => {
  test('one join to each part', () =>
    expect(joined('screw', 'F6', 'F7')).toEqual([
      { to: 'F6', by: 'screw' },
      { to: 'F7', by: 'screw' },
    ]));

  test('always, or in some set-ups only', () => {
    const matrix = across(0, 0, 1);
    expect(standing('loose', matrix)).toEqual({ group: 'loose', matrix });
    expect(standing('loose', matrix, ['glass'])).toEqual({ group: 'loose', matrix, when: ['glass'] });
    expect('when' in standing('loose', matrix)).toBe(false);
  });

  test('four corners, one in each quarter', () =>
    expect(fourCorners(3, 2)).toEqual([
      { x: 3, y: 2 },
      { x: -3, y: 2 },
      { x: -3, y: -2 },
      { x: 3, y: -2 },
    ]));
});
