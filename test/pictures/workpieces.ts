import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import loadModule, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import type { Mesh } from '../../src/geometry/mesh.js';
import { apply, compose, shift } from '../../src/geometry/placement.js';
import { readStl } from '../files/read-print.js';
import type { Body, Colour, Vector } from './draw.js';
import { type FilePart, type PartsFile, type SetUp, slid, stands } from './parts-file.js';

export interface Saw {
  readonly axis: 0 | 1 | 2;
  /** What lies beyond, towards who looks along the axis, is taken away. */
  readonly at: number;
  /** Looked at from the other end of the axis: what lies before is taken away. */
  readonly keeps?: 'beyond';
}

export interface Standing {
  readonly setUp: SetUp;
  readonly rear: number;
  readonly saw?: Saw | undefined;
}

/** A piece, with the number that it has among the places of its part: `F5#2`, or the part's id where it has one place. */
export interface KeyedBody extends Body {
  readonly key: string;
}

/** The parts of a build, ready to be put together for a picture. */
export type PutTogether = (standing: Standing, wanted: (id: string) => boolean) => readonly KeyedBody[];

const PALETTE = {
  front: [206, 166, 108],
  rear: [128, 164, 204],
  back: [132, 186, 128],
  loose: [190, 140, 204],
  printed: [232, 158, 84],
  bought: [206, 92, 76],
  lens: [120, 122, 128],
  'ground-glass': [190, 216, 220],
  holder: [150, 150, 146],
} as const satisfies Record<string, Colour>;

/** Sides of a round stand-in. */
const ROUND = 48;

export async function workbench(folder: string, { parts }: PartsFile): Promise<PutTogether> {
  const kernel = await loadModule();
  kernel.setup();
  const pieces = parts.map((part) => ({ part, solid: solidOf(kernel, folder, part), lines: engravingOf(part) }));

  return ({ setUp, rear, saw }, wanted) =>
    pieces
      .filter(({ part }) => wanted(part.id))
      .flatMap(({ part, solid, lines }) =>
        part.placements
          .map((placement, i) => ({ placement, key: part.placements.length === 1 ? part.id : `${part.id}#${i + 1}` }))
          .filter(({ placement }) => stands(placement, setUp))
          .map(({ placement: { group, matrix }, key }): KeyedBody => {
            const place = compose(shift(0, 0, slid(group, rear)), matrix);
            const moved = solid.transform([...place] as never);
            const drawn = lines.map((line) => line.map(([x, y, z]) => vector(apply(place, { x, y, z }))));
            const colour = colourOf(part, group);
            if (saw === undefined) return { key, mesh: meshOf(moved), colour, lines: drawn };
            const side = saw.keeps === 'beyond' ? 1 : -1;
            const kept = moved.trimByPlane([0, 1, 2].map((k) => (k === saw.axis ? side : 0)) as never, side * saw.at);
            const whole = drawn.filter((line) => line.every((point) => side * (point[saw.axis] - saw.at) >= 0));
            return { key, mesh: meshOf(kept), colour, lines: whole, sawn: saw };
          }),
      );
}

function colourOf({ kind, role }: FilePart, group: string): Colour {
  if (kind === 'printed') return PALETTE.printed;
  if (role === 'lens' || role === 'ground-glass' || role === 'holder') return PALETTE[role];
  if (kind === 'bought') return PALETTE.bought;
  return PALETTE[group as keyof typeof PALETTE] ?? PALETTE.holder;
}

function solidOf(kernel: ManifoldToplevel, folder: string, part: FilePart): Manifold {
  const { outline, holes = [], thickness = 0, cylinder, mesh } = part;
  if (mesh !== undefined) return solidOfMesh(kernel, readPrint(join(folder, mesh)));
  if (cylinder) return kernel.Manifold.cylinder(cylinder.length, cylinder.diameter / 2, cylinder.diameter / 2, ROUND);
  if (outline === undefined) throw new Error(`${part.id} has no shape`);
  const loops = [outline, ...holes].map((loop) => loop.map(([x, y]): [number, number] => [x, y]));
  // even and odd, so that a loop that runs the wrong way round is still drawn, and a fault in it stays to be seen
  return kernel.CrossSection.ofPolygons(loops, 'EvenOdd').extrude(thickness);
}

function solidOfMesh({ Mesh: Surface, Manifold: Solids }: ManifoldToplevel, { positions, triangles }: Mesh): Manifold {
  const surface = new Surface({
    numProp: 3,
    vertProperties: Float32Array.from(positions),
    triVerts: Uint32Array.from(triangles),
  });
  surface.merge();
  return Solids.ofMesh(surface);
}

export function readPrint(path: string): Mesh {
  const { corners, faces } = readStl(readFileSync(path));
  return { positions: corners.flat(), triangles: faces.flat() };
}

function meshOf(solid: Manifold): Mesh {
  const { vertProperties, triVerts } = solid.getMesh();
  solid.delete();
  return { positions: [...vertProperties], triangles: [...triVerts] };
}

/** On the face that the laser sees, which is the upper one in the part's own frame. */
const engravingOf = ({ engraving = [], thickness = 0 }: FilePart): readonly (readonly Vector[])[] =>
  engraving.map((line) => line.map(([x, y]): Vector => [x, y, thickness]));

const vector = ({ x, y, z }: { x: number; y: number; z: number }): Vector => [x, y, z];
