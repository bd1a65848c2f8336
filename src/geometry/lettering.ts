import hershey from 'hersheytext';
import type { Path, Point } from './path.js';

/** Single-line letters: one stroke of the beam, no filled outlines. The glyphs are in the public domain. */
const FONT = 'hershey_sans_1';
/** Units of the font that capitals are tall. */
const CAPITAL = 662;
/** Blank left of a glyph in the font's own units. */
const BEARING = 126;

/**
 * Strokes of a line of words, its lower left corner at the origin.
 *
 * @param height of the capitals, mm
 */
export function lettering(text: string, height: number): { readonly strokes: readonly Path[]; readonly width: number } {
  const scale = height / CAPITAL;
  const strokes: Path[] = [];
  let x = 0;
  for (const letter of text) {
    const glyph = glyphs.get(letter) ?? glyphs.get('?');
    if (!glyph) continue;
    strokes.push(...glyph.lines.map((line) => stroke(line, x - BEARING * scale, scale)));
    x += glyph.width * scale;
  }
  return { strokes, width: x };
}

interface Line {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** Path data of the font: M starts a stroke, L goes on. */
function strokesOf(data: string): readonly Line[] {
  const found: Point[][] = [];
  for (const [, command, x, y] of data.matchAll(/([ML])\s+(-?[\d.]+)\s+(-?[\d.]+)/g)) {
    const point = { x: Number(x), y: Number(y) };
    if (command === 'M') found.push([point]);
    else found.at(-1)?.push(point);
  }
  return found.flatMap(untied);
}

/** A stroke that comes back to itself (6, 9, e) parted where it does, so that every reader sees the same chains. */
function untied(points: readonly Point[]): readonly Line[] {
  const lines: Line[] = [];
  let open: Point[] = [];
  for (const point of points) {
    const tie = open.findIndex((p) => p.x === point.x && p.y === point.y);
    if (tie < 0) {
      open.push(point);
      continue;
    }
    if (tie > 0) lines.push({ points: open.slice(0, tie + 1), closed: false });
    if (open.length - tie > 2) lines.push({ points: open.slice(tie), closed: true });
    open = [point];
  }
  if (open.length > 1) lines.push({ points: open, closed: false });
  return lines;
}

const stroke = ({ points, closed }: Line, left: number, scale: number): Path => ({
  closed,
  vertices: points.map(({ x, y }) => ({ x: left + x * scale, y: y * scale, bulge: 0 })),
});

/** Read once: it is a table, and the package reads all of it anew each time that it is asked. */
const glyphs: ReadonlyMap<string, { readonly lines: readonly Line[]; readonly width: number }> = new Map(
  Object.entries(hershey.getFontData(FONT).chars).map(([letter, { d, width }]) => [
    letter,
    { lines: strokesOf(d ?? ''), width },
  ]),
);
