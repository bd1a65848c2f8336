import { describe, expect, test } from 'vitest';
import { formatNamed, formats, formatsLike } from '../../src/standards/formats.js';

const nominal = (name: string) => formatNamed(name)?.nominal.value ?? [0, 0];
const image = (name: string) => formatNamed(name)?.image.value ?? [0, 0];

describe('nominal sizes', () => {
  test.each([
    // M1.01 [common practice, no source] arithmetic; rounded for 8x10 and smaller in [verified: R5b]
    ['4x5', 101.6, 127],
    ['5x7', 127, 177.8],
    ['8x10', 203.2, 254],
    ['11x14', 279.4, 355.6],
    ['whole-plate', 165.1, 215.9], // M1.05 [verified: R5]
    ['half-plate-british', 120.65, 165.1], // M1.06 [verified: R6]
    ['half-plate-american', 107.95, 139.7], // M1.07 [verified: R5]
    ['quarter-plate', 82.55, 107.95], // M1.08 [verified: R5]
    // M1.09 [common practice, no source]
    ['9x12', 90, 120],
    ['13x18', 130, 180],
    ['18x24', 180, 240],
  ])('%s is %d by %d mm', (name, width, height) => expect(nominal(name)).toEqual([width, height]));

  test.each([
    ['whole-plate', 271.792], // M1.05 [verified: R5]
    ['half-plate-british', 204.486], // M1.06 [verified: R6]
    ['half-plate-american', 176.548], // M1.07 [verified: R5]
    ['quarter-plate', 135.896], // M1.08 [verified: R5]
    ['9x12', 150],
    ['13x18', 222.036],
    ['18x24', 300], // M1.09 [common practice, no source]
  ])('the diagonal of %s is %d mm', (name, diagonal) => {
    const [width, height] = nominal(name);
    expect(Math.abs(Math.sqrt(width * width + height * height) - diagonal)).toBeLessThanOrEqual(1e-3);
  });

  test('13x18 does not pass a gate of 5x7', () => {
    // M1.10: 3.0 wider and 2.2 longer [verified: R6 that the outsides are shared]
    expect(nominal('13x18')[0] - nominal('5x7')[0]).toBeCloseTo(3, 9);
    expect(nominal('13x18')[1] - nominal('5x7')[1]).toBeCloseTo(2.2, 9);
  });

  test('4x5 film is cut a sixteenth of an inch under the nominal size that the table keeps', () => {
    // M1.02 [verified: R5]: 100.0125 x 125.4125, 1.5875 smaller each way
    expect(nominal('4x5')[0] - 100.0125).toBeCloseTo(1.5875, 9);
    expect(nominal('4x5')[1] - 125.4125).toBeCloseTo(1.5875, 9);
  });
});

describe('image areas', () => {
  test.each([
    // camera.md section 2: sheet film, nominal less 6.4 each way; common practice, no source
    ['4x5', 95.2, 120.6],
    ['5x7', 120.6, 171.4],
    ['8x10', 196.8, 247.6],
    ['11x14', 273, 349.2],
    // plates, nominal less 5: common practice, no source
    ['whole-plate', 160.1, 210.9],
    ['quarter-plate', 77.55, 102.95],
  ])('%s receives %d by %d mm', (name, short, long) => {
    expect(image(name)[0]).toBeCloseTo(short, 9);
    expect(image(name)[1]).toBeCloseTo(long, 9);
  });
});

test('each format stands upright, has its own name, and says where its figures come from', () => {
  expect(new Set(formats.map(({ name }) => name)).size).toBe(formats.length);
  for (const { nominal: size, image: receives } of formats) {
    expect(size.value[0]).toBeLessThan(size.value[1]);
    expect(receives.value[0]).toBeLessThan(size.value[0]);
    expect(receives.value[1]).toBeLessThan(size.value[1]);
    expect(`${size.source} / ${receives.source}`).toMatch(/no source|photrio|rogerandfrances/);
  }
});

test('a free wording leads to the names that it may mean', () => {
  expect(formatsLike('5 x 7 in')).toEqual(['5x7']);
  expect(formatsLike('13×18 cm')).toEqual(['13x18']);
  expect(formatsLike('half plate')).toEqual(['half-plate-british', 'half-plate-american']); // M1.06, M1.07: ambiguous
  expect(formatsLike('6x9')).toEqual([]);
  expect(formatsLike('!')).toEqual([]);
});
