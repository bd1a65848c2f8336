import { expect, test } from 'vitest';
import { apply } from '../../../src/geometry/placement.js';
import { heron } from '../worked.js';

/** Where the holes of a part stand along the camera, as cut and placed: middles of their vertices. */
const holesAlong = (id: string): readonly number[] => {
  const part = heron.parts.find((each) => each.id === id);
  if (part?.kind !== 'flat') throw new Error(`${id} is no flat part`);
  const [place] = part.placements;
  if (!place) throw new Error(`${id} stands nowhere`);
  return part.holes.map((hole) => {
    const mean = (axis: 'x' | 'y') => hole.reduce((sum, v) => sum + v[axis], 0) / hole.length;
    return apply(place.matrix, { x: mean('x'), y: mean('y'), z: 0 }).z;
  });
};

/** Plain geometry: a screw goes through the keeper and the rail below it at one place. Common practice, no source. */
test.each(['T3', 'T3S'])('each screw of %s finds its pilot hole in the rail', (keeper) => {
  const rail = holesAlong('T2');
  const screws = holesAlong(keeper);
  expect(screws).toHaveLength(5);
  for (const z of screws) expect(Math.min(...rail.map((other) => Math.abs(other - z)))).toBeLessThan(1e-6);
});
