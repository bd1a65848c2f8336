import { describe, expect, test } from 'vitest';
import {
  bendingStrength,
  birchDensity,
  birchGrades,
  birchVeneer,
  friction,
  sheetMassKg,
} from '../../src/standards/materials.js';

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

const grade = (nominal: number) => birchGrades.find((each) => each.nominal === nominal);

describe('birch plywood of one mill', () => {
  test.each([
    { nominal: 4, plies: 3, mean: 3.8, limits: { least: 3.5, most: 4.1 }, density: 660 },
    { nominal: 6.5, plies: 5, mean: 6.4, limits: { least: 6.1, most: 6.9 }, density: 670 },
    { nominal: 9, plies: 7, mean: 9.2, limits: { least: 8.8, most: 9.5 }, density: 710 },
    { nominal: 12, plies: 9, mean: 12, limits: { least: 11.5, most: 12.5 }, density: 695 },
    // M4.01, M4.02 [verified: R25], exact
  ])('nominal $nominal has $plies plies and is $mean thick', ({ nominal, plies, mean, limits, density }) => {
    expect(grade(nominal)?.plies.value).toBe(plies);
    expect(grade(nominal)?.mean.value).toBe(mean);
    expect(grade(nominal)?.limits.value).toEqual(limits);
    expect(grade(nominal)?.density.value).toBe(density);
  });

  test.each([
    { nominal: 4, width: 1220, height: 2440, mass: 7.859 },
    { nominal: 9, width: 1220, height: 2440, mass: 19.022 },
    { nominal: 12, width: 1220, height: 2440, mass: 24.827 },
    { nominal: 6.5, width: 1525, height: 3050, mass: 20.256 },
    // M4.03 [verified: R25], half of the last digit; from the nominal thickness, as the mill prints it
  ])('a sheet $width x $height of nominal $nominal: $mass kg', ({ nominal, width, height, mass }) =>
    within(sheetMassKg(width, height, nominal, grade(nominal)?.density.value ?? 0), mass, 5e-4),
  );

  test('the mean thickness gives a lighter sheet than the nominal one', () => {
    // M4.03: 7.466 with 3.8 [verified: R25 data], half of the last digit
    within(sheetMassKg(1220, 2440, grade(4)?.mean.value ?? 0, grade(4)?.density.value ?? 0), 7.466, 5e-4);
  });
});

test('600 x 400 of measured 4.05', () => {
  // M4.04 [common practice, no source], exact; 680 [from memory: Handbook of Finnish Plywood]
  within(sheetMassKg(600, 400, 4.05, birchDensity.value), 0.66096, 1e-12);
});

test('veneers as they are laid up', () => {
  // M4.05, 1.4 [verified: R25], 17 500 and 1.1; M4.07, 70 [from memory: Handbook of Finnish Plywood]
  const { ply, sandedFace, modulus, bendingStrength: strength } = birchVeneer;
  expect([ply.value, sandedFace.value, modulus.value, strength.value]).toEqual([1.4, 1.1, 17500, 70]);
});

describe('bending strength along and across the face grain', () => {
  test.each([
    { t: 3.6, E: [16471, 1029], along: 65.9, across: 10.6 },
    { t: 6.4, E: [12737, 4763], along: 50.9, across: 29 },
    { t: 9.2, E: [11395, 6105], along: 45.6, across: 32.1 },
    { t: 12, E: [10719, 6781], along: 42.9, across: 33.2 },
    // M4.07, 0.06 [from memory: Handbook of Finnish Plywood], with the moduli of M4.05
  ])('$t thick: $along and $across', ({ t, E: [alongE = 0, acrossE = 0], along, across }) => {
    within(bendingStrength(alongE, t, 'along'), along, 0.06);
    within(bendingStrength(acrossE, t, 'across'), across, 0.06);
  });
});

describe('friction is a band', () => {
  test.each([
    { pair: 'woodOnWood', read: [0.5, 0.45, 0.25] }, // M4.22 [verified: R30, R31, R31b]
    { pair: 'woodOnWoodMoving', read: [0.3] }, // M4.22 [verified: R30]
    { pair: 'metalOnWood', read: [0.5, 0.3, 0.2, 0.6] }, // M4.23 [verified: R30, R32]
  ] as const)('$pair spans just what sources print', ({ pair, read }) =>
    expect(friction[pair].value).toEqual({ least: Math.min(...read), most: Math.max(...read) }),
  );
});
