import { describe, expect, test } from 'vitest';
import { carriedMl, filmLeft, mlForPrints, puddleDepth, shareAfterRinses } from '../../src/liquids/film.js';
import { standardGravity } from '../../src/standards/gravity.js';
import { contactOnEmulsion, water } from '../../src/standards/liquids.js';

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

describe('a bath that spreads', () => {
  test('stands 4.4 mm deep on paraffin', () => {
    // [from memory: encyclopedia article Surface tension, "Puddles on a surface"]: water, 107°, 0.44 cm
    within(puddleDepth((107 * Math.PI) / 180), 4.4, 0.05);
  });

  test('wants 2 mm on emulsion', () => within(puddleDepth(contactOnEmulsion.value), 2.09, 0.01)); // 2·2.727·sin 22.5° by hand
});

describe('the film on a wall', () => {
  test.each([
    { seconds: 10, height: 250, slope: Math.PI / 2 },
    { seconds: 20, height: 180, slope: Math.PI / 6 },
  ])('after $seconds s is what is left of a thick one that runs off cell by cell', (draining) => {
    // thin layers slide under their own weight, flow ρ g h³/3μ [stated mechanics]; cells of 1 mm lag a little
    within(filmLeft(draining), runOff(draining), 0.03 * filmLeft(draining));
  });

  test('of a chamber for 8 × 10 in carries over 3 to 5 ml', () => {
    // section 13 of the description of the camera; sheet, lid and window, 209 × 260, after 10 s
    const carried = carriedMl({ seconds: 10, height: 260, slope: Math.PI / 2 }, 2 * 209 * 260);
    expect(carried).toBeGreaterThan(3);
    expect(carried).toBeLessThan(5);
  });

  test('is a volume by its area', () => {
    const draining = { seconds: 10, height: 260, slope: 1 };
    within(carriedMl(draining, 5000), 5 * filmLeft(draining), 1e-12);
  });
});

test('each rinse leaves its share of what was carried', () => {
  within(shareAfterRinses(4, 96, 1), 0.04, 1e-12); // 4 in 100, by hand
  within(shareAfterRinses(4, 96, 3), 0.000064, 1e-12);
});

test.each([
  { prints: 5, printsOfFilling: 1, ml: 1350 },
  { prints: 5, printsOfFilling: 2, ml: 810 }, // three fillings
  { prints: 4, printsOfFilling: 2, ml: 540 },
])('$prints prints, $printsOfFilling of a filling of 270 ml: $ml ml', ({ prints, printsOfFilling, ml }) => {
  expect(mlForPrints({ prints, fillingMl: 270, printsOfFilling })).toBe(ml); // arithmetic
});

/** Mean thickness of a film of half a millimetre at first, its flow out of each cell reckoned in small steps; mm. */
function runOff({ seconds, height, slope }: Parameters<typeof filmLeft>[0]): number {
  const { density, viscosity } = water.value;
  const mobility = (density * standardGravity.value * Math.sin(slope)) / (3 * viscosity);
  const cells = new Float64Array(height).fill(0.5e-3);
  const cell = 1e-3;
  const flow = (thickness: number) => mobility * thickness ** 3;
  for (let time = 0; time < seconds; ) {
    const fastest = Math.max(...cells);
    const step = Math.min((0.5 * cell) / (3 * mobility * fastest ** 2), seconds - time);
    let above = 0;
    for (let at = 0; at < cells.length; at++) {
      const thickness = cells[at] ?? 0;
      const out = flow(thickness);
      cells[at] = thickness + ((above - out) * step) / cell;
      above = out;
    }
    time += step;
  }
  return (1000 * cells.reduce((sum, thickness) => sum + thickness, 0)) / cells.length;
}
