import { describe, expect, test } from 'vitest';
import { type Piece, piecesOf } from '../../../src/assembly/pieces.js';
import { firstMet } from '../../../src/assembly/sight-line.js';
import type { Insert } from '../../../src/camera/tank-fittings/insert.js';
import { leftIn, throatsOf, turnsOf } from '../../../src/camera/tank-fittings/measure.js';
import { placeFunnel } from '../../../src/camera/tank-fittings/place.js';
import { funnelRecipe, insertRecipe } from '../../../src/camera/tank-fittings/recipe.js';
import { across, frame, type Matrix4 } from '../../../src/geometry/placement.js';
import { circle } from '../../../src/geometry/shapes.js';
import type { SolidRecipe } from '../../../src/geometry/solid.js';
import { drownedMl } from './cells.js';
import { fittedTank } from './fitted.js';
import { tankOf } from './given.js';

/** A print by itself, where it is printed. */
function pieceOf(
  solid: SolidRecipe,
  size: readonly [number, number, number],
  matrix: Matrix4 = across(0, 0, 0),
): Piece {
  const [piece] = piecesOf([
    {
      kind: 'printed',
      id: 'print',
      name: 'print',
      material: 'PETG',
      solid,
      size,
      placements: [{ group: 'front', matrix }],
      joins: [],
      massKg: 0,
    },
  ]);
  if (piece === undefined) throw new Error('a print stands somewhere');
  return piece;
}

const insertPiece = (insert: Insert, solid = insertRecipe(insert)) => pieceOf(solid, insert.size);

const tanks = [
  { deep: 10, wall: 15 },
  { deep: 12, wall: 11 },
  { deep: 15.2, wall: 15 },
  { deep: 25, wall: 18 },
].map((size) => ({ name: `${size.deep} deep, wall ${size.wall}`, fittings: fittedTank(tankOf(size)).fittings }));

describe.each(tanks)('a tank $name', ({ fittings }) => {
  const { spout, vent, funnel } = fittings;

  test('60 mm² and 15 mm² go through everywhere', () => {
    const least = (insert: Insert) => {
      const { bore, roof, openings, legs, exit } = throatsOf(insert, insertRecipe(insert));
      expect(openings).toHaveLength(4);
      expect(legs).toHaveLength(3);
      return Math.min(bore, roof, ...openings, ...legs, exit);
    };
    expect(least(spout)).toBeGreaterThan(60 - 0.01);
    expect(least(vent)).toBeGreaterThan(15);
    // what is said of it for reckoning its flow
    expect(spout.passage.area).toBeCloseTo(least(spout), 1);
    expect(vent.passage.area).toBeCloseTo(least(vent), 0);
  });

  test('light turns back twice, each time past twice the gap, at one side and the other', () => {
    for (const insert of [spout, vent]) {
      const [first, second] = turnsOf(insert, insertRecipe(insert));
      for (const turn of [first, second]) expect(turn?.overlap).toBeGreaterThan(2 * (turn?.gap ?? 0) - 1e-3);
      expect(first?.side).toBe(-(second?.side ?? 0));
    }
  });

  test('no straight line comes through, with the funnel on or off', () => {
    const on = pieceOf(funnelRecipe(funnel), funnel.size, placeFunnel(spout, funnel));
    expect(linesThrough(spout, [insertPiece(spout)])).toBe(0);
    expect(linesThrough(spout, [insertPiece(spout), on])).toBe(0);
    expect(linesThrough(vent, [insertPiece(vent)])).toBe(0);
  });

  test('tilted by 15° to its corner it runs empty but for less than a millilitre, and the chamber altogether', () => {
    const { inInsert, inChamber } = leftIn(spout, insertRecipe(spout), Math.PI / 12);
    expect(inInsert).toBeLessThan(1);
    expect(inChamber).toBe(0);
  });
});

describe('what stays behind is what a search among cells finds that knows of no rooms', () => {
  test.each([
    { deep: 15.2, wall: 15, degrees: 0 },
    { deep: 15.2, wall: 15, degrees: 20 },
    { deep: 15.2, wall: 15, degrees: 45 },
    { deep: 10, wall: 15, degrees: 30 },
  ])('in a chamber $deep deep, tilted by $degrees°', ({ deep, wall, degrees }) => {
    const { spout } = fittedTank(tankOf({ deep, wall })).fittings;
    const tilt = (degrees * Math.PI) / 180;
    const { inInsert } = leftIn(spout, insertRecipe(spout), tilt);
    // cells of half a millimetre, taken whole: a quarter of one all over the surface of the water in four rooms
    expect(Math.abs(drownedMl(spout, insertPiece(spout), tilt) - inInsert)).toBeLessThan(0.06 + 0.1 * inInsert);
  });
});

describe('the measures see what is wrong', () => {
  const { spout } = fittedTank().fittings;

  test('lines come through where a hole is bored from corner to corner', () => {
    const { add, cut } = insertRecipe(spout);
    const { rooms, axis, middle, height, neck } = spout;
    const from = { u: (rooms[0].from + rooms[0].to) / 2, w: -1 };
    const to = { u: axis.u, w: height.high + neck.rim + 1 };
    const long = Math.hypot(to.u - from.u, to.w - from.w);
    const [s, c] = [(to.u - from.u) / long, (to.w - from.w) / long];
    const bored = {
      profile: circle(0, 0, 4),
      holes: [],
      height: long,
      matrix: frame([c, 0, -s], [0, 1, 0], [s, 0, c], [from.u - middle.u, -middle.v, from.w]),
    };
    expect(linesThrough(spout, [insertPiece(spout, { add, cut: [...cut, bored] })])).toBeGreaterThan(0);
  });

  test('a leg whose roof hangs lower than the others holds back what stands behind it', () => {
    const rooms = spout.rooms.map((room, i) => (i === 3 ? { ...room, roof: room.roof - 6 } : room));
    const solid = insertRecipe({ ...spout, rooms: rooms as unknown as Insert['rooms'] });
    const { inInsert } = leftIn(spout, solid, 0);
    // three rooms 11.8 long, of 5.1, 3.9 and 3.9: the roofs before it are 4.1, 2.6 and 1.3 lower than its own was
    const [exit, c, b, a] = spout.rooms;
    const sill = a.roof - 6;
    const rows = [exit, c, b].map(
      ({ from, to, roof }) => (to - from + spout.baffle * (1 / 3)) * Math.max(0, roof - sill),
    );
    expect(inInsert).toBeCloseTo((rows.reduce((sum, row) => sum + row, 0) * spout.inside) / 1000, 1);
    expect(inInsert).toBeGreaterThan(0.3);
  });
});

/** Straight lines from a grid of points in the exit to one in the rim that nothing stops. */
function linesThrough(insert: Insert, pieces: readonly Piece[]): number {
  const { rooms, inside: deep, axis, neck, height, middle } = insert;
  const [exit] = rooms;
  const grid = (u: number, v: number, across: number, along: number, w: number) =>
    [-0.45, -0.27, -0.09, 0.09, 0.27, 0.45].flatMap((s) =>
      [-0.45, -0.27, -0.09, 0.09, 0.27, 0.45].map((t) => ({
        x: u + s * across - middle.u,
        y: v + t * along - middle.v,
        z: w,
      })),
    );
  const mouth = grid((exit.from + exit.to) / 2, 0, exit.to - exit.from, deep, -0.5);
  const rim = grid(axis.u, axis.v, neck.bore.width, neck.bore.depth, height.high + neck.rim + 0.5);
  const standing = pieces.map((piece) => ({ piece, shift: [0, 0, 0] as const }));
  return mouth.flatMap((from) =>
    rim.filter((to) => {
      const towards = { x: to.x - from.x, y: to.y - from.y, z: to.z - from.z };
      const met = firstMet({ from, towards }, standing);
      return met === null || met.at >= 1;
    }),
  ).length;
}
