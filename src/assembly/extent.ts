import { boundsOfPoints } from '../geometry/path.js';
import { apply } from '../geometry/placement.js';
import type { Part, Placement } from '../model/part.js';

/** Smallest and largest coordinate along each axis. */
export interface Extent {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly z: readonly [number, number];
}

/** The upright box round a placed part: its own box's corners carried along. */
export function extentOf(part: Part, { group, matrix }: Placement, rear: number): Extent {
  const { left, bottom, right, top, high } = ownBox(part);
  const shift = group === 'front' ? 0 : rear;
  const range: [number, number][] = [
    [Infinity, -Infinity],
    [Infinity, -Infinity],
    [Infinity, -Infinity],
  ];
  for (const x of [left, right]) {
    for (const y of [bottom, top]) {
      for (const z of [0, high]) {
        const at = apply(matrix, { x, y, z });
        [at.x, at.y, at.z + shift].forEach((value, axis) => {
          const r = range[axis] as [number, number];
          r[0] = Math.min(r[0], value);
          r[1] = Math.max(r[1], value);
        });
      }
    }
  }
  const [x, y, z] = range as [[number, number], [number, number], [number, number]];
  return { x, y, z };
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
