import { type ClosedPath, type Path, type Point, reversed, type Vertex } from './path.js';
import { frame, type Matrix4 } from './placement.js';

/**
 * Which way a plate's engraved face looks in the camera. A plate is drawn in a pair of the camera's own axes:
 * (x, y) for plates across the axis, (z, y) for walls, (x, z) for floors and tops. So one matrix of six serves every part.
 */
export type Facing = 'rear' | 'front' | 'left' | 'right' | 'up' | 'down';

interface Turn {
  /** Own x and y from the drawn pair. */
  readonly x: 1 | -1;
  readonly y: 1 | -1;
  readonly matrix: (low: number, thickness: number) => Matrix4;
}

const turns: { readonly [F in Facing]: Turn } = {
  rear: { x: 1, y: 1, matrix: (low) => frame([1, 0, 0], [0, 1, 0], [0, 0, 1], [0, 0, low]) },
  front: { x: -1, y: 1, matrix: (low, t) => frame([-1, 0, 0], [0, 1, 0], [0, 0, -1], [0, 0, low + t]) },
  left: { x: 1, y: 1, matrix: (low, t) => frame([0, 0, 1], [0, 1, 0], [-1, 0, 0], [low + t, 0, 0]) },
  right: { x: -1, y: 1, matrix: (low) => frame([0, 0, -1], [0, 1, 0], [1, 0, 0], [low, 0, 0]) },
  up: { x: 1, y: -1, matrix: (low) => frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [0, low, 0]) },
  down: { x: 1, y: 1, matrix: (low, t) => frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [0, low + t, 0]) },
};

/** Where a plate stands: `low` is the smaller coordinate of its two faces along its thickness. */
export const matrixOf = (facing: Facing, low: number, thickness: number): Matrix4 =>
  turns[facing].matrix(low, thickness);

/** A loop drawn in the camera's axes, in the plate's own frame; its sense of turning is kept. */
export function ownLoop(facing: Facing, loop: ClosedPath): ClosedPath {
  const { x, y } = turns[facing];
  if (x === 1 && y === 1) return loop;
  return reversed(mirrored(loop, x, y));
}

/** A stroke drawn in the camera's axes, in the plate's own frame. */
export function ownStroke(facing: Facing, stroke: Path): Path {
  const { x, y } = turns[facing];
  return { closed: stroke.closed, vertices: x === y ? stroke.vertices : mirrored(stroke.vertices, x, y) };
}

/** A point drawn in the camera's axes, in the plate's own frame. */
export const ownPoint = (facing: Facing, point: Point): Point => ({
  x: turns[facing].x * point.x,
  y: turns[facing].y * point.y,
});

/** Which of the plate's own axes runs along an axis of the camera. */
export function ownAxis(facing: Facing, axis: 'x' | 'y' | 'z'): 'x' | 'y' {
  if (facing === 'rear' || facing === 'front') return axis === 'x' ? 'x' : 'y';
  if (facing === 'left' || facing === 'right') return axis === 'z' ? 'x' : 'y';
  return axis === 'x' ? 'x' : 'y';
}

const mirrored = (path: readonly Vertex[], x: number, y: number): readonly Vertex[] =>
  path.map((v) => ({ x: x * v.x, y: y * v.y, bulge: x * y * v.bulge || 0 }));
