import type { Mesh } from './mesh.js';

/** Neighbouring facets that bend less than this belong to one round face, rad. */
const CREASE = Math.PI / 6;
const CREASE_COS = Math.cos(CREASE);

/** A closed mesh with what a drawing asks of it again and again, none of which changes when it is moved. */
export interface Surface extends Mesh {
  /** Outward normals of the facets, length 1, three by three. */
  readonly normals: Float64Array;
  /** Each edge once: its two corners and the two facets that meet in it, four by four. */
  readonly edges: Int32Array;
  /** For each edge whether its facets bend enough for it to be an edge of the solid: 1, or 0 inside a flat or round face. */
  readonly sharp: Uint8Array;
}

export function surfaceOf({ positions, triangles }: Mesh): Surface {
  const count = positions.length / 3;
  const facets = triangles.length / 3;
  const normals = new Float64Array(triangles.length);
  const at = (corner: number, axis: number) => positions[3 * corner + axis] as number;
  for (let f = 0; f < facets; f++) {
    const a = triangles[3 * f] as number;
    const b = triangles[3 * f + 1] as number;
    const c = triangles[3 * f + 2] as number;
    const [ux, uy, uz] = [at(b, 0) - at(a, 0), at(b, 1) - at(a, 1), at(b, 2) - at(a, 2)];
    const [vx, vy, vz] = [at(c, 0) - at(a, 0), at(c, 1) - at(a, 1), at(c, 2) - at(a, 2)];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
    normals[3 * f] = nx / length;
    normals[3 * f + 1] = ny / length;
    normals[3 * f + 2] = nz / length;
  }
  const edges: number[] = [];
  const sharp: number[] = [];
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
      let bend = 0;
      for (let axis = 0; axis < 3; axis++)
        bend += (normals[3 * f + axis] as number) * (normals[3 * other + axis] as number);
      edges.push(from, to, f, other);
      sharp.push(bend < CREASE_COS ? 1 : 0);
    }
  return { positions, triangles, normals, edges: Int32Array.from(edges), sharp: Uint8Array.from(sharp) };
}
