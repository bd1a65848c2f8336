import type { Point } from '../geometry/path.js';
import type { Point3 } from '../geometry/placement.js';

/**
 * A parallel projection: where the drawing's axes point in the camera's frame, each of length 1 and square to the others.
 * `right` and `up` lie in the paper, `toward` points out of it, at the eye.
 */
export interface View {
  readonly right: Point3;
  readonly up: Point3;
  readonly toward: Point3;
}

const along = (x: number, y: number, z: number): Point3 => ({ x, y, z });

/** Looking into the lens: the photographer's right is on the left. */
export const frontView: View = { right: along(-1, 0, 0), up: along(0, 1, 0), toward: along(0, 0, -1) };
/** As the photographer stands. */
export const backView: View = { right: along(1, 0, 0), up: along(0, 1, 0), toward: along(0, 0, 1) };
/** From the photographer's left: the lens on the left of the paper, as the section is drawn. */
export const leftView: View = { right: along(0, 0, 1), up: along(0, 1, 0), toward: along(-1, 0, 0) };
/** From the photographer's right: the lens on the right. */
export const rightView: View = { right: along(0, 0, -1), up: along(0, 1, 0), toward: along(1, 0, 0) };
/** From above, the lens on the left: x points up the paper. */
export const topView: View = { right: along(0, 0, 1), up: along(1, 0, 0), toward: along(0, 1, 0) };
/** From below, the lens on the left: x points down the paper. */
export const bottomView: View = { right: along(0, 0, 1), up: along(-1, 0, 0), toward: along(0, -1, 0) };

/** A view with upright lines upright, looking from where a direction points. It must not be straight up or down. */
export function viewFrom({ x, y, z }: Point3): View {
  const length = Math.sqrt(x * x + y * y + z * z);
  const flat = Math.sqrt(x * x + z * z);
  if (flat < 1e-6 * length) throw new Error('a view from straight above has no upright lines: use topView');
  const toward = along(x / length, y / length, z / length);
  const right = along(z / flat, 0, -x / flat);
  return { right, up: cross(toward, right), toward };
}

/** Where a point comes to lie on the paper: x to the right, y up, both true lengths; `depth` grows towards the eye. */
export function project({ right, up, toward }: View, point: Point3): Point & { readonly depth: number } {
  return { x: dot(right, point), y: dot(up, point), depth: dot(toward, point) };
}

const dot = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;

const cross = (a: Point3, b: Point3): Point3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
