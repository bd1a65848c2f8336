import { type LabelRoom, labelRoom, wordsPatch } from '../drawings/label-room.js';
import { lines } from '../drawings/line-weights.js';
import { area, boundsOfPoints, flatten, moved, type Point } from '../geometry/path.js';
import { roomsIn } from '../geometry/roomiest.js';
import type { Drawing, Mark } from '../model/page.js';
import type { FlatPart } from '../model/part.js';
import { INK, SMALL } from '../paper/prose.js';
import { wordsWidth } from '../paper/words-width.js';
import type { Placed, Sheet } from '../sheets/sheet.js';

/** Bare paper round the sheet, for numbers that find no room on it. */
const BORDER = 11;
/** What is round is followed so closely, mm on paper. */
const SAGITTA = 0.02;
const WOOD = '#e6e6e6';
const PAPER = '#ffffff';
const LETTERS = { size: SMALL, heavy: true } as const;
/** Between lines that keep the numbers of other parts off a part, mm on paper. */
const HATCH = 1;
/** How far a number may stand from its part. */
const FARTHEST = 400;

interface Lying {
  readonly id: string;
  /** Outline and holes on paper. */
  readonly loops: readonly (readonly Point[])[];
}

/**
 * A sheet drawn small as it lies on the bed, each part with its number: in it where it has room, else beside the sheet or
 * on its waste, with a line to the part.
 */
export function sheetPicture(
  sheet: Sheet,
  parts: readonly FlatPart[],
  room: { readonly width: number; readonly height: number },
): Drawing {
  const scale = Math.min((room.width - 2 * BORDER) / sheet.width, (room.height - 2 * BORDER) / sheet.height);
  const [width, height] = [scale * sheet.width + 2 * BORDER, scale * sheet.height + 2 * BORDER];
  const onPaper = ({ x, y }: Point): Point => ({
    x: hundredths(BORDER + scale * x),
    y: hundredths(BORDER + scale * (sheet.height - y)),
  });
  const lying = sheet.placed
    .map((placed): Lying & { readonly size: number } => {
      const part = partOf(placed, parts);
      const at = { x: placed.x, y: placed.y, turn: placed.rotation };
      return {
        id: part.id,
        loops: [part.outline, ...part.holes].map((loop) => flatten(moved(loop, at), SAGITTA / scale).map(onPaper)),
        size: Math.abs(area(part.outline)),
      };
    })
    // what lies in a window is smaller than the part that has it, and is drawn over it
    .sort((a, b) => b.size - a.size);
  const wood = (sheet.remnant ? [sheet.remnant.outline, ...sheet.remnant.holes] : [corners(sheet)]).map((loop) =>
    loop.map(onPaper),
  );
  const paper = labelRoom({ width, height });
  paper.keepClear(wood, 'closed');
  for (const { loops } of lying) paper.keepClear(loops, 'closed');
  return {
    name: sheet.name,
    title: `${sheet.name}, ${Math.round(scale * 100)} % of its size`,
    description: `Where each part lies on ${sheet.name}.`,
    scale,
    width,
    height,
    marks: [
      ...wood.map((points): Mark => ({ kind: 'line', points, closed: true, stroke: lines.outline, role: 'frame' })),
      ...lying.flatMap(({ loops: [outline = [], ...holes] }): readonly Mark[] => [
        { kind: 'line', points: outline, closed: true, fill: WOOD, stroke: lines.hatch, role: 'outline' },
        ...holes.map(
          (points): Mark => ({
            kind: 'line',
            points,
            closed: true,
            fill: PAPER,
            stroke: lines.hatch,
            role: 'outline',
          }),
        ),
      ]),
      ...numbersOf(lying, paper),
    ],
  };
}

function partOf({ part: id }: Placed, parts: readonly FlatPart[]): FlatPart {
  const part = parts.find((one) => one.id === id);
  if (part === undefined) throw new Error(`${id} lies on a sheet and is no part`);
  return part;
}

const corners = ({ width, height }: Sheet): readonly Point[] => [
  { x: 0, y: 0 },
  { x: width, y: 0 },
  { x: width, y: height },
  { x: 0, y: height },
];

/** A drawing must not differ with the last digit of a rotation. */
const hundredths = (value: number): number => Math.round(value * 100) / 100;

function numbersOf(lying: readonly Lying[], paper: LabelRoom): readonly Mark[] {
  const marks: Mark[] = [];
  const outside: Lying[] = [];
  for (const one of lying) {
    const at = roomWithin(one, paper);
    if (at === null) outside.push(one);
    else marks.push(number(one.id, at));
  }
  // no number stands on a part that is not its own
  for (const { loops } of lying) paper.keepClear(hatched(loops));
  for (const { id, loops } of outside) {
    const rooms = roomsIn(loops);
    const [first] = rooms;
    const at = first?.at ?? loops[0]?.[0];
    if (at === undefined) continue;
    const spread = rooms.filter(({ room }) => room > 0.6 * (first?.room ?? 0)).map((r) => r.at);
    const found = paper.place({ text: id, letters: LETTERS, at, or: spread.slice(0, 12), from: 2, to: FARTHEST });
    if (found === null) throw new Error(`no room for the number of ${id}`);
    marks.push(number(id, found.rows[0]?.start ?? at));
    if (found.leader !== null)
      marks.push(
        { kind: 'line', points: found.leader, stroke: lines.leader, role: 'leader' },
        { kind: 'circle', centre: found.leader[0], radius: 0.5, fill: INK, role: 'leader' },
      );
  }
  return marks;
}

const number = (text: string, at: Point): Mark => ({
  kind: 'words',
  at,
  text,
  size: SMALL,
  anchor: 'start',
  colour: INK,
  bold: true,
  role: 'number',
});

/** Where the base line of a part's number begins that fits into the part; it is taken then. */
function roomWithin({ id, loops }: Lying, paper: LabelRoom): Point | null {
  const half = wordsWidth(id, LETTERS) / 2;
  for (const { at } of roomsIn(loops)) {
    const start = { x: hundredths(at.x - half), y: hundredths(at.y + 0.36 * SMALL) };
    const patch = wordsPatch(id, start, LETTERS);
    if (!paper.isFree(patch)) continue;
    paper.take(patch);
    return start;
  }
  return null;
}

/** Level lines through the material of a part. */
function hatched(loops: readonly (readonly Point[])[]): readonly (readonly Point[])[] {
  const { bottom, top } = boundsOfPoints(loops[0] ?? []);
  const strokes: (readonly Point[])[] = [];
  for (let y = bottom + HATCH / 2; y < top; y += HATCH) {
    const crossings = loops
      .flatMap((loop) =>
        loop.flatMap((a, i): readonly number[] => {
          const b = loop[(i + 1) % loop.length] as Point;
          return a.y > y !== b.y > y ? [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)] : [];
        }),
      )
      .sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2)
      strokes.push([
        { x: crossings[i] as number, y },
        { x: crossings[i + 1] as number, y },
      ]);
  }
  return strokes;
}
