import { describe, expect, test } from 'vitest';
import { levelOf, surfaceAt } from '../../src/liquids/chamber.js';
import {
  airSpeed,
  coefficientOfPath,
  diameterOf,
  emptyTime,
  fillTime,
  flowMl,
  headOfPlug,
  ventForShare,
  ventShare,
} from '../../src/liquids/flow.js';
import { standardGravity } from '../../src/standards/gravity.js';
import { airDensity, water } from '../../src/standards/liquids.js';

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

/** Wide enough not to hold anything back. */
const OPEN = 1e6;

describe('a spout that is freely vented', () => {
  test('of 60 mm² runs 120 ml in within about 5 s at a head of 30 mm', () => {
    // section 13 of the description of the camera, A·0.6·√(2gh): 36·√(2·9806.65·30) = 27 615 mm³/s by hand
    within(flowMl({ spout: 60, vent: OPEN }, 30), 27.615, 1e-3);
    within(fillTime(120, { spout: 60, vent: OPEN }, 30), 4.345, 1e-3);
  });

  test('empties an upright vessel in the time of the textbooks', () => {
    // 2A(√h₁ − √h₂)/(k a √(2g)) [stated mechanics]; 3000 mm², 100 to 25 mm, 60 mm²: 30 000/(36·140.047) by hand
    const vessel = { surfaceAt: () => 3000, from: 100, to: 25 };
    within(emptyTime(vessel, { spout: 60, vent: OPEN }), 5.9503, 1e-3);
    // to the last drop twice as long, since half of the root is left
    within(emptyTime({ ...vessel, to: 0 }, { spout: 60, vent: OPEN }), 11.9006, 1e-3);
    // with the mouth 25 lower the same roots stand for 75 to 0
    within(emptyTime({ ...vessel, from: 75, to: 0, mouthBelow: 25 }, { spout: 60, vent: OPEN }), 5.9503, 1e-3);
  });

  test('empties a funnel in a fifth of what its rim alone would take', () => {
    // cone with its mouth at the tip: ⅖ A √h/(k a √(2g)) [stated mechanics], A at the rim
    const rim = Math.PI * 30 ** 2;
    const cone = { surfaceAt: (height: number) => rim * (height / 50) ** 2, from: 50 };
    const upright = { surfaceAt: () => rim, from: 50 };
    const openings = { spout: 60, vent: OPEN };
    within(emptyTime(cone, openings) / emptyTime(upright, openings), 0.2, 1e-5);
  });

  test('is found again by following a tank on its corner in time', () => {
    const tank = { length: 260, width: 210, depth: 14, turn: Math.PI / 4 };
    const openings = { spout: 60, vent: 15, coefficient: 0.4 };
    const surface = (height: number) => surfaceAt(tank, height);
    let left = 270_000;
    let time = 0;
    // the last 5 mm are left out: there steps of time would have to be ever smaller
    const last = 5;
    while (levelOf(tank, left / 1000) > last) {
      left -= flowMl(openings, levelOf(tank, left / 1000) + 8) * 1000 * 1e-3;
      time += 1e-3;
    }
    within(emptyTime({ surfaceAt: surface, from: levelOf(tank, 270), to: last, mouthBelow: 8 }, openings), time, 5e-3);
  });
});

describe('bends', () => {
  test('cost head: two turns back on themselves leave 0.37 of 0.6', () => {
    within(coefficientOfPath(0), 0.6, 1e-12);
    within(coefficientOfPath(4), 0.3731, 1e-3); // 1/√(2.7778 + 4.4) by hand
  });
});

describe('a vent', () => {
  const narrow = { spout: 60, vent: 3 };

  test('and a spout share the head between them', () => {
    const flow = flowMl(narrow, 30) * 1000;
    const head = (area: number, density: number) =>
      ((flow / (0.6 * area)) ** 2 * density) / (2 * standardGravity.value * 1000 * water.value.density);
    const liquid = head(60, water.value.density);
    const air = head(3, airDensity.value);
    within(liquid + air, 30, 1e-9);
    within(ventShare(narrow), air / 30, 1e-12);
    expect(flow / 1000).toBeLessThan(flowMl({ spout: 60, vent: OPEN }, 30) * 0.83);
  });

  test('of a quarter of the spout takes 2 % of the head', () => {
    // (1.204/998.2)·16 = 0.0193, of 1.0193 [section 13: vent ≥ ¼ spout; number computed by hand]
    within(ventShare({ spout: 60, vent: 15 }), 0.01893, 1e-4);
    within(ventForShare(60, 0.01893), 15, 0.01);
  });

  test('lets through as much air as liquid leaves', () => {
    within(airSpeed({ spout: 60, vent: 15 }, 30), (flowMl({ spout: 60, vent: 15 }, 30) / 15) * 1000, 1e-9);
    within(airSpeed({ spout: 60, vent: 15 }, 30), 1823, 1); // 27.352 ml/s by hand
  });

  test('that is wet stays shut until water stands 7 mm over it', () => {
    // 4·0.0728/(998.2·9.80665·4.37e-3) m by hand; 15 mm² are 4.37 across
    within(diameterOf(15), 4.3702, 1e-4);
    within(headOfPlug(diameterOf(15)), 6.807, 1e-3);
  });
});
