import { describe, expect, test } from 'vitest';
import { type Box, boundsOf } from '../../src/geometry/path.js';
import { slotsAlongX, slotsAlongY, tabRow, tabSteps } from '../../src/joinery/tab-and-slot.js';

const expectBox = (box: Box, expected: Box) => {
  for (const side of ['left', 'bottom', 'right', 'top'] as const) expect(box[side]).toBeCloseTo(expected[side], 9);
};

describe('tabs and slots', () => {
  // plane geometry: 80 in four quarters of 20, a tab of 10 in the middle of each; sheet of 4, fit 0.1
  const row = tabRow(20, 100, 4, 10);

  test('tabs spread evenly over the edge, half a pitch from its ends', () =>
    expect(row).toEqual({ middles: [30, 50, 70, 90], width: 10 }));

  test('one tab stands in the middle', () => expect(tabRow(-5, 35, 1, 12)).toEqual({ middles: [15], width: 12 }));

  test('tabs are narrower than the row says by the fit', () => {
    const steps = tabSteps(row, 8.1, 0.1);
    expect(steps).toHaveLength(4);
    expect(steps[1]?.from).toBeCloseTo(45.05, 9);
    expect(steps[1]?.to).toBeCloseTo(54.95, 9);
    expect(steps.map(({ depth }) => depth)).toEqual([8.1, 8.1, 8.1, 8.1]);
  });

  test('slots along x are as wide as the row says, and the ply and the fit high', () => {
    const slots = slotsAlongX(row, 7, 4, 0.1);
    expect(slots).toHaveLength(4);
    expectBox(boundsOf(slots[0] ?? []), { left: 25, right: 35, bottom: 4.95, top: 9.05 });
    expectBox(boundsOf(slots[3] ?? []), { left: 85, right: 95, bottom: 4.95, top: 9.05 });
  });

  test('slots along y lie across', () => {
    const slots = slotsAlongY(row, -7, 4, 0.1);
    expect(slots).toHaveLength(4);
    expectBox(boundsOf(slots[0] ?? []), { left: -9.05, right: -4.95, bottom: 25, top: 35 });
    expectBox(boundsOf(slots[3] ?? []), { left: -9.05, right: -4.95, bottom: 85, top: 95 });
  });
});
