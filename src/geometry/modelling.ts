import jscad from '@jscad/modeling';
import { corners } from './facets.js';
import type { Mesh } from './mesh.js';
import type { Point } from './path.js';
import { apply } from './placement.js';
import type { Prism } from './solid.js';

/**
 * The surface of a prism. Curves become chords that lie on the side of air: round a pin they are drawn inside the
 * circle, in a bore outside it, so that facets never make a bore too small.
 *
 * @param role whether the prism is joined or taken away: that says on which side of its walls the air is
 */
export function buildPrism({ profile, holes, height, matrix, taper = 1 }: Prism, role: 'add' | 'cut'): Mesh {
  const loops = [profile, ...holes].map((loop) => corners(loop, role));
  const sides = loops.flatMap((loop) => loop.map((from, i) => [pair(from), pair(next(loop, i))]));
  const solid = jscad.extrusions.extrudeLinear(
    { height },
    jscad.geometries.geom2.create(sides as [[number, number], [number, number]][]),
  );
  const positions: number[] = [];
  const triangles: number[] = [];
  const known = new Map<string, number>();
  for (const { vertices } of jscad.geometries.geom3.toPolygons(solid)) {
    const placedCorners = vertices.map(([x, y, z]) => {
      const key = `${x},${y},${z}`;
      const index = known.get(key);
      if (index !== undefined) return index;
      const scale = z > 0 ? taper : 1;
      const placed = apply(matrix, { x: scale * x, y: scale * y, z });
      positions.push(placed.x, placed.y, placed.z);
      known.set(key, known.size);
      return known.size - 1;
    });
    for (let k = 2; k < placedCorners.length; k++)
      triangles.push(placedCorners[0] as number, placedCorners[k - 1] as number, placedCorners[k] as number);
  }
  return { positions, triangles };
}

const pair = ({ x, y }: Point): [number, number] => [x, y];

const next = <T>(list: readonly T[], i: number): T => list[(i + 1) % list.length] as T;
