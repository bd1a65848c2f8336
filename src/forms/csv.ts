import type { Source } from '../design/source.js';

/** A cell and where it stands in the file, its quotes included. */
export interface Cell {
  readonly text: string;
  readonly span: readonly [from: number, to: number];
}

export interface CsvTable {
  readonly separator: ',' | ';' | '\t';
  readonly header: readonly Cell[];
  readonly rows: readonly (readonly Cell[])[];
}

/**
 * A table as spreadsheets write it: a row a line, cells between commas, semicolons or tabs, in double quotes where they hold
 * one of them. Lines that are empty or begin with # are passed over, and so are rows and last columns of separators alone,
 * which a spreadsheet leaves where something once stood. The header decides which separator it is: a semicolon or a tab in it
 * is one, since no name of a column has them.
 */
export function readCsv({ text }: Pick<Source, 'text'>): CsvTable | null {
  const lines = linesOf(text).filter(({ line }) => !/^\s*#|^[\s,;"]*$/.test(line));
  const [first, ...others] = lines;
  if (first === undefined) return null;
  const separator = first.line.includes('\t') ? '\t' : first.line.includes(';') ? ';' : ',';
  const cells = ({ line, start }: Line) => cellsOf(line, start, separator);
  return { separator, header: ended(cells(first)), rows: others.map((line) => ended(cells(line))) };
}

/** A row up to its last cell with something in it. */
const ended = (row: readonly Cell[]): readonly Cell[] => row.slice(0, row.findLastIndex(({ text }) => text !== '') + 1);

interface Line {
  readonly line: string;
  readonly start: number;
}

function linesOf(text: string): readonly Line[] {
  const lines: Line[] = [];
  for (const { 0: line, index } of text.matchAll(/[^\r\n]+/g)) lines.push({ line, start: index });
  return lines;
}

/** A quote opens a cell where it is the first of it; anywhere else it is the sign of an inch. */
function cellsOf(line: string, start: number, separator: string): readonly Cell[] {
  const cells: Cell[] = [];
  let from = 0;
  for (let at = 0, quoted = false; at <= line.length; at++) {
    if (line[at] === '"') {
      if (quoted && line[at + 1] === '"') at++;
      else quoted = !quoted && line.slice(from, at).trim() === '';
    }
    if (at < line.length && (quoted || line[at] !== separator)) continue;
    cells.push(cellOf(line.slice(from, at), start + from));
    from = at + 1;
  }
  return cells;
}

function cellOf(written: string, start: number): Cell {
  const text = written.trim();
  const from = start + written.length - written.trimStart().length;
  const unquoted = /^"[\s\S]*"$/.test(text) ? text.slice(1, -1).replaceAll('""', '"').trim() : text;
  return { text: unquoted, span: [from, from + text.length] };
}
