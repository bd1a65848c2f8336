import { grown, type LabelRoom, labelRoom, wordsPatch } from '../drawings/label-room.js';
import { lines } from '../drawings/line-weights.js';
import { area, boundsOfPoints, flatten, moved, type Point } from '../geometry/path.js';
import { type Room, roomsIn } from '../geometry/roomiest.js';
import type { Drawing, Mark } from '../model/page.js';
import type { FlatPart } from '../model/part.js';
import { shifted } from '../paper/figure.js';
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
/** Between lines that keep the numbers of other parts off a part, mm on paper: less than letters are high. */
const HATCH = 2.5;
/** Other spots of a part to which a line may lead, as shares of those that have room. */
const SPREAD = [0.33, 0.66, 0.99];
/** Bare paper round a number in its part, the most first. */
const CLEAR = [0.6, 0.2];
/** How far a number may stand from its part. */
const FARTHEST = 90;

interface Lying {
  readonly id: string;
  /** Outline and holes on paper. */
  readonly loops: readonly (readonly Point[])[];
  /** Places for its number, those with most room first. */
  readonly rooms: readonly Room[];
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
      const loops = [part.outline, ...part.holes].map((loop) => flatten(moved(loop, at), SAGITTA / scale).map(onPaper));
      return { id: part.id, loops, rooms: roomsIn(loops), size: Math.abs(area(part.outline)) };
    })
    // what lies in a window is smaller than the part that has it, and is drawn over it
    .sort((a, b) => b.size - a.size);
  const wood = (sheet.remnant ? [sheet.remnant.outline, ...sheet.remnant.holes] : [corners(sheet)]).map((loop) =>
    loop.map(onPaper),
  );
  const numbers = numbersOf(lying, () => {
    const paper = labelRoom({ width, height });
    paper.keepClear(wood, 'closed');
    for (const { loops } of lying) paper.keepClear(loops, 'closed');
    return paper;
  });
  return cropped({
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
      ...numbers,
    ],
  });
}

/** Without the border where no number stands on it, but for a line's width. */
function cropped(drawing: Drawing): Drawing {
  const covered = boundsOfPoints(drawing.marks.flatMap(reachOf));
  const left = hundredths(covered.left - 0.5);
  const top = hundredths(covered.bottom - 0.5);
  return {
    ...drawing,
    width: hundredths(covered.right - left + 0.5),
    height: hundredths(covered.top - top + 0.5),
    marks: drawing.marks.map((mark) => shifted(mark, -left, -top)),
  };
}

/** Corners of what a mark covers. */
function reachOf(mark: Mark): readonly Point[] {
  if (mark.kind === 'line') return mark.points;
  if (mark.kind !== 'words') return [];
  const { left, right, top, bottom } = wordsPatch(mark.text, mark.at, LETTERS);
  return [
    { x: left, y: top },
    { x: right, y: bottom },
  ];
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

/**
 * Numbers in their parts, then those that find no room there. Where the lines to some of them shut one in, it is given its
 * place before all others, and the others theirs anew.
 */
function numbersOf(lying: readonly Lying[], blank: () => LabelRoom): readonly Mark[] {
  let first: readonly Lying[] = [];
  for (;;) {
    const paper = blank();
    const placed = lying.map((one) => ({ one, at: roomWithin(one, paper) }));
    const inside = placed.flatMap(({ one, at }) => (at === null ? [] : [number(one.id, at)]));
    // no number stands on a part that is not its own
    for (const { loops } of lying) paper.keepClear(hatched(loops));
    const outside = placed.flatMap(({ one, at }) => (at === null && !first.includes(one) ? [one] : []));
    const marks: Mark[] = [];
    const shutIn = [...first, ...outside].find((one) => {
      const led = ledTo(one, paper);
      marks.push(...led);
      return led.length === 0;
    });
    if (shutIn === undefined) return [...inside, ...marks];
    if (first.includes(shutIn)) return [...inside, ...crossingLines([...first, ...outside], { lying, inside, blank })];
    first = [shutIn, ...first];
  }
}

/** Where a sheet is so full that lines must cross: they do, but no number stands on one. */
function crossingLines(
  outside: readonly Lying[],
  given: {
    readonly lying: readonly Lying[];
    readonly inside: readonly Mark[];
    readonly blank: () => LabelRoom;
  },
): readonly Mark[] {
  const marks: Mark[] = [];
  for (const one of outside) {
    // a line that was drawn before counts as any other line here, and may be crossed
    const paper = given.blank();
    for (const { loops } of given.lying) paper.keepClear(hatched(loops));
    for (const mark of [...given.inside, ...marks]) {
      if (mark.kind === 'line') paper.keepClear([mark.points]);
      if (mark.kind === 'words') paper.take(wordsPatch(mark.text, mark.at, LETTERS));
    }
    marks.push(...ledTo(one, paper));
  }
  return marks;
}

/** The number of a part beside it, with a line to it; nothing where there is no room. */
function ledTo({ id, loops, rooms }: Lying, paper: LabelRoom): readonly Mark[] {
  const [most] = rooms;
  const at = most?.at ?? loops[0]?.[0];
  if (at === undefined) return [];
  const others = rooms.filter(({ room }) => room > 0.6 * (most?.room ?? 0)).map((one) => one.at);
  // spread over the part: the best ones lie side by side
  const or = SPREAD.flatMap((share) => others[Math.floor(share * others.length)] ?? []);
  const found = paper.place({ text: id, letters: LETTERS, at, or, from: 2, to: FARTHEST });
  const [row] = found?.rows ?? [];
  if (found === null || row === undefined) return [];
  if (found.leader === null) return [number(id, row.start)];
  return [
    number(id, row.start),
    { kind: 'line', points: found.leader, stroke: lines.leader, role: 'leader' },
    { kind: 'circle', centre: found.leader[0], radius: 0.5, fill: INK, role: 'leader' },
  ];
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
function roomWithin({ id, rooms }: Lying, paper: LabelRoom): Point | null {
  const half = wordsWidth(id, LETTERS) / 2;
  for (const clear of CLEAR)
    for (const { at } of rooms) {
      const start = { x: hundredths(at.x - half), y: hundredths(at.y + 0.36 * SMALL) };
      const patch = grown(wordsPatch(id, start, LETTERS), clear);
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
