import { BufferAttribute, BufferGeometry } from 'three';
import type { ShownLight } from '../../model/shown.js';

/** How many pieces a quarter of the pupil's rim is cut into. */
const QUARTER = 8;

/**
 * The skin of the light between the rim of the pupil and the frame of the film, its lines, and those that are drawn where wood hides it. z is 0 at the pupil
 * and 1 at the film: where they stand is told when it is drawn.
 */
export function coneGeometries({ pupil, image }: ShownLight, lengthwise: boolean) {
  const [width, height] = lengthwise ? [image.height, image.width] : [image.width, image.height];
  const radius = pupil.diameter / 2;
  const corners = [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ].map(([x, y]): Point => [((x as number) * width) / 2, ((y as number) * height) / 2, 1]);
  const rim = (k: number): Point => {
    const turn = ((k / QUARTER) * Math.PI) / 2;
    return [radius * Math.cos(turn), radius * Math.sin(turn), 0];
  };
  const skin: Point[] = [];
  const lines: Point[] = [];
  corners.forEach((corner, quarter) => {
    const next = corners[(quarter + 1) % 4] as Point;
    for (let k = 0; k < QUARTER; k++) skin.push(rim(quarter * QUARTER + k), rim(quarter * QUARTER + k + 1), corner);
    skin.push(rim((quarter + 1) * QUARTER), next, corner);
    lines.push(rim((quarter + 0.5) * QUARTER), corner, corner, next);
  });
  const sides = [...lines];
  for (let k = 0; k < 4 * QUARTER; k++) lines.push(rim(k), rim(k + 1));
  // in the plane of the axis, where the saw goes
  for (const sign of [1, -1]) lines.push([0, sign * radius, 0], [0, (sign * height) / 2, 1]);
  return { skin: geometry(skin), lines: geometry(lines), hidden: geometry(sides) };
}

type Point = readonly [number, number, number];

const geometry = (points: readonly Point[]): BufferGeometry =>
  new BufferGeometry().setAttribute('position', new BufferAttribute(Float32Array.from(points.flat()), 3));
