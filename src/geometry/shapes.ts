import { type Box, type ClosedPath, polygon, type Vertex } from './path.js';

/** Quarter of a circle as a bulge: tan(π/8). */
const QUARTER = Math.SQRT2 - 1;

export const box = (left: number, bottom: number, right: number, top: number): Box => ({ left, bottom, right, top });

/** A rectangle round a middle. */
export const boxAt = (x: number, y: number, width: number, height: number): Box =>
  box(x - width / 2, y - height / 2, x + width / 2, y + height / 2);

export const rectangle = ({ left, bottom, right, top }: Box): ClosedPath =>
  polygon([
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ]);

/** A whole circle: two vertices, half a turn each. */
export const circle = (x: number, y: number, diameter: number): ClosedPath => [
  { x: x + diameter / 2, y, bulge: 1 },
  { x: x - diameter / 2, y, bulge: 1 },
];

/** A rectangle with its corners rounded. */
export function rounded({ left, bottom, right, top }: Box, radius: number): ClosedPath {
  const v = (x: number, y: number, bulge: number): Vertex => ({ x, y, bulge });
  return [
    v(left + radius, bottom, 0),
    v(right - radius, bottom, QUARTER),
    v(right, bottom + radius, 0),
    v(right, top - radius, QUARTER),
    v(right - radius, top, 0),
    v(left + radius, top, QUARTER),
    v(left, top - radius, 0),
    v(left, bottom + radius, QUARTER),
  ];
}

/** A slot with round ends along y, `length` over all. */
export const slotAlongY = (x: number, y: number, width: number, length: number): ClosedPath => [
  { x: x + width / 2, y: y - length / 2 + width / 2, bulge: 0 },
  { x: x + width / 2, y: y + length / 2 - width / 2, bulge: 1 },
  { x: x - width / 2, y: y + length / 2 - width / 2, bulge: 0 },
  { x: x - width / 2, y: y - length / 2 + width / 2, bulge: 1 },
];

/** A slot with round ends along x, `length` over all. */
export const slotAlongX = (x: number, y: number, length: number, width: number): ClosedPath => [
  { x: x - length / 2 + width / 2, y: y - width / 2, bulge: 0 },
  { x: x + length / 2 - width / 2, y: y - width / 2, bulge: 1 },
  { x: x + length / 2 - width / 2, y: y + width / 2, bulge: 0 },
  { x: x - length / 2 + width / 2, y: y + width / 2, bulge: 1 },
];

/** A rectangle with all four corners cut off at 45°. */
export const clipped = ({ left, bottom, right, top }: Box, cut: number): ClosedPath =>
  polygon([
    [left + cut, bottom],
    [right - cut, bottom],
    [right, bottom + cut],
    [right, top - cut],
    [right - cut, top],
    [left + cut, top],
    [left, top - cut],
    [left, bottom + cut],
  ]);

/** A rectangle with its two lower corners cut off at 45°: it finds its way into a channel, and is not put in upside down. */
export const ledIn = ({ left, bottom, right, top }: Box, cut: number): ClosedPath =>
  polygon([
    [left + cut, bottom],
    [right - cut, bottom],
    [right, bottom + cut],
    [right, top],
    [left, top],
    [left, bottom + cut],
  ]);

/** A regular hexagon, its flats apart by `acrossFlats`, two of them level. */
export function hexagon(x: number, y: number, acrossFlats: number): ClosedPath {
  const r = acrossFlats / Math.sqrt(3);
  const half = acrossFlats / 2;
  return polygon([
    [x + r, y],
    [x + r / 2, y + half],
    [x - r / 2, y + half],
    [x - r, y],
    [x - r / 2, y - half],
    [x + r / 2, y - half],
  ]);
}

/** A stretch along an edge that stands out (`depth` above 0) or is cut in (below 0). */
export interface Step {
  readonly from: number;
  readonly to: number;
  readonly depth: number;
}

export interface Edges {
  readonly left?: readonly Step[];
  readonly right?: readonly Step[];
  readonly bottom?: readonly Step[];
  readonly top?: readonly Step[];
}

/**
 * A rectangle whose edges have steps: fingers, notches, tenons. Steps along left and right are counted in y, along
 * bottom and top in x; they must not overlap and must stay clear of the corners.
 */
export function stepped({ left, bottom, right, top }: Box, edges: Edges): ClosedPath {
  const rising = (steps: readonly Step[] = []) => [...steps].sort((a, b) => a.from - b.from);
  const falling = (steps: readonly Step[] = []) => [...steps].sort((a, b) => b.from - a.from);
  const corners: [number, number][] = [[left, bottom]];
  for (const s of rising(edges.bottom))
    corners.push([s.from, bottom], [s.from, bottom - s.depth], [s.to, bottom - s.depth], [s.to, bottom]);
  corners.push([right, bottom]);
  for (const s of rising(edges.right))
    corners.push([right, s.from], [right + s.depth, s.from], [right + s.depth, s.to], [right, s.to]);
  corners.push([right, top]);
  for (const s of falling(edges.top))
    corners.push([s.to, top], [s.to, top + s.depth], [s.from, top + s.depth], [s.from, top]);
  corners.push([left, top]);
  for (const s of falling(edges.left))
    corners.push([left, s.to], [left - s.depth, s.to], [left - s.depth, s.from], [left, s.from]);
  return polygon(corners);
}
