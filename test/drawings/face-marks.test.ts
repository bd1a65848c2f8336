import { expect, test } from 'vitest';
import { marksOfFaces } from '../../src/drawings/face-marks.js';
import { plotted } from '../../src/drawings/plot.js';
import { rect, tinyPlate } from '../proof/tiny.js';

const plot = plotted(1, { x: 0, y: 0 });

test('the mark of a frame stands in its wood, and never in its opening', () => {
  const [outline, opening] = [rect(0, 0, 100, 60), rect(15, 15, 85, 40)];
  const part = tinyPlate({ id: 'F12', across: 'z', low: 0, outline, holes: [opening] });
  const loops = [outline, opening].map((path) => path.map(({ x, y }) => ({ x, y })));
  const [mark, ...others] = marksOfFaces([{ part, loops }], plot);
  expect(others).toEqual([]);
  expect(mark?.text).toBe('F12');
  const air = plot.at({ x: 50, y: 25 });
  expect(mark?.spots.length).toBeGreaterThan(0);
  for (const { x, y } of mark?.spots ?? []) expect(Math.abs(x - air.x) > 35 || Math.abs(y - air.y) > 12.5).toBe(true);
});
