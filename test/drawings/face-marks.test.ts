import { expect, test } from 'vitest';
import { marksOfFaces } from '../../src/drawings/face-marks.js';
import { plotted } from '../../src/drawings/plot.js';
import { inside } from '../../src/geometry/path.js';
import { rect, tinyPlate } from '../proof/tiny.js';

const plot = plotted(1, { x: 0, y: 0 });

test('the mark of a frame stands in its wood, and never in its opening', () => {
  const [outline, opening] = [rect(0, 0, 100, 60), rect(15, 15, 85, 40)];
  const part = tinyPlate({ id: 'F12', across: 'z', low: 0, outline, holes: [opening] });
  const [mark, ...others] = marksOfFaces([{ part, loops: [outline, opening] }], plot);
  expect(others).toEqual([]);
  expect(mark?.text).toBe('F12');
  const air = plot.at({ x: 50, y: 25 });
  expect(mark?.spots.length).toBeGreaterThan(0);
  for (const { x, y } of mark?.spots ?? []) expect(Math.abs(x - air.x) > 35 || Math.abs(y - air.y) > 12.5).toBe(true);
});

test('what is all walls has its mark on one of them', () => {
  const outline = rect(0, 0, 100, 60);
  const chambers = [rect(2, 2, 33, 58), rect(35, 2, 66, 58), rect(68, 2, 98, 58)];
  const part = tinyPlate({ id: 'F12', across: 'z', low: 0, outline, holes: chambers });
  const [mark] = marksOfFaces([{ part, loops: [outline, ...chambers] }], plot);
  expect(mark?.spots.length).toBeGreaterThan(0);
  for (const { x, y } of mark?.spots ?? [])
    for (const chamber of chambers)
      expect(inside(chamber, { x, y }) || inside(chamber, { x, y: -y }), `${x}, ${y}`).toBe(false);
});
