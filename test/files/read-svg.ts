import svgpath from 'svgpath';
import type { Point } from '../../src/geometry/path.js';

export interface ReadPath {
  readonly id: string;
  readonly group: string;
  readonly commands: string;
  /** y up, curves cut into short chords by the path library. */
  readonly points: readonly Point[];
}

/** A second reader of sheets: groups and paths by their tags, geometry by an independent path library. */
export function readSvg(text: string): { groups: readonly string[]; paths: readonly ReadPath[] } {
  const height = Number(/viewBox="0 0 [\d.]+ ([\d.]+)"/.exec(text)?.[1]);
  const groups: string[] = [];
  const paths: ReadPath[] = [];
  for (const [, g, p] of text.matchAll(/<g ([^>]*)>|<path ([^>]*)>/g)) {
    const id = /\bid="([^"]*)"/.exec(g ?? p ?? '')?.[1] ?? '';
    if (g !== undefined) {
      groups.push(id);
      continue;
    }
    const commands = /\bd="([^"]*)"/.exec(p ?? '')?.[1] ?? '';
    paths.push({ id, group: groups.at(-1) ?? '', commands, points: walk(commands, height) });
  }
  return { groups, paths };
}

/** Chords to an arc: fewer than a micrometre lost at a radius of 100 mm. */
const CHORDS = 600;

function walk(commands: string, height: number): readonly Point[] {
  const points: Point[] = [];
  const add = (x: number, y: number) => points.push({ x, y: height - y });
  svgpath(commands)
    .abs()
    .iterate(([name, ...n], _, x, y) => {
      const v = n as number[];
      const [toX, toY] = v.slice(-2) as [number, number];
      if (name === 'M' || name === 'L') add(toX, toY);
      if (name === 'H') add(toX, y);
      if (name === 'V') add(x, toX);
      if (name === 'A') {
        const [radius, other, , large, sweep] = v as [number, number, number, number, number];
        if (radius !== other || large !== 0) throw new Error(`not a plain arc: ${v}`);
        for (const p of arc({ x, y }, { x: toX, y: toY }, radius, sweep)) add(p.x, p.y);
      }
      if (!'MLHVAZ'.includes(name as string)) throw new Error(`not a line or an arc: ${name}`);
    });
  return points;
}

/** Points of the lesser arc, as the SVG specification finds its centre (implementation notes, B.2.4). */
function arc(p: Point, q: Point, radius: number, sweep: number): readonly Point[] {
  const [mx, my] = [(p.x + q.x) / 2, (p.y + q.y) / 2];
  const [hx, hy] = [(p.x - q.x) / 2, (p.y - q.y) / 2];
  const square = hx * hx + hy * hy;
  const k = Math.sqrt(Math.max(0, radius * radius - square) / square) * (sweep === 0 ? 1 : -1);
  const centre = { x: mx + k * -hy, y: my + k * hx };
  const from = Math.atan2(p.y - centre.y, p.x - centre.x);
  const turn = Math.atan2(q.y - centre.y, q.x - centre.x) - from;
  const angle = sweep === 1 ? (turn + 4 * Math.PI) % (2 * Math.PI) : -((4 * Math.PI - turn) % (2 * Math.PI));
  return Array.from({ length: CHORDS }, (_, i) => {
    if (i === CHORDS - 1) return q;
    const a = from + (angle * (i + 1)) / CHORDS;
    return { x: centre.x + radius * Math.cos(a), y: centre.y + radius * Math.sin(a) };
  });
}
