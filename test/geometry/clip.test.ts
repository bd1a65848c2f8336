import { describe, expect, test } from 'vitest';
import { grown, type Region, sharedArea, without } from '../../src/geometry/clip.js';
import { polygonArea } from '../sheets/measure.js';

const loop = (...points: (readonly [number, number])[]) => points.map(([x, y]) => ({ x, y }));
const rectangle: Region = [loop([0, 0], [100, 0], [100, 60], [0, 60])];
const ell: Region = [loop([0, 0], [100, 0], [100, 40], [40, 40], [40, 90], [0, 90])];
const areaOf = (region: Region) => region.reduce((sum, l) => sum + polygonArea(l), 0);

describe('regions grown and shrunk', () => {
  test.each([
    { what: 'M10.07', region: rectangle, by: 5, area: 7700 }, // [verified: R88 formula]
    { what: 'M10.07 inward', region: rectangle, by: -5, area: 4500 }, // [verified: R88 formula]
    { what: 'M10.08', region: rectangle, by: 0.075, area: 6024.0225 }, // [verified: R88 formula]
    { what: 'M10.11', region: ell, by: 5, area: 8000 }, // [common practice, no source], grid-checked
    { what: 'M10.12', region: ell, by: -5, area: 4200 }, // [common practice, no source], grid-checked
    { what: 'M10.15', region: rectangle, by: -31, area: 0 }, // [common practice, no source]
  ])('$what, mitred', ({ region, by, area }) => {
    expect(areaOf(grown(region, by, { corners: 'mitred' }))).toBeCloseTo(area, 6);
  });

  // M10.07 [verified: R88 formula]: 7678.539816 with round corners; chords of 1 µm sagitta give away 0.01 mm²
  test('M10.07, round', () => expect(areaOf(grown(rectangle, 5, { corners: 'round' }))).toBeCloseTo(7678.539816, 1));

  test('two rectangles share their overlap, and a hole is no part of the region', () => {
    const other: Region = [loop([50, 30], [150, 30], [150, 130], [50, 130])];
    expect(sharedArea(rectangle, other)).toBe(50 * 30); // plane geometry
    const hollow: Region = [...other, loop([60, 40], [60, 60], [100, 60], [100, 40])];
    expect(sharedArea(rectangle, hollow)).toBe(50 * 30 - 40 * 20); // plane geometry
  });

  test('what is cut out of a region may overlap itself and the edge, and run either way round', () => {
    const square = (x: number, y: number, size: number) =>
      loop([x, y], [x + size, y], [x + size, y + size], [x, y + size]);
    const holes: Region = [square(10, 10, 20), [...square(20, 20, 20)].reverse(), square(90, 50, 40)];
    // 100 × 60 less two squares of 20 that share 10 × 10, less the corner of 10 × 10: plane geometry
    expect(areaOf(without(rectangle, holes))).toBe(6000 - (800 - 100) - 100);
    // and 5 from all of that: the corner is a notch of 15 × 15, the two squares grow to 30 with 20 × 20 shared
    expect(areaOf(grown(without(rectangle, holes), -5, { corners: 'mitred' }))).toBeCloseTo(90 * 50 - 1400 - 100, 6);
    expect(without(rectangle, [])).toEqual(rectangle);
  });
});
