import { type Box, flatten, moved, type Point } from '../geometry/path.js';
import { roomsIn } from '../geometry/roomiest.js';
import type { FlatPart } from '../model/part.js';
import type { Placed, Sheet } from '../sheets/sheet.js';
import { decimal } from './decimal.js';
import { pathData } from './path-data.js';
import { escaped, tidy } from './svg.js';

export interface OverviewGiven {
  readonly title: string;
  /** Every part that lies on the sheets, in the order of the parts list. */
  readonly pieces: readonly { readonly part: FlatPart }[];
  /** What stays clear of a sheet. */
  readonly offcuts: readonly (Box & { readonly sheet: string })[];
}

/** Pale enough to read dark letters on, and no two neighbours in the list alike. */
const tones = ['#e9dcc3', '#d3e0d2', '#dfd2df', '#f0d9c4', '#cfdde4', '#e6e2bd', '#e8d0cd', '#d6d8e6'] as const;
const INK = '#33302b';
const FAINT = '#8d877c';
const GROUND = '#faf8f3';
/** Outlines of what lies in another part's window. */
const NESTED = '#a8641c';

const GAP = 30;
const CAPTION = 14;
const ROW = 13;
const LETTER = 9;
const SHEETS_ABREAST = 2;
/** Room for a caption above the smallest remnant, mm of the picture. */
const LEAST_CELL = 330;
/** Mean width of the letters of a line of words, of their size: what plain fonts have at most. */
const LETTER_WIDTH = 0.55;
/** Picture over nature. */
const SCALE = 0.35;

/** A picture for people: all sheets with their parts filled and marked, what is left of them, and the list of marks below. */
export function overviewSvg(sheets: readonly Sheet[], { title, pieces, offcuts }: OverviewGiven): string {
  const columns = Math.min(SHEETS_ABREAST, Math.max(1, sheets.length));
  const cell = Math.max(LEAST_CELL, ...sheets.map((s) => s.width)) + GAP;
  const width = Math.max(columns * cell + GAP, GAP + KEY_WIDTH);
  const rowOf = (sheet: number) => Math.floor(sheet / columns);
  const rowHeights = Array.from({ length: Math.ceil(sheets.length / columns) }, (_, row) =>
    Math.max(...sheets.filter((_, i) => rowOf(i) === row).map((s) => s.height + GAP + CAPTION)),
  );
  const topOf = (row: number) => rowHeights.slice(0, row).reduce((sum, h) => sum + h, GAP + 2 * CAPTION);
  const drawn = sheets.map((sheet, i) => {
    const own = offcuts.filter((offcut) => offcut.sheet === sheet.name);
    return sheetPicture(sheet, { pieces, offcuts: own }, { x: GAP + (i % columns) * cell, y: topOf(rowOf(i)) });
  });
  const keyTop = topOf(rowHeights.length);
  const listTop = keyTop + 3 * ROW;
  const placed = sheets.flatMap((sheet) => sheet.placed.map(({ part }) => part));
  // of a run of kits that is more than a camera has, and of a camera that stands less
  const counted = pieces.map(({ part }) => ({ part, count: placed.filter((id) => id === part.id).length }));
  const shown = counted.filter(({ count }) => count > 0);
  const entries = shown.map(({ part, count }) => `${part.id}  ${part.name}  × ${count}`);
  const column = Math.max(0, ...entries.map((words) => words.length * LETTER_WIDTH * LETTER)) + LETTER + GAP;
  const legendColumns = Math.max(1, Math.floor((width - GAP) / column));
  const rows = Math.ceil(entries.length / legendColumns);
  const legend = shown.map(({ part }, i) => {
    const at = { x: GAP + Math.floor(i / rows) * column, y: listTop + (i % rows) * ROW };
    return swatch(at, toneOf(part.id, pieces)) + text({ x: at.x + LETTER + 5, y: at.y }, LETTER, entries[i] as string);
  });
  const height = listTop + rows * ROW + GAP;
  return tidy(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${decimal(width * SCALE)}mm" height="${decimal(height * SCALE)}mm" viewBox="0 0 ${decimal(width)} ${decimal(height)}">` +
      `<title>${escaped(title)}</title>${HATCH}<rect width="${decimal(width)}" height="${decimal(height)}" fill="${GROUND}"/>` +
      `${text({ x: GAP, y: GAP }, CAPTION, title)}${drawn.join('')}<g id="key">${key({ x: GAP, y: keyTop })}</g>` +
      `<g id="legend">${legend.join('')}</g></svg>`,
  );
}

const HATCH =
  '<defs><pattern id="hatch" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">' +
  `<line x1="4" y1="0" x2="4" y2="8" stroke="${FAINT}" stroke-width="0.8"/></pattern></defs>`;

const swatch = ({ x, y }: Point, fill: string, stroke = INK): string =>
  `<rect x="${decimal(x)}" y="${decimal(y - LETTER)}" width="${LETTER}" height="${LETTER}" fill="${fill}" stroke="${stroke}" stroke-width="${stroke === INK ? 0.5 : 1.5}"/>`;

/** Where the key's four entries begin, mm of the picture from its left, and where it ends. */
const KEY_COLUMNS = [0, 160, 330, 510] as const;
const KEY_WIDTH = 700;
/** Length of the scale bar, mm of nature: the sheets are drawn in the same unit. */
const BAR = 100;

/** How large the picture is, which way the grain runs, and how what is nested and what is left are drawn. */
function key({ x, y }: Point): string {
  const [bar, grain, nested, left] = KEY_COLUMNS.map((from) => x + from) as [number, number, number, number];
  const level = y - LETTER / 2;
  const ends = [bar, bar + BAR].map((at) => line({ x: at, y: level - 3 }, { x: at, y: level + 3 }));
  return [
    line({ x: bar, y: level }, { x: bar + BAR, y: level }),
    ...ends,
    text({ x: bar + BAR + 5, y }, LETTER, `${BAR} mm`),
    doubleArrow({ x: grain + 14, y: level }),
    text({ x: grain + 34, y }, LETTER, 'face grain of all sheets'),
    swatch({ x: nested, y }, GROUND, NESTED),
    text({ x: nested + LETTER + 5, y }, LETTER, "lies in another part's window"),
    swatch({ x: left, y }, GROUND),
    line({ x: left, y }, { x: left + LETTER, y: y - LETTER }),
    text({ x: left + LETTER + 5, y }, LETTER, 'stays clear: keep it for another job'),
  ].join('');
}

const line = (from: Point, to: Point): string =>
  `<line x1="${decimal(from.x)}" y1="${decimal(from.y)}" x2="${decimal(to.x)}" y2="${decimal(to.y)}" stroke="${INK}" stroke-width="1"/>`;

/** 28 wide, with its middle at a point. */
const doubleArrow = ({ x, y }: Point): string =>
  [
    line({ x: x - 14, y }, { x: x + 14, y }),
    ...[-1, 1].flatMap((side) =>
      [-4, 4].map((aside) => line({ x: x + side * 14, y }, { x: x + side * 8, y: y + aside })),
    ),
  ].join('');

function sheetPicture(
  sheet: Sheet,
  { pieces, offcuts }: Pick<OverviewGiven, 'pieces' | 'offcuts'>,
  { x, y }: Point,
): string {
  const share = Math.round((100 * sheet.usedArea) / (sheet.width * sheet.height));
  const nested = new Set(
    sheet.operations.flatMap(({ layer, paths }) => (layer === 'cut-nested' ? paths.map(({ id }) => pieceOf(id)) : [])),
  );
  const caption = [
    sheet.name,
    `${decimal(sheet.width)} × ${decimal(sheet.height)} mm`,
    ...(sheet.remnant ? [`cut from ${sheet.remnant.file}`] : []),
    `${share} % used`,
    ...(nested.size > 0 ? [`${nested.size} in windows`] : []),
  ].join(' · ');
  const parts = [...sheet.placed]
    // what lies in a window over the part that has the window
    .sort((a, b) => Number(nested.has(nameOf(a))) - Number(nested.has(nameOf(b))))
    .map((placed) => partPicture(placed, sheet, { pieces, nested: nested.has(nameOf(placed)) }));
  return (
    `<g id="${escaped(sheet.name)}">${text({ x, y: y - 5 }, 10, caption)}` +
    doubleArrow({ x: x + sheet.width - 14, y: y - 8 }) +
    `<g transform="translate(${decimal(x)} ${decimal(y)})">${woodPicture(sheet)}` +
    `${offcuts.map((offcut) => offcutPicture(offcut, sheet)).join('')}${parts.join('')}</g></g>`
  );
}

/** The sheet itself: a rectangle, or the remnant that it is. */
function woodPicture({ width, height, remnant }: Sheet): string {
  if (!remnant)
    return `<rect width="${decimal(width)}" height="${decimal(height)}" fill="#ffffff" stroke="${INK}" stroke-width="1"/>`;
  const points = (loop: readonly Point[]) => loop.map((p) => `${decimal(p.x)},${decimal(height - p.y)}`).join(' ');
  const polygon = (loop: readonly Point[], fill: string) =>
    `<polygon points="${points(loop)}" fill="${fill}" stroke="${INK}" stroke-width="1"/>`;
  return polygon(remnant.outline, '#ffffff') + remnant.holes.map((hole) => polygon(hole, GROUND)).join('');
}

/** What is left, hatched, its size in the middle: along it where it stands upright. */
function offcutPicture({ left, bottom, right, top }: Box, sheet: Sheet): string {
  const [width, height] = [right - left, top - bottom];
  const words = `${plain(width)} × ${plain(height)} mm left`;
  const size = Math.min(14, width > height ? height / 3 : width / 3);
  const upright = 0.6 * size * words.length > width;
  const middle = { x: (left + right) / 2, y: sheet.height - (bottom + top) / 2 };
  const plate = { x: (0.6 * size * words.length) / 2 + 4, y: 0.75 * size };
  return (
    `<rect x="${decimal(left)}" y="${decimal(sheet.height - top)}" width="${decimal(width)}" height="${decimal(height)}" fill="url(#hatch)" stroke="${FAINT}" stroke-width="0.8" stroke-dasharray="6 3"/>` +
    `<g transform="translate(${decimal(middle.x)} ${decimal(middle.y)})${upright ? ' rotate(-90)' : ''}">` +
    `<rect x="${decimal(-plate.x)}" y="${decimal(-plate.y)}" width="${decimal(2 * plate.x)}" height="${decimal(2 * plate.y)}" fill="#ffffff"/>` +
    `${text({ x: 0, y: 0.35 * size }, Math.round(10 * size) / 10, words, 'middle')}</g>`
  );
}

/** Whole millimetres, rounded down: what a builder can count on. */
const plain = (length: number): string => String(Math.floor(length + 1e-6));

/** part.instance, of a path or of what lies on a sheet. */
const pieceOf = (path: string): string => path.split('.').slice(0, 2).join('.');
const nameOf = ({ part, instance }: Placed): string => `${part}.${instance}`;

interface Shown extends Pick<OverviewGiven, 'pieces'> {
  readonly nested: boolean;
}

function partPicture(placed: Placed, sheet: Sheet, { pieces, nested }: Shown): string {
  const part = pieces.find((piece) => piece.part.id === placed.part)?.part;
  if (part === undefined) throw new Error(`${placed.part} lies on ${sheet.name} but is not in the list`);
  const loops = [part.outline, ...part.holes].map((loop) =>
    moved(loop, { x: placed.x, y: placed.y, turn: placed.rotation }),
  );
  const shape = loops.map((vertices) => pathData({ vertices, closed: true }, sheet.height)).join('');
  const [first] = part.outline;
  const [{ at, room } = { at: first ?? { x: 0, y: 0 }, room: 0 }] = roomsIn(loops.map((loop) => flatten(loop, 0.2)));
  // a capital is about 0.7 of the size high, and a mark of n letters 0.6 n wide
  const size = Math.min(14, (1.6 * room) / Math.max(0.7, 0.6 * part.id.length * 0.9));
  const label =
    size < 3
      ? ''
      : text({ x: at.x, y: sheet.height - at.y + 0.35 * size }, Math.round(10 * size) / 10, part.id, 'middle');
  return `<path d="${shape}" fill="${toneOf(part.id, pieces)}" fill-rule="evenodd" stroke="${nested ? NESTED : INK}" stroke-width="${nested ? 1.5 : 0.5}"/>${label}`;
}

const toneOf = (id: string, pieces: OverviewGiven['pieces']): string =>
  tones[pieces.findIndex(({ part }) => part.id === id) % tones.length] as string;

const text = ({ x, y }: Point, size: number, words: string, anchor = 'start'): string =>
  `<text x="${decimal(x)}" y="${decimal(y)}" font-family="sans-serif" font-size="${size}" fill="${INK}" text-anchor="${anchor}">${escaped(words)}</text>`;
