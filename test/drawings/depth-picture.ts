import type { View } from '../../src/drawings/view.js';
import type { Mesh } from '../../src/geometry/mesh.js';

/**
 * A second opinion on which edges are seen: the camera is looked at point by point, each point shows the nearest facet,
 * and an edge is where two neighbouring points show what is not one smooth face. It shares nothing with the drawings but
 * the direction of the look, and knows no edge of any solid until it sees it.
 */
export interface Solid {
  readonly key: string;
  readonly mesh: Mesh;
}

/** Facets that bend less than this are one round face, as drawings have it: 30 degrees. */
const CREASE = Math.cos(Math.PI / 6);
/** Facets that bend less than a quarter of a degree lie in one plane; the sides of the finest round bend by two degrees. */
const LEVEL = Math.cos(Math.PI / 720);
/** Two points of one round face belong together where each lies no farther than this off the other's facet, mm. */
const STEP = 0.1;
/** The points stand off the whole millimetres, or they would fall upon the edges of what is built in tenths. */
const OFF = { x: 0.0137, y: 0.0119 };
/** Points of bare paper all round. */
const RIM = 4;

/** One facet as it is seen: of which piece, of which of its smooth faces, where it looks. */
interface Facet {
  readonly solid: number;
  readonly face: number;
  /** Facets in one plane that hang together: one side of a round, which the mesh divides. */
  readonly flat: number;
  readonly normal: readonly [number, number, number];
}

export interface DepthPicture {
  readonly width: number;
  readonly height: number;
  /** Points for a millimetre. */
  readonly perMm: number;
  /** Of point 0, 0 on the paper, mm; rows run upwards. */
  readonly left: number;
  readonly bottom: number;
  readonly facets: readonly Facet[];
  /** The nearest facet of each point, -1 for none, and how near. */
  readonly shown: Int32Array;
  readonly near: Float64Array;
  /** Flats that share an edge, as `lower * count + higher`: whether it is a sharp one. */
  readonly neighbours: ReadonlyMap<number, boolean>;
  readonly keys: readonly string[];
}

export function depthPicture(solids: readonly Solid[], { right, up, toward }: View, perMm: number): DepthPicture {
  const turned = solids.map(({ mesh: { positions } }) => {
    const out = new Float64Array(positions.length);
    for (let i = 0; i < positions.length; i += 3) {
      const [x, y, z] = [positions[i] as number, positions[i + 1] as number, positions[i + 2] as number];
      out[i] = right.x * x + right.y * y + right.z * z;
      out[i + 1] = up.x * x + up.y * y + up.z * z;
      out[i + 2] = toward.x * x + toward.y * y + toward.z * z;
    }
    return out;
  });
  let [left, bottom, most, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const corners of turned)
    for (let i = 0; i < corners.length; i += 3) {
      left = Math.min(left, corners[i] as number);
      most = Math.max(most, corners[i] as number);
      bottom = Math.min(bottom, corners[i + 1] as number);
      top = Math.max(top, corners[i + 1] as number);
    }
  left += OFF.x - RIM / perMm;
  bottom += OFF.y - RIM / perMm;
  const width = Math.ceil((most - left) * perMm) + RIM;
  const height = Math.ceil((top - bottom) * perMm) + RIM;
  const shown = new Int32Array(width * height).fill(-1);
  const near = new Float64Array(width * height).fill(-Infinity);
  const facets: Facet[] = [];
  const shared: (readonly [number, number, boolean])[] = [];

  solids.forEach(({ mesh: { triangles } }, solid) => {
    const at = turned[solid] as Float64Array;
    const first = facets.length;
    const corner = (k: number) => {
      const c = 3 * (triangles[k] as number);
      return [at[c] as number, at[c + 1] as number, at[c + 2] as number] as const;
    };
    const normals: (readonly [number, number, number])[] = [];
    for (let t = 0; t < triangles.length; t += 3) normals.push(normalOf(corner(t), corner(t + 1), corner(t + 2)));
    const edges = sharedEdges(triangles, normals);
    const faces = hangingTogether(
      normals.length,
      edges.filter(({ bend }) => bend >= CREASE),
    );
    const flats = hangingTogether(
      normals.length,
      edges.filter(({ bend }) => bend >= LEVEL),
    );
    for (const {
      facets: [a, b],
      bend,
    } of edges)
      shared.push([first + (flats[a] as number), first + (flats[b] as number), bend < CREASE]);
    normals.forEach((normal, f) => {
      facets.push({ solid, face: faces[f] as number, flat: first + (flats[f] as number), normal });
      if (normal[2] <= 0) return;
      const three = [corner(3 * f), corner(3 * f + 1), corner(3 * f + 2)] as const;
      const [a, b, c] = three.map(([x, y, z]) => [(x - left) * perMm, (y - bottom) * perMm, z]) as unknown as [P, P, P];
      const area = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
      if (area <= 0) return;
      for (let row = Math.ceil(Math.min(a[1], b[1], c[1])); row <= Math.max(a[1], b[1], c[1]); row++)
        for (let column = Math.ceil(Math.min(a[0], b[0], c[0])); column <= Math.max(a[0], b[0], c[0]); column++) {
          const ofA = ((b[0] - column) * (c[1] - row) - (c[0] - column) * (b[1] - row)) / area;
          const ofB = ((c[0] - column) * (a[1] - row) - (a[0] - column) * (c[1] - row)) / area;
          const ofC = 1 - ofA - ofB;
          if (ofA < 0 || ofB < 0 || ofC < 0) continue;
          const depth = ofA * a[2] + ofB * b[2] + ofC * c[2];
          const point = row * width + column;
          if (depth <= (near[point] as number)) continue;
          near[point] = depth;
          shown[point] = first + f;
        }
    });
  });
  const neighbours = new Map(shared.map(([a, b, sharp]) => [Math.min(a, b) * facets.length + Math.max(a, b), sharp]));
  return { width, height, perMm, left, bottom, facets, shown, near, neighbours, keys: solids.map(({ key }) => key) };
}

type P = readonly [number, number, number];

/** An edge between two neighbouring points: half-way between them, mm on the paper, and what is seen on either side. */
export interface SeenEdge {
  readonly x: number;
  readonly y: number;
  readonly between: readonly [string, string];
}

export function edgesSeen(picture: DepthPicture): readonly SeenEdge[] {
  const { width, height, perMm, left, bottom, facets, shown, keys } = picture;
  const found: SeenEdge[] = [];
  const nameOf = (facet: number) => {
    const solid = facets[facet]?.solid;
    return solid === undefined ? 'paper' : (keys[solid] as string);
  };
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const here = row * width + column;
      for (const [dx, dy] of [
        [1, 0],
        [0, 1],
      ] as const) {
        if (column + dx >= width || row + dy >= height) continue;
        const there = here + dx + dy * width;
        if (!isEdge(picture, here, there, dx / perMm, dy / perMm)) continue;
        found.push({
          x: left + (column + dx / 2) / perMm,
          y: bottom + (row + dy / 2) / perMm,
          between: [nameOf(shown[here] as number), nameOf(shown[there] as number)],
        });
      }
    }
  return found;
}

function isEdge(picture: DepthPicture, here: number, there: number, dx: number, dy: number): boolean {
  const { facets, shown, near, neighbours } = picture;
  const [first, second] = [shown[here] as number, shown[there] as number];
  if (first === second) return false;
  const [a, b] = [facets[first], facets[second]];
  if (a === undefined || b === undefined || a.solid !== b.solid || a.face !== b.face) return true;
  if (a.flat === b.flat) return false;
  const sharp = neighbours.get(Math.min(a.flat, b.flat) * facets.length + Math.max(a.flat, b.flat));
  if (sharp !== undefined) return sharp;
  const dz = (near[there] as number) - (near[here] as number);
  const off = ({ normal: [nx, ny, nz] }: Facet) => Math.abs(nx * dx + ny * dy + nz * dz);
  return Math.min(off(a), off(b)) > STEP;
}

interface SharedEdge {
  readonly facets: readonly [number, number];
  /** Cosine of the angle between what the two look at; 1 where one has no area and looks nowhere. */
  readonly bend: number;
}

/** The edges of a closed mesh, each with its two facets. */
function sharedEdges(triangles: readonly number[], normals: readonly P[]): readonly SharedEdge[] {
  const waiting = new Map<string, number>();
  const edges: SharedEdge[] = [];
  for (let k = 0; k < triangles.length; k++) {
    const f = Math.floor(k / 3);
    const from = triangles[k] as number;
    const to = triangles[3 * f + ((k + 1) % 3)] as number;
    const other = waiting.get(`${to} ${from}`);
    if (other === undefined) {
      waiting.set(`${from} ${to}`, f);
      continue;
    }
    waiting.delete(`${to} ${from}`);
    const [a, b] = [normals[f] as P, normals[other] as P];
    const nowhere = [a, b].some(([x, y, z]) => x === 0 && y === 0 && z === 0);
    edges.push({ facets: [f, other], bend: nowhere ? 1 : a[0] * b[0] + a[1] * b[1] + a[2] * b[2] });
  }
  return edges;
}

/** For each facet the number of the first that a way leads to over these edges. */
function hangingTogether(count: number, edges: readonly SharedEdge[]): readonly number[] {
  const groups = Array.from({ length: count }, (_, f) => f);
  const root = (f: number): number => {
    let at = f;
    while (groups[at] !== at) {
      groups[at] = groups[groups[at] as number] as number;
      at = groups[at] as number;
    }
    return at;
  };
  for (const {
    facets: [a, b],
  } of edges)
    groups[root(a)] = root(b);
  return groups.map((_, f) => root(f));
}

function normalOf(a: P, b: P, c: P): P {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
  return length < 1e-9 ? [0, 0, 0] : [nx / length, ny / length, nz / length];
}

type Line = readonly { readonly x: number; readonly y: number }[];

/** How far the lines of a drawing and the edges of a picture agree. */
export interface Agreement {
  readonly edges: number;
  readonly edgesWithoutLine: readonly SeenEdge[];
  readonly linePoints: number;
  readonly linePointsWithoutEdge: readonly { readonly x: number; readonly y: number; readonly key: string }[];
}

/** They agree where they come within this of each other, in points of the picture. */
const NEAR = 1.5;

export function agreement(
  picture: DepthPicture,
  lines: readonly { readonly key: string; readonly seen: readonly Line[] }[],
): Agreement {
  const { perMm, left, bottom, width, height } = picture;
  const edges = edgesSeen(picture);
  const spots = lines.flatMap(({ key, seen }) =>
    seen.flatMap((line) => pointsAlong(line, 0.5 / perMm).map(({ x, y }) => ({ x, y, key }))),
  );
  const drawn = neighbourhood(width, height);
  const looked = neighbourhood(width, height);
  const place = ({ x, y }: { readonly x: number; readonly y: number }) =>
    [(x - left) * perMm, (y - bottom) * perMm] as const;
  for (const spot of spots) drawn.add(...place(spot));
  for (const edge of edges) looked.add(...place(edge));
  return {
    edges: edges.length,
    edgesWithoutLine: edges.filter((edge) => !drawn.isNear(...place(edge))),
    linePoints: spots.length,
    linePointsWithoutEdge: spots.filter((spot) => !looked.isNear(...place(spot))),
  };
}

function pointsAlong(line: Line, step: number): readonly { readonly x: number; readonly y: number }[] {
  return line.slice(1).flatMap((to, i) => {
    const from = line[i] as (typeof line)[number];
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const steps = Math.max(1, Math.ceil(Math.sqrt(dx * dx + dy * dy) / step));
    // in the middle of each step, so that every length counts alike
    return Array.from({ length: steps }, (_, k) => ({
      x: from.x + (dx * (k + 0.5)) / steps,
      y: from.y + (dy * (k + 0.5)) / steps,
    }));
  });
}

/** Remembers places, and whether another comes near one: by true distances, sorted into squares of one point. */
function neighbourhood(width: number, height: number) {
  const [columns, rows] = [width + 8, height + 8];
  const last = new Int32Array(columns * rows).fill(-1);
  const xs: number[] = [];
  const ys: number[] = [];
  const before: number[] = [];
  const cell = (x: number, y: number) => (Math.floor(y) + 4) * columns + Math.floor(x) + 4;
  return {
    add: (x: number, y: number): void => {
      const square = cell(x, y);
      before.push(last[square] as number);
      last[square] = xs.push(x) - 1;
      ys.push(y);
    },
    isNear: (x: number, y: number): boolean => {
      for (let dy = -2; dy <= 2; dy++)
        for (let dx = -2; dx <= 2; dx++)
          for (let i = last[cell(x + dx, y + dy)] ?? -1; i >= 0; i = before[i] as number) {
            const [ox, oy] = [(xs[i] as number) - x, (ys[i] as number) - y];
            if (ox * ox + oy * oy <= NEAR * NEAR) return true;
          }
      return false;
    },
  };
}
