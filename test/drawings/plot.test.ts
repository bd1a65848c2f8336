import { describe, expect, test } from 'vitest';
import { scaleFor, scaleText } from '../../src/drawings/plot.js';

/** ISO 5455, scales recommended for technical drawings (from memory). */
describe('the scale of a drawing is the largest at which it goes into its room', () => {
  test.each([
    { long: 170, scale: '1:1' },
    { long: 349, scale: '1:2.5' },
    { long: 870, scale: '1:5' },
    { long: 1740, scale: '1:10' },
    { long: 1741, scale: '1:20' },
    { long: 3481, scale: '1:50' },
  ])('$long mm in 174 mm: $scale', ({ long, scale }) =>
    expect(scaleText(scaleFor({ width: long, height: 10 }, { width: 174, height: 225 }))).toBe(scale),
  );
});
