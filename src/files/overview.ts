import { boundsOfPoints, flatten, moved, type Point } from '../geometry/path.js';
import type { FlatPart } from '../model/part.js';
import type { Placed, Sheet } from '../sheets/sheet.js';
import { decimal } from './decimal.js';
import { escaped, pathData, tidy } from './svg.js';

export interface OverviewGiven {
  readonly title: string;
  /** Every part that lies on the sheets, in the order of the parts list. */
  readonly pieces: readonly { readonly part: FlatPart; readonly count: number }[];
}

/** Pale enough to read dark letters on, and no two neighbours in the list alike. */
const tones = ['#e9dcc3', '#d3e0d2', '#dfd2df', '#f0d9c4', '#cfdde4', '#e6e2bd', '#e8d0cd', '#d6d8e6'] as const;
const INK = '#33302b';
const GROUND = '#faf8f3';

const GAP = 30;
const CAPTION = 14;
const ROW = 13;
const LETTER = 9;
const SHEETS_ABREAST = 2;
/** Room for one entry of the legend, mm of the picture. */
const ENTRY = 230;
/** Picture over nature. */
const SCALE = 0.35;

/** A picture for people: all sheets with their parts filled and marked, and the list of marks below. */
export function overviewSvg(sheets: readonly Sheet[], { title, pieces }: OverviewGiven): string {
  const columns = Math.min(SHEETS_ABREAST, Math.max(1, sheets.length));
  const cell = {
    width: Math.max(ENTRY, ...sheets.map((s) => s.width)) + GAP,
    height: Math.max(0, ...sheets.map((s) => s.height)) + GAP + CAPTION,
  };
  const width = columns * cell.width + GAP;
  const top = GAP + 2 * CAPTION;
  const drawn = sheets.map((sheet, i) => {
    const x = GAP + (i % columns) * cell.width;
    const y = top + Math.floor(i / columns) * cell.height;
    return sheetPicture(sheet, pieces, { x, y });
  });
  const shown = pieces.filter(({ part }) => sheets.some(({ placed }) => placed.some((p) => p.part === part.id)));
  const listed = Math.max(1, Math.floor((width - GAP) / ENTRY));
  const rows = Math.ceil(shown.length / listed);
  const listTop = top + Math.ceil(sheets.length / columns) * cell.height;
  const legend = shown.map(({ part, count }, i) => {
    const x = GAP + Math.floor(i / rows) * ENTRY;
    const y = listTop + (i % rows) * ROW;
    return (
      `<rect x="${x}" y="${decimal(y - LETTER)}" width="${LETTER}" height="${LETTER}" fill="${toneOf(part.id, pieces)}" stroke="${INK}" stroke-width="0.5"/>` +
      text({ x: x + LETTER + 5, y }, LETTER, `${part.id}  ${part.name}  × ${count}`)
    );
  });
  const height = listTop + rows * ROW + GAP;
  return tidy(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${decimal(width * SCALE)}mm" height="${decimal(height * SCALE)}mm" viewBox="0 0 ${decimal(width)} ${decimal(height)}">` +
      `<title>${escaped(title)}</title><rect width="${decimal(width)}" height="${decimal(height)}" fill="${GROUND}"/>` +
      `${text({ x: GAP, y: GAP }, CAPTION, title)}${drawn.join('')}<g id="legend">${legend.join('')}</g></svg>`,
  );
}

function sheetPicture(sheet: Sheet, pieces: OverviewGiven['pieces'], { x, y }: Point): string {
  const share = Math.round((100 * sheet.usedArea) / (sheet.width * sheet.height));
  const caption = `${sheet.name} · ${decimal(sheet.width)} × ${decimal(sheet.height)} mm · ${share} % used`;
  const parts = sheet.placed.map((placed) => partPicture(placed, sheet, pieces));
  return (
    `<g id="${escaped(sheet.name)}">${text({ x, y: y - 5 }, 10, caption)}` +
    `<g transform="translate(${decimal(x)} ${decimal(y)})">` +
    `<rect width="${decimal(sheet.width)}" height="${decimal(sheet.height)}" fill="#ffffff" stroke="${INK}" stroke-width="1"/>` +
    `${parts.join('')}</g></g>`
  );
}

function partPicture(placed: Placed, sheet: Sheet, pieces: OverviewGiven['pieces']): string {
  const part = pieces.find((piece) => piece.part.id === placed.part)?.part;
  if (part === undefined) throw new Error(`${placed.part} lies on ${sheet.name} but is not in the list`);
  const loops = [part.outline, ...part.holes].map((loop) =>
    moved(loop, { x: placed.x, y: placed.y, turn: placed.rotation }),
  );
  const shape = loops.map((vertices) => pathData({ vertices, closed: true }, sheet.height)).join('');
  const { at, room } = roomiest(loops.map((loop) => flatten(loop, 0.2)));
  // a capital is about 0.7 of the size high, and a mark of n letters 0.6 n wide
  const size = Math.min(14, (1.6 * room) / Math.max(0.7, 0.6 * part.id.length * 0.9));
  const label =
    size < 3
      ? ''
      : text({ x: at.x, y: sheet.height - at.y + 0.35 * size }, Math.round(10 * size) / 10, part.id, 'middle');
  return `<path d="${shape}" fill="${toneOf(part.id, pieces)}" fill-rule="evenodd" stroke="${INK}" stroke-width="0.5"/>${label}`;
}

const GRID = 24;

/** The point of a coarse grid that lies deepest in the material, and how deep: the place for a mark. */
function roomiest(loops: readonly (readonly Point[])[]): { at: Point; room: number } {
  const { left, right, bottom, top } = boundsOfPoints(loops[0] ?? []);
  let at: Point = { x: left, y: bottom };
  let room = 0;
  for (let i = 1; i < GRID; i++) {
    for (let j = 1; j < GRID; j++) {
      const p = { x: left + ((right - left) * i) / GRID, y: bottom + ((top - bottom) * j) / GRID };
      const depth = depthIn(loops, p);
      if (depth > room) [at, room] = [p, depth];
    }
  }
  return { at, room };
}

/** Distance of a point to the nearest edge, 0 outside the material. */
function depthIn(loops: readonly (readonly Point[])[], p: Point): number {
  let within = false;
  let least = Infinity;
  for (const loop of loops) {
    loop.forEach((a, i) => {
      const b = loop[(i + 1) % loop.length] as Point;
      if (a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) within = !within;
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const t = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
      const [ex, ey] = [a.x + t * dx - p.x, a.y + t * dy - p.y];
      least = Math.min(least, ex * ex + ey * ey);
    });
  }
  return within ? Math.sqrt(least) : 0;
}

const toneOf = (id: string, pieces: OverviewGiven['pieces']): string =>
  tones[pieces.findIndex(({ part }) => part.id === id) % tones.length] as string;

const text = ({ x, y }: Point, size: number, words: string, anchor = 'start'): string =>
  `<text x="${decimal(x)}" y="${decimal(y)}" font-family="sans-serif" font-size="${size}" fill="${INK}" text-anchor="${anchor}">${escaped(words)}</text>`;
