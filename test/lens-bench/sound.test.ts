import { describe, expect, test } from 'vitest';
import { benchB, benchWith, readingsOf, refused } from './bench.js';

describe('no lens comes of', () => {
  test.each([0, 1, 2])('%d readings', (count) =>
    expect(refused(benchWith(benchB.slice(0, count)))).toMatchObject([
      { path: 'readings', what: expect.stringMatching(/only the third/) },
    ]),
  );

  test('readings all at one magnification', () => {
    const alike = readingsOf([
      [0.5, 314],
      [0.501, 314.3],
      [0.503, 314.9],
    ]);
    expect(refused(benchWith(alike))).toMatchObject([
      { path: 'readings.2.magnification', what: expect.stringMatching(/no spread/) },
    ]);
  });

  test('ratios that are all turned over, and what they give the right way round', () => {
    const turned = benchB.map((one) => ({ ...one, magnification: 1 / one.magnification }));
    expect(refused(benchWith(turned))).toMatchObject([
      { what: expect.stringMatching(/does not grow.*f = 239\.4 mm/), accepted: expect.stringMatching(/1:3 or 0\.333/) },
    ]);
  });

  test('one turned ratio that draws the whole line down, named', () => {
    const readings = readingsOf([
      [0.2, 242.3],
      [5, 219],
      [0.4, 290.1],
      [0.3, 266.6],
    ]);
    expect(refused(benchWith(readings))).toMatchObject([
      { path: 'readings.1', what: expect.stringMatching(/Without reading 2/) },
    ]);
  });

  test('distances that fall for no plain reason', () => {
    const readings = readingsOf([
      [0.2, 300],
      [0.3, 230],
      [0.4, 280],
      [0.5, 220],
    ]);
    expect(refused(benchWith(readings))).toMatchObject([
      { path: 'readings', what: expect.stringMatching(/does not grow/) },
    ]);
  });

  test('a film at infinity ahead of the lens seat', () => {
    const readings = readingsOf([
      [0.5, 50],
      [1, 290],
      [1.2, 386],
    ]);
    expect(refused(benchWith(readings))).toMatchObject([
      { what: expect.stringMatching(/190 mm ahead of the lens seat/) },
    ]);
  });

  test('an object nearer than the focal length, whose image is virtual', () => {
    // V1.03, verified: S1 worked example: f = 100, u = 50 gives v = −100, to be refused
    const near = readingsOf([
      [0.25, 125],
      [0.5, 150],
      [1, 200],
    ]).map((one, i) => ({ ...one, objectDistance: i === 1 ? 50 : null }));
    expect(refused(benchWith(near))).toMatchObject([
      { path: 'readings.1.object_distance', what: expect.stringMatching(/50 mm .* focal length of 100 mm.*virtual/) },
    ]);
  });

  test('a circle seen where nothing is sharp', () =>
    expect(refused(benchWith(benchB, { coverage: [{ diameter: 300, distance: 180 }] }))).toMatchObject([
      { path: 'coverage.0.distance', what: expect.stringMatching(/nearer to the lens than at infinity/) },
    ]));
});
