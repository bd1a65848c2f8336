import { expect, test } from 'vitest';
import { widerHole } from '../../src/compare/same-edges.js';

/** A square round a middle. */
const square = (x: number, y: number, side: number) => {
  const half = side / 2;
  return [
    { x: x - half, y: y - half },
    { x: x + half, y: y - half },
    { x: x + half, y: y + half },
    { x: x - half, y: y + half },
  ];
};
const panel = (side: number, opening: number, slot = 80) => ({
  outline: square(0, 0, side),
  holes: [square(0, 0, opening), square(slot, 0, 4)],
});

test.each([
  { what: 'a hole that grew all round', now: panel(200, 120), told: true },
  { what: 'one that grew less than a laser repeats', now: panel(200, 100.02), told: false },
  { what: 'one that shrank', now: panel(200, 90), told: false },
  { what: 'a wider part', now: panel(202, 120), told: false },
  { what: 'a slot that moved as well', now: panel(200, 120, 82), told: false },
  { what: 'a hole that grew and moved off one edge', now: { ...panel(200, 0), holes: [square(15, 0, 120), square(80, 0, 4)] }, told: false }, // biome-ignore format: one line
  { what: 'one hole less', now: { ...panel(200, 0), holes: [square(0, 0, 120)] }, told: false },
])('sawn out is $what: $told', ({ now, told }) => {
  const found = widerHole(now, panel(200, 100));
  expect(found !== null).toBe(told);
});
