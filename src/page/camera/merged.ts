import type { ShownBody, ShownPiece, ShownSolids } from '../../model/shown.js';

/**
 * All pieces of a set-up in one list of corners, so that a picture takes a handful of calls: where a piece stands at the
 * moment, and how it is lit up, is told beside it by its number.
 */
export interface Merged {
  readonly pieces: readonly MergedPiece[];
  /** At the closest station, in the camera's frame. */
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** Along the grain, across it, from the underside up, and how far the face looks along the last, from -1 to 1. */
  readonly local: Float32Array;
  /** The number of the piece that each corner belongs to. */
  readonly numbers: Float32Array;
  readonly opaque: Uint32Array;
  readonly clear: Uint32Array;
  /** Lines: both ends, then the number of the piece, then 0 for an edge and 1 for engraving. */
  readonly lines: Float32Array;
}

export interface MergedPiece {
  readonly piece: ShownPiece;
  readonly body: ShownBody;
  readonly box: { readonly low: Triple; readonly high: Triple };
}

type Triple = readonly [number, number, number];

export const PER_LINE = 8;

export function mergedPieces({ bodies, pieces }: ShownSolids, setup: string): Merged {
  const byPart = new Map(bodies.map((body) => [body.part, body]));
  const standing = pieces.flatMap((piece) => {
    const body = byPart.get(piece.part);
    return body !== undefined && piece.when.includes(setup) ? [{ piece, body }] : [];
  });
  const corners = sum(standing.map(({ body }) => body.positions.length / 3));
  const facets = (clear: boolean) =>
    sum(standing.map(({ body }) => ((body.stuff === 'glass') === clear ? body.triangles.length : 0)));
  const merged = {
    positions: new Float32Array(3 * corners),
    normals: new Float32Array(3 * corners),
    local: new Float32Array(4 * corners),
    numbers: new Float32Array(corners),
    opaque: new Uint32Array(facets(false)),
    clear: new Uint32Array(facets(true)),
    lines: new Float32Array(
      PER_LINE * sum(standing.map(({ body }) => body.edges.length / 2 + body.scribed.length / 6)),
    ),
  };
  const at = { corner: 0, opaque: 0, clear: 0, line: 0 };
  const placed = standing.map(({ piece, body }, number): MergedPiece => {
    const { matrix } = piece;
    const { positions, normals, triangles, edges, scribed, grain } = body;
    const low: [number, number, number] = [Infinity, Infinity, Infinity];
    const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
    const begin = at.corner;
    const along = grain === 'x' ? 0 : 1;
    turned(matrix, positions, 1, merged.positions, 3 * begin);
    turned(matrix, normals, 0, merged.normals, 3 * begin);
    for (let c = 0; c < positions.length / 3; c++) {
      const to = 4 * (begin + c);
      merged.local[to] = positions[3 * c + along] as number;
      merged.local[to + 1] = positions[3 * c + 1 - along] as number;
      merged.local[to + 2] = positions[3 * c + 2] as number;
      merged.local[to + 3] = normals[3 * c + 2] as number;
    }
    at.corner += positions.length / 3;
    merged.numbers.fill(number, begin, at.corner);
    for (let i = 3 * begin; i < 3 * at.corner; i++) {
      const value = merged.positions[i] as number;
      const axis = i % 3;
      if (value < (low[axis] as number)) low[axis] = value;
      if (value > (high[axis] as number)) high[axis] = value;
    }
    const into = body.stuff === 'glass' ? 'clear' : 'opaque';
    for (const corner of triangles) {
      merged[into][at[into]] = begin + corner;
      at[into] += 1;
    }
    for (let e = 0; e < edges.length; e += 2) {
      const to = PER_LINE * at.line;
      for (let end = 0; end < 2; end++) {
        const from = 3 * (begin + (edges[e + end] as number));
        for (let axis = 0; axis < 3; axis++)
          merged.lines[to + 3 * end + axis] = merged.positions[from + axis] as number;
      }
      merged.lines[to + 6] = number;
      at.line += 1;
    }
    const strokes = new Float32Array(scribed.length);
    turned(matrix, scribed, 1, strokes, 0);
    for (let s = 0; s < strokes.length; s += 6) {
      const to = PER_LINE * at.line;
      for (let i = 0; i < 6; i++) merged.lines[to + i] = strokes[s + i] as number;
      merged.lines[to + 6] = number;
      merged.lines[to + 7] = 1;
      at.line += 1;
    }
    return { piece, body, box: { low, high } };
  });
  return { pieces: placed, ...merged };
}

/** Three numbers after three through a placement: places where `shifted` is 1, ways where it is 0. */
function turned(
  matrix: readonly number[],
  from: Float32Array,
  shifted: 0 | 1,
  into: Float32Array,
  begin: number,
): void {
  for (let row = 0; row < 3; row++) {
    const [a, b, c, d] = [0, 4, 8, 12].map((column) => matrix[column + row] as number) as [
      number,
      number,
      number,
      number,
    ];
    const by = shifted * d;
    for (let at = 0; at < from.length; at += 3)
      into[begin + at + row] =
        a * (from[at] as number) + b * (from[at + 1] as number) + c * (from[at + 2] as number) + by;
  }
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);
