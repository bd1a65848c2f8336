import { describe, expect, test } from 'vitest';
import { planCamera } from '../../../src/pipeline.js';
import { designOf } from '../../design/reading.js';

/** A 4x5 whose small plug lies in front: its corners are where four clamp screws stand. Invented. */
const design = (screws: number) => `
name: Dunlin
format: 4x5
lens:
  focalLength: 150 mm
  flangeDistance: 143 mm
  barrel: { diameter: 42 mm, grip: 20 mm, front: 14 mm, rear: 12 mm, frontDiameter: 47 mm, rearDiameter: 38 mm }
  mount: { by: clamp, side: front, screws: ${screws} }
plywood: { thickness: 4.05 mm }
laser: { kerf: 0.15 mm }
`;

describe('dowels of the plug', () => {
  test.each([3, 4, 5, 6])('keep 2 mm of wood from %d screws of a clamp, or give way to them', (screws) => {
    const { lensBoard } = planCamera(designOf(design(screws))).camera.objects;
    expect(lensBoard.screws.places).toHaveLength(screws);
    for (const dowel of lensBoard.dowels)
      for (const screw of lensBoard.screws.places) {
        const apart = Math.hypot(dowel.x - screw.x, dowel.y - screw.y);
        expect(apart - dowel.diameter / 2 - 4.5 / 2).toBeGreaterThanOrEqual(2); // 4.5: ISO 273 medium [verified: R14]
      }
  });

  test('four screws at the corners keep board and plug in register alone', () => {
    const planned = planCamera(designOf(design(4)));
    expect(planned.camera.objects.lensBoard.dowels).toEqual([]);
    expect(planned.parts.filter(({ id }) => id.startsWith('board-dowel'))).toEqual([]);
  });

  test('a ring has no screws: a thick and a thin dowel stand at opposite corners', () => {
    const { dowels } = planCamera(designOf(design(4).replace('by: clamp', 'by: ring'))).camera.objects.lensBoard;
    expect(dowels.map(({ diameter }) => diameter)).toEqual([6, 5]);
  });
});
