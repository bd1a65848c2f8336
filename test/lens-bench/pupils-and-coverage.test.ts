import { describe, expect, test } from 'vitest';
import { combined, meanOf, withInterval } from '../../src/lens-bench/repeated.js';
import { benchB, benchWith, measured, readingsOf } from './bench.js';

/** A lens of a given focal length, exactly. */
const lensOf = (f: number) => readingsOf([0.25, 0.5, 1].map((m) => [m, f + f * m] as const));

describe('the widest stop', () => {
  test.each([
    // V8.01, verified: S70b
    { f: 100, disc: 25, N: 4 },
    { f: 200, disc: 50, N: 4 },
    // V8.03, verified: S70b formula
    { f: 300, disc: 33.333, N: 9 },
    { f: 300, disc: 18.75, N: 16 },
  ])('of a $f mm lens with a disc of $disc mm is f/$N', ({ f, disc, N }) =>
    expect(measured(benchWith(lensOf(f), { pupils: { front: [disc], rear: [] } })).maxAperture?.value).toBeCloseTo(
      N,
      3,
    ),
  );

  test('is f/16 of a 300 mm lens whose hole of 17.361 mm looks 1.08 times as large, not f/17.3', () => {
    // V8.07, verified: S69, S70b that pupil and hole differ; 1.08 is an invented example
    const lens = measured(benchWith(lensOf(300), { hole: { diameters: [17.361], enlargement: 1.08 } }));
    expect(lens.maxAperture?.value).toBeCloseTo(16, 3);
    expect(lens.frontEnlargement).toBeNull();
  });

  test('of a bare hole is told to be that', () =>
    expect(
      measured(benchWith(benchB, { hole: { diameters: [17.361], enlargement: null } })).remarks.map((r) => r.message),
    ).toEqual([expect.stringMatching(/bare hole/)]));

  test('disc and hole tell how much the front group enlarges', () =>
    expect(
      measured(
        benchWith(benchB, { pupils: { front: [18.75], rear: [] }, hole: { diameters: [17.361], enlargement: null } }),
      ).frontEnlargement,
    ).toBeCloseTo(1.08, 3));
});

describe('pupil magnification', () => {
  test('is the rear disc over the front one', () => {
    const { pupilMagnification } = measured(benchWith(benchB, { pupils: { front: [20, 20.4], rear: [10.1] } }));
    expect(pupilMagnification).toEqual({ value: 0.5, standardError: null, interval: null });
  });

  test('is in doubt by both, each in proportion', () => {
    const front = [23, 24, 25]; // mean 24, standard error 1/√3
    const rear = [11, 12, 13]; // mean 12, the same
    const { pupilMagnification } = measured(benchWith(benchB, { pupils: { front, rear } }));
    // law of propagation, from memory: JCGM 100:2008, 5.1.6; computed
    expect(pupilMagnification?.standardError).toBeCloseTo(0.5 * Math.sqrt(1 / 3 / 576 + 1 / 3 / 144), 9);
  });
});

describe('repeated readings', () => {
  test('ten of them have the standard error s/√n', () => {
    // from memory: JCGM 100:2008, 4.2.3; the numbers by hand: s² = 10/4 of 1, 2, 3, 4, 5
    expect(meanOf([1, 2, 3, 4, 5], 0.01)).toEqual({ value: 3, standardError: Math.sqrt(2.5 / 5), freedom: 4 });
  });
  test('that agree are no better than a reading: 0.5/√3 = 0.288675', () =>
    // V7.13, from memory: JCGM 100:2008, 4.3.7
    expect(meanOf([7, 7, 7], 0.5).standardError).toBeCloseTo(0.288675, 6));
  test('share their degrees of freedom by Welch and Satterthwaite', () => {
    // from memory: JCGM 100:2008, G.4.1; computed: two errors alike with 4 each have 8 together
    const { interval, standardError } = withInterval(
      combined(1, [
        { error: 3, freedom: 4 },
        { error: 3, freedom: 4 },
      ]),
    );
    // 2.306 is Student's t for 8: from memory: NIST/SEMATECH e-Handbook, 1.3.6.7.2
    expect((interval ?? 0) / (standardError ?? 1)).toBeCloseTo(2.306, 3);
  });
});

describe('coverage', () => {
  test('a circle of 340 at 1:1 is 170 at infinity', () => {
    // V3.05, verified: S26, the doubling
    const lens = measured(benchWith(benchB, { coverage: [{ diameter: 340, magnification: 1 }] }));
    expect(lens.coverage).toMatchObject({ value: 170, at: 0, standardError: null });
  });

  test('with P = 0.8 a circle of 458.43 at 1:1 is 203.75 at infinity', () => {
    // V3.07, common practice, no source; derived from pupil geometry
    const lens = measured(
      benchWith(benchB, { pupils: { front: [10], rear: [8] }, coverage: [{ diameter: 458.433, magnification: 1 }] }),
    );
    expect(lens.coverage?.value).toBeCloseTo(203.748, 2);
  });

  test('a distance says at which magnification it was', () => {
    const at1 = { diameter: 340, distance: 434.0593 }; // V7.09: that is 1:1 on bench B
    expect(measured(benchWith(benchB, { coverage: [at1] })).coverage?.value).toBeCloseTo(170, 3);
    expect(measured(benchWith(benchB, { coverage: [at1] }), { coverageAt: 1 }).coverage?.value).toBeCloseTo(340, 3);
  });

  test('a glass that stands a little ahead of infinity stands at infinity', () => {
    // V7.08: infinity is at 194.65 mm on bench B; a hundredth of its focal length is 2.39 mm
    const near = { diameter: 200, distance: 192.5 };
    expect(measured(benchWith(benchB, { coverage: [near] })).coverage?.value).toBe(200);
  });

  test('is in doubt by the pupils, too, with as few degrees of freedom as they have', () => {
    const pupils = { front: [23, 24, 25], rear: [11, 12, 13] }; // 24 and 12, each with the standard error 1/√3
    const seen = [339, 341].map((diameter) => ({ diameter, magnification: 1 }));
    const { coverage } = measured(benchWith(benchB, { pupils, coverage: seen }));
    // by hand (law of propagation, from memory: JCGM 100:2008, 5.1.2): d/dP of 340/(1 + 1/P) is 340/(1 + P)², and
    // u(P) = 0.5 √(1/3/24² + 1/3/12²) = 0.026896: 4.0642; beside it ±1 mm of reading the edge, 0.57735
    expect(Math.abs((coverage?.standardError ?? 0) - Math.hypot(4.0642, 0.57735))).toBeLessThan(5e-3);
    // Welch and Satterthwaite (the same, G.4.1): 2.94 degrees of freedom of P make 3.06 of the circle. Student's t for 3
    // is 3.182, from memory: NIST/SEMATECH e-Handbook, 1.3.6.7.2
    expect((coverage?.interval ?? 0) / (coverage?.standardError ?? 1)).toBeCloseTo(3.182, 3);
  });
});
