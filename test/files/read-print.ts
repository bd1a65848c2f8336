import { strFromU8, unzipSync } from 'fflate';

/** A second reader of printed parts: it shares no code with the writers. */
export interface ReadMesh {
  readonly corners: readonly (readonly number[])[];
  readonly faces: readonly (readonly number[])[];
  readonly normals: readonly (readonly number[])[];
}

export function readStl(bytes: Uint8Array): ReadMesh {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  const triple = (at: number) => [0, 4, 8].map((step) => view.getFloat32(at + step, true));
  const corners: number[][] = [];
  const known = new Map<string, number>();
  const index = (point: number[]) => {
    const key = point.join(' ');
    const found = known.get(key) ?? corners.push(point) - 1;
    known.set(key, found);
    return found;
  };
  const facets = Array.from({ length: count }, (_, i) => 84 + 50 * i);
  return {
    faces: facets.map((at) => [12, 24, 36].map((step) => index(triple(at + step)))),
    normals: facets.map(triple),
    corners,
  };
}

export interface ReadPackage extends ReadMesh {
  readonly files: Record<string, string>;
  readonly model: string;
}

export function readThreeMf(bytes: Uint8Array): ReadPackage {
  const files = Object.fromEntries(Object.entries(unzipSync(bytes)).map(([path, data]) => [path, strFromU8(data)]));
  const model = files['3D/3dmodel.model'] ?? '';
  const numbers = (tag: string, keys: readonly string[]) =>
    [...model.matchAll(new RegExp(`<${tag} ([^>]*)/>`, 'g'))].map(([, attributes = '']) =>
      keys.map((key) => Number(new RegExp(`\\b${key}="([^"]*)"`).exec(attributes)?.[1])),
    );
  return {
    files,
    model,
    corners: numbers('vertex', ['x', 'y', 'z']),
    faces: numbers('triangle', ['v1', 'v2', 'v3']),
    normals: [],
  };
}

/** Counts a mesh as Euler did: corners, edges, faces, shells; genus = shells - (V - E + F)/2. */
export function tally({ faces }: Pick<ReadMesh, 'faces'>) {
  const edges = new Map<string, number[]>();
  faces.forEach((face, f) => {
    face.forEach((from, k) => {
      const to = face[(k + 1) % 3] as number;
      const key = `${Math.min(from, to)} ${Math.max(from, to)}`;
      edges.set(key, [...(edges.get(key) ?? []), from < to ? f : -1 - f]);
    });
  });
  const paired = [...edges.values()].filter(([a = 0, b = 0, ...more]) => more.length === 0 && a >= 0 !== b >= 0);
  const shell = faces.map((_, f) => f);
  const rootOf = (f: number): number => (shell[f] === f ? f : rootOf(shell[f] as number));
  for (const [a = 0, b = 0] of [...edges.values()].map((list) => list.map((f) => (f < 0 ? -1 - f : f))))
    shell[rootOf(a)] = rootOf(b);
  const vertices = new Set(faces.flat()).size;
  const shells = faces.filter((_, f) => shell[f] === f).length;
  const chi = vertices - edges.size + faces.length;
  return {
    vertices,
    edges: edges.size,
    faces: faces.length,
    unpaired: edges.size - paired.length,
    shells,
    chi,
    genus: shells - chi / 2,
  };
}

/** Volume as the sum of signed tetrahedra from the first corner, mm³. */
export function volumeOf({ corners, faces }: Pick<ReadMesh, 'corners' | 'faces'>): number {
  const origin = corners[0] ?? [0, 0, 0];
  const from = (k: number) => (corners[k] ?? []).map((v, axis) => v - (origin[axis] ?? 0)) as [number, number, number];
  return faces.reduce((sum, face) => {
    const [[a, b, c], [d, e, f], [g, h, i]] = face.map(from) as [number, number, number][] as [
      [number, number, number],
      [number, number, number],
      [number, number, number],
    ];
    return sum + (a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)) / 6;
  }, 0);
}

/** Outward direction of a face, its length twice the face's area. */
export function faceNormal({ corners }: Pick<ReadMesh, 'corners'>, face: readonly number[]) {
  const [p, q, r] = face.map((k) => corners[k] ?? []);
  const between = (to: readonly number[] = [], start: readonly number[] = []) =>
    to.map((v, axis) => v - (start[axis] ?? 0)) as [number, number, number];
  const [ux, uy, uz] = between(q, p);
  const [vx, vy, vz] = between(r, p);
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx] as const;
}
