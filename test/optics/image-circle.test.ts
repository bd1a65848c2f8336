import { describe, expect, test } from 'vitest';
import {
  angleOfView,
  circleAt,
  circleOfField,
  coversFrom,
  diagonal,
  fieldOfCircle,
  movementLeft,
} from '../../src/optics/image-circle.js';

const INCH = 25.4;
const DEGREE = Math.PI / 180;

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

/** Circle at m of a lens of focal length f that covers `field` degrees at infinity. */
const covered = (f: number, field: number, m: number, P = 1) =>
  circleAt(m, { diameter: circleOfField(f, field * DEGREE), at: 0 }, P);

describe('the diagonal to cover', () => {
  test.each([
    { width: 4, height: 5, across: 162.64 },
    { width: 5, height: 7, across: 218.5 },
    { width: 8, height: 10, across: 325.28 },
    { width: 11, height: 14, across: 452.23 }, // V3.01 [verified: S25 for 8x10 and 11x14]; others computed; 0.05
  ])('nominal $width x $height in: $across', ({ width, height, across }) =>
    within(diagonal({ width: width * INCH, height: height * INCH }), across, 0.05),
  );
});

describe('the image circle', () => {
  test.each([
    { m: 0, circle: 16.13 },
    { m: 1, circle: 32.26 }, // V3.02 [verified: S26], 0.05 in; published 16.1, about 32
  ])('46 degrees at 19 in, magnification $m: $circle in', ({ m, circle }) => within(covered(19, 46, m), circle, 0.05));

  test.each([
    { m: 0, circle: 203.75 },
    { m: 1, circle: 407.5 }, // V3.04 [verified: S26 formula], 0.01
  ])('46 degrees at 240, magnification $m: $circle', ({ m, circle }) => within(covered(240, 46, m), circle, 0.01));

  test('a pupil magnification of 0.8 makes it grow faster', () => {
    // V3.07 [common practice, no source; derived from pupil geometry], 0.01
    within(covered(240, 46, 1, 0.8), 458.43, 0.01);
  });

  test('a circle quoted at 1:1 is halved at infinity', () => {
    // V3.05 [verified: S26, the doubling], 0.01; the naive field would be 77.98 degrees
    const atInfinity = circleAt(0, { diameter: 340, at: 1 });
    within(atInfinity, 170, 0.01);
    within(fieldOfCircle(210, atInfinity) / DEGREE, 44.07, 0.01);
    within(circleAt(1, { diameter: 340, at: 1 }), 340, 1e-9);
  });

  test('a circle quoted at 1:1 of a lens whose pupils differ', () => {
    // V3.07 and V3.04 read the other way [common practice, no source; derived from pupil geometry], 0.01: 458.43 at 1:1
    // and P 0.8 is that of 203.75 at infinity, (1 + 1/0.8) times
    within(circleAt(0, { diameter: 458.43, at: 1 }, 0.8), 203.75, 0.01);
  });

  test('a circle of 264 at 300 is a field of 47.5 degrees', () => {
    // V3.03 [verified: S27 data] angle computed, 0.01 degrees
    within(fieldOfCircle(300, 264) / DEGREE, 47.5, 0.01);
  });

  test('46 degrees at 240 cover 8x10 from a magnification on', () => {
    // V3.06 [verified: S26 formula], 1e-4
    const nominal = diagonal({ width: 203.2, height: 254 });
    expect(covered(240, 46, 0)).toBeLessThan(nominal);
    within(coversFrom(nominal, covered(240, 46, 0)), 0.59648, 1e-4);
  });

  test.each([1, 0.8, 1.3])('where it begins to cover it is as large as the diagonal, P %d', (P) => {
    // the definition, against the circle that grows by V3.07's rule
    const circle = { diameter: 200, at: 0 };
    within(circleAt(coversFrom(325.28, 200, P), circle, P), 325.28, 1e-9);
  });

  test('one that covers at infinity covers from infinity on', () => expect(coversFrom(162.6, 210)).toBe(0));
});

describe('movements', () => {
  test.each([
    { name: 'rise', along: 101.6, across: 127, left: 64.92 },
    { name: 'shift', along: 127, across: 101.6, left: 58.33 }, // V3.08 [common practice, no source], 0.01, each alone
  ])('$name of a 4x5 landscape in a circle of 264: $left', ({ along, across, left }) =>
    within(movementLeft(264, { along, across }), left, 0.01),
  );

  test.each([
    { circle: 162, why: 'smaller than the diagonal' },
    { circle: 100, why: 'smaller than either side' }, // plane geometry [common practice, no source]
  ])('none in a circle of $circle, $why', ({ circle }) =>
    expect(movementLeft(circle, { along: 127, across: 101.6 })).toBe(0),
  );
});

describe('the angle of view', () => {
  test.each([
    { side: 22.5, f: 30, m: 0, angle: 41.11, tolerance: 0.05 },
    { side: 36, f: 50, m: 0, angle: 39.6, tolerance: 0.05 }, // V3.13 [verified: S30; second S30b]
    { side: 254, f: 300, m: 0, angle: 45.889, tolerance: 1e-3 },
    { side: 254, f: 300, m: 1, angle: 23.902, tolerance: 1e-3 }, // V3.14 [verified: S30c formula with f(1+m)]
  ])('$side wide at $f, magnification $m: $angle degrees', ({ side, f, m, angle, tolerance }) =>
    within(angleOfView(side, f, m) / DEGREE, angle, tolerance),
  );

  test.each([0.7, 1, 1.5])('is what the subject fills before the entrance pupil, P %d', (P) => {
    // subject 200/m wide, f(1 + 1/m) before the front principal plane; the entrance pupil images the exit pupil, which
    // stands P·f ahead of the film at infinity, so it stands f(1 − 1/P) ahead of that plane [derived from pupil geometry]
    const [f, m] = [240, 0.4];
    const distance = f * (1 + 1 / m) - f * (1 - 1 / P);
    within(angleOfView(200, f, m, P), 2 * Math.atan(200 / m / 2 / distance), 1e-12);
  });
});
