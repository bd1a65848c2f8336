import { describe, expect, test } from 'vitest';
import { formatNamed } from '../../src/standards/formats.js';
import {
  emulsionDepth,
  filmSlot,
  publishedHolderFor,
  publishedHolders,
  sheetFilm,
} from '../../src/standards/holders.js';

const slot = (format: string) => publishedHolderFor(format)?.slotDepth.value ?? { value: 0, tolerance: 0 };

describe('published depths, to the back of the film slot', () => {
  test.each([
    // M1.14 [verified: R1]; 4x5 and 5x7 also [verified: R2, R3]
    ['4x5', 5.0038, 0.1778],
    ['5x7', 5.7912, 0.254],
    ['8x10', 6.604, 0.4064],
  ])('%s: %d ± %d mm', (format, depth, tolerance) => {
    expect(Math.abs(slot(format).value - depth)).toBeLessThanOrEqual(1e-4);
    expect(Math.abs(slot(format).tolerance - tolerance)).toBeLessThanOrEqual(1e-4);
  });

  test('no depth is published for 11x14', () => expect(publishedHolderFor('11x14')).toBeUndefined()); // M1.25
});

describe('the emulsion lies ahead of it by the thickness of the sheet', () => {
  test.each([
    ['4x5', 0.007, 4.826], // M1.16 [verified: R1], V1.21 [verified: S16a]
    ['8x10', 0.007, 6.426], // V1.22 [verified: S16a]
    ['8x10', 0.01, 6.35], // V1.22, paper; its thickness [common practice, no source]
  ])('%s with a sheet of %d in', (format, inches, depth) =>
    expect(Math.abs(emulsionDepth(slot(format).value, inches * 25.4) - depth)).toBeLessThanOrEqual(0.001),
  );

  test('film floats between its own thickness and the height of the slot', () => {
    // M1.17 [verified: R2, R3 data]: nominal 4.699 to 4.826, over the tolerance 4.5212 to 5.0038
    const { value, tolerance } = slot('4x5');
    expect(Math.abs(value - filmSlot.value - 4.699)).toBeLessThanOrEqual(1e-3);
    expect(Math.abs(emulsionDepth(value, sheetFilm.value) - 4.826)).toBeLessThanOrEqual(1e-3);
    expect(Math.abs(value - tolerance - filmSlot.value - 4.5212)).toBeLessThanOrEqual(1e-3);
    expect(Math.abs(emulsionDepth(value + tolerance, sheetFilm.value) - 5.0038)).toBeLessThanOrEqual(1e-3);
  });

  test('a 5x7 holder that is loaded from behind', () =>
    expect(Math.abs(slot('5x7').value - filmSlot.value - 5.4864)).toBeLessThanOrEqual(1e-4)); // M1.18 [verified: R3]
});

test('each published holder is of a format in the table and larger than its sheet', () => {
  for (const { format, outside, slotDepth, slideDepth } of publishedHolders) {
    const [width, height] = formatNamed(format)?.nominal.value ?? [Number.NaN, Number.NaN];
    expect(outside.value[0]).toBeGreaterThan(width);
    expect(outside.value[1]).toBeGreaterThan(height);
    expect(outside.value[2]).toBeGreaterThan(2 * slotDepth.value.value); // it holds a sheet on each side
    expect(slideDepth.value).toBeLessThan(slotDepth.value.value - filmSlot.value);
    expect(outside.source).toMatch(/from memory/);
  }
});
