import { scalarText } from '../design/flow-text.js';
import type { Problem } from '../design/problem.js';
import { type BenchColumn, type BenchRow, type BenchSheet, benchColumns } from '../model/bench-sheet.js';
import { readBench, writtenBench } from './read-bench.js';

/*
 * Readings between a file and a person who fills them in: a file becomes cells as they were typed, with their mistakes, and
 * the cells become a file again.
 */

/** The cells of a file, or what is wrong with it where it cannot be laid out as such. */
export function benchSheet(
  text: string,
  file: string,
): { readonly sheet: BenchSheet } | { readonly problems: readonly Problem[] } {
  const read = writtenBench(text, file);
  if ('problems' in read) return read;
  const sheet = sheetOf(read.written);
  if (sheet !== null) return { sheet };
  const whole = readBench(text, file);
  if ('problems' in whole) return whole;
  throw new Error('readings that can be read cannot be laid out');
}

type Group = Readonly<Record<string, unknown>>;

const isGroup = (value: unknown): value is Group =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** null where there is something that no cell is for. */
function sheetOf(written: unknown): BenchSheet | null {
  const odd: string[] = [];
  const group = (value: unknown, keys: readonly string[]): Group => {
    if (value === undefined) return {};
    if (!isGroup(value)) {
      odd.push('no group');
      return {};
    }
    odd.push(...Object.keys(value).filter((key) => !keys.includes(key)));
    return value;
  };
  const list = (value: unknown): readonly unknown[] => {
    if (value === undefined) return [];
    if (Array.isArray(value)) return value;
    odd.push('no list');
    return [];
  };
  const cell = (value: unknown): string => {
    if (value === undefined) return '';
    if (typeof value === 'string' || typeof value === 'number') return String(value);
    odd.push('no cell');
    return '';
  };
  const cells = (value: unknown): string => (Array.isArray(value) ? value.map(cell).join(', ') : cell(value));
  const whole = group(written, ['name', 'readings', 'pupils', 'coverage', 'hole']);
  const pupils = group(whole.pupils, ['front', 'rear']);
  const hole = group(whole.hole, ['diameter', 'enlargement']);
  const sheet: BenchSheet = {
    name: cell(whole.name),
    readings: list(whole.readings).map((one): BenchRow => {
      const row = group(one, benchColumns);
      return Object.fromEntries(benchColumns.flatMap((key) => (row[key] === undefined ? [] : [[key, cell(row[key])]])));
    }),
    pupils: { front: cells(pupils.front), rear: cells(pupils.rear) },
    coverage: list(whole.coverage).map((one) => {
      const row = group(one, ['diameter', 'magnification', 'distance']);
      return { diameter: cell(row.diameter), magnification: cell(row.magnification), distance: cell(row.distance) };
    }),
    hole: { diameter: cells(hole.diameter), enlargement: cell(hole.enlargement) },
  };
  return odd.length === 0 ? sheet : null;
}

/** A lens that is called 305 or null is called so all the same. */
const nameText = (name: string): string =>
  Number.isNaN(Number(name)) && !/^(?:true|false|null|~)$/i.test(name.trim()) ? scalarText(name) : JSON.stringify(name);

/** The file of a sheet, all of it. */
export function benchYaml({ name, readings, pupils, coverage, hole }: BenchSheet): string {
  const blocks = [
    name.trim() === '' ? '' : `name: ${nameText(name)}\n`,
    `readings:${readings.length === 0 ? ' []' : ''}\n${readings.map((row) => `  - ${flow(row)}\n`).join('')}`,
    grouped('pupils', [
      ['front', several(pupils.front)],
      ['rear', several(pupils.rear)],
    ]),
    coverage.length === 0 ? '' : `coverage:\n${coverage.map((row) => `  - ${flow({ ...row })}\n`).join('')}`,
    grouped('hole', [
      ['diameter', several(hole.diameter)],
      ['enlargement', scalarText(hole.enlargement)],
    ]),
  ];
  return blocks.filter((block) => block !== '').join('\n');
}

/** The readings alone, as a table for a spreadsheet: the columns that have something in them. */
export function benchCsv({ readings }: BenchSheet): string {
  const used = benchColumns.filter((key) => readings.some((row) => textOf(row, key) !== ''));
  const lines = [used, ...readings.map((row) => used.map((key) => textOf(row, key)))];
  return lines.map((cells) => `${cells.map(csvCell).join(',')}\n`).join('');
}

const textOf = (row: BenchRow, key: BenchColumn): string => (row[key] ?? '').trim();

const csvCell = (text: string): string => (/[",\t;\r\n#]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

type Entry = readonly [key: string, written: string];

const flow = (row: Readonly<Record<string, string>>): string =>
  inBraces(Object.entries(row).map(([key, text]) => [key, scalarText(text)]));

/** What is not written stands nowhere; a group of nothing is an empty one. */
function inBraces(entries: readonly Entry[]): string {
  const written = entries.filter(([, text]) => text !== '').map(([key, text]) => `${key}: ${text}`);
  return written.length === 0 ? '{}' : `{ ${written.join(', ')} }`;
}

function grouped(name: string, entries: readonly Entry[]): string {
  return entries.every(([, text]) => text === '') ? '' : `${name}: ${inBraces(entries)}\n`;
}

/** Several readings of one thing: `23.8 mm, 23.6 mm`. */
function several(text: string): string {
  const parts = text.split(/[,;]/).map((part) => part.trim());
  const [only] = parts;
  if (parts.length === 1) return scalarText(only ?? '');
  return `[${parts
    .filter((part) => part !== '')
    .map(scalarText)
    .join(', ')}]`;
}
