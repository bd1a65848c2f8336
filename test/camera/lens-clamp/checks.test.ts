import { describe, expect, test } from 'vitest';
import { checkLensClamp } from '../../../src/camera/lens-clamp/checks.js';
import { sizeLensClamp } from '../../../src/camera/lens-clamp/size.js';

const findings = (lensMassKg: number, grip = 22) =>
  checkLensClamp(
    sizeLensClamp({ barrelDiameter: 58, grip, boreAllowance: 0.2, screws: 4, side: 'inside', lensMassKg, ply: 4 }),
  );

describe('whether the clamp holds', () => {
  // hold 47.12 N over 4 g: 1.201 kg is the heaviest lens; common practice, no source
  test.each([
    { lensMassKg: 0.64, told: [] },
    { lensMassKg: 1.2, told: [] },
    { lensMassKg: 1.21, told: ['error'] },
  ])('a lens of $lensMassKg kg', ({ lensMassKg, told }) =>
    expect(
      findings(lensMassKg)
        .filter(({ rule }) => rule === 'clamp-grip')
        .map(({ level }) => level),
    ).toEqual(told),
  );

  test('a barrel with 8 mm to grip is told what the pinch bolts need', () => {
    const told = findings(0.64, 8).find(({ rule }) => rule === 'clamp-grip');
    expect(told).toMatchObject({ level: 'warning', value: 8, unit: 'mm', about: 'lens.barrel.grip' });
    expect(told?.limit).toBeGreaterThan(14);
  });
});

test('a collar of less than 5 mm splits', () => {
  const clamp = sizeLensClamp({
    barrelDiameter: 58,
    grip: 22,
    boreAllowance: 0.2,
    screws: 4,
    side: 'inside',
    lensMassKg: 0.64,
    ply: 4,
  });
  const told = (wall: number) => checkLensClamp({ ...clamp, wall }).filter(({ rule }) => rule === 'clamp-grip');
  expect(told(5)).toEqual([]);
  expect(told(4.9)).toMatchObject([
    { level: 'error', value: 4.9, limit: 5, hint: expect.stringMatching(/5 mm or more/) },
  ]);
});

test('what it is printed in must stand 70 °C', () =>
  expect(findings(0.64)).toContainEqual(expect.objectContaining({ rule: 'clamp-heat', level: 'note', limit: 70 })));
