import type { Point } from '../geometry/path.js';
import type { Mark, Page } from '../model/page.js';
import type { SheetStep, StepSheet } from '../model/step-sheet.js';
import { type Block, placed, type Style, words } from '../paper/blocks.js';
import { wordsWidth } from '../paper/words-width.js';
import { celsius, clockTime, plainNumber } from '../units/print.js';
import { doneInStep, lasting, liquidInWords, mindInStep, rulesInWords, temperaturesInWords } from './process-page.js';

const MARGIN = 8;

/** A point of type in mm. */
const POINT = 25.4 / 72;
/** On a card of A5, what is read under a dim light at the length of an arm (common practice, no source); on larger paper larger. */
const LETTERS = 9.5 * POINT;
const OF_WIDTH = 148;
/** The least that is read there at all. */
const SMALLEST = 6.5 * POINT;
/** From one try to the next smaller letters. */
const STEP = 0.97;

const INK = '#111111';
const FAINT = '#666666';
const SHADE = '#ececec';

/** Side of a box to tick, and the least room to write a temperature in, however small the print. */
const BOX = 3.6;
const WRITTEN = 13;
/** A line in which one writes. */
const WRITING = 6;
/** As many prints have boxes of their own; for more the card is printed again. */
const MOST_BOXES = 10;

const NOTES = ['Batches, mixed on', 'Notes'] as const;
const DEFERRING = "The makers' instructions and local rules go before anything written here.";

interface Sheet {
  readonly width: number;
  readonly height: number;
}

interface CardRefused {
  readonly refused: { readonly what: string; readonly accepted: string };
}

/** The sheet as a card on one page, in the largest letters that leave room for everything; refused where the smallest do not. */
export function processCardPage(sheet: StepSheet, paper: Sheet): Page | CardRefused {
  const largest = (LETTERS * paper.width) / OF_WIDTH;
  for (let size = largest; size > SMALLEST * STEP; size *= STEP) {
    const page = pageOf(sheet, paper, Math.max(size, SMALLEST));
    if (page !== null) return page;
  }
  return {
    refused: {
      what: `${sheet.steps.length} steps with what is said of them do not fit on one card in letters that can be read.`,
      accepted: 'Take larger paper, --paper A4, or write shorter words under agitation and caution.',
    },
  };
}

function pageOf(sheet: StepSheet, { width, height }: Sheet, size: number): Page | null {
  const room = width - 2 * MARGIN;
  const style: Style = { size, colour: INK, width: room };
  const laid = laidOut(STEP_FIGURES, sheet.steps, size, room);
  if (laid === null) return null;
  const liquid = liquidTable(sheet, size, room);
  if (liquid === null) return null;
  const above: readonly Block[] = [
    heading(sheet, size, room),
    words([...rulesInWords(sheet), ...temperaturesInWords(sheet)].join(' '), style),
    tabled(
      'step',
      laid,
      sheet.steps.map((step, i) => stepRow(sheet, { step, i, laid }, size, room)),
      size,
      room,
    ),
    words(
      `${lasting(sheet)}${sheet.prints > MOST_BOXES ? ` Boxes for ${MOST_BOXES} prints: print the card again for more.` : ''}`,
      {
        ...style,
        bold: true,
      },
    ),
    liquid,
    words(liquidInWords(sheet), style),
  ];
  const warned = sheet.findings.filter(({ level }) => level === 'warning').map(({ message }) => message);
  const below = words([...warned.map((each) => `Mind: ${each}`), ...sheet.cautions, DEFERRING].join(' '), {
    ...style,
    size: SMALLEST,
    colour: INK,
  });
  const gap = 0.6 * size;
  const taken = above.reduce((sum, { height: own }) => sum + (own === 0 ? 0 : own + gap), 0);
  const lines = Math.floor((height - 2 * MARGIN - below.height - taken) / WRITING);
  if (lines < NOTES.length) return null;
  return {
    title: `${sheet.name}: step sheet`,
    description: `${sheet.steps.length} steps with the marks at which to pour and drain, boxes to tick, and the liquid for ${sheet.prints} prints.`,
    width,
    height,
    marks: [
      ...placed([...above, ruled(lines, size, room)], { left: MARGIN, top: MARGIN, gap }),
      ...below.marks({ x: MARGIN, y: height - MARGIN - below.height }),
    ],
  };
}

function heading({ name, prints, temperature }: StepSheet, size: number, room: number): Block {
  const title = words(name, { size: 1.5 * size, colour: INK, width: 0.7 * room, bold: true });
  const beside = [
    ...(temperature === null ? [] : [celsius(temperature)]),
    prints === 1 ? 'one print' : `${prints} prints`,
  ].join(' · ');
  const height = title.height + 0.4 * size;
  return {
    height,
    marks: ({ x, y }) => [
      ...title.marks({ x, y }),
      text(beside, { x: x + room, y: y + 1.5 * size }, { size, anchor: 'end' }),
      across({ x, y: y + height }, room, 0.5),
    ],
  };
}

interface Letters {
  readonly size: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly colour?: string;
}

const text = (said: string, at: Point, { size, anchor = 'start', bold = false, colour = INK }: Letters): Mark => ({
  kind: 'words',
  at,
  text: said,
  size,
  anchor,
  colour,
  ...(bold ? { bold: true as const } : {}),
});

const across = ({ x, y }: Point, length: number, width: number): Mark => ({
  kind: 'line',
  points: [
    { x, y },
    { x: x + length, y },
  ],
  stroke: { colour: INK, width },
});

const rectangle = ({ x, y }: Point, width: number, height: number, ink: { fill?: string; stroke?: number }): Mark => ({
  kind: 'line',
  points: [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ],
  closed: true,
  ...(ink.fill === undefined ? {} : { fill: ink.fill }),
  ...(ink.stroke === undefined ? {} : { stroke: { colour: INK, width: ink.stroke } }),
});

/** A column of figures, and where it stands. */
interface Column<Row> {
  readonly title: string;
  readonly cell: (row: Row) => string;
  /** What a glance looks for. */
  readonly bold?: true;
}

type Placed<Row> = Column<Row> & {
  /** Right edge of its figures, from the left of the table. */
  readonly right: number;
};

const NONE = '–';
const clock = (time: number | null): string => (time === null ? NONE : clockTime(time));
const figure = (value: number | null): string => (value === null ? NONE : plainNumber(value, 1));

const STEP_FIGURES: readonly Column<SheetStep>[] = [
  { title: 'light', cell: ({ light }) => light },
  { title: 'begin', cell: ({ beginsAt }) => clock(beginsAt), bold: true },
  { title: 'in by', cell: ({ coveredAt }) => clock(coveredAt) },
  { title: 'drain', cell: ({ drainAt }) => clock(drainAt), bold: true },
  { title: 'out by', cell: ({ endsAt }) => clock(endsAt) },
  { title: 'time', cell: ({ time }) => clock(time) },
  { title: '°C', cell: ({ temperature }) => figure(temperature) },
  { title: 'ml', cell: ({ volume }) => figure(volume) },
];

const LIQUID_FIGURES: readonly Column<SheetStep>[] = [
  { title: 'ml a print', cell: ({ volume }) => figure(volume) },
  { title: 'serves', cell: ({ serves }) => `${serves}` },
  { title: 'baths', cell: ({ need }) => figure(need?.baths ?? null) },
  { title: 'ml in all', cell: ({ need }) => figure(need?.total ?? null), bold: true },
  {
    title: 'thinned, %',
    cell: ({ need }) => (need === null || need.thinned === null ? NONE : plainNumber(100 * need.thinned, 1)),
  },
];

/** Between columns, and the least for a name before them, of the size of the letters. */
const GAP = 0.8;
const NAME = 8;

interface Laid<Row> {
  readonly columns: readonly Placed<Row>[];
  /** What is left for the names. */
  readonly left: number;
}

/** Columns from the right edge inwards; null where they leave no room for the names. */
function laidOut<Row>(all: readonly Column<Row>[], rows: readonly Row[], size: number, room: number): Laid<Row> | null {
  let right = room;
  const columns: Placed<Row>[] = [];
  for (const column of [...all].reverse()) {
    columns.unshift({ ...column, right });
    const cells = rows.map((row) => wordsWidth(column.cell(row), { size, heavy: column.bold === true }));
    right -= Math.max(wordsWidth(column.title, { size, heavy: false }), ...cells) + GAP * size;
  }
  return right < NAME * size ? null : { columns, left: right };
}

const PITCH = 1.4;

/** A head, rows of any height under it, each second one on grey, and lines above and below. */
function tabled<Row>(name: string, { columns }: Laid<Row>, rows: readonly Block[], size: number, room: number): Block {
  const head = PITCH * size;
  const height = head + rows.reduce((sum, row) => sum + row.height, 0);
  return {
    height,
    marks: ({ x, y }) => {
      let top = y + head;
      const laid = rows.flatMap((row, i) => {
        const shade = i % 2 === 1 ? [rectangle({ x, y: top }, room, row.height, { fill: SHADE })] : [];
        const marks = [...shade, ...row.marks({ x, y: top })];
        top += row.height;
        return marks;
      });
      return [
        text(name, { x, y: y + size }, { size }),
        ...columns.map(({ title, right }) => text(title, { x: x + right, y: y + size }, { size, anchor: 'end' })),
        ...laid,
        across({ x, y: y + head }, room, 0.2),
        across({ x, y: y + height }, room, 0.2),
      ];
    },
  };
}

const figures = <Row>(row: Row, { columns }: Laid<Row>, { x, y }: Point, size: number): readonly Mark[] =>
  columns.map(({ cell, bold = false, right }) => text(cell(row), { x: x + right, y }, { size, anchor: 'end', bold }));

interface Row {
  readonly step: SheetStep;
  readonly i: number;
  readonly laid: Laid<SheetStep>;
}

/** The figures of a step; below them what is said of it, a box for each print and, where a bath is poured, room for its temperatures. */
function stepRow({ prints }: StepSheet, { step, i, laid }: Row, size: number, room: number): Block {
  const small = Math.max(0.85 * size, SMALLEST);
  const name = words(`${i + 1} ${step.name}`, { size, colour: INK, width: laid.left, bold: true });
  const blanks = blanksOf(step.poured, Math.min(prints, MOST_BOXES), small);
  const style: Style = { size: small, colour: INK, width: room - blanks.width - GAP * size };
  const done = words(doneInStep(step).join(' '), style);
  const mind = words(mindInStep(step).join(' '), { ...style, bold: true });
  const said = done.height + mind.height;
  const second = Math.max(said, blanks.height);
  const above = 0.2 * size;
  const below = name.height + 2 * above;
  return {
    height: below + second + 2 * above,
    marks: ({ x, y }) => [
      ...name.marks({ x, y: y + above }),
      ...figures(step, laid, { x, y: y + above + size }, size),
      ...done.marks({ x, y: y + below }),
      ...mind.marks({ x, y: y + below + done.height }),
      ...blanks.marks({ x: x + room - blanks.width, y: y + below + (second - blanks.height) / 2 }),
    ],
  };
}

/** Boxes with the numbers of the prints in them, and lines for the temperatures as a bath goes in and comes out. */
function blanksOf(poured: boolean, boxes: number, size: number): Block & { readonly width: number } {
  const side = Math.max(BOX, 1.15 * size);
  const pitch = side + 0.8;
  const labels = poured ? ['in °C', 'out °C'] : [];
  const widths = labels.map((label) => wordsWidth(label, { size, heavy: false }) + 1 + WRITTEN + 2);
  const forTemperatures = widths.reduce((sum, own) => sum + own, 0);
  return {
    width: forTemperatures + boxes * pitch,
    height: side,
    marks: ({ x, y }) => {
      const base = y + (side + 0.7 * size) / 2;
      let at = x;
      const lines = labels.flatMap((label, k) => {
        const begin = at;
        const own = widths[k] ?? 0;
        at += own;
        return [
          text(label, { x: begin, y: base }, { size, colour: FAINT }),
          across({ x: begin + own - 2 - WRITTEN, y: y + side }, WRITTEN, 0.2),
        ];
      });
      return [
        ...lines,
        ...Array.from({ length: boxes }, (_, k) => at + k * pitch).flatMap((box, k) => [
          rectangle({ x: box, y }, side, side, { fill: '#ffffff', stroke: 0.25 }),
          text(`${k + 1}`, { x: box + side / 2, y: base }, { size: 0.75 * size, anchor: 'middle', colour: FAINT }),
        ]),
      ];
    },
  };
}

/** null where it is wider than the card. */
function liquidTable({ steps }: StepSheet, size: number, room: number): Block | null {
  const baths = steps.flatMap((step, i) => (step.poured ? [{ ...step, name: `${i + 1} ${step.name}` }] : []));
  if (baths.length === 0) return { height: 0, marks: () => [] };
  const laid = laidOut(LIQUID_FIGURES, baths, size, room);
  if (laid === null) return null;
  const rows = baths.map((bath): Block => {
    const name = words(bath.name, { size, colour: INK, width: laid.left });
    return {
      height: name.height + 0.3 * size,
      marks: ({ x, y }) => [
        ...name.marks({ x, y: y + 0.1 * size }),
        ...figures(bath, laid, { x, y: y + 1.1 * size }, size),
      ],
    };
  });
  return tabled('bath', laid, rows, size, room);
}

/** Lines to write on, the first ones with a word of what goes there. */
function ruled(count: number, size: number, room: number): Block {
  return {
    height: count * WRITING,
    marks: ({ x, y }) =>
      Array.from({ length: count }, (_, i) => i).flatMap((i) => {
        const base = y + (i + 1) * WRITING;
        return [text(NOTES[i] ?? '', { x, y: base - 1 }, { size, colour: FAINT }), across({ x, y: base }, room, 0.2)];
      }),
  };
}
