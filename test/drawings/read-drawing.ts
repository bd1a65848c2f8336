import svgpath from 'svgpath';
import type { Point } from '../../src/geometry/path.js';

/** A line of a drawing: mm from the upper left corner, y down. */
export interface ReadLine {
  readonly role: string;
  readonly id: string | null;
  readonly points: readonly Point[];
  readonly filled: boolean;
}

export interface ReadWords {
  readonly role: string;
  readonly text: string;
  readonly size: number;
  readonly heavy: boolean;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly at: Point;
  /** Degrees, clockwise as SVG counts. */
  readonly turned: number;
}

/** A second reader of drawings: from the text of the SVG alone. Circles are left out: they are dots and bolts’ signs. */
export function readDrawing(svg: string): {
  readonly lines: readonly ReadLine[];
  readonly words: readonly ReadWords[];
} {
  const lines: ReadLine[] = [];
  const words: ReadWords[] = [];
  for (const [, tag, inside = '', content = ''] of svg.matchAll(
    /<(path|polyline|polygon|text)\b([^>]*?)(?:\/>|>([^<]*)<\/text>|>)/g,
  )) {
    const attribute = (name: string) => new RegExp(`(?:^|\\s)${name}="([^"]*)"`).exec(inside)?.[1] ?? null;
    const number = (name: string) => Number(attribute(name) ?? 0);
    const [role, id] = [attribute('class') ?? '', attribute('id')];
    const filled = (attribute('fill') ?? 'none') !== 'none';
    if (tag === 'text') {
      words.push({
        role,
        text: content.replaceAll('&amp;', '&').trim(),
        size: number('font-size'),
        heavy: attribute('font-weight') === 'bold',
        anchor: (attribute('text-anchor') ?? 'start') as ReadWords['anchor'],
        at: { x: number('x'), y: number('y') },
        turned: Number(/rotate\((-?[\d.]+)/.exec(attribute('transform') ?? '')?.[1] ?? 0),
      });
    } else if (tag === 'path') {
      for (const points of walked(attribute('d') ?? '')) lines.push({ role, id, points, filled });
    } else {
      const n = (attribute('points') ?? '').split(/[\s,]+/).map(Number);
      const points = Array.from({ length: n.length / 2 }, (_, i) => ({
        x: n[2 * i] as number,
        y: n[2 * i + 1] as number,
      }));
      const [first] = points;
      lines.push({ role, id, points: tag === 'polygon' && first ? [...points, first] : points, filled });
    }
  }
  return { lines, words };
}

function walked(d: string): readonly (readonly Point[])[] {
  const paths: Point[][] = [];
  svgpath(d)
    .abs()
    .iterate(([name, ...n], _, x, y) => {
      const [a = 0, b = 0] = n as number[];
      if (name === 'M') paths.push([{ x: a, y: b }]);
      else if (name === 'L') paths.at(-1)?.push({ x: a, y: b });
      else if (name === 'H') paths.at(-1)?.push({ x: a, y });
      else if (name === 'V') paths.at(-1)?.push({ x, y: a });
      else if (name === 'Z') paths.at(-1)?.push(paths.at(-1)?.[0] ?? { x, y });
      else throw new Error(`a drawing has straight lines only, not ${name}`);
    });
  return paths;
}
