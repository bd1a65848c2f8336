import type { Mark } from '../model/page.js';
import { type Block, words } from './blocks.js';
import { FAINT, INK, PARAGRAPH, ruleAcross, SMALL } from './prose.js';
import { TEXT_WIDTH } from './sheet-size.js';
import { wordsWidth } from './words-width.js';

export interface TableColumn {
  readonly title: string;
  /** Words stand left, numbers right; left where left out. */
  readonly align?: 'left' | 'right';
  /** mm; where left out, as wide as its widest cell, and where that is too wide for the page, narrower. */
  readonly width?: number;
}

/** A text that is broken into lines, or something drawn. */
export type Cell = string | Block;

export interface TableGiven {
  /** Frames round all cells, and rows high enough to write in. */
  readonly toFillIn?: true;
  readonly width?: number;
}

const GAP = 4;
const PAD = 1;
/** What is written by hand takes so much, mm. */
const WRITTEN = 8;
/** A column is not made narrower than that. */
const NARROWEST = 8;
/** A word that is so much wider than a column of a given width is broken. */
const LONGEST = 12;
/** Sums of widths must not break a line that just fits. */
const ROUNDING = 0.01;

/** A head, and a block for each row: a page may end between two rows, and its head stands over the next page again. */
export function table(
  columns: readonly TableColumn[],
  rows: readonly (readonly Cell[])[],
  { toFillIn, width = TEXT_WIDTH }: TableGiven = {},
): readonly Block[] {
  // frames stand half a gap outside the words
  const room = toFillIn ? width - GAP : width;
  const widths = filling(widthsOf(columns, rows, room), columns, room);
  const total = widths.reduce((sum, own) => sum + own, 0) + GAP * (columns.length - 1);
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, own) => sum + own + GAP, 0));
  const cellOf = (cell: Cell, i: number, bold: boolean): Block =>
    typeof cell === 'string' ? textCell(cell, widths[i] ?? 0, columns[i]?.align ?? 'left', bold) : cell;
  const row = (cells: readonly Cell[], bold: boolean): Block => {
    const own = columns.map((_, i) => cellOf(cells[i] ?? '', i, bold));
    const inner = Math.max(...own.map(({ height }) => height)) + 2 * PAD;
    const height = toFillIn && !bold ? Math.max(WRITTEN, inner) : inner;
    return {
      height,
      above: 0,
      marks: ({ x, y }) => [
        ...own.flatMap((block, i) => block.marks({ x: x + (lefts[i] ?? 0), y: y + PAD })),
        ruleAcross({ x: toFillIn ? x - GAP / 2 : x, y: y + height }, toFillIn ? total + GAP : total, bold ? 0.4 : 0.15),
        ...(toFillIn ? uprights(x, y, height) : []),
      ],
    };
  };
  const uprights = (x: number, y: number, height: number): readonly Mark[] =>
    [-GAP / 2, ...lefts.slice(1).map((left) => left - GAP / 2), total + GAP / 2].map((left) => ({
      kind: 'line',
      points: [
        { x: x + left, y },
        { x: x + left, y: y + height },
      ],
      stroke: { colour: FAINT, width: 0.15 },
    }));
  const head: Block = {
    ...row(
      columns.map(({ title }) => title),
      true,
    ),
    above: PARAGRAPH,
    withNext: true,
  };
  const inset = (block: Block): Block =>
    toFillIn ? { ...block, marks: ({ x, y }) => block.marks({ x: x + GAP / 2, y }) } : block;
  const framed = inset(head);
  // the first and the last rows do not stand alone
  return [
    framed,
    ...rows.map((cells, i) => ({
      ...inset(row(cells, false)),
      head: framed,
      ...(rows.length > 2 && (i === 0 || i === rows.length - 2) ? { withNext: true as const } : {}),
    })),
  ];
}

function textCell(text: string, width: number, align: 'left' | 'right', bold: boolean): Block {
  const own = words(text, { size: SMALL, colour: INK, width, ...(bold ? { bold: true } : {}) });
  if (align === 'left') return own;
  return {
    height: own.height,
    marks: ({ x, y }) =>
      own
        .marks({ x, y })
        .map((mark) => (mark.kind === 'words' ? { ...mark, at: { ...mark.at, x: x + width }, anchor: 'end' } : mark)),
  };
}

/** What is left of the page goes to the last column of words that nobody gave a width. */
function filling(widths: readonly number[], columns: readonly TableColumn[], width: number): readonly number[] {
  const left = width - widths.reduce((sum, own) => sum + own, GAP * (columns.length - 1));
  const last = columns.map((column) => column.width === undefined && column.align !== 'right').lastIndexOf(true);
  return widths.map((own, i) => (i === last && left > 0 ? own + left : own));
}

function widthsOf(
  columns: readonly TableColumn[],
  rows: readonly (readonly Cell[])[],
  width: number,
): readonly number[] {
  const room = width - GAP * (columns.length - 1);
  const textsOf = (i: number): readonly string[] => [
    ...rows.flatMap((cells) => {
      const cell = cells[i] ?? '';
      return typeof cell === 'string' ? [cell] : [];
    }),
  ];
  const widest = (texts: readonly string[], heavy: boolean) =>
    Math.max(0, ...texts.map((text) => wordsWidth(text, { size: SMALL, heavy })));
  const natural = columns.map(
    ({ title, width: fixed }, i) => fixed ?? Math.max(widest([title], true), widest(textsOf(i), false)) + ROUNDING,
  );
  // no word is broken, in whatever column it stands
  const least = columns.map(({ title, width: fixed }, i) =>
    Math.max(
      Math.min(NARROWEST, fixed ?? NARROWEST),
      widest(title.split(' '), true) + ROUNDING,
      widest(
        textsOf(i).flatMap((text) => text.split(' ')),
        false,
      ) + ROUNDING,
    ),
  );
  const wanted = natural.map((own, i) => Math.max(own, Math.min(least[i] ?? 0, own + LONGEST)));
  return narrowed(wanted, least, columns, room);
}

/** Columns of words give way first, the widest of them most; then those of which the width was given, numbers last. */
function narrowed(
  wanted: readonly number[],
  least: readonly number[],
  columns: readonly TableColumn[],
  room: number,
): readonly number[] {
  const widths = [...wanted];
  const over = () => widths.reduce((sum, own) => sum + own, 0) - room;
  const given = (i: number) => columns[i]?.width !== undefined;
  const ofNumbers = (i: number) => columns[i]?.align === 'right';
  for (const may of [(i: number) => !given(i) && !ofNumbers(i), given, ofNumbers]) {
    while (over() > ROUNDING) {
      const spare = (i: number) => (may(i) ? (widths[i] ?? 0) - (least[i] ?? 0) : 0);
      const giving = widths.map((_, i) => i).filter((i) => spare(i) > ROUNDING);
      const widest = Math.max(0, ...giving.map((i) => widths[i] ?? 0));
      if (giving.length === 0) break;
      const most = giving.filter((i) => (widths[i] ?? 0) > widest - ROUNDING);
      const next = Math.max(0, ...giving.filter((i) => !most.includes(i)).map((i) => widths[i] ?? 0));
      const step = Math.min(over() / most.length, widest - next || widest, ...most.map(spare));
      for (const i of most) widths[i] = (widths[i] ?? 0) - step;
    }
  }
  if (over() > 1) throw new Error(`a table is ${over().toFixed(1)} mm wider than the page`);
  return widths;
}
