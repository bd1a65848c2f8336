import type { Mark } from '../model/page.js';
import type { Block } from './blocks.js';
import { wordsWidth, wrapWords } from './words-width.js';

/** A column of figures, which stand right. */
export interface Column {
  /** Over neighbouring columns that have the same one. */
  readonly group?: string;
  /** What it holds, and its unit. */
  readonly head: readonly [string, string];
  readonly cells: readonly string[];
  readonly bold?: true;
}

/** All widths of the size of the letters. */
const GAP = 0.7;
const PITCH = 1.4;
const LEADING = 1.2;
/** Of the name of a group: a longer one is cut, and written out below. */
const GROUP_LINES = 2;
/** A word of it that is no wider is not broken. */
const UNBROKEN = 5;
const SHADE = '#ececec';

/** Numbers with as many decimals as the one that needs most of them, so that their points stand below each other. */
export function columnsOfNumbers(values: readonly (number | null)[], most: number): readonly string[] {
  const scale = 10 ** most;
  const rounded = values.map((value) => (value === null ? null : Math.round(value * scale) / scale));
  const needs = (value: number, decimals: number) => Math.abs(value - Number(value.toFixed(decimals))) > 1e-9;
  let decimals = 0;
  while (decimals < most && rounded.some((value) => value !== null && needs(value, decimals))) decimals++;
  return rounded.map((value) => (value === null ? '∞' : value.toFixed(decimals)));
}

function widthsOf(columns: readonly Column[], size: number): readonly number[] {
  const widths = columns.map(({ head, cells, bold }) =>
    Math.max(
      ...head.map((text) => wordsWidth(text, { size, heavy: false })),
      ...cells.map((text) => wordsWidth(text, { size, heavy: bold === true })),
    ),
  );
  for (const { name, from, to } of groupsOf(columns)) {
    const words = name.split(' ').map((word) => wordsWidth(word, { size, heavy: true }));
    const own = widths.slice(from, to + 1).reduce((sum, width) => sum + width, (to - from) * GAP * size);
    const wanting = Math.min(Math.max(...words), UNBROKEN * size) - own;
    if (wanting > 0) widths[from] = (widths[from] ?? 0) + wanting;
  }
  return widths;
}

/** The least that a grid needs. */
export const gridWidth = (columns: readonly Column[], size: number): number =>
  widthsOf(columns, size).reduce((sum, width) => sum + width, (columns.length - 1) * GAP * size);

export function grid(
  columns: readonly Column[],
  { size, width, colour }: { readonly size: number; readonly width: number; readonly colour: string },
): Block {
  // the first column stands at the edge, and what is to spare goes before the others
  const before = GAP * size + (width - gridWidth(columns, size)) / Math.max(1, columns.length - 1);
  const rights: number[] = [];
  for (const own of widthsOf(columns, size))
    rights.push(rights.length === 0 ? own : (rights.at(-1) ?? 0) + before + own);
  const groups = groupsOf(columns).map(({ name, from, to }) => {
    const left = (rights[from - 1] ?? 0) + GAP * size;
    const right = rights[to] ?? width;
    return { left, right, lines: shortened(name, right - left, size) };
  });
  const over = Math.max(0, ...groups.map(({ lines }) => lines.length)) * LEADING * size;
  const head = over + 2 * LEADING * size + 0.4 * size;
  const rows = Math.max(...columns.map(({ cells }) => cells.length));
  return {
    height: head + rows * PITCH * size,
    marks: ({ x, y }) => {
      const marks: Mark[] = [];
      const put = (text: string, at: { readonly x: number; readonly y: number }, bold: boolean) => {
        if (text !== '')
          marks.push({
            kind: 'words',
            at: { x: x + at.x, y: y + at.y },
            text,
            size,
            anchor: 'end',
            colour,
            ...(bold ? { bold: true } : {}),
          });
      };
      const rule = (from: number, to: number, height: number) =>
        marks.push({
          kind: 'line',
          points: [
            { x: x + from, y: y + height },
            { x: x + to, y: y + height },
          ],
          stroke: { colour, width: 0.2 },
        });
      for (let row = 1; row < rows; row += 2) {
        const top = y + head + row * PITCH * size;
        marks.push({
          kind: 'line',
          points: [
            { x, y: top },
            { x: x + width, y: top },
            { x: x + width, y: top + PITCH * size },
            { x, y: top + PITCH * size },
          ],
          closed: true,
          fill: SHADE,
        });
      }
      for (const { left, right, lines } of groups) {
        lines.forEach((line, i) => {
          put(line, { x: right, y: over - (lines.length - 1 - i) * LEADING * size - 0.3 * size }, true);
        });
        rule(left, right, over);
      }
      columns.forEach(({ head: titles, cells, bold }, i) => {
        const right = rights[i] ?? width;
        titles.forEach((title, k) => {
          put(title, { x: right, y: over + size + k * LEADING * size }, false);
        });
        cells.forEach((cell, row) => {
          put(cell, { x: right, y: head + row * PITCH * size + 1.08 * size }, bold === true);
        });
      });
      rule(0, width, head);
      rule(0, width, head + rows * PITCH * size);
      return marks;
    },
  };
}

interface Group {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

function groupsOf(columns: readonly Column[]): readonly Group[] {
  const groups: Group[] = [];
  columns.forEach(({ group: name }, i) => {
    const last = groups.at(-1);
    if (name === undefined) return;
    if (last?.name === name && last.to === i - 1) groups[groups.length - 1] = { ...last, to: i };
    else groups.push({ name, from: i, to: i });
  });
  return groups;
}

function shortened(text: string, width: number, size: number): readonly string[] {
  const lines = wrapWords(text, width, { size, heavy: true });
  if (lines.length <= GROUP_LINES) return lines;
  const last = [...(lines[GROUP_LINES - 1] ?? '')];
  while (wordsWidth(`${last.join('')}…`, { size, heavy: true }) > width && last.length > 0) last.pop();
  return [...lines.slice(0, GROUP_LINES - 1), `${last.join('')}…`];
}
