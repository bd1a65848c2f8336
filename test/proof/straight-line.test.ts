import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { workbench } from '../../src/assembly/workbench.js';
import { loadKernel } from '../../src/geometry/kernel.js';
import { inside, type Point, polygon } from '../../src/geometry/path.js';
import type { Axis, Way } from '../../src/model/assembly-move.js';
import { type Block, blocksOf, inTheWay, lookerOn, ways } from '../../src/proof/straight-line.js';
import { rect, tinyPlate } from './tiny.js';

const kernel = await loadKernel();

/**
 * Plates whose every corner lies on a grid of 5 mm are made of cubes of 5 mm. Whether one passes through another is then
 * counted out cube by cube, with none of the reasoning that is on trial.
 */
const GRID = 5;
const CELLS = 6;

const drawings: {
  readonly [Shape in 'bar' | 'ell' | 'fork' | 'frame']: (
    a: number,
    b: number,
    c: number,
  ) => readonly (readonly (readonly [number, number])[])[];
} = {
  bar: (a, b) => [
    [
      [0, 0],
      [a + 1, 0],
      [a + 1, b + 1],
      [0, b + 1],
    ],
  ],
  ell: (a, b, c) => [
    [
      [0, 0],
      [a + 2, 0],
      [a + 2, 1],
      [Math.min(c + 1, a + 1), 1],
      [Math.min(c + 1, a + 1), b + 2],
      [0, b + 2],
    ],
  ],
  fork: (a, b, c) => [
    [
      [0, 0],
      [3 + a, 0],
      [3 + a, b + 2],
      [2 + a, b + 2],
      [2 + a, 1],
      [1, 1],
      [1, c + 2],
      [0, c + 2],
    ],
  ],
  frame: (a, b) => [
    [
      [0, 0],
      [a + 3, 0],
      [a + 3, b + 3],
      [0, b + 3],
    ],
    [
      [1, 1],
      [1, b + 2],
      [a + 2, b + 2],
      [a + 2, 1],
    ],
  ],
};

interface Drawn {
  readonly across: Axis;
  readonly low: number;
  readonly thick: number;
  readonly loops: readonly (readonly (readonly [number, number])[])[];
}

const drawn: fc.Arbitrary<Drawn> = fc
  .record({
    across: fc.constantFrom<Axis>('x', 'y', 'z'),
    shape: fc.constantFrom<keyof typeof drawings>('bar', 'ell', 'fork', 'frame'),
    sizes: fc.tuple(fc.nat(2), fc.nat(2), fc.nat(2)),
    at: fc.tuple(fc.nat(2), fc.nat(2)),
    low: fc.nat(CELLS - 1),
    thick: fc.integer({ min: 1, max: 2 }),
  })
  .map(({ across, shape, sizes, at: [u, v], low, thick }) => ({
    across,
    low: low * GRID,
    thick: thick * GRID,
    loops: drawings[shape](...sizes).map((loop) => loop.map(([x, y]) => [(x + u) * GRID, (y + v) * GRID] as const)),
  }));

const blockOf = (id: string, { across, low, thick, loops: [outline = [], ...holes] }: Drawn): Block => {
  const plate = tinyPlate({
    id,
    across,
    low,
    thickness: thick,
    outline: polygon(outline),
    holes: holes.map((hole) => polygon(hole)),
  });
  const [block] = blocksOf([plate]);
  if (!block) throw new Error('a plate has one place');
  return block;
};

/** Whether the middle of a cube is wood. */
function isWood({ across, low, thick, loops: [outline = [], ...holes] }: Drawn, at: Record<Axis, number>): boolean {
  if (at[across] < low || at[across] > low + thick) return false;
  const point: Point = across === 'z' ? at : across === 'x' ? { x: at.z, y: at.y } : { x: at.x, y: at.z };
  const within = (loop: readonly (readonly [number, number])[]) =>
    inside(
      loop.map(([x, y]) => ({ x, y })),
      point,
    );
  return within(outline) && !holes.some(within);
}

const middles = Array.from({ length: 12 }, (_, i) => (i + 0.5) * GRID);
const cubes = middles.flatMap((x) => middles.flatMap((y) => middles.map((z) => ({ x, y, z }))));

/** A cube of `still` is in the way when a cube of `moving` comes through it: it lies ahead of it in the end. */
const meetsCube = (moving: Drawn, still: Drawn, { axis, sign }: Way): boolean =>
  cubes
    .filter((cube) => isWood(still, cube))
    .some((cube) => middles.some((_, k) => isWood(moving, { ...cube, [axis]: cube[axis] + sign * k * GRID })));

test('what is in the way is what a count of cubes finds, along all six ways', () => {
  const told = { met: 0, free: 0 };
  fc.assert(
    fc.property(drawn, drawn, (a, b) => {
      const [moving, still] = [blockOf('a', a), blockOf('b', b)];
      for (const way of ways) {
        const met = meetsCube(a, b, way);
        told[met ? 'met' : 'free']++;
        expect(inTheWay(moving, still, way), JSON.stringify(way)).toBe(met);
      }
    }),
    { seed: 20260713, numRuns: 400 },
  );
  expect(Math.min(told.met, told.free)).toBeGreaterThan(300);
});

test('the solid kernel measures wood exactly where there is some in the way', () => {
  kernel.stage((bench) => {
    const looker = lookerOn(workbench(bench));
    fc.assert(
      fc.property(drawn, drawn, (a, b) => {
        const [moving, still] = [blockOf('a', a), blockOf('b', b)];
        for (const way of ways) {
          const { depth } = looker.measure(moving, still, way);
          // cubes of 5 less a press fit all round: the least of them is thicker than a millimetre by volume and surface
          expect(depth > 1, JSON.stringify(way)).toBe(inTheWay(moving, still, way));
        }
      }),
      { seed: 7, numRuns: 60 },
    );
  });
});

describe('round things', () => {
  // a disc of 10 beside a strip whose edge lies 10 - 0.5 from its path's middle
  test.each([
    { edge: 5.1, met: false },
    { edge: 4.9, met: true },
  ])('a disc of 10 along an edge $edge from its middle: met $met', ({ edge, met }) => {
    const circle = Array.from({ length: 60 }, (_, i): [number, number] => [
      5 * Math.cos((2 * Math.PI * i) / 60),
      5 * Math.sin((2 * Math.PI * i) / 60),
    ]);
    const [disc] = blocksOf([tinyPlate({ id: 'disc', across: 'z', low: 0, outline: polygon(circle) })]);
    const [strip] = blocksOf([
      tinyPlate({
        id: 'strip',
        across: 'z',
        low: 0,
        outline: polygon([
          [edge, 50],
          [20, 50],
          [20, 60],
          [edge, 60],
        ]),
      }),
    ]);
    if (!disc || !strip) throw new Error('both have a place');
    expect(inTheWay(disc, strip, { axis: 'y', sign: -1 })).toBe(met);
    expect(inTheWay(disc, strip, { axis: 'y', sign: 1 })).toBe(false);
  });
});

test('two holes that run into each other are one: a bar passes through both', () => {
  const [plate] = blocksOf([
    tinyPlate({
      id: 'plate',
      across: 'z',
      low: 0,
      outline: rect(0, 0, 50, 50),
      holes: [rect(10, 10, 30, 30), rect(20, 20, 40, 40)],
    }),
  ]);
  const bar = (left: number) => {
    const [block] = blocksOf([
      tinyPlate({ id: 'bar', across: 'x', low: left, thickness: 8, outline: rect(-50, 21, 50, 29) }),
    ]);
    if (!block || !plate) throw new Error('both have a place');
    return inTheWay(block, plate, { axis: 'z', sign: -1 });
  };
  expect(bar(21)).toBe(false);
  expect(bar(31)).toBe(false);
  expect(bar(33)).toBe(true);
  const [disc] = blocksOf([tinyPlate({ id: 'disc', across: 'z', low: 0, outline: rect(21, 21, 29, 29) })]);
  if (!disc || !plate) throw new Error('both have a place');
  expect(inTheWay(disc, plate, { axis: 'z', sign: -1 })).toBe(false);
});
