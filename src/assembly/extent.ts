import { boundsOfPoints } from '../geometry/path.js';
import type { Part, Placement } from '../model/part.js';

/** Smallest and largest coordinate along each axis. */
export interface Extent {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly z: readonly [number, number];
}

/** The upright box round a placed part: its own box carried along. */
export function extentOf(part: Part, { group, matrix }: Placement, rear: number): Extent {
  const { left, bottom, right, top, high } = ownBox(part);
  const slid = group === 'front' ? 0 : rear;
  // along each axis of the camera the own box reaches farthest at the corners that the signs of the row point to
  const reach = (row: 0 | 1 | 2, shift: number): readonly [number, number] => {
    const [x, y, z] = [matrix[row] as number, matrix[4 + row] as number, matrix[8 + row] as number];
    const origin = matrix[12 + row] as number;
    const least = x * (x > 0 ? left : right) + y * (y > 0 ? bottom : top) + z * (z > 0 ? 0 : high) + origin;
    const most = x * (x > 0 ? right : left) + y * (y > 0 ? top : bottom) + z * (z > 0 ? high : 0) + origin;
    return [least + shift, most + shift];
  };
  return { x: reach(0, 0), y: reach(1, 0), z: reach(2, slid) };
}

export const around = (extents: readonly Extent[]): Extent => {
  const axis = (k: 'x' | 'y' | 'z'): readonly [number, number] => [
    Math.min(...extents.map((e) => e[k][0])),
    Math.max(...extents.map((e) => e[k][1])),
  ];
  return { x: axis('x'), y: axis('y'), z: axis('z') };
};

function ownBox(part: Part) {
  if (part.kind === 'printed') {
    const [w, d, h] = part.size;
    return { left: -w / 2, bottom: -d / 2, right: w / 2, top: d / 2, high: h };
  }
  if (part.kind === 'flat') return { ...cornersOf(part.outline), high: part.thickness };
  if (part.shape.form === 'cylinder') {
    const r = part.shape.diameter / 2;
    return { left: -r, bottom: -r, right: r, top: r, high: part.shape.length };
  }
  return { ...cornersOf(part.shape.outline), high: part.shape.thickness };
}

/** Box of the vertices; a whole circle, the only outline with arcs that bulge past them, has its two across: take it square. */
function cornersOf(outline: Parameters<typeof boundsOfPoints>[0]) {
  const box = boundsOfPoints(outline);
  if (outline.length !== 2) return box;
  const r = (box.right - box.left) / 2;
  return { ...box, bottom: box.bottom - r, top: box.top + r };
}
