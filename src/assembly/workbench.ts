import { corners } from '../geometry/facets.js';
import type { Bench, Solid } from '../geometry/kernel.js';
import { type ClosedPath, type Point, polygon, reversed } from '../geometry/path.js';
import { compose, type Matrix4, shift } from '../geometry/placement.js';
import { circle } from '../geometry/shapes.js';
import type { Prism } from '../geometry/solid.js';
import { type Surface, surfaceOf } from '../geometry/surface.js';
import type { Part, PrintedPart } from '../model/part.js';
import { slidBy } from './extent.js';
import type { Piece } from './pieces.js';

/** The pieces of a build as solids: each part is made once, and each piece put where it stands when it is first asked for. */
export interface Workbench {
  readonly bench: Bench;
  /** A piece with the moving groups slid by `rear`. */
  readonly solid: (piece: Piece, rear: number) => Solid;
  /** A piece moved from its place at the closest station. */
  readonly moved: (piece: Piece, motion: Matrix4) => Solid;
  /** All that a piece passes while it slides so far along +z from the closest station; null for a printed one. */
  readonly swept: (piece: Piece, by: number) => Solid | null;
  /** A part's surface in its own frame, for looking at. */
  readonly surface: (part: Part) => Surface;
}

export function workbench(bench: Bench): Workbench {
  const own = new Map<string, Solid>();
  const placed = new Map<string, Solid>();
  const surfaces = new Map<string, Surface>();
  const made = (part: Part): Solid => {
    const known = own.get(part.id);
    if (known) return known;
    const solid = solidOf(bench, part);
    own.set(part.id, solid);
    return solid;
  };
  const put = (piece: Piece): Solid => {
    const known = placed.get(piece.key);
    if (known) return known;
    const solid = bench.moved(made(piece.part), piece.placement.matrix);
    placed.set(piece.key, solid);
    return solid;
  };
  const surface = (part: Part): Surface => {
    const known = surfaces.get(part.id);
    if (known) return known;
    const own = surfaceOf(bench.surface(made(part)));
    surfaces.set(part.id, own);
    return own;
  };
  const moved = (piece: Piece, motion: Matrix4) => bench.moved(put(piece), motion);
  return {
    bench,
    moved,
    surface,
    swept: (piece, by) => sweptSolid(bench, piece, by),
    solid: (piece, rear) => {
      const by = slidBy(piece.placement, rear);
      return by === 0 ? put(piece) : moved(piece, shift(0, 0, by));
    },
  };
}

const HERE = shift(0, 0, 0);

function solidOf(bench: Bench, part: Part): Solid {
  if (part.kind === 'printed') {
    const body = bench.joined(part.solid.add.map((prism) => bench.prism(prism, 'add')));
    if (part.solid.cut.length === 0) return body;
    return bench.cut(
      body,
      part.solid.cut.map((prism) => bench.prism(prism, 'cut')),
    );
  }
  return bench.prism(prismOf(part), 'add');
}

/** A flat or bought part as the prism that it is, in its own frame. */
function prismOf(part: Exclude<Part, PrintedPart>): Prism {
  if (part.kind === 'flat') return { profile: part.outline, holes: part.holes, height: part.thickness, matrix: HERE };
  const { shape } = part;
  return shape.form === 'cylinder'
    ? { profile: circle(0, 0, shape.diameter), holes: [], height: shape.length, matrix: HERE }
    : { profile: shape.outline, holes: shape.holes, height: shape.thickness, matrix: HERE };
}

/**
 * What a prism passes on its way along z is a prism again: drawn out longer where its thickness points that way; else its
 * profile with every edge drawn out, of which the kernel takes all that any loop covers.
 */
function sweptSolid(bench: Bench, { part, placement: { matrix } }: Piece, by: number): Solid | null {
  if (part.kind === 'printed') return null;
  const prism = prismOf(part);
  // where the camera's z points in the part's own frame
  const [x = 0, y = 0, z = 0] = [matrix[2], matrix[6], matrix[10]];
  if (Math.abs(z) > 0.5)
    return bench.prism(
      { ...prism, height: prism.height + by, matrix: z > 0 ? matrix : compose(shift(0, 0, by), matrix) },
      'add',
    );
  const loops = [prism.profile, ...prism.holes].map((loop) => corners(loop, 'add'));
  const edges = loops.flatMap((loop) => loop.map((from, i) => [from, loop[(i + 1) % loop.length] as Point] as const));
  const passed = edges.flatMap(([from, to]): readonly ClosedPath[] => {
    const turn = (to.x - from.x) * y - (to.y - from.y) * x;
    if (Math.abs(turn) < STRAIGHT_ON) return [];
    const there = [to, from].map((end): [number, number] => [end.x + by * x, end.y + by * y]);
    const quad = polygon([[from.x, from.y], [to.x, to.y], ...there]);
    return [turn > 0 ? quad : reversed(quad)];
  });
  const [profile = [], ...holes] = loops.map((loop) => polygon(loop.map((p): [number, number] => [p.x, p.y])));
  return bench.prism({ ...prism, profile, holes: [...holes, ...passed], matrix }, 'add');
}

/** An edge that runs along its own way passes nothing. */
const STRAIGHT_ON = 1e-9;
