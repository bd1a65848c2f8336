import { expect, test } from 'vitest';
import { bodiesOf } from '../../src/assembly/bodies.js';
import { piecesOf } from '../../src/assembly/pieces.js';
import { opaque } from '../../src/assembly/screens.js';
import { across } from '../../src/geometry/placement.js';
import { circle, rectangle } from '../../src/geometry/shapes.js';
import type { PrintedPart } from '../../src/model/part.js';

const print = (add: PrintedPart['solid']['add'], cut: PrintedPart['solid']['cut']): PrintedPart => ({
  kind: 'printed',
  id: 'print',
  name: 'print',
  material: 'PETG',
  solid: { add, cut },
  size: [40, 40, 20],
  placements: [{ group: 'front', matrix: across(0, 0, 0) }],
  joins: [],
  massKg: 0,
});

/** How far from its axis light meets the part at the nearest, in boxes that lie to one side of it. */
function nearest(part: PrintedPart): number {
  const [one] = opaque(piecesOf([part]), bodiesOf([part]));
  return Math.min(...(one?.boxes ?? []).map(({ x, y }) => Math.max(x[0], -x[1], y[0], -y[1])));
}

/** How far out it reaches. */
function farthest(part: PrintedPart): number {
  const [one] = opaque(piecesOf([part]), bodiesOf([part]));
  return Math.max(...(one?.boxes ?? []).map(({ x }) => x[1]));
}

const block = { profile: rectangle({ left: -20, bottom: -20, right: 20, top: 20 }), holes: [], height: 20 };
const HERE = across(0, 0, 0);

test('what tapers stops light as the prism of its thinner end, whichever that is', () => {
  expect(farthest(print([{ ...block, matrix: HERE, taper: 0.5 }], []))).toBeCloseTo(10, 9);
  expect(farthest(print([{ ...block, matrix: HERE, taper: 1.5 }], []))).toBeCloseTo(20, 9);
});

test('a hole that widens lets light through as the box round its wider end', () => {
  const hole = { profile: circle(0, 0, 10), holes: [], height: 22, matrix: across(0, 0, -1), taper: 2 };
  expect(nearest(print([{ ...block, matrix: HERE }], [hole]))).toBeCloseTo(10, 9);
});
