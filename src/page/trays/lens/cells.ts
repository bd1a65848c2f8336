import type { BenchColumn, BenchRow, BenchSheet } from '../../../model/bench-sheet.js';
import type { LensState } from './state.js';

/** What a column is called over the cells, and what goes into it. */
export const titles: Readonly<Record<BenchColumn, { readonly title: string; readonly help: string }>> = {
  magnification: { title: 'scale', help: 'image over object, such as 1:3' },
  image: { title: 'image', help: 'length of the image on the glass' },
  object: { title: 'object', help: 'length of what is imaged' },
  distance: { title: 'distance', help: 'from the lens seat to the ground surface of the glass' },
  object_distance: { title: 'to object', help: 'from the lens seat to the object' },
  u_magnification: { title: '± scale', help: 'standard uncertainty of the scale' },
  u_image: { title: '± image', help: 'standard uncertainty of the image' },
  u_object: { title: '± object', help: 'standard uncertainty of the object' },
  u_distance: { title: '± distance', help: 'standard uncertainty of the distance' },
};

/** The columns that are shown: those asked for, and whatever a reading has something in. */
export function columnsOf({
  sheet,
  sizes,
  doubts,
}: Pick<LensState, 'sheet' | 'sizes' | 'doubts'>): readonly BenchColumn[] {
  const asked: readonly BenchColumn[] = [
    ...(sizes === 'ratio' ? (['magnification'] as const) : (['image', 'object'] as const)),
    'distance',
    ...(doubts
      ? sizes === 'ratio'
        ? (['u_magnification', 'u_distance'] as const)
        : (['u_image', 'u_object', 'u_distance'] as const)
      : []),
  ];
  const order = Object.keys(titles) as readonly BenchColumn[]; // the table has each of them
  return order.filter((column) => asked.includes(column) || sheet.readings.some((row) => hasText(row[column])));
}

const hasText = (text: string | undefined): boolean => text !== undefined && text.trim() !== '';

const isBlank = (row: BenchRow): boolean => !Object.values(row).some(hasText);

/** The sheet without its empty rows, as it is fitted and saved. */
export const filled = (sheet: BenchSheet): BenchSheet => ({
  ...sheet,
  readings: sheet.readings.filter((row) => !isBlank(row)).map(trimmed),
  coverage: sheet.coverage.filter(({ diameter, magnification, distance }) =>
    [diameter, magnification, distance].some(hasText),
  ),
});

const trimmed = (row: BenchRow): BenchRow =>
  Object.fromEntries(Object.entries(row).filter(([, text]) => hasText(text)));

/** The number that a row of the table has among the readings, from 1; null for an empty one. */
export function numbered(rows: readonly BenchRow[]): readonly (number | null)[] {
  let count = 0;
  return rows.map((row) => {
    if (isBlank(row)) return null;
    count += 1;
    return count;
  });
}

/** The sheet with a cell changed; a row that is not there yet is added. */
export function withCell(sheet: BenchSheet, row: number, column: BenchColumn, text: string): BenchSheet {
  const rows = [...sheet.readings];
  while (rows.length <= row) rows.push({});
  rows[row] = { ...rows[row], [column]: text };
  return { ...sheet, readings: rows };
}

/**
 * Cells out of a spreadsheet, put in from one cell on to the right and down. Where their first line has the names of
 * columns, the columns are those.
 *
 * @returns null where the text is one cell alone, to be pasted like any other
 */
export function pasted(
  sheet: BenchSheet,
  text: string,
  { row, columns }: { readonly row: number; readonly columns: readonly BenchColumn[] },
): BenchSheet | null {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  const separator = text.includes('\t') ? '\t' : text.includes(';') ? ';' : ',';
  const cells = lines.map((line) => line.split(separator).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1')));
  const [first] = cells;
  if (first === undefined || (cells.length === 1 && first.length === 1)) return null;
  const named = first.map((cell) =>
    (Object.keys(titles) as readonly BenchColumn[]).find((name) => name === cell.toLowerCase()),
  );
  const hasNames = named.some((name) => name !== undefined);
  const into = hasNames ? named : columns;
  return (hasNames ? cells.slice(1) : cells).reduce(
    (filling, line, down) =>
      line.reduce((done, cell, across) => {
        const column = into[across];
        return column === undefined ? done : withCell(done, row + down, column, pointed(cell, separator));
      }, filling),
    sheet,
  );
}

/** Where commas do not part the cells, they are what some spreadsheets write for the point. */
const pointed = (cell: string, separator: string): string =>
  separator !== ',' && /^[^.]*\d,\d[^.]*$/.test(cell) ? cell.replace(/(\d),(\d)/g, '$1.$2') : cell;
