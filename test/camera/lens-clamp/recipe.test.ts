import jscad from '@jscad/modeling';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { clampRecipe } from '../../../src/camera/lens-clamp/recipe.js';
import { type LensClamp, sizeLensClamp } from '../../../src/camera/lens-clamp/size.js';
import { stl } from '../../../src/files/stl.js';
import { type Boundary, type Kernel, loadKernel, realise } from '../../../src/geometry/kernel.js';
import { buildPrism } from '../../../src/geometry/modelling.js';
import { circle } from '../../../src/geometry/shapes.js';
import { faceNormal, type ReadMesh, readStl, tally, volumeOf } from '../../files/read-print.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const clampOf = (barrelDiameter: number, grip: number, screws: number): LensClamp =>
  sizeLensClamp({ barrelDiameter, grip, screws, boreAllowance: 0.2, side: 'inside', lensMassKg: 0.64, ply: 4.05 });
const solidOf = (clamp: LensClamp): Boundary => realise(kernel, clampRecipe(clamp), buildPrism);
const printOf = (clamp: LensClamp): ReadMesh => readStl(stl(solidOf(clamp).mesh));

/** Handles: the bore, a hole a screw, and each pinch bolt's hole through the two halves of its lug. */
const handles = (screws: number) => 1 + screws + 4;

test('every clamp prints: closed, one body, outwards, on the bed, its handles counted', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 20, max: 120, noNaN: true }),
      fc.double({ min: 12, max: 60, noNaN: true }),
      fc.integer({ min: 3, max: 6 }),
      (barrel, grip, screws) => {
        const clamp = clampOf(barrel, grip, screws);
        const print = printOf(clamp);
        expect(tally(print)).toMatchObject({ unpaired: 0, shells: 1, genus: handles(screws) });
        expect(Math.min(...print.corners.map(([, , z = Number.NaN]) => z))).toBe(0);
        expect(print.faces.every((face) => Math.hypot(...faceNormal(print, face)) > 1e-6)).toBe(true);
        // chords lie on the side of air, by at most 0.01: less than the drawn volume, never by the 0.5 % that is allowed
        const volume = volumeOf(print);
        expect(volume).toBeLessThan(clamp.volume);
        expect(volume).toBeGreaterThan(0.998 * clamp.volume);
      },
    ),
    { seed: 58, numRuns: 25 },
  );
});

describe('a clamp for a barrel of 58, four screws', () => {
  const clamp = clampOf(58, 22, 4);
  let print: ReadMesh;
  beforeAll(() => {
    print = printOf(clamp);
  });

  test('has the volume that a second kernel finds for the same solids', () => {
    const { cylinder, cuboid, roundedRectangle } = jscad.primitives;
    const { subtract, union } = jscad.booleans;
    const { translate, rotate } = jscad.transforms;
    const upright = (radius: number, from: number, to: number, x = 0, y = 0, segments = 256) =>
      cylinder({ radius, height: to - from, segments, center: [x, y, (from + to) / 2] });
    // lengths from the trade's rules: 58.2 bored, wall 8, bolt circle +14, flange +12, lugs to +12 and 18 wide
    const [top, floor, deep] = [22, 7, 3.5];
    const nut = (7.2 * 2) / Math.sqrt(3) / 2;
    const hexagon = (height: number) =>
      rotate([0, 0, Math.PI / 6], cylinder({ radius: nut, height, segments: 6, center: [0, 0, height / 2] }));
    const plan = roundedRectangle({ size: [98.2, 18], roundRadius: 2.4, segments: 128 });
    const bar = translate([0, 0, floor], jscad.extrusions.extrudeLinear({ height: top - floor }, plan));
    const body = union(upright(50.1, 0, floor), upright(37.1, floor, top), bar);
    const screws = [1, 3, 5, 7].map(
      (k) => [44.1 * Math.cos((k * Math.PI) / 4), 44.1 * Math.sin((k * Math.PI) / 4), k] as const,
    );
    const solid = subtract(
      body,
      upright(29.1, -1, 30),
      cuboid({ size: [110, 2, 30], center: [0, 0, floor + 15] }),
      ...screws.map(([x, y]) => upright(2.25, -1, 8, x, y, 96)),
      ...screws.map(([x, y, k]) => translate([x, y, floor - deep], rotate([0, 0, (k * Math.PI) / 4], hexagon(10)))),
      ...[1, -1].map((side) => {
        const along = [Math.PI / 2, 0, 0] as [number, number, number];
        const middle = [side * (49.1 - 2.4 - 3.6), 0, 14.5] as [number, number, number];
        const bolt = cylinder({ radius: 2.25, height: 40, segments: 96 });
        const pocket = translate([0, 0, 9 - deep], hexagon(10));
        return translate(middle, rotate(along, union(bolt, pocket)));
      }),
    );
    const witness = jscad.measurements.measureVolume(solid);
    expect(volumeOf(print) / witness).toBeGreaterThan(0.999); // facets of both: up to a thousandth
    expect(volumeOf(print) / witness).toBeLessThan(1.001);
    expect(clamp.volume / witness).toBeCloseTo(1, 3);
  });

  test('lets the barrel in: nothing stands within half of 58.2 of the axis', () => {
    // M8.10 [common practice, no source]: facets inside the circle would make the bore 0.02 to 0.07 too small
    const walls = print.faces.filter((face) => Math.abs(faceNormal(print, face)[2]) < 1e-3);
    const reach = walls.flatMap((face) =>
      face.map((from, k) => {
        const [x = 0, y = 0] = [0, 1].map(
          (axis) => ((print.corners[from]?.[axis] ?? 0) + (print.corners[face[(k + 1) % 3] ?? 0]?.[axis] ?? 0)) / 2,
        );
        return Math.hypot(x, y);
      }),
    );
    expect(Math.min(...reach)).toBeGreaterThan(29.1 - 1e-3); // corners are written to 0.0001
  });

  test('is printed without support: what hangs over more than 45° bridges at most 10 mm', () => {
    // M8.01 [verified: R67, R67b, R68], a custom; bridges at the short end of what is published, M8.04
    const hanging = print.faces.filter((face) => {
      const [x, y, z] = faceNormal(print, face);
      return z / Math.hypot(x, y, z) < -Math.SQRT1_2 - 1e-3 && face.some((k) => (print.corners[k]?.[2] ?? 0) > 0);
    });
    expect(hanging.length).toBeGreaterThan(0);
    // all of it is in the level holes and pockets of the two pinch bolts: 4.5 and 7.2 wide
    for (const face of hanging)
      for (const k of face) {
        const [x = 0, y = 0] = print.corners[k] ?? [];
        expect(Math.abs(Math.abs(x) - clamp.pinch.fromAxis)).toBeLessThanOrEqual(3.6 + 1e-3);
        expect(Math.abs(y)).toBeLessThanOrEqual(9 + 1e-3);
      }
  });

  test('is whole below the slits: a ring of 7 that no light passes', () => {
    const lowest = Math.min(
      ...print.faces
        .filter((face) => face.every((k) => Math.abs(Math.abs(print.corners[k]?.[1] ?? 9) - 1) < 1e-3))
        .flatMap((face) => face.map((k) => print.corners[k]?.[2] ?? 0)),
    );
    expect(lowest).toBeCloseTo(7, 3);
  });

  test('holds its screws and nuts without meeting them, each touching what holds it', () => {
    const { flangeScrews, flangeNuts, pinchBolts, pinchNuts } = clamp.fasteners;
    const standIns = [
      ...[flangeScrews, pinchBolts].flatMap(({ diameter, length, at }) =>
        at.map((matrix) => ({ profile: circle(0, 0, diameter), holes: [], height: length, matrix })),
      ),
      ...[flangeNuts, pinchNuts].flatMap(({ outline, holes, thickness, at }) =>
        at.map((matrix) => ({ profile: outline, holes, height: thickness, matrix })),
      ),
    ];
    const { mesh } = solidOf(clamp);
    expect(standIns).toHaveLength(12);
    for (const standIn of standIns) {
      const { shared, air } = kernel.stage(({ solid, common, volume, gap }) => {
        const [body, bought] = [solid(mesh), solid(buildPrism(standIn, 'add'))];
        return { shared: volume(common(body, bought)), air: gap(body, bought, 1) };
      });
      expect(shared).toBeLessThan(0.01);
      expect(air).toBeLessThan(0.02); // facets of hole and screw, 0.01 each
    }
  });
});
