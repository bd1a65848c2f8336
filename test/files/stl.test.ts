import { describe, expect, test } from 'vitest';
import { stl } from '../../src/files/stl.js';
import { buildPrism } from '../../src/geometry/modelling.js';
import { across } from '../../src/geometry/placement.js';
import { circle, rectangle } from '../../src/geometry/shapes.js';
import { faceNormal, readStl, tally, volumeOf } from './read-print.js';

const prism = (profile: ReturnType<typeof circle>) =>
  buildPrism({ profile, holes: [], height: 60, matrix: across(0, 0, 0) }, 'add');
const box = prism(rectangle({ left: 0, bottom: 0, right: 203.2, top: 80 }));

describe('a binary STL', () => {
  test.each([
    { triangles: 0, bytes: 84 }, // M7.16 [verified: R58, R59, R60]
    { triangles: 12, bytes: 684 }, // M7.16 [verified: R58, R59, R60]
    { triangles: 128, bytes: 6484 }, // M7.16 [verified: R58, R59, R60]
    { triangles: 512, bytes: 25684 }, // M7.16 [verified: R58, R59, R60]
    { triangles: 1000, bytes: 50084 }, // M7.16 [verified: R58, R59, R60]
  ])('of $triangles triangles has $bytes bytes', ({ triangles, bytes }) => {
    const mesh = { positions: [0, 0, 0, 1, 0, 0, 0, 1, 0], triangles: Array(triangles).fill([0, 1, 2]).flat() };
    expect(stl(mesh)).toHaveLength(bytes);
  });

  test('does not begin with "solid", which readers take for text', () =>
    expect(new TextDecoder().decode(stl(box).slice(0, 5)).toLowerCase()).not.toBe('solid')); // M7.18 [verified: R60, R59]

  test('says how many triangles, low byte first, and leaves their attributes 0', () => {
    const view = new DataView(stl(box).buffer);
    expect(view.getUint32(80, true)).toBe(12); // M7.17 [verified: R58, R60]
    for (let i = 0; i < 12; i++) expect(view.getUint16(84 + 50 * i + 48, true)).toBe(0);
  });

  test('keeps 203.2 as the nearest 32-bit float, and equal lengths equal', () => {
    const far = readStl(stl(box)).corners.map(([x]) => x);
    expect(new Set(far)).toEqual(new Set([0, 203.1999969482422])); // M7.19 [common practice, no source]
  });

  test('leaves every coordinate where it was: small triangles are neither snapped nor dropped', () => {
    const pin = prism(circle(0.0003, 0, 4.5));
    const written = readStl(stl(pin));
    const corner = (i: number) => [0, 1, 2].map((axis) => Math.fround(pin.positions[3 * i + axis] ?? Number.NaN));
    expect(written.faces.flat().map((k) => written.corners[k])).toEqual(pin.triangles.map(corner));
  });

  test('reads back as the solid that was written, with normals of length 1 that look outwards', () => {
    const read = readStl(stl(box));
    expect(tally(read)).toMatchObject({ vertices: 8, edges: 18, faces: 12, unpaired: 0 }); // M10.22 [common practice, no source]
    expect(volumeOf(read)).toBeCloseTo(203.2 * 80 * 60, 0); // 32-bit floats carry seven digits
    read.faces.forEach((face, i) => {
      const outwards = faceNormal(read, face);
      const stored = read.normals[i] ?? [];
      const along = outwards.reduce((sum, v, axis) => sum + v * (stored[axis] ?? 0), 0) / Math.hypot(...outwards);
      expect(along).toBeCloseTo(1, 6); // M7.17 [verified: R58, R60]
    });
  });

  test('is the same, byte for byte, each time', () => expect(stl(box)).toEqual(stl(box)));
});
