import type { Build } from '../assembly/build.js';
import { piecesOf } from '../assembly/pieces.js';
import { countOf, stands } from '../assembly/setups.js';
import { workbench } from '../assembly/workbench.js';
import { type Creased, creased } from '../geometry/creased.js';
import type { Kernel } from '../geometry/kernel.js';
import { lettering } from '../geometry/lettering.js';
import { flatten, moved } from '../geometry/path.js';
import { names, stepsOfCamera } from '../model/assembly-steps.js';
import type { FlatPart, Part } from '../model/part.js';
import type { ShownBody, ShownLight, ShownSolids } from '../model/shown.js';
import { shapeMark } from './shape-mark.js';
import { stuffShown } from './stuff.js';

export interface SolidsGiven {
  readonly build: Build;
  readonly light: ShownLight;
}

/** What was made of a shape, by its mark: from one question to the next most parts stay as they are. */
export type MadeShapes = ReadonlyMap<string, MadeShape>;

interface MadeShape extends Creased {
  readonly scribed: Float32Array;
  readonly size: readonly [number, number, number];
}

/**
 * The camera as solids to look at.
 *
 * @param known what was made before: it is not made again
 * @returns also all that this camera is made of, for the next time; what is shown is a copy of it, to be given away
 */
export function shownSolids(
  { build, light }: SolidsGiven,
  kernel: Kernel,
  known: MadeShapes = new Map(),
): { readonly solids: ShownSolids; readonly made: MadeShapes } {
  const { parts, setups, stations } = build;
  const placed = parts.filter(({ placements }) => placements.length > 0);
  const marks = new Map(placed.map((part) => [part.id, shapeMark(part)]));
  const made = kernel.stage((bench) => {
    const on = workbench(bench);
    const shapes = new Map<string, MadeShape>();
    for (const part of placed) {
      const mark = marks.get(part.id) as string;
      if (shapes.has(mark)) continue;
      shapes.set(mark, known.get(mark) ?? madeShape(part, creased(on.surface(part))));
    }
    return shapes;
  });
  const steps = stepsOfCamera(parts);
  const stepOf = (part: Part): number | null =>
    steps.find(({ acts }) => acts.some((act) => names(act, part.id)))?.number ?? null;
  const solids: ShownSolids = {
    bodies: placed.map((part) => body(part, made.get(marks.get(part.id) as string) as MadeShape, build)),
    pieces: piecesOf(placed).map(({ key, part, placement, extent: { x, y, z } }) => ({
      key,
      part: part.id,
      group: placement.group,
      ...(placement.drawnFrom === undefined ? {} : { drawnFrom: placement.drawnFrom }),
      matrix: placement.matrix,
      when: setups.filter((setup) => stands(placement, setup)).map(({ name }) => name),
      middle: { x: (x[0] + x[1]) / 2, y: (y[0] + y[1]) / 2, z: (z[0] + z[1]) / 2 },
      step: stepOf(part),
    })),
    stations,
    setups: setups.map(({ name, holder, orientation, focusing }) => ({ name, holder, orientation, focusing })),
    steps: steps.map(({ number, title }) => ({ number, title })),
    light,
  };
  return { solids, made };
}

function madeShape(part: Part, surface: Creased): MadeShape {
  const { positions } = surface;
  const size = [0, 1, 2].map((axis) => {
    let low = Infinity;
    let high = -Infinity;
    for (let i = axis; i < positions.length; i += 3) {
      low = Math.min(low, positions[i] as number);
      high = Math.max(high, positions[i] as number);
    }
    return high - low;
  }) as [number, number, number];
  return { ...surface, scribed: part.kind === 'flat' ? strokesOn(part) : new Float32Array(), size };
}

/** How far a chord of an engraved arc may stray, mm: nobody sees less on a screen. */
const STRAY = 0.05;

/** Engraving lies on the face that the laser sees, at the far end of the thickness; words are still to be turned into strokes. */
function strokesOn({ engraving, marks, thickness }: FlatPart): Float32Array {
  const words = marks.flatMap(({ text, x, y, height, turn }) =>
    lettering(text, height).strokes.map((stroke) => ({ ...stroke, vertices: moved(stroke.vertices, { x, y, turn }) })),
  );
  const ends: number[] = [];
  for (const { vertices, closed } of [...engraving, ...words]) {
    const points = flatten(vertices, STRAY, closed);
    points.forEach((from, i) => {
      const to = points[i + 1] ?? (closed ? points[0] : undefined);
      if (to !== undefined) ends.push(from.x, from.y, thickness, to.x, to.y, thickness);
    });
  }
  return Float32Array.from(ends);
}

function body(part: Part, { size, ...shape }: MadeShape, { setups }: Build): ShownBody {
  const { positions, normals, triangles, edges, scribed } = shape;
  return {
    part: part.id,
    name: part.name,
    stuff: stuffShown(part),
    material: part.kind === 'bought' ? null : part.material,
    size,
    count: countOf(part.placements, setups),
    joins: part.joins,
    positions: positions.slice(),
    normals: normals.slice(),
    triangles: triangles.slice(),
    edges: edges.slice(),
    scribed: scribed.slice(),
    thickness: part.kind === 'flat' ? part.thickness : null,
    grain: part.kind === 'flat' && part.grain === 'y' ? 'y' : 'x',
  };
}
