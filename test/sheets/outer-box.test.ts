import { expect, test } from 'vitest';
import { circle, slotAlongX } from '../../src/geometry/shapes.js';
import { outerBox } from '../../src/sheets/outer-box.js';

// plane geometry: each row is read off a drawing
test.each([
  { what: 'a circle', path: circle(3, 4, 10), box: [-2, -1, 8, 9] },
  { what: 'a slot', path: slotAlongX(0, 0, 30, 6), box: [-15, -3, 15, 3] },
  {
    what: 'a quarter disc',
    path: [
      { x: 0, y: 0, bulge: 0 },
      { x: 5, y: 0, bulge: Math.SQRT2 - 1 },
      { x: 0, y: 5, bulge: 0 },
    ],
    box: [0, 0, 5, 5],
  },
  {
    what: 'three quarters of a disc',
    path: [
      { x: 0, y: 0, bulge: 0 },
      { x: 0, y: 5, bulge: Math.SQRT2 + 1 },
      { x: 5, y: 0, bulge: 0 },
    ],
    box: [-5, -5, 5, 5],
  },
  {
    what: 'a bite out of the right side',
    path: [
      { x: 0, y: 0, bulge: 0 },
      { x: 9, y: 0, bulge: -1 },
      { x: 9, y: 6, bulge: 0 },
      { x: 0, y: 6, bulge: 0 },
    ],
    box: [0, 0, 9, 6],
  },
])('the rectangle round $what', ({ path, box }) => {
  const { left, bottom, right, top } = outerBox(path);
  expect([left, bottom, right, top]).toEqual(box.map((v) => expect.closeTo(v, 12)));
});
