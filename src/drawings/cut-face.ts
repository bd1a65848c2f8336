import type { Point } from '../geometry/path.js';
import { apply, type Point3 } from '../geometry/placement.js';
import type { Body } from './scene.js';
import { project, type View } from './view.js';

/** So near to the plane of the saw a corner lies on it, mm: the kernel's corners are 32-bit floats. */
const ON_THE_PLANE = 1e-3;
/** Corners that stray less than this from the line between their neighbours are left out, mm. */
const STRAIGHT = 1e-3;

/**
 * The faces that a saw left on a piece, true lengths on the paper: outlines with the piece on their left and holes the
 * other way. What bounds them are the edges of facets in the plane that no second such facet shares.
 */
export function cutFace(body: Body, saw: { readonly normal: Point3; readonly offset: number }, view: View): Loops {
  const { positions, triangles } = body.mesh;
  const points: Point[] = [];
  const onPlane: boolean[] = [];
  for (let i = 0; i < positions.length; i += 3) {
    const own = { x: positions[i] as number, y: positions[i + 1] as number, z: positions[i + 2] as number };
    const p = apply(body.matrix, own);
    onPlane.push(Math.abs(p.x * saw.normal.x + p.y * saw.normal.y + p.z * saw.normal.z - saw.offset) < ON_THE_PLANE);
    points.push(project(view, p));
  }
  const edges = new Map<string, readonly [number, number]>();
  for (let t = 0; t < triangles.length; t += 3) {
    const facet = [triangles[t], triangles[t + 1], triangles[t + 2]] as [number, number, number];
    if (!facet.every((corner) => onPlane[corner])) continue;
    facet.forEach((from, i) => {
      const to = facet[(i + 1) % 3] as number;
      if (!edges.delete(`${to}>${from}`)) edges.set(`${from}>${to}`, [from, to]);
    });
  }
  const next = new Map<number, number[]>();
  for (const [from, to] of edges.values()) next.set(from, [...(next.get(from) ?? []), to]);
  const loops: Point[][] = [];
  for (const [start] of next)
    for (let ways = next.get(start) ?? []; ways.length > 0; ways = next.get(start) ?? []) {
      const loop: Point[] = [];
      for (let at = start, to = ways.pop(); to !== undefined; at = to, to = next.get(at)?.pop()) {
        loop.push(points[at] as Point);
        if (to === start) break;
      }
      const plain = withoutStraight(loop);
      if (plain.length > 2) loops.push(plain);
    }
  return loops;
}

type Loops = readonly (readonly Point[])[];

function withoutStraight(loop: readonly Point[]): Point[] {
  return loop.filter((here, i) => {
    const before = loop[(i + loop.length - 1) % loop.length] as Point;
    const after = loop[(i + 1) % loop.length] as Point;
    const [dx, dy] = [after.x - before.x, after.y - before.y];
    const long = Math.sqrt(dx * dx + dy * dy);
    const [px, py] = [here.x - before.x, here.y - before.y];
    if (long < STRAIGHT) return px * px + py * py > STRAIGHT * STRAIGHT;
    return Math.abs(dx * py - dy * px) / long > STRAIGHT;
  });
}
