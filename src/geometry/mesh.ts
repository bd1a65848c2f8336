/** A closed surface of triangles: coordinates three by three (mm), corners three by three, anticlockwise from outside. */
export interface Mesh {
  readonly positions: readonly number[];
  readonly triangles: readonly number[];
}

/** Decimals that a written coordinate has: a tenth of a micrometre is finer than any printer, and both writers round alike. */
export const MESH_DECIMALS = 4;

const GRID = 10 ** MESH_DECIMALS;

/** Volume by the divergence sum, mm³: positive where the faces look outwards, whatever the origin. */
export function meshVolume({ positions, triangles }: Mesh): number {
  let sixfold = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = corners(triangles, t);
    const [ax, ay, az] = corners(positions, 3 * a);
    const [bx, by, bz] = corners(positions, 3 * b);
    const [cx, cy, cz] = corners(positions, 3 * c);
    sixfold += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return sixfold / 6;
}

/** Whether each edge belongs to two triangles that walk it in opposite senses (by index, as 3MF counts). */
export function isClosed({ triangles }: Mesh): boolean {
  const walked = new Set<string>();
  for (const edge of edges(triangles)) {
    if (walked.has(edge.there)) return false;
    walked.add(edge.there);
  }
  return edges(triangles).every(({ back }) => walked.has(back));
}

/**
 * The mesh as it is written: coordinates rounded, corners that fall together made one, triangles that lost a corner
 * left out. Those vanish in pairs along the edge that shrank, so what was closed stays closed.
 */
export function rounded({ positions, triangles }: Mesh): Mesh {
  const written: number[] = [];
  const known = new Map<string, number>();
  const newIndex: number[] = [];
  for (let i = 0; i < positions.length; i += 3) {
    const point = corners(positions, i).map((v) => Math.round(v * GRID) / GRID || 0);
    const key = point.join();
    let index = known.get(key);
    if (index === undefined) {
      index = written.push(...point) / 3 - 1;
      known.set(key, index);
    }
    newIndex.push(index);
  }
  const kept: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = corners(triangles, t).map((k) => newIndex[k] as number) as [number, number, number];
    if (a !== b && b !== c && c !== a) kept.push(a, b, c);
  }
  return { positions: written, triangles: kept };
}

/**
 * The same surface without triangles whose three corners lie on a line. Such a triangle is a seam; it goes when the
 * neighbour across its long side is divided at the middle corner instead:
 *
 *      a ----- m ----- c          a ----- m ----- c
 *       \_____________/     →       \     |     /
 *          \    /                      \  |  /
 *             d                           d
 */
export function withoutSlivers({ positions, triangles }: Mesh): Mesh {
  const mended = [...triangles];
  // each pass mends what has a sound neighbour; a seam of n slivers takes n passes at most
  for (let pass = 0; pass < triangles.length / 3; pass++) {
    const at = new Map<string, number>();
    for (let t = 0; t < mended.length; t += 3)
      for (const [from, to] of sides(corners(mended, t))) at.set(`${from}>${to}`, t);
    const touched = new Set<number>();
    for (let t = 0; t < mended.length; t += 3) {
      const sliver = seamOf(positions, corners(mended, t));
      if (!sliver) continue;
      const { a, c, m } = sliver;
      const other = at.get(`${c}>${a}`);
      if (other === undefined || touched.has(t) || touched.has(other)) continue;
      const neighbour = corners(mended, other);
      if (seamOf(positions, neighbour)) continue;
      const d = neighbour.find((k) => k !== a && k !== c) as number;
      mended.splice(t, 3, c, m, d);
      mended.splice(other, 3, m, a, d);
      touched.add(t).add(other);
    }
    if (touched.size === 0) break;
  }
  return { positions, triangles: mended };
}

/** Where a triangle is flatter than the grid: its long side from a to c, and the corner m between them. */
function seamOf(positions: readonly number[], triangle: Corners): Record<'a' | 'c' | 'm', number> | undefined {
  const long = sides(triangle)
    .map(([a, c], i) => ({ a, c, m: triangle[(i + 2) % 3] as number, length: apart(positions, a, c) }))
    .reduce((longest, side) => (side.length > longest.length ? side : longest));
  const [ax, ay, az] = corners(positions, 3 * long.a);
  const [cx, cy, cz] = corners(positions, 3 * long.c);
  const [mx, my, mz] = corners(positions, 3 * long.m);
  const [ux, uy, uz, vx, vy, vz] = [cx - ax, cy - ay, cz - az, mx - ax, my - ay, mz - az];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const height = Math.sqrt(nx * nx + ny * ny + nz * nz) / long.length;
  return height < 0.5 / GRID ? long : undefined;
}

function apart(positions: readonly number[], a: number, b: number): number {
  const [ax, ay, az] = corners(positions, 3 * a);
  const [bx, by, bz] = corners(positions, 3 * b);
  return Math.sqrt((ax - bx) ** 2 + (ay - by) ** 2 + (az - bz) ** 2);
}

type Corners = readonly [number, number, number];

const sides = ([a, b, c]: Corners) =>
  [
    [a, b],
    [b, c],
    [c, a],
  ] as const;

function edges(triangles: readonly number[]): readonly { readonly there: string; readonly back: string }[] {
  const all: { there: string; back: string }[] = [];
  for (let t = 0; t < triangles.length; t += 3)
    for (const [from, to] of sides(corners(triangles, t))) all.push({ there: `${from}>${to}`, back: `${to}>${from}` });
  return all;
}

/** Three numbers in a row; the index is in range by the record's own rule. */
const corners = (list: readonly number[], i: number) => [list[i], list[i + 1], list[i + 2]] as [number, number, number];
