import { expect, test } from 'vitest';
import { edgePoints } from '../../src/assembly/edge-points.js';
import { piecesOf } from '../../src/assembly/pieces.js';
import { across } from '../../src/geometry/placement.js';
import { circle } from '../../src/geometry/shapes.js';
import type { PrintedPart } from '../../src/model/part.js';

test('points stand beside both rims of a cone, each a little way off its own', () => {
  const cone: PrintedPart = {
    kind: 'printed',
    id: 'cone',
    name: 'cone',
    material: 'PETG',
    solid: {
      add: [{ profile: circle(0, 0, 40), holes: [], height: 10, matrix: across(0, 0, 0), taper: 0.5 }],
      cut: [],
    },
    size: [40, 40, 10],
    placements: [{ group: 'front', matrix: across(0, 0, 0) }],
    joins: [],
    massKg: 0,
  };
  const [piece] = piecesOf([cone]);
  if (piece === undefined) throw new Error('a cone stands somewhere');
  const points = edgePoints(piece, { spacing: 9, off: 0.15 }).map(({ at: { x, y, z } }) => ({
    r: Math.hypot(x, y),
    z,
  }));
  const off = 0.15 * Math.SQRT1_2;
  expect(points.filter(({ z }) => z < 0).map(({ r }) => r)[0]).toBeCloseTo(20 + off, 9);
  expect(points.filter(({ z }) => z > 10).map(({ r }) => r)[0]).toBeCloseTo(10 + off, 9);
  // half-way up, where it counts as an edge too
  for (const { r, z } of points.filter((p) => p.z > 0 && p.z < 10)) expect(r).toBeCloseTo(20 - z + 0.15, 9);
});
