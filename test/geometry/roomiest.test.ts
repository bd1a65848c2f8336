import { expect, test } from 'vitest';
import { roomsIn } from '../../src/geometry/roomiest.js';

const square = [
  { x: 0, y: 0 },
  { x: 24, y: 0 },
  { x: 24, y: 24 },
  { x: 0, y: 24 },
];

test('the middle of a square is farthest from its edges', () => {
  expect(roomsIn([square])[0]).toEqual({ at: { x: 12, y: 12 }, room: 12 });
});

test('nothing is placed in a window', () => {
  const window = [
    { x: 4, y: 4 },
    { x: 20, y: 4 },
    { x: 20, y: 20 },
    { x: 4, y: 20 },
  ];
  const rooms = roomsIn([square, window]);
  expect(rooms.length).toBeGreaterThan(0);
  expect(rooms.filter(({ at }) => at.x > 4 && at.x < 20 && at.y > 4 && at.y < 20)).toEqual([]);
});

test('of equal places the same one is first, whatever the last digits of the corners are', () => {
  // a slot: all places along its middle have the same room
  const slot = (noise: number) => [
    { x: 0, y: 0 },
    { x: 48, y: 0 },
    { x: 48, y: 6 + noise },
    { x: 0, y: 6 - noise },
  ];
  const first = [-1e-12, 0, 1e-12].map((noise) => roomsIn([slot(noise)])[0]?.at.x);
  expect(new Set(first).size).toBe(1);
});
