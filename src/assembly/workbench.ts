import type { Bench, Solid } from '../geometry/kernel.js';
import type { ClosedPath } from '../geometry/path.js';
import { type Matrix4, shift } from '../geometry/placement.js';
import { circle } from '../geometry/shapes.js';
import type { Part } from '../model/part.js';
import type { Piece } from './pieces.js';

/** The pieces of a build as solids: each part is made once, and each piece put where it stands when it is first asked for. */
export interface Workbench {
  readonly bench: Bench;
  /** A piece with the moving groups slid by `rear`. */
  readonly solid: (piece: Piece, rear: number) => Solid;
  /** A piece moved from its place at the closest station. */
  readonly moved: (piece: Piece, motion: Matrix4) => Solid;
}

export function workbench(bench: Bench): Workbench {
  const own = new Map<string, Solid>();
  const placed = new Map<string, Solid>();
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
  const moved = (piece: Piece, motion: Matrix4) => bench.moved(put(piece), motion);
  return {
    bench,
    moved,
    solid: (piece, rear) => (piece.slides && rear !== 0 ? moved(piece, shift(0, 0, rear)) : put(piece)),
  };
}

const HERE = shift(0, 0, 0);

function solidOf(bench: Bench, part: Part): Solid {
  const plate = (profile: ClosedPath, holes: readonly ClosedPath[], height: number) =>
    bench.prism({ profile, holes, height, matrix: HERE }, 'add');
  if (part.kind === 'flat') return plate(part.outline, part.holes, part.thickness);
  if (part.kind === 'printed') {
    const body = bench.joined(part.solid.add.map((prism) => bench.prism(prism, 'add')));
    if (part.solid.cut.length === 0) return body;
    return bench.cut(
      body,
      part.solid.cut.map((prism) => bench.prism(prism, 'cut')),
    );
  }
  const { shape } = part;
  return shape.form === 'cylinder'
    ? plate(circle(0, 0, shape.diameter), [], shape.length)
    : plate(shape.outline, shape.holes, shape.thickness);
}
