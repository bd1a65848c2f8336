import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { piecesOf } from '../../src/assembly/pieces.js';
import { apply } from '../../src/geometry/placement.js';
import { loadShown, loadSolids, type MadeShapes, type Planned, readDesign } from '../../src/index.js';
import type { ShownBody, ShownSolids } from '../../src/model/shown.js';

const root = join(import.meta.dirname, '..', '..');
const heron = readFileSync(join(root, 'designs', 'heron.yaml'), 'utf8');

/** A part as the file of parts that was built has it. */
interface FilePart {
  readonly id: string;
  readonly kind: 'flat' | 'printed' | 'bought';
  readonly thickness?: number;
  readonly outline?: readonly (readonly [number, number])[];
  readonly holes?: readonly (readonly (readonly [number, number])[])[];
  readonly volume?: number;
  readonly placements: readonly { readonly group: unknown; readonly when?: readonly string[] }[];
}
const built = JSON.parse(readFileSync(join(root, 'output', 'heron', 'parts.json'), 'utf8')) as {
  readonly parts: readonly FilePart[];
  readonly setups: readonly { readonly name: string; readonly holder: string; readonly focusing: boolean }[];
};

const plan = async (text: string): Promise<Planned> => {
  const read = readDesign(text, 'heron.yaml', () => ({ what: 'none', accepted: 'none' }));
  if (!('design' in read)) throw new Error('the design is read');
  const { planCamera } = await loadShown();
  return planCamera(read.design);
};

describe('Heron as solids to look at', () => {
  let planned: Planned;
  let solids: ShownSolids;
  let made: MadeShapes;
  let again: (text: string) => Promise<{ solids: ShownSolids; made: MadeShapes }>;

  beforeAll(async () => {
    const [{ loadKernel }, shownSolids] = await Promise.all([loadShown(), loadSolids()]);
    const kernel = await loadKernel();
    planned = await plan(heron);
    ({ solids, made } = shownSolids(planned, kernel));
    again = async (text) => shownSolids(await plan(text), kernel, made);
  });

  test('every body is closed: each edge is walked once in either sense', () => {
    for (const { part, positions, triangles } of solids.bodies) {
      const walked = new Map<string, number>();
      const name = (corner: number) => [0, 1, 2].map((axis) => positions[3 * corner + axis]).join(' ');
      for (let t = 0; t < triangles.length; t += 3)
        for (let k = 0; k < 3; k++) {
          const [from, to] = [name(triangles[t + k] as number), name(triangles[t + ((k + 1) % 3)] as number)];
          if (from === to) continue;
          walked.set(`${from} > ${to}`, (walked.get(`${from} > ${to}`) ?? 0) + 1);
        }
      const open = [...walked].filter(([edge, count]) => {
        const [from, to] = edge.split(' > ');
        return walked.get(`${to} > ${from}`) !== count;
      });
      expect(open, part).toEqual([]);
    }
  });

  test('the volume of a flat part is its area, as the built file has it, times its thickness', () => {
    const flat = built.parts.filter(({ kind }) => kind === 'flat');
    expect(flat.length).toBeGreaterThan(30);
    for (const { id, outline = [], holes = [], thickness = 0 } of flat) {
      const own = shoelace(outline) + holes.reduce((sum, hole) => sum + shoelace(hole), 0);
      // arcs are cut into chords at either place, and stray by a hundredth of a mm along each edge
      expect(volumeOf(bodyOf(id)) / thickness, id).toBeCloseTo(own, -Math.log10(2 * STRAY * edgeOf(outline, holes)));
    }
  });

  test('the volume of a print is that of the file that is printed', () => {
    for (const { id, volume = 0 } of built.parts.filter(({ kind }) => kind === 'printed'))
      expect(volumeOf(bodyOf(id)) / volume).toBeCloseTo(1, 3);
  });

  test('normals look outwards: away from the facet, and never against it', () => {
    for (const { part, positions, normals, triangles } of solids.bodies)
      for (let t = 0; t < triangles.length; t += 3) {
        const [a, b, c] = [0, 1, 2].map((k) => cornerOf(positions, triangles[t + k] as number)) as [V, V, V];
        const facing = cross(minus(b, a), minus(c, a));
        const size = Math.sqrt(dot(facing, facing));
        const longest = Math.sqrt(Math.max(...[minus(b, a), minus(c, b), minus(a, c)].map((side) => dot(side, side))));
        // three corners in a line, or in one point, face nowhere
        if (size <= 1e-3 * longest) continue;
        for (let k = 0; k < 3; k++)
          expect(dot(facing, cornerOf(normals, triangles[t + k] as number)) / size, part).toBeGreaterThan(0.8);
      }
  });

  test('each piece fills the box that the build measures for it', () => {
    for (const { key, part, placement, extent } of piecesOf(planned.parts)) {
      // a piece that is turned askew has a box round its own box, which is larger
      if (placement.matrix.slice(0, 12).some((value) => Math.abs(value - Math.round(value)) > 1e-9)) continue;
      const { positions } = bodyOf(part.id);
      for (const axis of ['x', 'y', 'z'] as const) {
        let [low, high] = [Infinity, -Infinity];
        for (let c = 0; c < positions.length / 3; c++) {
          const [x, y, z] = cornerOf(positions, c);
          const value = apply(placement.matrix, { x, y, z })[axis];
          [low, high] = [Math.min(low, value), Math.max(high, value)];
        }
        expect(low, `${key} ${axis}`).toBeCloseTo(extent[axis][0], 1);
        expect(high, `${key} ${axis}`).toBeCloseTo(extent[axis][1], 1);
      }
    }
  });

  test.each(built.setups)('in $name stand as many pieces as the built file says', ({ name, holder, focusing }) => {
    const standing = built.parts.flatMap(({ placements }) =>
      placements.filter(({ group, when }) =>
        when === undefined
          ? ['front', 'rear', 'back', 'loose'].includes(group as string) || (group === holder && !focusing)
          : when.includes(name),
      ),
    );
    expect(solids.pieces.filter(({ when }) => when.includes(name))).toHaveLength(standing.length);
  });

  test('light leaves the pupil and meets the film of each holder where focus puts it', () => {
    // the film stands at the flange distance at infinity, whichever holder: seat at infinity and depth, from the plan
    expect(solids.light.films.map(({ z }) => z)).toEqual([175.5 + 5.8, 175.5 + 24]);
    expect(solids.light.image).toEqual({ width: 120.6, height: 171.4 });
  });

  test('what stays as it is is not made again, and what is given away is a copy', async () => {
    const { made: next, solids: nearer } = await again(heron.replace('nearest: 1:2.5', 'nearest: 1:2.6'));
    const kept = [...next.keys()].filter((mark) => made.get(mark) === next.get(mark));
    expect(kept.length).toBeGreaterThan(next.size / 2);
    expect(next.size).toBeGreaterThan(kept.length);
    for (const { part, positions } of nearer.bodies) expect(positions, part).not.toBe(bodyOf(part).positions);
  });

  test('every piece is brought by a step', () => expect(solids.pieces.filter(({ step }) => step === null)).toEqual([]));

  test('engraving stays on its plate', () => {
    const scales = solids.bodies.filter(({ scribed }) => scribed.length > 0);
    expect(scales.map(({ part }) => part)).toEqual(expect.arrayContaining(['T3', 'T3S']));
    for (const { part, scribed, positions } of scales)
      for (let i = 0; i < scribed.length; i++) {
        const own = Array.from({ length: positions.length / 3 }, (_, c) => positions[3 * c + (i % 3)] as number);
        expect(scribed[i] as number, part).toBeLessThanOrEqual(Math.max(...own) + 1e-4);
        expect(scribed[i] as number, part).toBeGreaterThanOrEqual(Math.min(...own) - 1e-4);
      }
  });

  const bodyOf = (id: string): ShownBody => {
    const body = solids.bodies.find(({ part }) => part === id);
    if (body === undefined) throw new Error(`no body ${id}`);
    return body;
  };
});

/** How far a chord may stray, mm: the contract's figure for the file of parts, and the kernel's own. */
const STRAY = 0.01;

type V = readonly [number, number, number];
const cornerOf = (list: Float32Array, c: number): V => [list[3 * c], list[3 * c + 1], list[3 * c + 2]] as unknown as V;
const minus = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: V, b: V): V => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

function volumeOf({ positions, triangles }: ShownBody): number {
  let sixfold = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => cornerOf(positions, triangles[t + k] as number)) as [V, V, V];
    sixfold += dot(a, cross(b, c));
  }
  return sixfold / 6;
}

function shoelace(loop: readonly (readonly [number, number])[]): number {
  let twice = 0;
  loop.forEach(([x, y], i) => {
    const [nx, ny] = loop[(i + 1) % loop.length] as readonly [number, number];
    twice += x * ny - nx * y;
  });
  return twice / 2;
}

const edgeOf = (
  outline: readonly (readonly [number, number])[],
  holes: readonly (readonly (readonly [number, number])[])[],
): number =>
  [outline, ...holes].reduce(
    (sum, loop) =>
      sum +
      loop.reduce((length, [x, y], i) => {
        const [nx, ny] = loop[(i + 1) % loop.length] as readonly [number, number];
        return length + Math.sqrt((nx - x) ** 2 + (ny - y) ** 2);
      }, 0),
    0,
  );

test('a flange narrower than the lens in it is refused by its rule, and the camera can still be looked at', async () => {
  const lens = /mount: .*\n/.exec(heron)?.[0] ?? '';
  const narrow = heron.replace(
    lens,
    'mount: { by: flange, side: inside }\n  flange: { diameter: 40 mm, boltCircle: 35 mm, screws: 3, thickness: 4 mm }\n',
  );
  const planned = await plan(narrow);
  expect(planned.findings.map(({ rule, level }) => `${rule} ${level}`)).toContain('lens-seat-known error');
  const [{ loadKernel }, shownSolids] = await Promise.all([loadShown(), loadSolids()]);
  const { solids } = shownSolids(planned, await loadKernel());
  expect(solids.bodies.map(({ part }) => part)).toContain('lens-flange');
});
