import { describe, expect, test } from 'vitest';
import { filmPlane, workingAperture } from '../../src/optics/conjugates.js';
import { bundleHalfWidth, entranceOpening, exitPupil, softEdge } from '../../src/optics/light-cone.js';

describe('the exit pupil', () => {
  test('of a symmetric lens that needs its focal length of room stands at the seat', () => {
    // thin lens [common practice, no source]: V = f, P = 1, both pupils in the glass
    const lens = { focalLength: 200, flangeDistance: 200, seat: 5, maxAperture: 8, pupilMagnification: 1 };
    expect(exitPupil(lens)).toEqual({ z: 5, diameter: 25 });
  });

  test.each([
    { m: 1, N: 16, P: 1 },
    { m: 0.5, N: 22.627, P: 1 },
    { m: 0.5, N: 16, P: 1.5 },
    { m: 0.25, N: 16, P: 0.7 }, // magnifications and P of V2.10, V2.11 [verified: S20 formula]
  ])('lights the film at the working f-number: m $m, f/$N, P $P', ({ m, N, P }) => {
    const lens = { focalLength: 210, flangeDistance: 203.5, seat: -8, maxAperture: N, pupilMagnification: P };
    const { z, diameter } = exitPupil(lens);
    expect((filmPlane(lens, m) - z) / diameter).toBeCloseTo(workingAperture(N, m, P), 9);
  });
});

describe('the bundle behind the barrel', () => {
  const bundle = { rim: { z: 20, radius: 15 }, film: { z: 220, half: 85 } };

  test.each([
    { z: 20, half: 15 },
    { z: 120, half: 50 },
    { z: 170, half: 67.5 },
    { z: 220, half: 85 }, // similar triangles [common practice, no source]
  ])('at $z it is $half from the axis', ({ z, half }) => expect(bundleHalfWidth(bundle, z)).toBeCloseTo(half, 12));

  test('holds every line from the rear glass to the image', () => {
    for (const from of [-15, -9, 0, 4, 15])
      for (const to of [-85, -30, 0, 60, 85])
        for (const z of [20, 55, 110, 200, 220])
          expect(Math.abs(from + ((to - from) * (z - 20)) / 200)).toBeLessThanOrEqual(
            bundleHalfWidth(bundle, z) + 1e-12, // floating point on the outermost lines
          );
  });

  test('of a lens wider than the image is widest in front', () => {
    const wide = { rim: { z: 20, radius: 60 }, film: { z: 220, half: 45 } };
    expect(bundleHalfWidth(wide, 20)).toBe(60);
    expect(bundleHalfWidth(wide, 120)).toBeCloseTo(52.5, 12);
    expect(bundleHalfWidth(wide, 220)).toBe(45);
  });
});

describe('an opening ahead of the lens', () => {
  test.each([
    { depth: 0, degrees: 25, opening: 33.3333 }, // at the pupil it is the pupil, 210/6.3
    { depth: 40, degrees: 0, opening: 33.3333 }, // light along the axis alone
    { depth: 40, degrees: 45, opening: 113.3333 }, // tan 45° = 1: twice the depth more [common practice, no source]
  ])('210 at f/6.3, $depth ahead, half field $degrees degrees: $opening', ({ depth, degrees, opening }) => {
    const halfField = (degrees * Math.PI) / 180;
    expect(entranceOpening({ focalLength: 210, maxAperture: 6.3, depth, halfField })).toBeCloseTo(opening, 4);
  });
});

describe('a mask ahead of the film', () => {
  test('half way to the pupil has an edge as soft as the pupil is wide', () => {
    expect(softEdge({ distance: 100, pupil: 12, pupilDistance: 200 })).toBe(12); // similar triangles
  });

  test.each([
    { distance: 4.05, pupil: 210 / 16, pupilDistance: 210 },
    { distance: 12, pupil: 30, pupilDistance: 315 },
  ])('$distance from the film has the edge that lines past it draw', ({ distance, pupil, pupilDistance }) => {
    // from a rim of the pupil past the mask's edge at x = 40 to the film
    const past = (rim: number) => rim + ((40 - rim) * pupilDistance) / (pupilDistance - distance);
    const drawn = past(-pupil / 2) - past(pupil / 2);
    expect(softEdge({ distance, pupil, pupilDistance })).toBeCloseTo(drawn, 9);
  });
});
