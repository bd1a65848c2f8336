import type { Mesh } from '../geometry/mesh.js';
import type { View } from './view.js';

/** Neighbouring facets that bend less than this belong to one round face, of which only the outline is seen, rad. */
const CREASE = Math.PI / 6;
const CREASE_COS = Math.cos(CREASE);

/** A facet that leans less than this to the line of sight is seen edge-on and hides nothing: the sine of the angle. */
const EDGE_ON = 3e-3;

/** A surface on the paper: what of it can be seen, and what of it hides. */
export interface Faced {
  /** x, y, depth of each corner, three by three. */
  readonly corners: Float64Array;
  /** Corners of the facets that look at the eye, anticlockwise on the paper, three by three. */
  readonly fronts: Int32Array;
  /** For each edge that is drawn where nothing hides it: its two corners and the two facets beside it (-1 where that is not a front), four by four. */
  readonly edges: Int32Array;
  /** Corners of sharp edges that the solid itself hides, two by two. */
  readonly behind: Int32Array;
}

/** Turns a closed surface towards the eye and sorts its edges. */
export function faced({ positions, triangles }: Mesh, { right, up, toward }: View): Faced {
  const count = positions.length / 3;
  const corners = new Float64Array(positions.length);
  for (let i = 0; i < count; i++) {
    const x = positions[3 * i] as number;
    const y = positions[3 * i + 1] as number;
    const z = positions[3 * i + 2] as number;
    corners[3 * i] = right.x * x + right.y * y + right.z * z;
    corners[3 * i + 1] = up.x * x + up.y * y + up.z * z;
    corners[3 * i + 2] = toward.x * x + toward.y * y + toward.z * z;
  }
  const facets = triangles.length / 3;
  const normals = new Float64Array(triangles.length);
  const frontOf = new Int32Array(facets).fill(-1);
  const fronts: number[] = [];
  for (let f = 0; f < facets; f++) {
    const a = triangles[3 * f] as number;
    const b = triangles[3 * f + 1] as number;
    const c = triangles[3 * f + 2] as number;
    const ux = at(corners, b, 0) - at(corners, a, 0);
    const uy = at(corners, b, 1) - at(corners, a, 1);
    const uz = at(corners, b, 2) - at(corners, a, 2);
    const vx = at(corners, c, 0) - at(corners, a, 0);
    const vy = at(corners, c, 1) - at(corners, a, 1);
    const vz = at(corners, c, 2) - at(corners, a, 2);
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
    normals[3 * f] = nx / length;
    normals[3 * f + 1] = ny / length;
    normals[3 * f + 2] = nz / length;
    if (nz / length > EDGE_ON) {
      frontOf[f] = fronts.length / 3;
      fronts.push(a, b, c);
    }
  }
  const edges: number[] = [];
  const behind: number[] = [];
  // each edge is walked once in either sense: the first facet waits here for the second
  const waiting = new Map<number, number>();
  for (let f = 0; f < facets; f++)
    for (let k = 0; k < 3; k++) {
      const from = triangles[3 * f + k] as number;
      const to = triangles[3 * f + ((k + 1) % 3)] as number;
      const other = waiting.get(to * count + from);
      if (other === undefined) {
        waiting.set(from * count + to, f);
        continue;
      }
      waiting.delete(to * count + from);
      const here = frontOf[f] as number;
      const there = frontOf[other] as number;
      const bend =
        at(normals, f, 0) * at(normals, other, 0) +
        at(normals, f, 1) * at(normals, other, 1) +
        at(normals, f, 2) * at(normals, other, 2);
      const sharp = bend < CREASE_COS;
      if (here < 0 && there < 0) {
        if (sharp) behind.push(from, to);
      } else if (sharp || here < 0 || there < 0) edges.push(from, to, here, there);
    }
  return { corners, fronts: Int32Array.from(fronts), edges: Int32Array.from(edges), behind: Int32Array.from(behind) };
}

const at = (list: Float64Array, i: number, axis: 0 | 1 | 2): number => list[3 * i + axis] as number;
