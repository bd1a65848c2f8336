import { describe, expect, test } from 'vitest';
import { piecesOf } from '../../src/assembly/pieces.js';
import { firstMet } from '../../src/assembly/sight-line.js';
import { reversed } from '../../src/geometry/path.js';
import { frame } from '../../src/geometry/placement.js';
import { circle, rectangle } from '../../src/geometry/shapes.js';
import type { Part, PrintedPart } from '../../src/model/part.js';
import { plateAt } from '../proof/dark-box.js';

const HERE = frame([1, 0, 0], [0, 1, 0], [0, 0, 1], [0, 0, 0]);

/** Where a line meets a part first, in lengths of its direction; null where it passes. */
function met(part: Part, from: readonly [number, number, number], towards: readonly [number, number, number]) {
  const [x, y, z] = from;
  const [dx, dy, dz] = towards;
  const standing = piecesOf([part]).map((piece) => ({ piece, shift: [0, 0, 0] as const }));
  return firstMet({ from: { x, y, z }, towards: { x: dx, y: dy, z: dz } }, standing)?.at ?? null;
}

/** 40 × 20, 4 thick, with a round hole of 10 in its middle. */
const plate = plateAt({
  id: 'plate',
  outline: rectangle({ left: -20, right: 20, bottom: -10, top: 10 }),
  holes: [circle(0, 0, 10)],
  matrix: HERE,
});

describe('a straight line and a plate with a hole', () => {
  test.each([
    { name: 'falls on its face', from: [12, 0, 10], towards: [0, 0, -1], at: 6 },
    { name: 'comes from the other side', from: [12, 0, -10], towards: [0, 0, 2], at: 5 },
    { name: 'runs along inside it, to its edge', from: [-30, 8, 2], towards: [1, 0, 0], at: 10 },
    { name: 'goes through the hole', from: [4.9, 0, 10], towards: [0, 0, -1], at: null },
    { name: 'misses the hole', from: [5.1, 0, 10], towards: [0, 0, -1], at: 6 },
    // in at x −4 above, out at x 4 below: 8 across in 4 of depth, wall of the hole nowhere in between
    { name: 'slants through the hole', from: [-6, 0, 5], towards: [2, 0, -1], at: null },
    // in at x 0 on the upper face (z 4) it meets the wall, x = 5, after 5 across: z 4 − 2.5 = 1.5
    { name: 'slants into the wall of the hole', from: [-2, 0, 5], towards: [2, 0, -1], at: 3.5 },
    { name: 'passes beside it', from: [20.001, 0, 10], towards: [0, 0, -1], at: null },
    { name: 'goes the other way', from: [12, 0, 10], towards: [0, 0, 1], at: null },
  ] as const)('$name', ({ from, towards, at }) => {
    const here = met(plate, from, towards);
    if (at === null) expect(here).toBeNull();
    else expect(here).toBeCloseTo(at, 9);
  });

  test('a true arc, not a chord: between the corners of any polygon of a thousand sides', () => {
    const turn = Math.PI / 1000;
    const [x, y] = [4.99999 * Math.cos(turn), 4.99999 * Math.sin(turn)];
    expect(met(plate, [x, y, 10], [0, 0, -1])).toBeNull();
    expect(met(plate, [(x * 5.00001) / 4.99999, (y * 5.00001) / 4.99999, 10], [0, 0, -1])).toBeCloseTo(6, 9);
  });
});

describe('a straight line and other things', () => {
  const rod: Part = {
    kind: 'bought',
    id: 'rod',
    name: 'rod',
    shape: { form: 'cylinder', diameter: 6, length: 30 },
    placements: [{ group: 'front', matrix: HERE }],
    joins: [],
    massKg: 0,
  };
  test('a rod is met at its round side', () => expect(met(rod, [-10, 0, 15], [1, 0, 0])).toBeCloseTo(7, 9));
  test('a rod is met off its middle farther on', () =>
    expect(met(rod, [-10, 1.8, 15], [1, 0, 0])).toBeCloseTo(10 - 2.4, 9)); // 3-4-5 triangle, times 0.6
  test('a rod is passed', () => expect(met(rod, [-10, 3.001, 15], [1, 0, 0])).toBeNull());

  const tube: PrintedPart = {
    kind: 'printed',
    id: 'tube',
    name: 'tube',
    material: 'PETG',
    solid: {
      add: [{ profile: circle(0, 0, 20), holes: [], height: 10, matrix: HERE }],
      cut: [
        { profile: circle(0, 0, 12), holes: [], height: 6, matrix: frame([1, 0, 0], [0, 1, 0], [0, 0, 1], [0, 0, -1]) },
      ],
    },
    size: [20, 20, 10],
    placements: [{ group: 'front', matrix: HERE }],
    joins: [],
    massKg: 0,
  };
  test('a printed thing lets light into its bore, to the bottom of it', () =>
    expect(met(tube, [0, 0, -5], [0, 0, 1])).toBeCloseTo(10, 9));
  test('a printed thing is solid beside its bore', () => expect(met(tube, [8, 0, -5], [0, 0, 1])).toBeCloseTo(5, 9));

  // 20 across at the foot, 10 at the top, 10 high: 8 in radius at a height of 4
  const cone: PrintedPart = {
    ...tube,
    solid: { add: [{ profile: circle(0, 0, 20), holes: [], height: 10, matrix: HERE, taper: 0.5 }], cut: [] },
  };
  test.each([
    { name: 'a cone is met where it is as thick as it is there', from: [-20, 0, 4], towards: [1, 0, 0], at: 12 },
    // 4.8² + 6.4² = 8²
    { name: 'and off its middle farther on', from: [-20, 4.8, 4], towards: [1, 0, 0], at: 20 - 6.4 },
    { name: 'by a line along its other side', from: [-12, 0, 12], towards: [0.5, 0, -1], at: 8 },
    { name: 'on its top', from: [4.9, 0, 20], towards: [0, 0, -1], at: 10 },
    { name: 'past its top on its side', from: [6, 0, 20], towards: [0, 0, -1], at: 12 },
    { name: 'not above it', from: [-20, 5.1, 9.9], towards: [1, 0, 0], at: null },
  ] as const)('$name', ({ from, towards, at }) => {
    const here = met(cone, from, towards);
    if (at === null) expect(here).toBeNull();
    else expect(here).toBeCloseTo(at, 7);
  });

  test('the ground glass counts as a rectangle, for what comes in past its cut corners is wanted', () => {
    const corner = { x: -20, y: -10, bulge: 0 };
    const cut = rectangle({ left: -20, right: 20, bottom: -10, top: 10 }).flatMap((v) =>
      v.x === corner.x && v.y === corner.y
        ? [
            { x: -20, y: -4, bulge: 0 },
            { x: -14, y: -10, bulge: 0 },
          ]
        : [v],
    );
    const glass = (role?: 'ground-glass'): Part => ({
      kind: 'bought',
      id: 'glass',
      name: 'glass',
      ...(role ? { role } : {}),
      shape: { form: 'plate', thickness: 2, outline: cut, holes: [] },
      placements: [{ group: 'front', matrix: HERE }],
      joins: [],
      massKg: 0,
    });
    expect(met(glass(), [-19, -9, 5], [0, 0, -1])).toBeNull();
    expect(met(glass('ground-glass'), [-19, -9, 5], [0, 0, -1])).toBeCloseTo(3, 9);
    expect(reversed(cut)).toHaveLength(5);
  });
});
