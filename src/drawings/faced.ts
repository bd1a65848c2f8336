import type { Matrix4 } from '../geometry/placement.js';
import type { Surface } from '../geometry/surface.js';
import type { View } from './view.js';

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
export function faced(surface: Surface, matrix: Matrix4, { right, up, toward }: View): Faced {
  const { positions, triangles, normals, edges: all, sharp } = surface;
  const corners = new Float64Array(positions.length);
  const rows = [right, up, toward].map((axis) => ({
    x: axis.x * m(matrix, 0) + axis.y * m(matrix, 1) + axis.z * m(matrix, 2),
    y: axis.x * m(matrix, 4) + axis.y * m(matrix, 5) + axis.z * m(matrix, 6),
    z: axis.x * m(matrix, 8) + axis.y * m(matrix, 9) + axis.z * m(matrix, 10),
    shift: axis.x * m(matrix, 12) + axis.y * m(matrix, 13) + axis.z * m(matrix, 14),
  }));
  for (let i = 0; i < positions.length; i += 3) {
    const x = positions[i] as number;
    const y = positions[i + 1] as number;
    const z = positions[i + 2] as number;
    for (let k = 0; k < 3; k++) {
      const row = rows[k] as (typeof rows)[number];
      corners[i + k] = row.x * x + row.y * y + row.z * z + row.shift;
    }
  }
  const sight = rows[2] as (typeof rows)[number];
  const facets = triangles.length / 3;
  const frontOf = new Int32Array(facets).fill(-1);
  const fronts: number[] = [];
  for (let f = 0; f < facets; f++) {
    const facing =
      sight.x * (normals[3 * f] as number) +
      sight.y * (normals[3 * f + 1] as number) +
      sight.z * (normals[3 * f + 2] as number);
    if (facing <= EDGE_ON) continue;
    frontOf[f] = fronts.length / 3;
    fronts.push(triangles[3 * f] as number, triangles[3 * f + 1] as number, triangles[3 * f + 2] as number);
  }
  const edges: number[] = [];
  const behind: number[] = [];
  for (let e = 0; e < all.length; e += 4) {
    const here = frontOf[all[e + 2] as number] as number;
    const there = frontOf[all[e + 3] as number] as number;
    const bends = sharp[e / 4] === 1;
    if (here < 0 && there < 0) {
      if (bends) behind.push(all[e] as number, all[e + 1] as number);
    } else if (bends || here < 0 || there < 0) edges.push(all[e] as number, all[e + 1] as number, here, there);
  }
  return { corners, fronts: Int32Array.from(fronts), edges: Int32Array.from(edges), behind: Int32Array.from(behind) };
}

const m = (matrix: Matrix4, i: number): number => matrix[i] as number;
