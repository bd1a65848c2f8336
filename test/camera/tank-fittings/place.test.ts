import { beforeAll, describe, expect, test } from 'vitest';
import { piecesOf } from '../../../src/assembly/pieces.js';
import { firstMet } from '../../../src/assembly/sight-line.js';
import { workbench } from '../../../src/assembly/workbench.js';
import { tankFittingHardware } from '../../../src/camera/tank-fittings/parts.js';
import { notchFor } from '../../../src/camera/tank-fittings/place.js';
import { type Kernel, loadKernel } from '../../../src/geometry/kernel.js';
import { buildOf, fittedTank, SEAT } from './fitted.js';
import { tankOf } from './given.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

/** The least and largest coordinates of every piece that stands upright, in the holder's frame. */
function spans(given = tankOf()) {
  const { parts } = buildOf(fittedTank(given));
  const upright = piecesOf(parts).filter(({ placement }) => placement.when?.includes('tank, upright'));
  return kernel.stage((bench) => {
    const on = workbench(bench);
    return upright.map((piece) => {
      const { positions } = bench.surface(on.solid(piece, 0));
      const along = (axis: number) => positions.filter((_, i) => i % 3 === axis);
      const [x, y, z] = [0, 1, 2].map((axis) => [Math.min(...along(axis)), Math.max(...along(axis))] as const);
      return { id: piece.part.id, x, y, z } as {
        id: string;
        x: readonly [number, number];
        y: readonly [number, number];
        z: readonly [number, number];
      };
    });
  });
}

test('one spout, one vent, a cap with its gasket on each', () => {
  expect(spans().map(({ id }) => id)).toEqual([
    'tank-spout-2',
    'tank-vent-2',
    'tank-cap-2',
    'tank-cap-2',
    'tank-seal-2',
    'tank-seal-2',
  ]);
});

describe.each([
  { deep: 10, wall: 15 },
  { deep: 12, wall: 11 },
  { deep: 15.2, wall: 15 },
  { deep: 25, wall: 18 },
])('a chamber $deep deep behind a wall of $wall', (size) => {
  const given = tankOf(size);
  const { chamber, openEnd, notch, slide, lid } = given;
  let all: ReturnType<typeof spans>;
  beforeAll(() => {
    all = spans(given);
  });

  test('the inserts pass the wall, from flush with the chamber to outside', () => {
    for (const { y } of all.slice(0, 2)) {
      expect(y[0]).toBeCloseTo(chamber.end, 4);
      expect(y[1]).toBeGreaterThan(openEnd + 9); // a neck with its lugs and the funnel's seat over them
    }
  });

  test('nothing comes within 1 of the dark slide’s channel, and the lid is what the tank lies on', () => {
    for (const { id, z } of all) {
      expect(z[0] - SEAT, id).toBeGreaterThanOrEqual(slide.back + 1 - 1e-4);
      expect(z[1] - SEAT, id).toBeLessThanOrEqual(lid - 0.5);
    }
  });

  test('the inserts fill their notches but for 0.08 of glue all round', () => {
    const { fittings } = fittedTank(given);
    for (const what of ['spout', 'vent'] as const) {
      const hole = notchFor(given, fittings[what]);
      const { width, depth } = fittings[what];
      expect(hole.right - hole.left - width).toBeCloseTo(0.16, 9);
      expect(notch.to - notch.from - depth).toBeCloseTo(0.16, 9);
      expect([hole.bottom, hole.top]).toEqual([chamber.end, openEnd]);
    }
  });
});

test('each insert opens into its corner of the chamber, and nowhere else', () => {
  const given = tankOf();
  const own = fittedTank(given);
  const inserts = piecesOf(buildOf(own).parts).filter(
    ({ part, placement }) => /spout|vent/.test(part.id) && placement.when?.includes('tank, upright'),
  );
  const standing = inserts.map((piece) => ({ piece, shift: [0, 0, 0] as const }));
  /** How far a line along y, from the chamber, comes into an insert. */
  const into = (x: number, depth: number) =>
    firstMet({ from: { x, y: given.chamber.end - 1, z: SEAT + depth }, towards: { x: 0, y: 1, z: 0 } }, standing)?.at;
  const middle = (given.notch.from + given.notch.to) / 2;
  for (const [what, side] of [
    ['spout', 1],
    ['vent', -1],
  ] as const) {
    const [exit] = own.fittings[what].rooms;
    const across = exit.to - exit.from;
    expect(into(side * (66.5 - 0.1), middle), what).toBeCloseTo(1 + exit.roof, 6);
    expect(into(side * (66.5 - across + 0.1), middle), what).toBeCloseTo(1 + exit.roof, 6);
    expect(into(side * (66.5 + 0.1), middle), what).toBeCloseTo(1, 6);
    expect(into(side * (66.5 - across - 0.1), middle), what).toBeCloseTo(1, 6);
  }
});

test('upright and lengthwise are a quarter turn apart', () => {
  const [spout] = buildOf(fittedTank()).parts;
  const [upright, lengthwise] = spout?.placements ?? [];
  const at = (m: readonly number[] | undefined) => [m?.[12], m?.[13], m?.[14]];
  const [x = 0, y = 0, z] = at(upright?.matrix);
  const turned = at(lengthwise?.matrix);
  expect(turned[0]).toBeCloseTo(-y, 9);
  expect(turned[1]).toBeCloseTo(x, 9);
  expect(turned[2]).toBe(z);
});

test('the funnel clears the handle of the closed slide', () => {
  for (const handle of [0, 15, 30, 45]) {
    const given = { ...tankOf(), slide: { ...tankOf().slide, handle } };
    const { fittings } = fittedTank(given);
    const { spout, funnel } = fittings;
    // the cone at the distance of the channel from the neck's axis, as it stands on the neck, above the holder's open end
    const middle = (given.notch.from + given.notch.to) / 2 + spout.lean;
    const off = middle - given.slide.back;
    const under = funnel.throat + funnel.wall.sloping;
    const seat = spout.height.high + spout.neck.rim - funnel.seat.depth / 2 + funnel.height;
    const cone = seat - (funnel.stem - Math.max(0, off - under));
    expect(given.chamber.end + cone, `${handle}`).toBeGreaterThan(given.openEnd + handle);
  }
});

test('a gasket is bought for each cap, thick as the sheet is before the rim presses it', () => {
  const own = fittedTank();
  const { gasket } = own.fittings.cap;
  expect(tankFittingHardware(own)).toMatchObject([
    { name: 'funnel, printed', count: 1 },
    { count: 2, size: `${gasket.thickness} × 15 × 15` },
  ]);
  expect(gasket.diameter).toBeLessThan(15);
  expect(gasket.pressed).toBeLessThan(gasket.thickness);
});
