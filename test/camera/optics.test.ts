import { expect, test } from 'vitest';
import { solveOptics } from '../../src/camera/optics.js';
import { designOf } from '../design/reading.js';
import { bittern, heron } from '../design/worked-designs.js';

/** Figures of the two worked cameras: camera.md section 17, derived there. */
test('Heron: 210 mm with its seat at the panel, and 420 mm across at 1:1', () => {
  const optics = solveOptics({ ...designOf(heron), seat: 0 });
  expect(optics.filmAtInfinity).toBe(203.5);
  expect(optics.filmAtNearest).toBeCloseTo(203.5 + 84, 9);
  expect(optics.circle).toEqual({ infinity: 210, nearest: 294 });
  expect(optics.diagonal).toBeCloseTo(209.577, 3);
  expect(optics.coversFrom).toBe(0);
  expect(optics.pupil.z).toBeCloseTo(-6.5, 9);
  expect(optics.pupil.diameter).toBeCloseTo(33.333, 3);
  expect(optics.registerTolerance).toBeCloseTo(0.22006, 5);
});

test('Bittern covers from 1:10.2', () =>
  expect(1 / (solveOptics({ ...designOf(bittern), seat: 0 }).coversFrom ?? 0)).toBeCloseTo(10.2, 1));

test('of a lens whose circle nobody knows nothing is said', () => {
  const { lens, ...rest } = designOf(heron);
  const optics = solveOptics({ ...rest, lens: { ...lens, coverage: null }, seat: -8 });
  expect([optics.circle, optics.coversFrom]).toEqual([null, null]);
  expect(optics.filmAtInfinity).toBe(195.5);
});
