import type { Setup } from '../assembly/build.js';
import { type Piece, piecesOf } from '../assembly/pieces.js';
import { stands } from '../assembly/setups.js';
import type { Workbench } from '../assembly/workbench.js';
import type { Mesh } from '../geometry/mesh.js';
import { type Point3, shift } from '../geometry/placement.js';
import type { Part } from '../model/part.js';

/** A piece as it is looked at: its surface where it stands in the camera. */
export interface Body {
  /** Of the piece: `F5#2`. */
  readonly key: string;
  readonly part: Part;
  readonly mesh: Mesh;
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
    const at = piece.slides ? rear : 0;
    const placed = out === undefined ? on.solid(piece, at) : on.moved(piece, shift(out.x, out.y, out.z + at));
    const solid = saw === undefined ? placed : on.bench.trimmed(placed, saw.normal, saw.offset);
    const mesh = on.bench.surface(solid);
    return mesh.triangles.length === 0 ? [] : [{ key: piece.key, part: piece.part, mesh }];
  });
}
