import { describe, expect, test } from 'vitest';
import {
  coveringMl,
  coveringTilt,
  fullMl,
  layerMl,
  levelOf,
  outOfLevel,
  rockingMl,
  rockingTilt,
  surfaceAt,
} from '../../src/liquids/chamber.js';

const within = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

const degrees = (angle: number) => (angle * Math.PI) / 180;

describe('a chamber that lies level', () => {
  test.each([
    [254, 203.2, 4, 206.451], // M11.01 [common practice, no source], 1e-3
    [127, 177.8, 3, 67.742],
    [270, 220, 6, 356.4], // M11.02 [common practice, no source], exact: the cavity, not the sheet
  ])('of %d × %d × %d holds %d ml', (length, width, depth, ml) => {
    within(fullMl({ length, width, depth }), ml, 1e-3);
    within(layerMl({ length, width }, depth), ml, 1e-3);
  });

  test('of 254 that is out of level by 5 degrees is 22.222 lower at one end', () => {
    within(outOfLevel(254, degrees(5)), 22.222, 1e-3); // M11.03 [common practice, no source], 1e-3
  });
});

/** A deep chamber and one whose lid takes the tip of the wedge. */
const lying = [
  { length: 260, width: 210, depth: 14, sheet: 254, ml: 270 },
  { length: 260, width: 210, depth: 7, sheet: 254, ml: 270 },
  { length: 180, width: 130, depth: 20, sheet: 150, ml: 60 },
];

describe('a sheet on the floor of a tilted chamber', () => {
  test.each(lying)('is covered up to the tilt at which grains poured in still reach it: $depth deep', (chamber) => {
    const tilt = coveringTilt(chamber, chamber.ml);
    expect(tilt).toBeGreaterThan(0);
    const edge = (chamber.length + chamber.sheet) / 2;
    within(wettedByGrains(chamber, tilt), edge, 0.3); // grains of 0.25 mm
    within(coveringMl(chamber, tilt), chamber.ml, 1e-9);
  });

  test('of 254 in 5 mm of water stays covered up to 2.23 degrees', () => {
    // by hand: 2·260·5/257² = 0.039365, atan 2.2543°
    within(coveringTilt({ length: 260, width: 210, depth: 14, sheet: 254 }, 273), degrees(2.2543), 1e-5);
  });

  test('is covered on end too once the liquid reaches past its upper edge', () => {
    const chamber = { length: 260, width: 210, depth: 10, sheet: 254 };
    expect(coveringTilt(chamber, (257 * 10 * 210) / 1000 + 1e-6)).toBe(Math.PI / 2); // 257 = (260 + 254)/2
    expect(coveringTilt(chamber, (257 * 10 * 210) / 1000 - 1)).toBeLessThan(Math.PI / 2);
  });

  test.each([3, 25])('is left bare by one per cent less, at %d degrees', (angle) => {
    const chamber = { length: 260, width: 210, depth: 14, sheet: 254 };
    const ml = coveringMl(chamber, degrees(angle));
    expect(wettedByGrains({ ...chamber, ml: ml * 1.01 }, degrees(angle))).toBeGreaterThan(257);
    expect(wettedByGrains({ ...chamber, ml: ml * 0.99 }, degrees(angle))).toBeLessThan(257);
  });
});

test.each([
  { depth: 14, angle: 5 },
  { depth: 5, angle: 8 },
])('rocked by $angle degrees the least volume reaches the middle from either end', ({ depth, angle }) => {
  const chamber = { length: 260, width: 210, depth };
  within(wettedByGrains({ ...chamber, ml: rockingMl(chamber, degrees(angle)) }, degrees(angle)), 130, 0.3);
  within(rockingTilt(chamber, rockingMl(chamber, degrees(angle))), degrees(angle), 1e-9);
});

describe('a chamber that stands', () => {
  const chamber = { length: 260, width: 210, depth: 14 };

  test.each([0, 20, 45, 70, 90])('turned by %d degrees has the level that its surfaces add up to', (angle) => {
    const standing = { ...chamber, turn: degrees(angle) };
    for (const ml of [20, 150, 400, 700, 760]) {
      const level = levelOf(standing, ml);
      const steps = 20_000;
      let sum = 0;
      for (let step = 0; step < steps; step++) sum += surfaceAt(standing, ((step + 0.5) * level) / steps);
      within((sum * level) / steps / 1000, ml, 2e-4 * ml);
    }
  });

  test.each([
    { angle: 0, height: 0, chord: 210 }, // on its edge the lowest line is as long as any
    { angle: 0, height: 100, chord: 210 },
    { angle: 90, height: 100, chord: 260 },
    { angle: 45, height: 100, chord: 200 }, // twice the height at a right angle
    { angle: 45, height: 160, chord: 296.985 }, // 210·√2
    { angle: 30, height: 40, chord: 92.376 }, // 40/(sin 30°·cos 30°)
  ])('turned by $angle degrees is $chord wide at $height', ({ angle, height, chord }) => {
    within(surfaceAt({ ...chamber, turn: degrees(angle) }, height), 14 * chord, 0.01); // plane geometry
  });

  test('has nothing below its lowest corner or over its last', () => {
    const standing = { ...chamber, turn: degrees(30) };
    const top = 210 * 0.5 + 260 * Math.cos(degrees(30));
    expect(surfaceAt(standing, -0.1)).toBe(0);
    expect(surfaceAt(standing, top + 0.1)).toBe(0);
    within(levelOf(standing, fullMl(chamber)), top, 1e-4);
    within(levelOf({ ...chamber, turn: 0 }, fullMl(chamber)), 260, 1e-9);
  });
});

interface Filled {
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  readonly ml: number;
}

/**
 * How far from the lower wall the floor is wet: the section is cut into grains, as many as the volume has are taken from
 * the lowest up, and the last of them tells the level. Shares nothing with wedges but the chamber.
 */
function wettedByGrains({ length, width, depth, ml }: Filled, tilt: number): number {
  const grain = 0.25;
  const heights: number[] = [];
  for (let along = grain / 2; along < length; along += grain)
    for (let up = grain / 2; up < depth; up += grain) heights.push(along * Math.sin(tilt) + up * Math.cos(tilt));
  heights.sort((a, b) => a - b);
  const count = Math.round((1000 * ml) / width / (grain * grain));
  return Number(heights[count - 1]) / Math.sin(tilt);
}
