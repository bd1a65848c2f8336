import { describe, expect, test } from 'vitest';
import { apertureFor, distanceFor, popsFor } from '../../src/exposure/flash.js';
import { reckonExposure } from '../../src/exposure/reckon.js';
import { flash400, sitting } from './sitting.js';

describe('pops', () => {
  test.each([
    [120_000, 2400, 50], // V5.38 [common practice, no source], exact
    [120_000 * (1 + 1e-12), 2400, 50], // the same, as floating point may leave it
    [120_000, 2399, 51], // pitfall 19: rounding up is safe, rounding down is not
    [120_001, 2400, 51],
    [800, 400, 2], // V5.36 [verified: S5f]: two equal amounts double the light
    [1, 2400, 1],
  ])('%d J at %d J: %d', (energy, most, pops) => expect(popsFor(energy, most)).toBe(pops));
});

describe('back from the energy that there is', () => {
  test('the lamp moved to where one pop is enough', () => {
    // V5.35 [verified: S42 for x2], exact: half the distance, a quarter of the energy
    expect(distanceFor(1200, { energy: 4800, distance: 1500 })).toBe(750);
  });

  test('the aperture that one pop is enough for', () => {
    // V5.33 [verified: S47, S46], exact: half the energy is one stop, from f/22.627 to f/16
    const aperture = apertureFor(400, { amount: 800, aperture: 22.627417 });
    expect(Math.abs(aperture - 16)).toBeLessThanOrEqual(1e-6);
  });

  test('both are met when the exposure is reckoned from them', () => {
    // V5.38's sitting [common practice, no source]: whatever is solved must give the energy back
    const asked = sitting({ reading: flash400, aperture: 32, lampDistance: 1500, speed: 3, magnification: 1 });
    const moved = distanceFor(2400, { energy: 120_000, distance: 1500 });
    const opened = apertureFor(2400, { amount: 120_000, aperture: 32 });
    for (const given of [
      { ...asked, lampDistance: moved },
      { ...asked, aperture: opened },
    ])
      expect(Math.abs((reckonExposure(given).energy ?? Number.NaN) / 2400 - 1)).toBeLessThanOrEqual(1e-9);
  });
});
