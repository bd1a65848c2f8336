import type { Mesh } from './mesh.js';

/** Neighbouring facets that bend less than this belong to one round face, rad. */
const CREASE = Math.PI / 6;
const CREASE_COS = Math.cos(CREASE);

/**
 * A facet lower than this is a sliver, mm: three corners in a line, as the kernel leaves them between holes that stand in
 * a row. The kernel's floats of 32 bits say where such a one is, and no longer where it looks.
 */
const SLIVER = 2e-4;

/** A closed mesh with what a drawing asks of it again and again, none of which changes when it is moved. */
export interface Surface extends Mesh {
  /** Outward normals of the facets, length 1, three by three; 0, 0, 0 for a sliver. */
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
  /** Which side of each sliver is its longest. */
  const longSide = new Map<number, number>();
  const at = (corner: number, axis: number) => positions[3 * corner + axis] as number;
  for (let f = 0; f < facets; f++) {
    const a = triangles[3 * f] as number;
    const b = triangles[3 * f + 1] as number;
    const c = triangles[3 * f + 2] as number;
    const [ux, uy, uz] = [at(b, 0) - at(a, 0), at(b, 1) - at(a, 1), at(b, 2) - at(a, 2)];
    const [vx, vy, vz] = [at(c, 0) - at(a, 0), at(c, 1) - at(a, 1), at(c, 2) - at(a, 2)];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const twice = Math.sqrt(nx * nx + ny * ny + nz * nz);
    // squared lengths of the sides a-b, b-c and c-a
    const sides = [squared(ux, uy, uz), squared(vx - ux, vy - uy, vz - uz), squared(vx, vy, vz)] as const;
    const longest = Math.max(...sides);
    // one whose corners are one point, too
    if (twice <= SLIVER * Math.sqrt(longest)) {
      longSide.set(f, sides.indexOf(longest));
      continue;
    }
    normals[3 * f] = nx / twice;
    normals[3 * f + 1] = ny / twice;
    normals[3 * f + 2] = nz / twice;
  }
  const all: number[] = [];
  /** The facet beyond the long side of each sliver. */
  const beyond = new Map<number, number>();
  // each edge is walked once in either sense: the first side (three times its facet, and which of the three) waits here for the second
  const waiting = new Map<number, number>();
  for (let side = 0; side < triangles.length; side++) {
    const f = Math.floor(side / 3);
    const from = triangles[side] as number;
    const to = triangles[3 * f + ((side + 1) % 3)] as number;
    const first = waiting.get(to * count + from);
    if (first === undefined) {
      waiting.set(from * count + to, side);
      continue;
    }
    waiting.delete(to * count + from);
    const other = Math.floor(first / 3);
    if (longSide.get(f) === side % 3) beyond.set(f, other);
    if (longSide.get(other) === first % 3) beyond.set(other, f);
    all.push(from, to, f, other);
  }
  const edges: number[] = [];
  const sharp: number[] = [];
  for (let e = 0; e < all.length; e += 4) {
    const here = sound(all[e + 2] as number, beyond);
    const there = sound(all[e + 3] as number, beyond);
    if (here === there) continue;
    let bend = 0;
    for (let axis = 0; axis < 3; axis++)
      bend += (normals[3 * here + axis] as number) * (normals[3 * there + axis] as number);
    edges.push(all[e] as number, all[e + 1] as number, here, there);
    sharp.push(bend < CREASE_COS ? 1 : 0);
  }
  return { positions, triangles, normals, edges: Int32Array.from(edges), sharp: Uint8Array.from(sharp) };
}

/** The facet that a sliver is a seam in: the one beyond its long side, or beyond that one's where it is a sliver too. */
function sound(facet: number, beyond: ReadonlyMap<number, number>): number {
  let at = facet;
  for (let steps = 0; steps <= beyond.size; steps++) {
    const next = beyond.get(at);
    if (next === undefined) return at;
    at = next;
  }
  return at;
}

const squared = (x: number, y: number, z: number): number => x * x + y * y + z * z;
