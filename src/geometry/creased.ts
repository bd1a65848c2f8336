import type { Surface } from './surface.js';

/** A surface ready to be shaded: a corner stands once for each face that meets there, round faces as one. */
export interface Creased {
  readonly positions: Float32Array;
  /** Of length 1, one for each corner. */
  readonly normals: Float32Array;
  readonly triangles: Uint32Array;
  /** Sharp edges, as pairs of corners. */
  readonly edges: Uint32Array;
}

/** Facets that bend less than this about a corner are shaded as one round face: as in surface.ts, 30°. */
const CREASE_COS = Math.cos(Math.PI / 6);
/** Normals that differ by less are one. */
const EQUAL = 1 - 1e-6;

/** Parts a surface at its creases, so that light breaks there and flows over what is round. */
export function creased({ positions, triangles, normals, edges, sharp }: Surface): Creased {
  const count = positions.length / 3;
  const facets = triangles.length / 3;
  const twice = facetAreas(positions, triangles);
  // the facets round each corner, one after another
  const first = new Uint32Array(count + 1);
  for (const corner of triangles) first[corner + 1] = (first[corner + 1] as number) + 1;
  for (let c = 0; c < count; c++) first[c + 1] = (first[c + 1] as number) + (first[c] as number);
  const round = new Uint32Array(triangles.length);
  const filled = first.slice(0, count);
  for (let f = 0; f < facets; f++)
    for (let k = 0; k < 3; k++) {
      const corner = triangles[3 * f + k] as number;
      const at = filled[corner] as number;
      round[at] = f;
      filled[corner] = at + 1;
    }
  const where: number[] = [];
  const facing: number[] = [];
  const split = new Uint32Array(triangles.length);
  /** The copies of each corner so far. */
  const copies: number[][] = Array.from({ length: count }, () => []);
  const n = (f: number, axis: number) => normals[3 * f + axis] as number;
  for (let f = 0; f < facets; f++)
    for (let k = 0; k < 3; k++) {
      const corner = triangles[3 * f + k] as number;
      let [x, y, z] = [0, 0, 0];
      for (let i = first[corner] as number; i < (first[corner + 1] as number); i++) {
        const g = round[i] as number;
        if (n(f, 0) * n(g, 0) + n(f, 1) * n(g, 1) + n(f, 2) * n(g, 2) < CREASE_COS) continue;
        const weight = twice[g] as number;
        x += weight * n(g, 0);
        y += weight * n(g, 1);
        z += weight * n(g, 2);
      }
      const length = Math.sqrt(x * x + y * y + z * z);
      // a sliver has no face of its own and is not seen
      if (length > 0) [x, y, z] = [x / length, y / length, z / length];
      const own = copies[corner] as number[];
      let copy = own.find(
        (c) =>
          x * (facing[3 * c] as number) + y * (facing[3 * c + 1] as number) + z * (facing[3 * c + 2] as number) > EQUAL,
      );
      if (copy === undefined) {
        copy = where.length;
        where.push(corner);
        facing.push(x, y, z);
        own.push(copy);
      }
      split[3 * f + k] = copy;
    }
  const placed = new Float32Array(3 * where.length);
  where.forEach((corner, i) => {
    for (let axis = 0; axis < 3; axis++) placed[3 * i + axis] = positions[3 * corner + axis] as number;
  });
  const lines: number[] = [];
  sharp.forEach((is, e) => {
    if (is === 0) return;
    for (const end of [edges[4 * e] as number, edges[4 * e + 1] as number]) lines.push(copies[end]?.[0] ?? 0);
  });
  return {
    positions: placed,
    normals: Float32Array.from(facing),
    triangles: split,
    edges: Uint32Array.from(lines),
  };
}

/** Twice the area of each facet. */
function facetAreas(positions: readonly number[], triangles: readonly number[]): Float64Array {
  const at = (corner: number, axis: number) => positions[3 * corner + axis] as number;
  return Float64Array.from({ length: triangles.length / 3 }, (_, f) => {
    const [a, b, c] = [triangles[3 * f] as number, triangles[3 * f + 1] as number, triangles[3 * f + 2] as number];
    const [ux, uy, uz] = [at(b, 0) - at(a, 0), at(b, 1) - at(a, 1), at(b, 2) - at(a, 2)];
    const [vx, vy, vz] = [at(c, 0) - at(a, 0), at(c, 1) - at(a, 1), at(c, 2) - at(a, 2)];
    const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    return Math.sqrt(x * x + y * y + z * z);
  });
}
