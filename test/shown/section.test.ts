import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { piecesOf } from '../../src/assembly/pieces.js';
import { workbench } from '../../src/assembly/workbench.js';
import { type Kernel, loadKernel } from '../../src/geometry/kernel.js';
import { polygon } from '../../src/geometry/path.js';
import { across, frame, type Matrix4 } from '../../src/geometry/placement.js';
import { sawnPrism } from '../../src/geometry/sawn-prism.js';
import { readDesign } from '../../src/index.js';
import type { ShownFace } from '../../src/model/shown.js';
import { planCamera } from '../../src/pipeline.js';
import { shownSection } from '../../src/shown/section.js';
import { faceOf } from '../camera/face-of.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const buildOf = (name: string) => {
  const read = readDesign(readFileSync(`designs/${name}.yaml`, 'utf8'), `${name}.yaml`);
  if ('problems' in read) throw new Error(name);
  return planCamera(read.design).build;
};

/** Holes run against what holds them, so that areas with sign add up. */
const areaOf = ({ loops }: Pick<ShownFace, 'loops'>): number =>
  Math.abs(
    loops.reduce((sum, loop) => {
      let twice = 0;
      for (let i = 0; i < loop.length; i += 2) {
        const [x, y] = [loop[i], loop[i + 1]] as [number, number];
        const [nx, ny] = [loop[(i + 2) % loop.length], loop[(i + 3) % loop.length]] as [number, number];
        twice += x * ny - nx * y;
      }
      return sum + twice / 2;
    }, 0),
  );

describe.each(['heron', 'wren', 'bittern'])('the section of %s', (name) => {
  const build = buildOf(name);
  const { faces } = shownSection(build, { width: 1, height: 2 });

  test('cuts what the kernel cuts: a face times a slab of a fiftieth of a millimetre is the volume in it', () => {
    const byKey = new Map(faces.filter(({ as }) => as === 'cut').map((face) => [face.key, face]));
    const whole = new Set(faces.filter(({ as }) => as === 'whole').map(({ key }) => key));
    const pieces = piecesOf(build.parts).filter(({ key }) => !whole.has(key));
    const half = 0.01;
    kernel.stage((bench) => {
      const on = workbench(bench);
      for (const piece of pieces) {
        const [from, to] = piece.extent.x;
        // a face that lies in the plane is not cut
        if (Math.min(Math.abs(from), Math.abs(to)) < 2 * half) continue;
        const solid = on.solid(piece, 0);
        const right = (offset: number) => bench.volume(bench.trimmed(solid, { x: 1, y: 0, z: 0 }, offset));
        const expected = (right(-half) - right(half)) / (2 * half);
        const face = byKey.get(piece.key);
        const found = face === undefined ? 0 : areaOf(face);
        expect(Math.abs(found - expected), `${piece.key}: ${found} for ${expected}`).toBeLessThan(
          0.05 + 0.004 * expected,
        );
      }
    });
    expect(byKey.size).toBeGreaterThan(15);
  });

  test('bolts and dowels are whole: an outline no smaller than any section of theirs', () => {
    for (const face of faces.filter(({ as }) => as === 'whole')) {
      const piece = piecesOf(build.parts).find(({ key }) => key === face.key);
      if (piece === undefined) throw new Error(face.key);
      const { y, z } = piece.extent;
      const xs = face.loops.flatMap((loop) => loop.filter((_, i) => i % 2 === 0));
      const ys = face.loops.flatMap((loop) => loop.filter((_, i) => i % 2 === 1));
      // the boxes are those of corners: a round one may reach past its own by nothing
      expect(Math.min(...xs)).toBeCloseTo(z[0], 1);
      expect(Math.max(...xs)).toBeCloseTo(z[1], 1);
      expect(Math.min(...ys)).toBeCloseTo(y[0], 1);
      expect(Math.max(...ys)).toBeCloseTo(y[1], 1);
    }
  });

  test('the panel stands, the rear slides, and each holder is there in its own set-ups alone', () => {
    expect(faces.find(({ part }) => part === 'F1')?.slides).toBe(false);
    expect(faces.find(({ part }) => part === 'R3')?.slides).toBe(true);
    for (const { holder } of build.setups) {
      const bearing = faceOf(build.parts, holder).id;
      const face = faces.find(({ part }) => part === bearing);
      expect(
        face?.when.every((one) => one.startsWith(holder)),
        holder,
      ).toBe(true);
    }
  });
});

describe('a prism on the saw', () => {
  const square = polygon([
    [-10, -5],
    [10, -5],
    [10, 5],
    [-10, 5],
  ]);
  const hole = polygon([
    [-2, -2],
    [-2, 2],
    [2, 2],
    [2, -2],
  ]);

  test('upright on the plane it leaves oblongs, one each side of a hole', () => {
    const face = sawnPrism({ profile: square, holes: [hole], height: 4, matrix: across(0, 0, 100) });
    expect(face.map((loop) => areaOf({ loops: [loop.flatMap(({ x, y }) => [x, y])] }))).toEqual([12, 12]);
    const xs = face.flat().map(({ x }) => x);
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([100, 104]);
  });

  test('lying along the plane it leaves its whole profile, and nothing where it only touches it', () => {
    const lying = (x: number) => frame([0, 1, 0], [0, 0, 1], [1, 0, 0], [x, 0, 0]);
    const loopsAt = (x: number) => sawnPrism({ profile: square, holes: [hole], height: 4, matrix: lying(x) });
    expect(areaOf({ loops: loopsAt(-2).map((loop) => loop.flatMap(({ x, y }) => [x, y])) })).toBeCloseTo(200 - 16, 6);
    expect(loopsAt(0)).toEqual([]);
    expect(loopsAt(-4)).toEqual([]);
  });

  test('leaning, it is longer by the slope', () => {
    // turned by 45° about its own y: the plane goes through 4 mm of height along √2 · 4
    const s = Math.SQRT1_2;
    const face = sawnPrism({
      profile: square,
      holes: [],
      height: 4,
      matrix: frame([s, 0, s], [0, 1, 0], [-s, 0, s], [0, 0, 0]),
    });
    expect(areaOf({ loops: face.map((loop) => loop.flatMap(({ x, y }) => [x, y])) })).toBeCloseTo(
      4 * Math.SQRT2 * 10,
      2,
    );
  });

  describe('that tapers from 20 by 10 to half of it, 10 high', () => {
    const tapering = { profile: square, holes: [], height: 10, taper: 0.5 };
    const faceAt = (matrix: Matrix4) =>
      areaOf({ loops: sawnPrism({ ...tapering, matrix }).map((loop) => loop.flatMap(({ x, y }) => [x, y])) });
    test.each([
      { where: 'through its middle', matrix: across(0, 0, 0), face: 10 * ((10 + 5) / 2) },
      { where: '3 beside it, through its top yet', matrix: across(-3, 0, 0), face: 10 * ((10 + 5) / 2) },
      { where: '8 beside it, where it is 4 high', matrix: across(-8, 0, 0), face: 4 * ((10 + 8) / 2) },
      { where: 'beyond it', matrix: across(-10.1, 0, 0), face: 0 },
      {
        where: 'level, 4 up, where it is 16 by 8',
        matrix: frame([0, 1, 0], [0, 0, 1], [1, 0, 0], [-4, 0, 0]),
        face: 16 * 8,
      },
      {
        where: 'level, on its top',
        matrix: frame([0, 1, 0], [0, 0, 1], [1, 0, 0], [-10, 0, 0]),
        face: 0,
      },
    ])('$where', ({ matrix, face }) => expect(faceAt(matrix)).toBeCloseTo(face, 5));

    test('leaning, its slices add up to its volume', () => {
      const [s, c] = [0.6, 0.8];
      const step = 0.05;
      let volume = 0;
      for (let x = -16; x < 16; x += step) volume += step * faceAt(frame([c, 0, s], [0, 1, 0], [-s, 0, c], [x, 0, 0]));
      expect(volume / ((10 / 3) * (200 + 50 + 100))).toBeCloseTo(1, 4);
    });
  });
});
