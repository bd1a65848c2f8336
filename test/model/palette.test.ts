import { describe, expect, test } from 'vitest';
import { workshopPalette } from '../../src/model/palette.js';

type Colour = readonly [number, number, number];

const channels = (colour: string): Colour =>
  [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255) as unknown as Colour; // three numbers
const tones = Object.entries(workshopPalette).map(([operation, colour]) => ({ operation, colour }));

describe('the colours of the operations are our own', () => {
  test.each(tones)('$operation is a dull tone, and none that a machine could take for an order', ({ colour }) => {
    expect(colour).toMatch(/^#[0-9a-f]{6}$/);
    const [most, least] = [Math.max(...channels(colour)), Math.min(...channels(colour))];
    // pure and half-bright primaries have a channel at nothing; black and white have all at an end
    expect(least).toBeGreaterThan(0.15);
    expect(most).toBeLessThan(0.75);
    expect(most - least).toBeLessThan(0.5);
  });

  test('no two are alike, as eyes see it', () => {
    for (const [i, a] of tones.entries()) {
      for (const b of tones.slice(i + 1)) {
        // 2.3 is a difference that is just seen [CIE 1976, common practice]; hair lines need many times that
        expect.soft(apart(lab(a.colour), lab(b.colour)), `${a.operation} and ${b.operation}`).toBeGreaterThan(20);
      }
    }
  });
});

const apart = (a: Colour, b: Colour): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** sRGB (IEC 61966-2-1) to CIE L*a*b* under D65. */
function lab(colour: string): Colour {
  const [r, g, b] = channels(colour).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as [
    number,
    number,
    number,
  ];
  const root = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = root((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = root(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = root((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}
