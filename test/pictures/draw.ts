import type { Mesh } from '../../src/geometry/mesh.js';
import type { Picture } from './png.js';

/**
 * Pictures of solids: a parallel view, each sample shows the nearest face, lines where faces meet or end. Nothing is
 * foreshortened, so what is in line on the camera is in line on the picture.
 */
export type Vector = readonly [number, number, number];
export type Colour = readonly [number, number, number];

export interface Body {
  /** Closed, corners anticlockwise from outside: faces that look away are left out. */
  readonly mesh: Mesh;
  readonly colour: Colour;
  /** Strokes on its faces, such as engraving. */
  readonly lines?: readonly (readonly Vector[])[];
  /** A plane that it was sawn along: faces in it are hatched. */
  readonly sawn?: { readonly axis: 0 | 1 | 2; readonly at: number };
}

export interface View {
  /** From the thing to who looks at it, any length. */
  readonly from: Vector;
  /** What is up on the picture, as far as the view allows. */
  readonly up?: Vector;
  readonly width?: number;
  readonly height?: number;
  /** 1 fits everything on the picture. */
  readonly zoom?: number;
  /** What stands in the middle of the picture; else the middle of everything. */
  readonly at?: Vector;
}

/** Samples a pixel each way. */
const SAMPLES = 2;
/** Of the picture, on each side. */
const EDGE = 0.03;
const PAPER: Colour = [244, 245, 246];
const INK: Colour = [16, 16, 18];
const STROKE: Colour = [60, 26, 8];
/** Facets of a round that turn by less than this are one face: rounds have 48 facets or more, 7.5 degrees each. */
const CREASE = Math.cos((20 * Math.PI) / 180);
/** A step on one face is drawn from here, mm: the facets of a round stay below it. */
const STEP = 0.3;
/** How far under a face a stroke on it may lie and still be seen, mm: strokes and faces are rounded differently. */
const SKIN = 0.2;
/** From above the left shoulder of who looks: the three sides of a box come out in three tones. */
const LIGHT = unit([-0.38, 0.66, 0.65]);
/** What faces keep in the shade, so that lines and strokes on them can still be read. */
const SHADE = 0.55;
/** How far the light reaches round a corner, as a cosine. */
const SOFT = 0.25;
/** Distance of hatching lines, samples. */
const HATCH = 14;

/** What each sample shows: the nearest face, and how near. */
interface Samples {
  readonly width: number;
  readonly height: number;
  readonly face: Int32Array;
  /** Towards who looks, mm. */
  readonly near: Float32Array;
  readonly stroke: Uint8Array;
}

/** The faces in the directions of the picture: right, up, towards who looks. */
interface Face {
  readonly body: number;
  readonly normal: Vector;
  readonly colour: Colour;
  readonly hatched: boolean;
}

export function draw(bodies: readonly Body[], view: View): Picture {
  const { width = 1400, height = 1000 } = view;
  const towards = unit(view.from);
  const right = unit(cross(view.up ?? [0, 1, 0], towards));
  const up = cross(towards, right);
  const turned = ([x, y, z]: Vector): Vector => [
    x * right[0] + y * right[1] + z * right[2],
    x * up[0] + y * up[1] + z * up[2],
    x * towards[0] + y * towards[1] + z * towards[2],
  ];

  const corners = bodies.map(({ mesh }) => cornersOf(mesh).map(turned));
  const { middle, scale } = framing(corners, view, { width: width * SAMPLES, height: height * SAMPLES });
  const centre = view.at ? turned(view.at) : middle;
  const samples: Samples = {
    width: width * SAMPLES,
    height: height * SAMPLES,
    face: new Int32Array(width * height * SAMPLES * SAMPLES).fill(-1),
    near: new Float32Array(width * height * SAMPLES * SAMPLES).fill(Number.NEGATIVE_INFINITY),
    stroke: new Uint8Array(width * height * SAMPLES * SAMPLES),
  };
  const onPicture = ([x, y, z]: Vector): Vector => [
    samples.width / 2 + (x - centre[0]) * scale,
    samples.height / 2 - (y - centre[1]) * scale,
    z,
  ];

  const faces: Face[] = [];
  bodies.forEach(({ mesh: { triangles }, mesh, colour, sawn }, body) => {
    const own = corners[body] ?? [];
    for (let t = 0; t < triangles.length; t += 3) {
      const three = [0, 1, 2].map((k) => triangles[t + k] as number);
      const [a, b, c] = three.map((k) => own[k] as Vector) as [Vector, Vector, Vector];
      const across = cross(minus(b, a), minus(c, a));
      if (across[2] <= 0) continue;
      const hatched = sawn !== undefined && three.every((k) => Math.abs((mesh.positions[3 * k + sawn.axis] as number) - sawn.at) < 1e-3); // biome-ignore format: one line
      fill(samples, [onPicture(a), onPicture(b), onPicture(c)], faces.length);
      faces.push({ body, normal: unit(across), colour, hatched });
    }
  });
  for (const { lines } of bodies) for (const line of lines ?? []) stroke(samples, line.map(turned).map(onPicture));
  return developed(samples, faces, scale);
}

/** The middle of all corners as seen, and samples for a millimetre so that all fit. */
function framing(corners: readonly (readonly Vector[])[], { zoom = 1 }: View, { width, height }: Size) {
  const low = [Infinity, Infinity];
  const high = [-Infinity, -Infinity];
  for (const body of corners) {
    for (const corner of body) {
      for (const k of [0, 1] as const) {
        low[k] = Math.min(low[k] as number, corner[k]);
        high[k] = Math.max(high[k] as number, corner[k]);
      }
    }
  }
  const [left = 0, bottom = 0] = low;
  const [right = 0, top = 0] = high;
  const room = 1 - 2 * EDGE;
  const scale = Math.min((room * width) / (right - left), (room * height) / (top - bottom));
  const middle: Vector = [(left + right) / 2, (bottom + top) / 2, 0];
  return { middle, scale: Number.isFinite(scale) ? scale * zoom : zoom };
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Every sample whose middle lies in the triangle and that nothing nearer covers. */
function fill({ width, height, face, near }: Samples, [a, b, c]: readonly [Vector, Vector, Vector], index: number) {
  // anticlockwise as seen, and y runs down on the picture: the area counts negative
  const area = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
  if (area === 0) return;
  const top = Math.max(0, Math.ceil(Math.min(a[1], b[1], c[1]) - 0.5));
  const bottom = Math.min(height - 1, Math.floor(Math.max(a[1], b[1], c[1]) - 0.5));
  const left = Math.max(0, Math.ceil(Math.min(a[0], b[0], c[0]) - 0.5));
  const right = Math.min(width - 1, Math.floor(Math.max(a[0], b[0], c[0]) - 0.5));
  for (let row = top; row <= bottom; row++) {
    const y = row + 0.5;
    for (let column = left; column <= right; column++) {
      const x = column + 0.5;
      const ofA = ((b[0] - x) * (c[1] - y) - (c[0] - x) * (b[1] - y)) / area;
      const ofB = ((c[0] - x) * (a[1] - y) - (a[0] - x) * (c[1] - y)) / area;
      const ofC = 1 - ofA - ofB;
      if (ofA < 0 || ofB < 0 || ofC < 0) continue;
      const z = ofA * a[2] + ofB * b[2] + ofC * c[2];
      const at = row * width + column;
      if (z <= (near[at] as number)) continue;
      near[at] = z;
      face[at] = index;
    }
  }
}

/** A line a pixel and a half thick where no face hides it. */
function stroke({ width, height, near, stroke: mark }: Samples, line: readonly Vector[]) {
  for (let k = 1; k < line.length; k++) {
    const [a, b] = [line[k - 1] as Vector, line[k] as Vector];
    const steps = Math.max(1, Math.ceil(2 * Math.max(Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1]))));
    for (let s = 0; s <= steps; s++) {
      const [x, y, z] = [0, 1, 2].map((i) => (a[i] as number) + (((b[i] as number) - (a[i] as number)) * s) / steps);
      for (const [dx, dy] of PEN) {
        const column = Math.floor((x as number) + dx);
        const row = Math.floor((y as number) + dy);
        if (column < 0 || row < 0 || column >= width || row >= height) continue;
        const at = row * width + column;
        if ((z as number) > (near[at] as number) - SKIN) mark[at] = 1;
      }
    }
  }
}

const PEN = [-1, 0, 1].flatMap((dx) => [-1, 0, 1].map((dy) => [dx, dy] as const));

/** Samples turned into tones, lines drawn between unlike neighbours, and the samples of a pixel made one. */
function developed(samples: Samples, faces: readonly Face[], scale: number): Picture {
  const { width, height, face, stroke: mark } = samples;
  const tones = faces.map(({ normal, colour }) => {
    const light = normal[0] * LIGHT[0] + normal[1] * LIGHT[1] + normal[2] * LIGHT[2];
    const strength = SHADE + (1 - SHADE) * (Math.max(0, light + SOFT) / (1 + SOFT));
    return colour.map((channel) => channel * strength) as unknown as Colour;
  });
  const lines = outlines(samples, faces, scale);
  const [columns, rows] = [width / SAMPLES, height / SAMPLES];
  const pixels = new Uint8Array(3 * columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const sum = [0, 0, 0];
      for (let dy = 0; dy < SAMPLES; dy++) {
        for (let dx = 0; dx < SAMPLES; dx++) {
          const [x, y] = [column * SAMPLES + dx, row * SAMPLES + dy];
          const at = y * width + x;
          const shown = face[at] as number;
          const tone = lines[at] ? INK : mark[at] ? STROKE : (tones[shown] ?? PAPER);
          const hatch = lines[at] || !faces[shown]?.hatched ? 1 : hatching(x, y, faces[shown].body);
          for (const k of [0, 1, 2] as const) sum[k] = (sum[k] as number) + tone[k] * hatch;
        }
      }
      for (const k of [0, 1, 2])
        pixels[3 * (row * columns + column) + k] = Math.round((sum[k] as number) / SAMPLES ** 2);
    }
  }
  return { width: columns, height: rows, pixels };
}

/** Every other body is hatched the other way, so that neighbours seldom look like one. */
const hatching = (x: number, y: number, body: number) =>
  (body % 2 === 0 ? x + y : x - y + HATCH * 10000) % HATCH < 2 ? 0.62 : 1.12;

/** Both samples on either side of a line: a pixel wide. */
function outlines({ width, height, face, near }: Samples, faces: readonly Face[], scale: number): Uint8Array {
  const lines = new Uint8Array(width * height);
  /** Whether what two neighbours show is not one smooth face; dx and dy to the right and up. */
  const unlike = (at: number, next: number, dx: number, dy: number): boolean => {
    const [first, second] = [face[at] as number, face[next] as number];
    if (first === second) return false;
    const [a, b] = [faces[first], faces[second]];
    if (a === undefined || b === undefined || a.body !== b.body || a.hatched !== b.hatched) return true;
    if (a.normal[0] * b.normal[0] + a.normal[1] * b.normal[1] + a.normal[2] * b.normal[2] < CREASE) return true;
    const dz = (near[next] as number) - (near[at] as number);
    const off = ({ normal }: Face) => Math.abs((normal[0] * dx + normal[1] * dy) / scale + normal[2] * dz);
    return Math.min(off(a), off(b)) > STEP;
  };
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = y * width + x;
      if (x + 1 < width && unlike(at, at + 1, 1, 0)) lines[at] = lines[at + 1] = 1;
      if (y + 1 < height && unlike(at, at + width, 0, -1)) lines[at] = lines[at + width] = 1;
    }
  }
  return lines;
}

function cornersOf({ positions }: Mesh): Vector[] {
  const all: Vector[] = [];
  for (let i = 0; i < positions.length; i += 3) all.push([0, 1, 2].map((k) => positions[i + k] as number) as never);
  return all;
}

const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

function unit([x, y, z]: Vector): Vector {
  const length = Math.sqrt(x * x + y * y + z * z);
  return [x / length, y / length, z / length];
}
