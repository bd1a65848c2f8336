import { describe, expect, test } from 'vitest';
import { tankDepth, tankLiquid, tankPressed, tankShut } from '../../../src/camera/tank/checks.js';
import { sizeTank } from '../../../src/camera/tank/size.js';
import { compose, shift } from '../../../src/geometry/placement.js';
import { boxAt, rectangle } from '../../../src/geometry/shapes.js';
import { bought, cutTo, hole, replaced } from '../altered.js';
import { buildOf, given, heronTank } from './given.js';

/** Limits: camera.md section 16, common practice, no source. */
const heron = buildOf(heronTank);
const deeper = (by: number) =>
  replaced(heron, 'KL2', (places) =>
    places.map((place) => ({ ...place, matrix: compose(shift(0, 0, by), place.matrix) })),
  );

describe('tank-depth: the sheet lies the shift of the window, 3(1 − 1/1.52) = 1.026, deeper than it works', () => {
  test('as drawn, and 0.15 off either way', () => {
    expect(tankDepth(heronTank, heron)).toEqual([]);
    expect(tankDepth(heronTank, deeper(0.15))).toEqual([]);
    expect(tankDepth(heronTank, deeper(-0.15))).toEqual([]);
  });
  test('not where the window was forgotten', () => {
    expect(tankDepth(heronTank, deeper(-1))).toMatchObject([
      {
        rule: 'tank-depth',
        level: 'error',
        limit: 0.22,
        message: expect.stringMatching(/lies 24 mm behind its face.*works as 22\.97 mm/),
      },
    ]);
  });
  test('nor with another glass than was bought', () => {
    // 5 mm shift by 1.71: 0.68 more than 3 mm do
    expect(tankDepth(heronTank, bought(heron, 'tank-glass-2', { thickness: 5 }))).toMatchObject([
      { message: expect.stringMatching(/0\.71 mm less/) },
    ]);
  });
});

describe('tank-liquid: 5 over the sheet are half of the chamber at most', () => {
  test.each([
    { filmDepth: 24, told: 0 },
    { filmDepth: 19, told: 0 },
    // 18.5 + 1.03 − 9.85 = 9.68
    { filmDepth: 18.5, told: 1 },
  ])('$filmDepth deep', ({ filmDepth, told }) => {
    const tank = sizeTank(given({ filmDepth }));
    const found = tankLiquid(tank, buildOf(tank));
    expect(found).toHaveLength(told);
    for (const one of found) expect(one).toMatchObject({ rule: 'tank-liquid', level: 'warning', value: 5 });
  });
});

describe('tank-shut', () => {
  test('6 of land for the gasket, screws 60 apart', () => expect(tankShut(heronTank, heron)).toEqual([]));
  test('a pocket that is too wide leaves too little', () => {
    const wide = cutTo(heron, 'KP2', ({ holes }) => ({
      holes: [hole(rectangle(boxAt(0, 0, 129.2, 178.6))), ...holes.slice(1)],
    }));
    // (156 − 129.2)/2 − 5.25 − 2.25 = 5.9
    expect(tankShut(heronTank, wide)).toMatchObject([{ rule: 'tank-shut', level: 'error', limit: 6 }]);
    expect(tankShut(heronTank, wide)[0]?.value).toBeCloseTo(5.9, 6);
  });
  test('a screw left out', () => {
    const fewer = replaced(heron, 'tank-screw-2', (places) => places.slice(4));
    expect(tankShut(heronTank, fewer)).toMatchObject([
      { rule: 'tank-shut', level: 'error', limit: 60, message: expect.stringMatching(/screws of the lid/) },
    ]);
  });
});

test('tank-shut, as a note: what a capped tank bears when it is warmed', () => {
  // M11.06 and M11.08: 6.22156 kPa of dry air and up to 4.29 of vapour; on 127.8 × 178.6
  const [told] = tankPressed(heronTank, heron);
  expect(told).toMatchObject({ rule: 'tank-shut', level: 'note', unit: 'N' });
  expect(Math.abs((told?.value ?? 0) - (6.22156 + 4.29) * 0.1278 * 178.6)).toBeLessThan(0.02 * 22.8 + 0.1);
});
