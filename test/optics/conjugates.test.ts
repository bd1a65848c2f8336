import { describe, expect, test } from 'vitest';
import {
  beyondFrontFocus,
  extension,
  extensionFactor,
  extensionStops,
  filmPlane,
  imageDistance,
  magnificationAt,
  magnificationFromImage,
  seatToSubject,
  subjectDistance,
  totalDistance,
  workingAperture,
} from '../../src/optics/conjugates.js';

const INCH = 25.4;

/** Rows marked "exact" may differ by floating point only. */
const exactly = (value: number, expected: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(expected)));

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

/** Magnification where the row is one that a camera can take. */
const taken = (magnification: number | null): number => {
  expect(magnification).not.toBeNull();
  return magnification ?? Number.NaN;
};

const imageOf = (f: number, u: number) => imageDistance(f, taken(magnificationAt(f, u)));

describe('conjugate distances', () => {
  test('a lens of 100 sees 500 at 125, a quarter as large', () => {
    // V1.01 [verified: S1 worked example], exact
    const m = taken(magnificationAt(100, 500));
    exactly(m, 0.25);
    exactly(imageDistance(100, m), 125);
    exactly(30 * m, 7.5);
  });

  test('at two focal lengths the image is as large as the subject', () => {
    // V1.02 [verified: S1 worked example], exact
    exactly(taken(magnificationAt(100, 200)), 1);
    exactly(imageOf(100, 200), 200);
  });

  test.each([
    50, // V1.03 [verified: S1 worked example]: its image would be virtual, 100 ahead of the lens
    100, // at the focal point itself no image is formed, plane geometry [common practice, no source]
    0,
    -200,
  ])('a subject at %d from a lens of 100 is refused', (u) => expect(magnificationAt(100, u)).toBeNull());

  test('an image nearer than the focal length is refused', () => {
    // 1/u = 1/f − 1/v is negative there [common practice, no source]
    expect(magnificationFromImage(100, 99)).toBeNull();
    expect(magnificationFromImage(100, 100)).toBe(0);
  });

  test.each([
    { f: 35, u: 750, v: 36.7133, tolerance: 0.05 }, // V1.04 [verified: S1/S3 problem; answer printed at S4a]
    { f: 50, u: 3000, v: 50.8475, tolerance: 5e-5 }, // V1.05 [verified: S1 problem, 5.08 cm], half the last digit
    { f: 5, u: 500, v: 5.0505, tolerance: 5e-4 }, // V1.06 [verified: S2]
    { f: 5, u: 5000, v: 5.005, tolerance: 5e-4 }, // V1.06 [verified: S2]
    { f: 360, u: 1500, v: 473.68, tolerance: 0.01 }, // V1.24 [verified: S24 data] exact value computed; not 500
  ])('a lens of $f forms the image of $u at $v', ({ f, u, v, tolerance }) => within(imageOf(f, u), v, tolerance));

  test('focus travel of a lens of 5 from 500 to 5000', () => {
    // V1.06 [verified: S2], 5e-4
    within(imageOf(5, 500) - imageOf(5, 5000), 0.0455, 5e-4);
  });

  test('a frame of 36 holds 2.124 m at 3 m', () => {
    // V1.05 [verified: S1 problem, 1.695e-2, 2.12 m], half of the last digit
    const m = taken(magnificationAt(50, 3000));
    within(m, 0.0169492, 5e-8);
    within(36 / m, 2124, 0.5);
  });

  test('Newton: a slide 3 beyond the front focus', () => {
    // V1.07 [verified: S1/S3, 3.43 m, 80.0 x 120 cm from 24 x 36 mm]; six digits computed, so half of those shown
    const m = taken(magnificationAt(100, 103));
    within(m, 33.333, 5e-4);
    within(imageDistance(100, m), 3433.33, 5e-3);
    within(beyondFrontFocus(100, m), 3, 1e-6);
    within(extension(100, m), 3333.33, 5e-3);
    within(extension(100, m) * beyondFrontFocus(100, m), 10000, 1e-6);
    within(24 * m, 800, 1e-6);
    within(36 * m, 1200, 1e-6);
  });

  test.each([
    { f: 10, m: 1 / 4, u: 50, v: 12.5, total: 62.5 }, // V1.08 [verified: S5b], inches
    { f: 50 / INCH, m: 1, u: 100 / INCH, v: 100 / INCH, total: 200 / INCH }, // V1.09 [verified: S5a]
    { f: 12, m: 6 / 12, u: 36, v: 18, total: 54 }, // V1.10 [verified: S7b]; total is their sum
    { f: 12, m: 1 / 12, u: 156, v: 13, total: 169 }, // V1.11 [verified: S9]; total is their sum
  ])('a lens of $f in at magnification $m: subject at $u in, film at $v in', ({ f, m, u, v, total }) => {
    exactly(subjectDistance(f * INCH, m), u * INCH);
    exactly(imageDistance(f * INCH, m), v * INCH);
    exactly(totalDistance(f * INCH, m), total * INCH);
  });

  test('a board of 144 in, imaged 9 in wide by a lens of 12 in', () => {
    // V1.19 [verified: S5d data and its 16 ft] exact value computed: 17 ft, the book's shortcut is one focal length short
    exactly(subjectDistance(12, 9 / 144), 17 * 12);
    exactly(imageDistance(12, 9 / 144), 12.75);
  });

  test('a subject of 10 ft at 30 ft through a lens of 24 in', () => {
    // V1.20 [verified: S5d data] exact value computed: not the 8 in of the book's shortcut
    within(120 * taken(magnificationAt(24, 360)), 8.5714, 1e-4);
  });

  test('a pair of lenses with its principal planes far ahead of it', () => {
    // V1.13 [verified: S12 problem 5 data; solution computed two ways], with the planes of V1.12: focal length 800, front
    // plane 400 ahead of the front lens, rear plane 400 ahead of the rear lens, 200 between the planes
    const m = taken(magnificationAt(800, 2000 - 400));
    exactly(m, 1);
    exactly(imageDistance(800, m) - 400, 1200);
    exactly(totalDistance(800, m, 200), 3400);
  });

  test('the total is least at 1:1, four focal lengths and the hiatus', () => {
    // section 0 of the checks: minimum 4f + HH' at m = 1
    exactly(totalDistance(210, 1, 10), 850);
    for (const m of [0.25, 0.5, 0.9, 1.1, 2, 4]) expect(totalDistance(210, m, 10)).toBeGreaterThan(850);
  });
});

describe('from the lens seat', () => {
  test.each([
    { m: 0, z: 202 },
    { m: 1 / 2, z: 307 },
    { m: 1, z: 412 }, // V1.14 [verified: S14 data] formula computed; not 404, not 420
  ])('a lens of 210 with flange distance 202 at $m: film at $z', ({ m, z }) =>
    exactly(filmPlane({ focalLength: 210, flangeDistance: 202, seat: 0 }, m), z),
  );

  test.each([
    { m: 1 / 2, z: 600 },
    { m: 1, z: 900 }, // V1.15 [verified: S15, example pair and the rule]
  ])('a telephoto of 600 with flange distance 300 at $m: film at $z', ({ m, z }) =>
    exactly(filmPlane({ focalLength: 600, flangeDistance: 300, seat: 0 }, m), z),
  );

  test('the film moves with the seat', () => {
    // plane geometry [common practice, no source]
    exactly(filmPlane({ focalLength: 210, flangeDistance: 202, seat: -8.1 }, 0.5), 298.9);
  });

  test('flange to subject and to film add up to the total', () => {
    // V1.16 [common practice, no source], exact
    const lens = { focalLength: 210, flangeDistance: 202, seat: 0 };
    exactly(seatToSubject(lens, 0.5, 10), 648);
    exactly(filmPlane(lens, 0.5), 307);
    exactly(totalDistance(210, 0.5, 10), 955);
  });

  test('a lens for a mount of 45.46 on one of 46.50 no longer reaches infinity', () => {
    // V1.17 and V1.18, mount a 45.46 and mount b 46.50 [verified: S13b the pair] number computed: farthest sharp 2453.8
    const tooFar = 46.5 - 45.46;
    exactly(tooFar, 1.04);
    within(subjectDistance(50, taken(magnificationFromImage(50, 50 + tooFar))), 2453.8, 0.1);
  });
});

describe('the extension factor', () => {
  const byDraw = (f: number, v: number, P = 1) => extensionFactor(taken(magnificationFromImage(f, v)), P);

  test.each([
    { f: 12, v: 18, meter: 8, X: 2.25, seconds: 18 }, // V2.01 [verified: S6]
    { f: 5, v: 7, meter: 1 / 30, X: 1.96, seconds: 0.0653333333333 }, // V2.04 [verified: S5e data]; result computed
  ])('a lens of $f in at $v in: $X times the exposure', ({ f, v, meter, X, seconds }) => {
    exactly(byDraw(f, v), X);
    exactly(meter * byDraw(f, v), seconds);
  });

  test('an image of 8 from an original of 12', () => {
    // V2.02 [verified: S6], half of the last digit; the book prints 2.8
    within(extensionFactor(8 / 12), 2.7778, 5e-5);
    within(extensionFactor(8 / 12), 2.8, 0.05);
  });

  test('twice the focal length costs two stops', () => {
    // V2.03 [verified: S7c]
    exactly(byDraw(6, 12), 4);
    exactly(extensionStops(taken(magnificationFromImage(6, 12))), 2);
  });

  test('a lens of 4 in, 4 in beyond its focal length, opens from f/11 to f/5.6', () => {
    // V2.05 [verified: S5e data]; result computed, exact 5.657 from 11.314: half of the last digit
    exactly(byDraw(4, 8), 4);
    within(11.314 / Math.sqrt(byDraw(4, 8)), 5.657, 5e-4);
  });

  test.each([
    { m: 1 / 30, X: 1.07, computed: 1.0678 },
    { m: 1 / 10, X: 1.21, computed: 1.21 },
    { m: 1 / 4, X: 1.56, computed: 1.5625 },
    { m: 1 / 2, X: 2.25, computed: 2.25 },
    { m: 1, X: 4, computed: 4 },
    { m: 2, X: 9, computed: 9 }, // V2.06 [verified: S18], 0.005 against the table
  ])('at magnification $m: $X', ({ m, X, computed }) => {
    within(extensionFactor(m), X, 0.005);
    within(extensionFactor(m), computed, 5e-5);
  });

  test.each([
    { m: 1 / 4, share: 0.39 },
    { m: 1 / 2, share: 0.56 },
    { m: 2, share: 2.25 }, // V2.07 [verified: S18], 0.005
  ])('against same size at magnification $m: $share', ({ m, share }) =>
    within(extensionFactor(m) / extensionFactor(1), share, 0.005),
  );

  test.each([
    { m: 1 / 10, X: 1.2, stops: 1 / 3 },
    { m: 1 / 6, X: 1.4, stops: 1 / 2 },
    { m: 1 / 2, X: 2.3, stops: 4 / 3 },
    { m: 1 / 1.4, X: 2.9, stops: 3 / 2 },
    { m: 1, X: 4, stops: 2 }, // V2.08 [verified: S19], 0.05, stops 0.2: a printed table
  ])('a close-up table at magnification $m: $X', ({ m, X, stops }) => {
    within(extensionFactor(m), X, 0.0501); // 2.25 is printed 2.3: half a digit, and floating point
    within(extensionStops(m), stops, 0.2);
  });

  test.each([
    { m: 1, P: 1, X: 4, tolerance: 1e-9 },
    { m: 1, P: 0.5, X: 9, tolerance: 1e-9 },
    { m: 1, P: 2, X: 2.25, tolerance: 1e-9 }, // V2.09 [verified: S20 formula], exact
    { m: 0.5, P: 1.5, X: 1.7778, tolerance: 1e-4 },
    { m: 0.25, P: 0.7, X: 1.84184, tolerance: 1e-4 }, // V2.10 [verified: S20 formula]
  ])('pupil magnification $P at $m: $X', ({ m, P, X, tolerance }) => within(extensionFactor(m, P), X, tolerance));

  test.each([
    { m: 0.5, P: 1.5, stops: 0.83 },
    { m: 0.25, P: 0.7, stops: 0.881 }, // V2.10 [verified: S20 formula], half of the last digit printed
  ])('pupil magnification $P at $m in stops: $stops', ({ m, P, stops }) => within(extensionStops(m, P), stops, 5e-4));

  test.each([
    { N: 16, m: 1, working: 32 },
    { N: 22.627, m: 0.5, working: 33.941 }, // V2.11 [verified: S20 formula], 1e-3
  ])('f/$N at magnification $m works as f/$working', ({ N, m, working }) =>
    within(workingAperture(N, m), working, 1e-3),
  );

  test('a telephoto is not judged by its draw', () => {
    // V2.12 [verified: S21, S15] number computed: 2.25, where (draw/f)² would say 1
    const lens = { focalLength: 600, flangeDistance: 300, seat: 0 };
    expect(filmPlane(lens, 0.5) / lens.focalLength).toBe(1);
    exactly(extensionFactor(0.5), 2.25);
  });

  test('77 from lens to film is not an extension of 77', () => {
    // V2.13 [verified: S23 data]: m 0.4 and 1.96, not 1.4 and 5.76
    exactly(taken(magnificationFromImage(55, 77)), 0.4);
    exactly(byDraw(55, 77), 1.96);
  });
});
