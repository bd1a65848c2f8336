/** Sixteen numbers, column-major: a rigid motion, its shift in the numbers 13 to 15 (translation in mm). */
export type Matrix4 = readonly number[];

export interface Point3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

type Axis = readonly [number, number, number];

/**
 * A placement from where the part's own axes point, and where its origin stands. Each number by its index: a camera has
 * hundreds of places, and spreading four short lists takes several times as long.
 */
// biome-ignore format: a column of the matrix on each line
export const frame = (x: Axis, y: Axis, z: Axis, origin: Axis): Matrix4 => [
  x[0], x[1], x[2], 0,
  y[0], y[1], y[2], 0,
  z[0], z[1], z[2], 0,
  origin[0], origin[1], origin[2], 1,
];

/** In the plane across the optical axis: own x, y stay; the material runs from z towards the film. */
export const across = (x: number, y: number, z: number): Matrix4 => frame([1, 0, 0], [0, 1, 0], [0, 0, 1], [x, y, z]);

/** One motion after another: `then` is applied last. */
export function compose(then: Matrix4, first: Matrix4): Matrix4 {
  const out: number[] = [];
  for (let column = 0; column < 4; column++) {
    for (let row = 0; row < 4; row++) {
      let sum = 0;
      for (let k = 0; k < 4; k++) sum += (then[4 * k + row] as number) * (first[4 * column + k] as number);
      out.push(sum);
    }
  }
  return out;
}

/** A quarter turn of the whole back, anticlockwise seen from behind. */
export const quarterTurn: Matrix4 = frame([0, 1, 0], [-1, 0, 0], [0, 0, 1], [0, 0, 0]);

/** A shift along the camera's axes. */
export const shift = (x: number, y: number, z: number): Matrix4 => across(x, y, z);

export function apply(matrix: Matrix4, { x, y, z }: Point3): Point3 {
  const row = (i: number) =>
    (matrix[i] as number) * x +
    (matrix[4 + i] as number) * y +
    (matrix[8 + i] as number) * z +
    (matrix[12 + i] as number);
  return { x: row(0), y: row(1), z: row(2) };
}
