import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Insert } from '../../../src/camera/tank-fittings/insert.js';
import { placeCap, placeFunnel } from '../../../src/camera/tank-fittings/place.js';
import { capRecipe, funnelRecipe, insertRecipe } from '../../../src/camera/tank-fittings/recipe.js';
import { sizeTankFittings, type TankFittings } from '../../../src/camera/tank-fittings/size.js';
import { stl } from '../../../src/files/stl.js';
import { type Kernel, loadKernel, realise } from '../../../src/geometry/kernel.js';
import type { Mesh } from '../../../src/geometry/mesh.js';
import { buildPrism } from '../../../src/geometry/modelling.js';
import { compose, type Matrix4, shift } from '../../../src/geometry/placement.js';
import { faceNormal, type ReadMesh, readStl, tally, volumeOf } from '../../files/read-print.js';
import { tankOf } from './given.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const prints = ['spout', 'vent', 'cap', 'funnel'] as const;
type Print = (typeof prints)[number];

const meshOf = (fittings: TankFittings, print: Print): Mesh => {
  const { spout, vent, cap, funnel } = fittings;
  const recipe = {
    spout: () => insertRecipe(spout),
    vent: () => insertRecipe(vent),
    cap: () => capRecipe(cap),
    funnel: () => funnelRecipe(funnel),
  }[print]();
  return realise(kernel, recipe, buildPrism).mesh;
};
const read = (mesh: Mesh): ReadMesh => readStl(stl(mesh));

/** The passage through an insert and through a funnel is one handle each; a cap has none. */
const handles: Record<Print, number> = { spout: 1, vent: 1, cap: 0, funnel: 1 };

/** Level faces off the bed, by the patches in which they hang together: the lesser side of the box round each. */
function bridges({ corners, faces }: ReadMesh): readonly number[] {
  const hanging = faces.filter((face) => {
    const [x, y, z] = faceNormal({ corners }, face);
    return z / Math.hypot(x, y, z) < -Math.SQRT1_2 - 1e-3 && face.some((k) => (corners[k]?.[2] ?? 0) > 1e-3);
  });
  const patches: Set<number>[] = [];
  for (const face of hanging) {
    const touched = patches.filter((patch) => face.some((k) => patch.has(k)));
    const whole = new Set([...face, ...touched.flatMap((patch) => [...patch])]);
    for (const patch of touched) patches.splice(patches.indexOf(patch), 1);
    patches.push(whole);
  }
  return patches.map((patch) => {
    const sides = [0, 1].map((axis) => {
      const all = [...patch].map((k) => corners[k]?.[axis] ?? 0);
      return Math.max(...all) - Math.min(...all);
    });
    return Math.min(...sides);
  });
}

test('every tank’s fittings print: closed, one body, outwards, on the bed, without support', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 25, noNaN: true }),
      fc.double({ min: 11, max: 18, noNaN: true }),
      fc.constantFrom(0.3, 0.4, 0.5, 0.6, 0.8),
      fc.double({ min: 60, max: 75, noNaN: true }),
      (deep, wall, nozzle, spout) => {
        const fittings = sizeTankFittings(tankOf({ deep, wall, nozzle, spout }));
        for (const print of prints) {
          const mesh = read(meshOf(fittings, print));
          expect(tally(mesh), print).toMatchObject({ unpaired: 0, shells: 1, genus: handles[print] });
          expect(Math.min(...mesh.corners.map(([, , z = Number.NaN]) => z)), print).toBe(0);
          expect(
            mesh.faces.every((face) => Math.hypot(...faceNormal(mesh, face)) > 1e-7),
            print,
          ).toBe(true);
          // bridges at the short end of what is published, M8.04
          for (const bridge of bridges(mesh)) expect(bridge, print).toBeLessThanOrEqual(10);
          // said for its mass
          expect(volumeOf(mesh) / fittings[print].volume, print).toBeCloseTo(1, 1);
        }
      },
    ),
    {
      seed: 13,
      numRuns: 4,
      examples: [
        [10, 15, 0.4, 60],
        [25, 18, 0.4, 60],
      ],
    },
  );
});

describe('the fittings of a tank 15.2 deep', () => {
  const fittings = sizeTankFittings(tankOf());
  const { spout, cap, funnel } = fittings;
  const meshes = {} as Record<Print, Mesh>;
  beforeAll(() => {
    for (const print of prints) meshes[print] = meshOf(fittings, print);
  });

  test.each(prints)('%s takes up what it says, about the middle of its own frame', (print) => {
    const { corners } = read(meshes[print]);
    const size = { spout: fittings.spout.size, vent: fittings.vent.size, cap: cap.size, funnel: funnel.size }[print];
    [0, 1, 2].forEach((axis) => {
      const all = corners.map((corner) => corner[axis] ?? Number.NaN);
      const half = axis === 2 ? 0 : (size[axis] as number) / 2;
      expect(Math.min(...all)).toBeCloseTo(-half, 1);
      expect(Math.max(...all)).toBeCloseTo((size[axis] as number) - half, 1);
    });
  });

  /** What two prints share, mm³, the second standing by a placement in the first's frame. */
  const shared = (a: Print, b: Print, place: Matrix4): number =>
    kernel.stage(({ solid, moved, common, volume }) =>
      volume(common(solid(meshes[a]), moved(solid(meshes[b]), place))),
    );

  describe('the cap', () => {
    test('goes on where its ways in stand over the lugs, down to where the gasket is pressed', () => {
      for (const lifted of [-cap.play.axial + 0.05, 0, 2, 5, 9])
        expect(shared('spout', 'cap', placeCap(spout, cap, { turned: 0, lifted })), `${lifted}`).toBe(0);
    });

    test('turns shut without meeting the neck, and no farther', () => {
      for (let share = 0; share <= 1; share += 0.125)
        expect(
          shared('spout', 'cap', placeCap(spout, cap, { turned: share * cap.turn, lifted: -0.02 })),
          `${share}`,
        ).toBe(0);
      expect(shared('spout', 'cap', placeCap(spout, cap, { turned: cap.turn + 0.1, lifted: -0.02 }))).toBeGreaterThan(
        0.1,
      );
      expect(shared('spout', 'cap', placeCap(spout, cap, { turned: -0.1, lifted: -0.02 }))).toBeGreaterThan(0.1);
    });

    test('cannot be pulled off when it is shut: all three lugs hold it', () => {
      // 0.3 of lift at 45° under three lugs of 30°, 1.2 wide at the radius of 7.5 in the middle of the bite
      const lugs = 3 * (Math.PI / 6) * 7.5 * 1.2 * 0.3;
      expect(shared('spout', 'cap', placeCap(spout, cap, { lifted: 0.3 }))).toBeGreaterThan(0.8 * lugs);
    });

    test('turns with the play that is stated, and not half of a tenth more', () => {
      const sideways = (by: number) =>
        shared('spout', 'cap', compose(shift(by, 0, 0), placeCap(spout, cap, { turned: 0, lifted: -0.3 })));
      expect(sideways(cap.play.radial - 0.02)).toBe(0);
      expect(sideways(cap.play.radial + 0.05)).toBeGreaterThan(0);
      const pushed = (by: number) => shared('spout', 'cap', placeCap(spout, cap, { lifted: -by }));
      expect(pushed(cap.play.axial - 0.02)).toBe(0);
      expect(pushed(cap.play.axial + 0.05)).toBeGreaterThan(0);
    });

    test('fits the vent as it fits the spout', () => {
      expect(shared('vent', 'cap', placeCap(fittings.vent, cap, { lifted: -0.02 }))).toBe(0);
      expect(shared('vent', 'cap', placeCap(fittings.vent, cap, { lifted: 0.3 }))).toBeGreaterThan(1);
    });
  });

  test('the funnel sits on the lip half-way down its taper, and finds its seat when it is printed 0.3 wider or narrower', () => {
    const seated = (by: number) => shared('spout', 'funnel', compose(shift(0, 0, by), placeFunnel(spout, funnel)));
    expect(seated(0.02)).toBe(0);
    expect(seated(-0.1)).toBeGreaterThan(0);
    // 1 in 5 a side: what is 0.3 wider slides 1.5 farther down, which is short of shoulder and lugs
    expect(funnel.seat.play).toBeGreaterThanOrEqual(0.3);
    const slope = (funnel.seat.wide - funnel.seat.narrow) / funnel.seat.depth;
    expect(0.3 / slope).toBeLessThan(funnel.seat.depth / 2);
    expect(funnel.seat.depth).toBeLessThan(spout.neck.rim - spout.neck.lug.top);
  });

  test('every wall is as thick as three lines of 0.4, the floor that M8.06 gives, but for the sharp edge of the lip', () => {
    const under = ({ height, neck }: Insert) => height.high + neck.rim - neck.lip.height - neck.lip.edge - 0.01;
    const whole = { spout: under(spout), vent: under(fittings.vent), cap: Infinity, funnel: Infinity };
    for (const print of prints)
      expect(thinnest(read(meshes[print]), whole[print]), print).toBeGreaterThanOrEqual(1.2 - 0.02);
  });
});

/**
 * Below a height: from points on the faces straight in to the far side, the thickness that all but a hundredth of the surface
 * has. Lines meet triangles as Möller and Trumbore have it.
 */
function thinnest(mesh: ReadMesh, above: number): number {
  const { corners, faces } = mesh;
  const flat = Float64Array.from(faces.flatMap((face) => face.flatMap((k) => corners[k] ?? [])));
  const at = (i: number) => flat[i] as number;
  const depthFrom = (x: number, y: number, z: number, dx: number, dy: number, dz: number): number => {
    let least = Infinity;
    for (let i = 0; i < flat.length; i += 9) {
      const [ax, ay, az] = [at(i), at(i + 1), at(i + 2)];
      const [ex, ey, ez] = [at(i + 3) - ax, at(i + 4) - ay, at(i + 5) - az];
      const [fx, fy, fz] = [at(i + 6) - ax, at(i + 7) - ay, at(i + 8) - az];
      const [px, py, pz] = [dy * fz - dz * fy, dz * fx - dx * fz, dx * fy - dy * fx];
      const whole = ex * px + ey * py + ez * pz;
      if (Math.abs(whole) < 1e-12) continue;
      const [tx, ty, tz] = [x - ax, y - ay, z - az];
      const u = (tx * px + ty * py + tz * pz) / whole;
      if (u < 0 || u > 1) continue;
      const [qx, qy, qz] = [ty * ez - tz * ey, tz * ex - tx * ez, tx * ey - ty * ex];
      const v = (dx * qx + dy * qy + dz * qz) / whole;
      const far = (fx * qx + fy * qy + fz * qz) / whole;
      if (v >= 0 && u + v <= 1 && far > 1e-6 && far < least) least = far;
    }
    return least;
  };
  const every = Math.ceil(faces.length / 300);
  const found = faces.flatMap((face, f) => {
    if (f % every > 0 || face.every((k) => above < (corners[k]?.[2] ?? 0))) return [];
    const [nx, ny, nz] = faceNormal(mesh, face);
    const twice = Math.hypot(nx, ny, nz);
    const [dx, dy, dz] = [-nx / twice, -ny / twice, -nz / twice];
    return SPOTS.map(([s, t]) => {
      const [x, y, z] = [0, 1, 2].map(
        (k) => at(9 * f + k) * (1 - s - t) + at(9 * f + 3 + k) * s + at(9 * f + 6 + k) * t,
      ) as [number, number, number];
      const depth = depthFrom(x + 1e-4 * dx, y + 1e-4 * dy, z + 1e-4 * dz, dx, dy, dz);
      return { depth, area: twice / 2 / SPOTS.length };
    });
  });
  found.sort((p, q) => p.depth - q.depth);
  const whole = found.reduce((sum, { area }) => sum + area, 0);
  let sum = 0;
  for (const { area, depth } of found) {
    sum += area;
    if (sum > 0.01 * whole) return depth;
  }
  return Infinity;
}

const SPOTS = [
  [1 / 3, 1 / 3],
  [0.15, 0.15],
  [0.7, 0.15],
  [0.15, 0.7],
] as const;
