import type { Piece } from '../assembly/pieces.js';
import { apply, type Point3, shift } from '../geometry/placement.js';
import { surfaceOf } from '../geometry/surface.js';
import type { PulledWay } from './pulled.js';
import type { Body } from './scene.js';
import { project, type View } from './view.js';

/** A thing longer than this across its way is led along both of its sides, mm; a smaller one along its middle. */
const WIDE = 24;
/** A line is a bar as thin as this, mm: thinner than anything that is drawn. */
const THIN = 4e-4;

/**
 * The straight lines along which a thing comes to its place, as bodies, so that what stands before them hides them: from
 * its two outermost corners as they are seen, or from the middle of what is small.
 */
export function wayLines(
  way: PulledWay,
  {
    bodies,
    view,
    led,
  }: { readonly bodies: ReadonlyMap<string, Body>; readonly view: View; readonly led: 'sides' | 'middle' },
): readonly Body[] {
  const { arrival, from, to } = way;
  const vector = { x: to.x - from.x, y: to.y - from.y, z: to.z - from.z };
  const along = project(view, vector);
  const length = Math.sqrt(along.x * along.x + along.y * along.y) || 1;
  const aside = (p: Point3) => {
    const { x, y } = project(view, p);
    return (x * along.y - y * along.x) / length;
  };
  const corners = arrival.pieces.flatMap(({ key }) => cornersOf(bodies.get(key)));
  const [any] = corners;
  const [piece] = arrival.pieces;
  if (any === undefined || piece === undefined) return [];
  const ends = corners.reduce(
    ({ low, high }, p) => ({ low: aside(p) < aside(low) ? p : low, high: aside(p) > aside(high) ? p : high }),
    { low: any, high: any },
  );
  const wide = led === 'sides' && aside(ends.high) - aside(ends.low) > WIDE;
  const starts = wide ? [ends.low, ends.high] : [middleOf(piece, from)];
  return starts.map(
    (start, i): Body => ({
      key: `way ${arrival.pieces[0]?.key} ${i}`,
      part: piece.part,
      mesh: bar(start, vector),
      matrix: HERE,
    }),
  );
}

const HERE = shift(0, 0, 0);

function cornersOf(body: Body | undefined): readonly Point3[] {
  if (body === undefined) return [];
  const { positions } = body.mesh;
  return Array.from({ length: positions.length / 3 }, (_, i) =>
    apply(body.matrix, {
      x: positions[3 * i] as number,
      y: positions[3 * i + 1] as number,
      z: positions[3 * i + 2] as number,
    }),
  );
}

const middleOf = ({ extent: { x, y, z } }: Piece, out: Point3): Point3 => ({
  x: (x[0] + x[1]) / 2 + out.x,
  y: (y[0] + y[1]) / 2 + out.y,
  z: (z[0] + z[1]) / 2 + out.z,
});

/** A bar with three sides, along one of the camera's axes. */
function bar(start: Point3, vector: Point3) {
  const [u, v]: readonly [Point3, Point3] =
    vector.x !== 0 ? [axis('y'), axis('z')] : vector.y !== 0 ? [axis('z'), axis('x')] : [axis('x'), axis('y')];
  const ring = [
    [0, 0],
    [1, 0],
    [0, 1],
  ].map(([a = 0, b = 0]) => ({
    x: start.x + THIN * (a * u.x + b * v.x),
    y: start.y + THIN * (a * u.y + b * v.y),
    z: start.z + THIN * (a * u.z + b * v.z),
  }));
  const positive = vector.x + vector.y + vector.z > 0;
  const far = ring.map((p) => ({ x: p.x + vector.x, y: p.y + vector.y, z: p.z + vector.z }));
  const positions = [...ring, ...far].flatMap(({ x, y, z }) => [x, y, z]);
  const triangles = [0, 2, 1, 3, 4, 5, 0, 1, 4, 0, 4, 3, 1, 2, 5, 1, 5, 4, 2, 0, 3, 2, 3, 5];
  return surfaceOf({ positions, triangles: positive ? triangles : [...triangles].reverse() });
}

const axis = (k: 'x' | 'y' | 'z'): Point3 => ({ x: 0, y: 0, z: 0, [k]: 1 });
