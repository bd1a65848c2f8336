import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type FingerRow,
  fingerRow,
  LEAST_FINGER,
  ownerNotches,
  partnerFingers,
} from '../../src/joinery/finger-joint.js';

describe('an edge divided into fingers', () => {
  /*
   * The odd number nearest to length/3t. Lengths and plies of the two cameras worked out in the project's description of
   * the camera, section 17; the quotient stands beside each row.
   */
  test.each([
    { edge: 'front box of 165.4', length: 165.4, ply: 4.05, count: 13 }, // 13.6: 13 is nearer than 15
    { edge: 'rear box of 161.35', length: 161.35, ply: 4.05, count: 13 }, // 13.3
    { edge: 'rear box of 188.15 inside', length: 188.15, ply: 4.05, count: 15 }, // 15.5
    { edge: 'front box of 180.2', length: 180.2, ply: 5.9, count: 11 }, // 10.2: 11 is nearer than 9
    { edge: 'rear box of 174.3', length: 174.3, ply: 5.9, count: 9 }, // 9.8: 9 is nearer than 11
    { edge: 'rear box of 269.9 inside', length: 269.9, ply: 5.9, count: 15 }, // 15.2
  ])('$edge in $ply mm: $count', ({ length, ply, count }) => {
    const row = fingerRow(-30, length - 30, ply);
    expect(row).toMatchObject({ from: -30, to: length - 30, count });
    expect(row.width * count).toBeCloseTo(length, 9);
  });

  test.each([
    { length: 100, count: 11 }, // 2 mm sheet asks for 17 of 5.9; 13 would be 7.7 wide, 11 are 9.1
    { length: 88, count: 11 }, // eleven of 8 exactly
    { length: 30, count: 3 }, // 5 would be 6 wide
    { length: 20, count: 3 }, // three is the least: a finger-rule finding, not one finger
    { length: 5, count: 3 },
  ])('$length in sheet of 2 mm: $count, none below 8', ({ length, count }) =>
    // least finger and least count are common practice, no source
    expect(fingerRow(0, length, 2).count).toBe(count),
  );

  test('fingers are 2 to 5 thicknesses wide and no narrower than 8, where the edge is long enough for three', () => {
    // the rule for a builder (finger-rule): width 2t…5t and ≥ 8, count ≥ 3 odd; below 3 mm a finger of 8 is more than 5t/2
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 12, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (ply, long) => {
          const shortest = 3 * Math.max(8, 2 * ply);
          const { count, width } = fingerRow(0, shortest + long * 500, ply);
          expect(count % 2).toBe(1);
          expect(count).toBeGreaterThanOrEqual(3);
          expect(width).toBeGreaterThanOrEqual(Math.max(LEAST_FINGER, 2 * ply) - 1e-9);
          expect(width).toBeLessThanOrEqual(5 * ply + 1e-9);
        },
      ),
      { seed: 3, numRuns: 300 },
    );
  });
});

describe('owner and partner of an edge', () => {
  // 75 in sheet of 5: five fingers of 15, from 10 on; the partner's are narrower by the fit of 0.1
  const row = fingerRow(10, 85, 5);

  test('the owner is cut in between its fingers, exactly, and keeps both ends', () =>
    expect(ownerNotches(row, 5)).toEqual([
      { from: 25, to: 40, depth: -5 },
      { from: 55, to: 70, depth: -5 },
    ]));

  test('the partner stands out there, narrower by the fit', () => {
    const fingers = partnerFingers(row, 4.8, 0.1);
    expect(fingers).toHaveLength(2);
    for (const [i, [from, to]] of [[25.05, 39.95] as const, [55.05, 69.95] as const].entries()) {
      expect(fingers[i]?.from).toBeCloseTo(from, 9);
      expect(fingers[i]?.to).toBeCloseTo(to, 9);
      expect(fingers[i]?.depth).toBe(4.8);
    }
  });

  test.each([
    { length: 150, ply: 4 },
    { length: 203.2, ply: 4 },
    { length: 96, ply: 3.2 }, // M6.14 [common practice, no source]: the identity holds for any; lengths of M6.12, M6.13
  ])('without fit the fingers of both fill the edge of $length', ({ length, ply }) => {
    const edge: FingerRow = fingerRow(0, length, ply);
    const wide = (steps: readonly { from: number; to: number }[]) => steps.reduce((sum, s) => sum + s.to - s.from, 0);
    const kept = length - wide(ownerNotches(edge, ply));
    expect(kept).toBeCloseTo(((edge.count + 1) / 2) * edge.width, 9);
    expect(kept + wide(partnerFingers(edge, ply, 0))).toBeCloseTo(length, 9);
    expect(partnerFingers(edge, ply, 0).map(({ from, to }) => [from, to])).toEqual(
      ownerNotches(edge, ply).map(({ from, to }) => [from, to]),
    );
  });
});
