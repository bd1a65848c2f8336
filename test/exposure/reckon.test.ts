import { describe, expect, test } from 'vitest';
import { reckonExposure } from '../../src/exposure/reckon.js';
import { filters, flash400, metered, sitting } from './sitting.js';

const within = (value: number | null, expected: number, tolerance: number) =>
  expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(tolerance);

/** Relative, for floating point alone. */
const EXACT = 1e-9;

const exactly = (value: number | null, expected: number) => within(value, expected, EXACT * Math.abs(expected));

describe('by flash, scaled from 400 J at f/16, 2 m and ISO 100', () => {
  test('f/32 at 1.5 m, index 3, life size: 120 000 J, which are 50 pops of 2400 and not 51', () => {
    // V5.38 [common practice, no source], exact
    const { energy, pops, time, correctedTime } = reckonExposure(
      sitting({
        reading: flash400,
        aperture: 32,
        lampDistance: 1500,
        speed: 3,
        magnification: 1,
        flashMost: 2400,
        reciprocity: { table: [{ metered: 1, given: 2 }] }, // a flash is short
      }),
    );
    exactly(energy, 120_000);
    expect(pops).toBe(50);
    expect([time, correctedTime]).toEqual([null, null]);
  });

  test('f/22 is the number 22: at 1 m, index 6, half life size 7089.84 J', () => {
    // V5.39 [common practice, no source], 0.01
    const { energy, pops } = reckonExposure(
      sitting({ reading: flash400, aperture: 22, lampDistance: 1000, speed: 6, magnification: 0.5 }),
    );
    within(energy, 7089.84, 0.01);
    expect(pops).toBeNull();
  });

  test.each([
    [2, 2],
    [3, 3.17],
    [4, 4],
  ])('from %d times the distance %d stops more', (times, stops) => {
    // V5.35 [verified: S42 for x2]; others computed: light 1/4, 1/9, 1/16; exact, the printed digits of the second
    const { energy, stops: found } = reckonExposure(sitting({ reading: flash400, lampDistance: times * 2000 }));
    exactly(energy, 400 * times * times);
    within(found.distance, stops, 5e-4);
    within(found.total, stops, 5e-4);
  });

  test('twice the energy is one stop', () => {
    // V5.33 [verified: S47, S46]: 400 to 800 Ws, exact
    const { energy, stops } = reckonExposure(sitting({ reading: flash400, aperture: 16 * Math.SQRT2 }));
    exactly(energy, 800);
    exactly(stops.total, 1);
  });

  test('where nobody moves the lamp, its distance is that of the reading', () => {
    // V5.35's formula at x1: no stop, [common practice, no source]
    expect(reckonExposure(sitting({ reading: flash400 })).stops.distance).toBe(0);
  });

  test('a lamp that is moved changes nothing about daylight', () => {
    // pitfall 18: distance is flash to subject [common practice, no source]
    const { time, stops } = reckonExposure(
      sitting({ reading: metered({ time: 1, aperture: 16, speed: 100 }), lampDistance: 500 }),
    );
    expect(time).toBe(1);
    expect(stops.distance).toBeNull();
  });
});

describe('by time', () => {
  test('metered for ISO 100 and exposed on paper of index 3', () => {
    // V5.62 [common practice, no source], 1e-3
    const { time, stops } = reckonExposure(
      sitting({ reading: metered({ time: 1 / 4, aperture: 16, speed: 100 }), speed: 3 }),
    );
    within(time, 8.333, 1e-3);
    within(stops.speed, 5.059, 1e-3);
  });

  test('reciprocity comes last, on the time with every factor in it', () => {
    // V5.61 p from [verified: S54]; order [common practice, no source], 0.01; first instead of last it would be 44.63 s
    const { time, correctedTime, extensionFactor, filterFactor } = reckonExposure(
      sitting({
        reading: metered({ time: 2, aperture: 16, speed: 100 }),
        magnification: 0.5,
        filters: filters(8),
        reciprocity: { exponent: 1.31 },
      }),
    );
    exactly(time, 36);
    within(correctedTime, 109.33, 0.01);
    expect([extensionFactor, filterFactor]).toEqual([2.25, 8]);
  });

  test('where nobody says what is lost, only a short time is known', () => {
    // V5.59 [verified: S54]: up to 1 s unchanged; beyond that nothing can be said
    const of = (time: number) =>
      reckonExposure(sitting({ reading: metered({ time, aperture: 16, speed: 100 }) })).correctedTime;
    expect([of(0.5), of(1), of(1.01)]).toEqual([0.5, 1, null]);
  });

  test('a filter taken out and another put in', () => {
    // V5.56 [verified: S52 rule], exact: 20M (1.5) out, 10R (1.3) in, 12 s
    const { time } = reckonExposure(
      sitting({ reading: metered({ time: 12, aperture: 16, speed: 100, filterFactor: 1.5 }), filters: filters(1.3) }),
    );
    exactly(time, 10.4);
  });

  test('a test made at the working magnification has its extension in it', () => {
    // V2.09 [verified: S20 formula]: X = 4 at life size, in the test as in the exposure, so none is left; from infinity 4
    const at = (magnification: number) =>
      reckonExposure(
        sitting({
          reading: { ...metered({ time: 1, aperture: 16, speed: 100 }), magnification },
          magnification: 1,
        }),
      );
    expect(at(1).time).toBe(1);
    expect(at(1).stops.extension).toBe(0);
    expect(at(1).extensionFactor).toBe(4);
    exactly(at(0).time, 4);
  });

  test('and one made at another, by the pupils of the lens', () => {
    // V2.09 [verified: S20 formula], exact: with P = 2 life size asks for 2.25 times the light, 1:2 for 1.5625 times
    const { time, stops } = reckonExposure(
      sitting({
        lens: { focalLength: 210, pupilMagnification: 2 },
        reading: { ...metered({ time: 1, aperture: 16, speed: 100, filterFactor: 2 }), magnification: 0.5 },
        magnification: 1,
        filters: filters(8),
      }),
    );
    exactly(time, (2.25 / 1.5625) * 4);
    exactly(stops.extension, Math.log2(1.44));
    exactly(stops.filter, 2);
  });

  test.each([
    [0.5, 9],
    [1, 4],
    [2, 2.25],
  ])('life size with a pupil magnification of %d asks for %d times the light', (pupilMagnification, factor) => {
    // V2.09 [verified: S20 formula], exact
    const { extensionFactor, time, workingAperture } = reckonExposure(
      sitting({
        lens: { focalLength: 210, pupilMagnification },
        magnification: 1,
        reading: metered({ time: 1, aperture: 16, speed: 100 }),
      }),
    );
    exactly(extensionFactor, factor);
    exactly(time, factor);
    exactly(workingAperture, 16 * Math.sqrt(factor));
  });

  test('from f/16 to f/273', () => {
    // V8.10 [common practice, no source], 1e-3
    const { stops } = reckonExposure(
      sitting({ reading: metered({ time: 1, aperture: 16, speed: 100 }), aperture: 273 }),
    );
    within(stops.aperture, 8.186, 1e-3);
  });
});

test('the stops add up to the total', () => {
  // V5.38, V5.61 inputs together [common practice, no source]: 2 of aperture, log2(0.5625) of distance, 5.059 of speed,
  // 1.170 of extension, 3 of the filter, half of 1e-3 for each
  const { stops, energy } = reckonExposure(
    sitting({
      reading: flash400,
      aperture: 32,
      lampDistance: 1500,
      speed: 3,
      magnification: 0.5,
      filters: filters(8),
    }),
  );
  within(stops.aperture, 2, 5e-4);
  within(stops.distance, -0.83, 5e-4);
  within(stops.speed, 5.059, 5e-4);
  within(stops.extension, 1.17, 5e-4);
  within(stops.filter, 3, 5e-4);
  within(stops.total, 2 - 0.83 + 5.059 + 1.17 + 3, 2.5e-3);
  exactly(energy, 400 * 2 ** stops.total);
});

describe('what nobody says does not count', () => {
  test('without a reading only extension and filter are known', () => {
    // V2.09, V5.50 [verified: S20 formula, S49]: life size 2 stops, factor 8 three
    const { stops, energy, time, correctedTime, pops } = reckonExposure(
      sitting({ magnification: 1, filters: filters(8), speed: 3, lampDistance: 1000, flashMost: 1200 }),
    );
    expect(stops).toEqual({
      extension: 2,
      filter: 3,
      speed: null,
      aperture: null,
      distance: null,
      dialled: null,
      total: 5,
    });
    expect([energy, time, correctedTime, pops]).toEqual([null, null, null, null]);
  });

  test('without a speed it stays that of the reading', () => {
    const { stops, time } = reckonExposure(sitting({ reading: metered({ time: 1 / 2, aperture: 16, speed: 100 }) }));
    expect(stops.speed).toBeNull();
    expect(time).toBe(1 / 2);
  });
});

test('where the subject is and what is sharp about it', () => {
  // V4.11 [common practice, no source] ray-geometry bisection, 1e-3; u of V1.11's formula: 210(1 + 2) = 630
  const { subjectDistance, depthOfField } = reckonExposure(sitting({ magnification: 0.5, aperture: 22 }));
  exactly(subjectDistance, 630);
  within(630 - depthOfField.near, 12.9291, 1e-3);
  within(depthOfField.far, 630 + 13.4825, 1e-3);
  expect(reckonExposure(sitting()).subjectDistance).toBeNull();
});
