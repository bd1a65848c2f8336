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

describe('a lens in front', () => {
  const { parts, build, camera, design: own } = planCamera(designOf(design(3)));
  const { lensBoard } = camera.objects;
  const widest = (id: string) => {
    const part = parts.find((p) => p.id === id);
    if (part?.kind !== 'flat') throw new Error(`${id} is not cut from sheet`);
    return Math.max(...(part.holes[0] ?? []).map(({ x }) => x));
  };

  test('throws its light through board and plug to the corners of the back’s opening', () => {
    // the rear rim: 20 and 12 behind the seat, 19 from the axis; similar triangles to the corner of the gate
    const rim = { z: lensBoard.seat + 32, radius: 19 };
    const corner = Math.hypot(build.gate.width, build.gate.height) / 2;
    const at = (z: number) => rim.radius + ((corner - rim.radius) * (z - rim.z)) / (build.gate.z - rim.z);
    expect(widest('F6')).toBeGreaterThan(at(-own.plywood.thickness));
    expect(widest('F7')).toBeGreaterThan(at(0));
  });

  test('has its clamp’s screws in the plug, 8 mm from its edge or more', () => {
    for (const { x, y } of lensBoard.screws.places)
      expect(lensBoard.plug / 2 - Math.max(Math.abs(x), Math.abs(y))).toBeGreaterThanOrEqual(8 - 0.3);
  });
});
