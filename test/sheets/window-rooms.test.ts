import { describe, expect, test } from 'vitest';
import { flatten, polygon, reversed } from '../../src/geometry/path.js';
import { box, boxAt, circle, rectangle, rounded } from '../../src/geometry/shapes.js';
import { windowRooms } from '../../src/sheets/window-rooms.js';
import { within } from './measure.js';

describe('rooms in a window', () => {
  test('a rectangular window is one room', () => {
    expect(windowRooms(reversed(rectangle(box(10, 20, 110, 80))))).toEqual([box(10, 20, 110, 80)]);
  });

  test('an L has two, which overlap in the knee', () => {
    const ell = reversed(polygon([[0, 0], [100, 0], [100, 40], [40, 40], [40, 90], [0, 90]])); // biome-ignore format: one line
    expect(windowRooms(ell)).toEqual([box(0, 0, 100, 40), box(0, 0, 40, 90)]);
  });

  test('the largest room of a round window is nearly the inscribed square', () => {
    const [room] = windowRooms(reversed(circle(0, 0, 120)));
    const area = room ? (room.right - room.left) * (room.top - room.bottom) : 0;
    expect(area).toBeLessThanOrEqual(120 * 60); // the inscribed square, side r √2: plane geometry
    expect(area).toBeGreaterThan(0.9 * 120 * 60);
  });

  test('a window too narrow for any part has none', () => {
    expect(windowRooms(reversed(rectangle(boxAt(0, 0, 9, 200))))).toEqual([]);
  });

  test.each([
    { what: 'rounded', window: rounded(boxAt(0, 0, 90, 60), 20) },
    { what: 'clipped', window: polygon([[30, 0], [90, 0], [90, 60], [0, 60], [0, 30]]) }, // biome-ignore format: one line
    {
      what: 'with a nose',
      window: [
        { x: 0, y: 0, bulge: 0 },
        { x: 80, y: 0, bulge: -0.5 },
        { x: 80, y: 60, bulge: 0 },
        { x: 0, y: 60, bulge: 0 },
      ],
    },
  ])('no room of a $what window reaches beyond it', ({ window }) => {
    const rooms = windowRooms(reversed(window));
    expect(rooms.length).toBeGreaterThan(0);
    const loop = flatten(window, 0.001); // itself a micrometre inside the arcs
    for (const { left, right, bottom, top } of rooms) {
      for (let k = 0; k <= 20; k++) {
        const [x, y] = [left + ((right - left) * k) / 20, bottom + ((top - bottom) * k) / 20];
        const [inX, inY] = [
          Math.min(Math.max(x, left + 0.002), right - 0.002),
          Math.min(Math.max(y, bottom + 0.002), top - 0.002),
        ];
        for (const p of [
          { x: inX, y: bottom + 0.002 },
          { x: inX, y: top - 0.002 },
          { x: left + 0.002, y: inY },
          { x: right - 0.002, y: inY },
        ])
          expect(within(p, loop)).toBe(true);
      }
    }
  });
});
