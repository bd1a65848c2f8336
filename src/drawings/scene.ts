import type { Setup } from '../assembly/build.js';
import { slidBy } from '../assembly/extent.js';
import { type Piece, piecesOf } from '../assembly/pieces.js';
import { stands } from '../assembly/setups.js';
import type { Workbench } from '../assembly/workbench.js';
import { compose, type Matrix4, type Point3, shift } from '../geometry/placement.js';
import { type Surface, surfaceOf } from '../geometry/surface.js';
import type { Part } from '../model/part.js';

/** A piece as it is looked at. */
export interface Body {
  /** Of the piece: `F5#2`. */
  readonly key: string;
  readonly part: Part;
  /** In the part's own frame; of a piece that is sawn, where it stands. */
  readonly mesh: Surface;
  /** From there to where it is shown, in the camera's frame. */
  readonly matrix: Matrix4;
}

/** The pieces that stand in a set-up, in the order of the parts. */
export const standingIn = (parts: readonly Part[], setup: Setup): readonly Piece[] =>
  piecesOf(parts).filter(({ placement }) => stands(placement, setup));

/** How a piece is shown away from its place at the closest station. */
export interface Shown {
  readonly piece: Piece;
  /** How far the moving groups have slid. */
  readonly rear?: number;
  /** Pulled out of the camera, mm. */
  readonly out?: Point3;
  /** Cut away: all that lies on the far side of this plane is left, points p with p · normal ≥ offset. */
  readonly saw?: { readonly normal: Point3; readonly offset: number };
}

/** The surface of pieces as they are shown; one that is sawn away altogether is left out. */
export function bodiesOf(on: Workbench, shown: readonly Shown[]): readonly Body[] {
  return shown.flatMap(({ piece, rear = 0, out, saw }): readonly Body[] => {
    const motion = shift(out?.x ?? 0, out?.y ?? 0, (out?.z ?? 0) + slidBy(piece.placement, rear));
    const { key, part, placement } = piece;
    if (saw === undefined) return [{ key, part, mesh: on.surface(part), matrix: compose(motion, placement.matrix) }];
    const left = on.bench.trimmed(on.moved(piece, motion), saw.normal, saw.offset);
    const mesh = surfaceOf(on.bench.surface(left));
    return mesh.triangles.length === 0 ? [] : [{ key, part, mesh, matrix: HERE }];
  });
}

const HERE = shift(0, 0, 0);
