import { arcOf, type Box, boundsOfPoints, type ClosedPath, type Point } from '../geometry/path.js';
import type { Matrix4 } from '../geometry/placement.js';
import type { Part, Placement } from '../model/part.js';

/** Smallest and largest coordinate along each axis. */
export interface Extent {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly z: readonly [number, number];
}

/** The upright box round a part in one of its places, at the closest station. */
export interface PlacedBox {
  readonly placement: Placement;
  readonly extent: Extent;
}

/** The boxes of a part's placements, its own box carried along. */
export function boxesOf(part: Part, placements = part.placements): readonly PlacedBox[] {
  if (placements.length === 0) return [];
  const own = ownBox(part);
  return placements.map((placement) => ({ placement, extent: carried(own, placement.matrix) }));
}

/** How far along +z something stands from its place at the closest station, the rear slid by `rear`. */
export function slidBy({ group, drawnFrom }: Pick<Placement, 'group' | 'drawnFrom'>, rear: number): number {
  if (group !== 'front') return rear;
  return drawnFrom === undefined ? 0 : Math.max(0, rear - drawnFrom);
}

/** A box with the moving groups slid by `rear`. */
export function slidBox({ placement, extent: { x, y, z } }: PlacedBox, rear: number): Extent {
  const by = slidBy(placement, rear);
  return { x, y, z: [z[0] + by, z[1] + by] };
}

const carried = (own: OwnBox, matrix: Matrix4): Extent => ({
  x: reach(own, matrix, 0),
  y: reach(own, matrix, 1),
  z: reach(own, matrix, 2),
});

/** Along an axis of the camera a box reaches farthest at the corners that the signs of the matrix's row point to. */
function reach({ left, bottom, right, top, high }: OwnBox, matrix: Matrix4, row: 0 | 1 | 2): readonly [number, number] {
  const x = matrix[row] as number;
  const y = matrix[4 + row] as number;
  const z = matrix[8 + row] as number;
  const origin = matrix[12 + row] as number;
  return [
    x * (x > 0 ? left : right) + y * (y > 0 ? bottom : top) + z * (z > 0 ? 0 : high) + origin,
    x * (x > 0 ? right : left) + y * (y > 0 ? top : bottom) + z * (z > 0 ? high : 0) + origin,
  ];
}

export function around(extents: readonly Extent[]): Extent {
  const [only] = extents;
  if (only !== undefined && extents.length === 1) return only;
  const axis = (k: 'x' | 'y' | 'z'): readonly [number, number] => {
    let low = Infinity;
    let high = -Infinity;
    for (const extent of extents) {
      const [from, to] = extent[k];
      if (from < low) low = from;
      if (to > high) high = to;
    }
    return [low, high];
  };
  return { x: axis('x'), y: axis('y'), z: axis('z') };
}

/** A part's box in its own frame, from 0 to `high`. */
interface OwnBox extends Box {
  readonly high: number;
}

function ownBox(part: Part): OwnBox {
  if (part.kind === 'printed') {
    const [w, d, h] = part.size;
    return { left: -w / 2, bottom: -d / 2, right: w / 2, top: d / 2, high: h };
  }
  if (part.kind === 'flat') return plateBox(part.outline, part.thickness);
  if (part.shape.form === 'cylinder') {
    const r = part.shape.diameter / 2;
    return { left: -r, bottom: -r, right: r, top: r, high: part.shape.length };
  }
  return plateBox(part.shape.outline, part.shape.thickness);
}

/** Box of the vertices, and of the arcs that bulge past them: the round end of a button, a whole circle. */
function plateBox(outline: ClosedPath, high: number): OwnBox {
  let { left, bottom, right, top } = boundsOfPoints(outline);
  outline.forEach((from, i) => {
    if (from.bulge === 0) return;
    const { centre, radius, start } = arcOf(from, outline[(i + 1) % outline.length] as Point);
    const sweep = 4 * Math.atan(from.bulge);
    for (const [angle, x, y] of [
      [0, radius, 0],
      [Math.PI / 2, 0, radius],
      [Math.PI, -radius, 0],
      [-Math.PI / 2, 0, -radius],
    ] as const) {
      if (!passes(start, sweep, angle)) continue;
      left = Math.min(left, centre.x + x);
      right = Math.max(right, centre.x + x);
      bottom = Math.min(bottom, centre.y + y);
      top = Math.max(top, centre.y + y);
    }
  });
  return { left, bottom, right, top, high };
}

/** Whether an arc that begins at an angle and goes on by a sweep, rad, comes past another angle. */
function passes(start: number, sweep: number, angle: number): boolean {
  const turn = 2 * Math.PI;
  const on = ((Math.sign(sweep) * (angle - start)) % turn) + turn;
  return on % turn <= Math.abs(sweep);
}
