import { describe, expect, test } from 'vitest';
import { loadWorkshop, planDesign } from '../../src/index.js';
import { keptDesign, keptDesigns } from './kept-design.js';

/** The one that shows a refusal; what its comments tell the reader must stay true. */
const refused = 'kiwi';
const { check } = await loadWorkshop();
const broken = (name: string, level: 'error' | 'warning') =>
  check(keptDesign(name), { onProgress: () => {} })
    .findings.filter((finding) => finding.level === level)
    .map(({ rule }) => rule);

describe('the designs that come with the program', { timeout: 180_000 }, () => {
  test('are several, each called as its file', () => {
    expect(keptDesigns.length).toBeGreaterThanOrEqual(5);
    expect(keptDesigns.map((name) => keptDesign(name).slug)).toEqual(keptDesigns);
  });

  test.each(keptDesigns.filter((name) => name !== refused))('%s can be built', (name) => {
    expect(broken(name, 'error')).toEqual([]);
  });

  test('kiwi is refused, because 1:1 cannot be had', () => {
    // two boxes that have let go of each other let daylight in
    expect(broken(refused, 'error')).toEqual(['reach-near', 'overlap-far', 'light-path']);
  });

  test('bittern is warned of its lens in landscapes, and of nothing else', () => {
    expect(broken('bittern', 'warning')).toEqual(['lens-covers']);
  });
});

describe('spacers, as their comments reckon them', () => {
  test.each([
    // 24 - 5.8 = 18.2, in plies of 4.05
    { name: 'heron', holder: 'processing holder', under: 'glass', plies: 4 * 4.05, shims: 4 * 0.5, thickness: 18.2 },
    // 7.65 - (5.83 - 0.18) = 2, in bookbinder's board
    { name: 'teal', holder: 'film holder', under: 'holder', plies: 0, shims: 2 * 1, thickness: 2 },
    // (22.65 - 1.9 (1 - 1/1.52)) - 5.8 = 16.2, in plies of 4.05
    { name: 'grebe', holder: 'paper holder', under: 'holder', plies: 4 * 4.05, shims: 0, thickness: 16.2 },
    // 27 - 6.5 = 20.5: three plies of 5.9, one of 2.7; 0.1 is left, less than half of N·c/4 = 6.8 · 316.3/1500/4
    { name: 'bittern', holder: 'processing holder', under: 'glass', plies: 3 * 5.9 + 2.7, shims: 0, thickness: 20.5 },
  ])('$name, $holder: $thickness mm under the $under', ({ name, holder, under, plies, shims, thickness }) => {
    const spacer = planDesign(keptDesign(name)).plan.spacers.find((one) => one.holder === holder);
    expect(spacer?.under).toBe(under);
    expect(spacer?.thickness).toBeCloseTo(thickness, 6);
    expect(sum(spacer?.plies)).toBeCloseTo(plies, 6);
    expect(sum(spacer?.shims)).toBeCloseTo(shims, 6);
  });

  test('grebe needs none for the holder that its glass was made for', () => {
    expect(planDesign(keptDesign('grebe')).plan.spacers[0]).toMatchObject({ under: 'none', plies: [], shims: [] });
  });
});

const sum = (lengths: readonly number[] = []): number => lengths.reduce((total, length) => total + length, 0);
