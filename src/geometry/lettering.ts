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
  const { chars } = hershey.getFontData(FONT);
  const scale = height / CAPITAL;
  const strokes: Path[] = [];
  let x = 0;
  for (const letter of text) {
    const glyph = chars[letter] ?? chars['?'];
    if (!glyph) continue;
    strokes.push(...strokesOf(glyph.d ?? '').map((points) => stroke(points, x - BEARING * scale, scale)));
    x += glyph.width * scale;
  }
  return { strokes, width: x };
}

/** Path data of the font: M starts a stroke, L goes on. */
function strokesOf(data: string): readonly (readonly Point[])[] {
  const found: Point[][] = [];
  for (const [, command, x, y] of data.matchAll(/([ML])\s+(-?[\d.]+)\s+(-?[\d.]+)/g)) {
    const point = { x: Number(x), y: Number(y) };
    if (command === 'M') found.push([point]);
    else found.at(-1)?.push(point);
  }
  return found.filter((points) => points.length > 1);
}

const stroke = (points: readonly Point[], left: number, scale: number): Path => ({
  closed: false,
  vertices: points.map(({ x, y }) => ({ x: left + x * scale, y: y * scale, bulge: 0 })),
});
