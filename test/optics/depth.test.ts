import { describe, expect, test } from 'vitest';
import { magnificationAt, subjectDistance } from '../../src/optics/conjugates.js';
import {
  circleOfConfusion,
  closeUpDepth,
  depthAbout,
  depthOfField,
  depthOfFocus,
  effectiveDepth,
  glassShift,
  hyperfocal,
  registerTolerance,
} from '../../src/optics/depth.js';

const INCH = 25.4;

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

describe('the circle of confusion', () => {
  test.each([
    { of: '24x36', across: 43.267, part: 1500, c: 0.02884 },
    { of: '24x36', across: 43.267, part: 1730, c: 0.02501 }, // V4.05 [verified: S32], 1e-5
    { of: '4x5', across: 162.64, part: 1500, c: 0.10843 },
    { of: '4x5', across: 162.64, part: 1730, c: 0.09401 }, // V4.06 [verified: S32 formula], 1e-5
  ])('d/$part of $of: $c', ({ across, part, c }) => within(circleOfConfusion(across, part), c, 1e-5));

  test('d/1500 where nothing else is said', () => {
    within(circleOfConfusion(162.64), 0.10843, 1e-5); // V4.06 [verified: S32 formula]
  });
});

describe('hyperfocal distance and depth of field', () => {
  test('50 at f/8 on 24x36', () => {
    // V4.01 [verified: S31], 0.5
    within(hyperfocal(50, 8, 0.03), 10466.67, 0.5);
    within(hyperfocal(50, 8, 0.03) - 50, 10416.67, 0.5);
  });

  test('focused there, it is sharp from half of it to infinity', () => {
    // V4.02 [verified: S31], 0.5
    const { near, far } = depthOfField(50, 8, 0.03, hyperfocal(50, 8, 0.03));
    within(near, 5233.33, 0.5);
    expect(far).toBe(Number.POSITIVE_INFINITY);
  });

  test('beyond it, still to infinity', () => {
    // section 0 of the checks: infinite when u >= H
    expect(depthOfField(50, 8, 0.03, 20000).far).toBe(Number.POSITIVE_INFINITY);
  });

  test('focused at half of it', () => {
    // V4.03 [verified: S31 data] exact computed, half of the last digit; the page's rounded graph within 0.5 %
    const { near, far } = depthOfField(50, 8, 0.03, hyperfocal(50, 8, 0.03) / 2);
    within(near, 3494.48, 5e-3);
    within(far, 10416.67, 5e-3);
    within(near / 3489, 1, 5e-3);
    within(far / 10467, 1, 5e-3);
  });

  test('2 in at f/8: one focal length beyond the handbook, which leaves that out', () => {
    // V4.04 [verified: S8], 20.83 ft without the + f, 0.05 ft
    within((hyperfocal(2, 8, 0.002) - 2) / 12, 20.83, 0.05);
  });

  test('210 at f/22, focused at 3 m', () => {
    // V4.07 [verified: S31 formula family] computed two ways, 0.01
    within(hyperfocal(210, 22, 0.1), 20255.45, 0.01);
    const { near, far } = depthOfField(210, 22, 0.1, 3000);
    within(near, 2633.46, 0.01);
    within(far, 3485.06, 0.01);
    within(magnificationAt(210, 3000) ?? Number.NaN, 0.075269, 5e-7);
  });

  test('is not the form that leaves f out', () => {
    // V4.08 [verified: S35b formula]: 2609.47 and 3528.00 differ by 0.9 to 1.2 %, printed to a tenth
    const { near, far } = depthOfField(210, 22, 0.1, 3000);
    within(near / 2609.47 - 1, 0.009, 5e-4);
    within(3528 / far - 1, 0.012, 5e-4);
  });

  test('a focus between near and far is their harmonic mean', () => {
    // V4.14 [verified: S5c formula]: far 10 m, near 5 m, focus at 6.6667 m. The aperture that just holds far sharp follows
    // from far = u(H − f)/(H − u), and near must then fall at 5 m.
    const [f, c, u] = [210, 0.1, 20000 / 3];
    const { near, far } = depthOfField(f, (f * f) / (3 * (u - f) * c), c, u);
    within(far, 10000, 1e-6);
    within(near, 5000, 1e-6);
  });
});

describe('depth of field close up', () => {
  test.each([
    { given: { N: 22, c: 0.1, m: 1 }, depth: 8.8, tolerance: 1e-5 },
    // V4.09 [verified: S35b, wording "DOF independent of f"]; formula [from memory: encyclopedia article Depth of field]
    { given: { N: 22, c: 0.1, m: 1, f: 240 }, depth: 8.80074, tolerance: 1e-5 },
    // V4.10 [verified: S35a definition of P]; value confirmed by ray-geometry bisection, 1e-3
    { given: { N: 22, c: 0.1, m: 0.5, f: 210, P: 0.5 }, depth: 35.2155, tolerance: 1e-3 },
    { given: { N: 22, c: 0.1, m: 0.5, f: 210, P: 1 }, depth: 26.4116, tolerance: 1e-3 },
    { given: { N: 22, c: 0.1, m: 0.5, f: 210, P: 2 }, depth: 22.0097, tolerance: 1e-3 },
  ])('$given: $depth', ({ given, depth, tolerance }) => within(closeUpDepth(given), depth, tolerance));

  test('splits unevenly before and behind', () => {
    // V4.11 [common practice, no source] ray-geometry bisection, 1e-3
    const u = subjectDistance(210, 0.5);
    const { near, far } = depthOfField(210, 22, 0.1, u);
    within(u - near, 12.9291, 1e-3);
    within(far - u, 13.4825, 1e-3);
  });

  test('has no end from the hyperfocal distance on', () => {
    // guard of the checks' pitfall 24: m f <= N c
    const atHyperfocal = magnificationAt(210, hyperfocal(210, 22, 0.1)) ?? Number.NaN;
    expect(closeUpDepth({ N: 22, c: 0.1, m: atHyperfocal * 0.999, f: 210 })).toBe(Number.POSITIVE_INFINITY);
    expect(closeUpDepth({ N: 22, c: 0.1, m: atHyperfocal * 1.001, f: 210 })).toBeGreaterThan(1e6);
  });
});

describe('sharp limits by rays, for any pupils', () => {
  const about = (given: { f?: number; N?: number; c?: number; m: number; P?: number }) =>
    depthAbout({ f: 210, N: 22, c: 0.1, P: 1, ...given });
  const at = (f: number, u: number) => magnificationAt(f, u) ?? Number.NaN;

  test('50 at f/8, focused at the hyperfocal distance and at half of it', () => {
    // V4.01, V4.02 [verified: S31], 0.5; V4.03 [verified: S31 data] exact computed
    const hyper = about({ f: 50, N: 8, c: 0.03, m: at(50, 10466.67) });
    within(hyper.near, 5233.33, 0.5);
    const half = about({ f: 50, N: 8, c: 0.03, m: at(50, 10466.6667 / 2) });
    within(half.near, 3494.48, 5e-3);
    within(half.far ?? Number.NaN, 10416.67, 5e-3);
  });

  test('210 at f/22, focused at 3 m', () => {
    // V4.07 [verified: S31 formula family] computed two ways, 0.01
    const { near, far } = about({ m: at(210, 3000) });
    within(near, 2633.46, 0.01);
    within(far ?? Number.NaN, 3485.06, 0.01);
  });

  test.each([
    [0.5, 35.2155],
    [1, 26.4116],
    [2, 22.0097],
  ])('half life size with a pupil magnification of %d: %d in all', (P, depth) => {
    // V4.10 [verified: S35a definition of P]; value confirmed by ray-geometry bisection, 1e-3
    const { near, far } = about({ m: 0.5, P });
    within((far ?? Number.NaN) - near, depth, 1e-3);
  });

  test('of which less lies in front than behind', () => {
    // V4.11 [common practice, no source] ray-geometry bisection, 1e-3
    const { near, far } = about({ m: 0.5 });
    within(630 - near, 12.9291, 1e-3);
    within((far ?? Number.NaN) - 630, 13.4825, 1e-3);
  });

  test.each([1e-3, 0.02, 0.25, 1, 3])('with equal pupils it is the textbook form, at %d', (m) => {
    // V4.07's formulas [verified: S31 formula family]
    const textbook = depthOfField(210, 22, 0.1, subjectDistance(210, m));
    const { near, far } = about({ m });
    within(near / textbook.near, 1, 1e-9);
    if (far === null) expect(textbook.far).toBe(Number.POSITIVE_INFINITY);
    else within(far / textbook.far, 1, 1e-9);
  });

  test('a subject at infinity leaves everything sharp from one focal length before the hyperfocal distance on', () => {
    // V4.01 [verified: S31]: H − f, of the same formulas
    const { near, far } = about({ f: 50, N: 8, c: 0.03, m: 0 });
    within(near, 10416.67, 0.5);
    expect(far).toBeNull();
  });

  test('far has no end where m f ≤ N c', () => {
    // guard of the checks' pitfall 24, whatever the pupils
    for (const P of [0.5, 1, 2]) {
      expect(about({ m: 2.2 / 210, P }).far).toBeNull();
      expect(about({ m: 2.201 / 210, P }).far).toBeGreaterThan(1e7);
    }
  });

  test('a pupil no wider than the circle draws everything sharp from the front focus on', () => {
    // geometry: a cone that narrow nowhere spreads further than its own width [common practice, no source]
    for (const N of [2100, 3000]) expect(about({ N, m: 0.5 })).toEqual({ near: 210, far: null });
    expect(about({ N: 2099, m: 0.5 }).near).toBeGreaterThan(210);
  });
});

describe('depth of focus and register', () => {
  test.each([
    { m: 0, both: 1.6 },
    { m: 1, both: 3.2 }, // V4.12 [verified: S33 formula], exact; half each side
  ])('f/8, c 0.1, magnification $m: $both in all', ({ m, both }) => within(2 * depthOfFocus(8, 0.1, m), both, 1e-12));

  test('grows by the pupil magnification', () => {
    // V2.09's (1 + m/P) at P 0.5 [verified: S20 formula]: three times that at infinity
    within(depthOfFocus(8, 0.1, 1, 0.5), 2.4, 1e-12);
  });

  test('the tolerance of a 4x5 holder', () => {
    // V4.15 [verified: S16a, S33] computed, 1 %: all of it at f/1.78, 22 % at f/8
    within(0.178 / depthOfFocus(1.78, 0.1, 0), 1, 0.01);
    within(0.178 / depthOfFocus(8, 0.1, 0), 0.22, 0.01);
  });

  test('register may use a quarter of it', () => {
    // [common practice, no source]: a quarter of N c at infinity, half of V4.12's 1.6 being each side
    within(registerTolerance(8, 0.1), 0.2, 1e-12);
  });
});

describe('through glass', () => {
  test('1.5 of glass moves the focus away by 0.5', () => {
    // V1.23 [verified: S17, one third of the thickness], exact
    within(glassShift(1.5, 1.5), 0.5, 1e-12);
  });

  test.each([
    { n: 1.5, depth: 4.826 },
    { n: 1.52, depth: 4.8126 }, // M1.20 [verified: R4 data, the poster's puzzle]; resolution computed, 1e-3
  ])('frosted side to the eye, 0.210 in through 0.060 in of glass, n $n: $depth', ({ n, depth }) =>
    within(effectiveDepth(0.21 * INCH, { thickness: 0.06 * INCH, n }), depth, 1e-3),
  );

  test('frosted side to the lens, no glass is passed', () => {
    // M1.21 [verified: R4 data], 1e-3
    within(effectiveDepth(0.15 * INCH, { thickness: 0, n: 1.52 }), 3.81, 1e-3);
  });
});
