import { arcOf, type Path, type Point, type Vertex } from '../geometry/path.js';
import { decimal } from './decimal.js';

/** Arcs wider than this (rad) are drawn in pieces: near half a circle, four decimals of the ends no longer fix the arc. */
const WIDEST = (2 * Math.PI) / 3;

/** Path data of a path drawn y up, on a page `height` high that counts y downwards. */
export function pathData({ vertices, closed }: Path, height: number): string {
  const point = ({ x, y }: Point) => `${decimal(x)} ${decimal(height - y)}`;
  const edges = vertices.flatMap((from, i): readonly string[] => {
    const last = i === vertices.length - 1;
    if (last && !closed) return [];
    const to = vertices[(i + 1) % vertices.length] as Vertex;
    if (from.bulge === 0) return last ? [] : [`L${point(to)}`];
    return arcPieces(from, to).map(({ radius, end }) => {
      // turning the page over turns the arc's sense: anticlockwise is flag 0 where y runs down
      const sweep = from.bulge > 0 ? 0 : 1;
      return `A${decimal(radius)} ${decimal(radius)} 0 0 ${sweep} ${point(end)}`;
    });
  });
  return `M${point(vertices[0] as Vertex)}${edges.join('')}${closed ? 'Z' : ''}`;
}

function arcPieces(from: Vertex, to: Point): readonly { radius: number; end: Point }[] {
  const angle = 4 * Math.atan(from.bulge);
  const { centre, radius, start } = arcOf(from, to);
  const pieces = Math.ceil(Math.abs(angle) / WIDEST);
  return Array.from({ length: pieces }, (_, i) => {
    if (i === pieces - 1) return { radius, end: to };
    const turn = start + (angle * (i + 1)) / pieces;
    return { radius, end: { x: centre.x + radius * Math.cos(turn), y: centre.y + radius * Math.sin(turn) } };
  });
}
