import { expect, test } from 'vitest';
import { homeMadeHolder } from '../../src/survey/home-made-holder.js';

/*
 * The description of the camera, section 13, common practice, no source: a sheet of 4.05 gives a film depth of 5.80, one
 * of 5.9 gives 7.65; thickness 3t + 1.75; as wide as the pocket (the film and 0.8) and 2 · 11; closed end and 18 to 24 more.
 */
test.each([
  { ply: 4.05, filmDepth: 5.8, thickness: 13.9 },
  { ply: 5.9, filmDepth: 7.65, thickness: 19.45 },
])('a 5x7 holder of $ply mm', ({ ply, filmDepth, thickness }) => {
  const holder = homeMadeHolder({ ply, boards: { channel: 1.25, lip: 0.5 }, width: 127, imageLong: 171.4 });
  expect(holder.filmDepth).toBeCloseTo(filmDepth, 9);
  expect(holder.thickness).toBeCloseTo(thickness, 9);
  expect(holder.width).toBeCloseTo(149.8, 9);
  const openEnd = (holder.length ?? 0) - 171.4 - 20;
  expect(openEnd).toBeGreaterThanOrEqual(18);
  expect(openEnd).toBeLessThanOrEqual(24 + 1e-9);
});
