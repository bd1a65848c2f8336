import { explainIssues, type Fault } from '../design/explain.js';
import { orList } from '../design/fields.js';
import { keyTable } from '../design/key-table.js';
import { nearestWord } from '../design/nearest-word.js';
import type { Problem } from '../design/problem.js';
import { readDocument } from '../design/read-document.js';
import { designFile, type FileKind, problemAt, type Source, textProblem } from '../design/source.js';
import { readYaml } from '../design/yaml.js';
import type { BenchReadings } from '../model/lens-bench.js';
import { parseLength } from '../units/length.js';
import { quoted } from '../units/quantity.js';
import { benchFaults, benchJsonSchema, benchOf, benchSchema } from './bench-readings.js';
import { type Cell, type CsvTable, readCsv } from './csv.js';

const benchFile: FileKind = {
  ...designFile,
  noun: 'list of bench readings',
  begin: 'Begin with the line magnification,distance and write a reading on each line after it.',
};

/** What a problem of the readings says, and where: a path such as readings, 3, distance. */
export type BenchTrouble = Pick<Fault, 'path' | 'what' | 'accepted'>;

export type ReadBench =
  | { readonly bench: BenchReadings; readonly locate: (trouble: BenchTrouble) => Problem }
  | { readonly problems: readonly Problem[] };

/** Reads what was measured on the bench, CSV or YAML, or tells what is wrong with the file, each at its place. */
export function readBench(text: string, file: string): ReadBench {
  if (isTable(text, file)) return readTable({ file, text: text.replace(/^\ufeff/, ''), kind: benchFile });
  const read = readDocument(text, file, {
    schema: benchSchema,
    kind: benchFile,
    firstKey: 'readings: [{ magnification: 1:3, distance: 267.3 mm }]',
    check: benchFaults,
  });
  if ('problems' in read) return read;
  return {
    bench: benchOf(read.value, []),
    locate: ({ path, what, accepted }) => read.locate({ path, at: 'value', what, accepted }),
  };
}

/** By its name; where that says nothing, YAML begins with a key and a colon, and a table with the names of its columns. */
function isTable(text: string, file: string): boolean {
  if (/\.ya?ml$/i.test(file)) return false;
  if (/\.(?:csv|tsv)$/i.test(file)) return true;
  const first = text
    .replace(/^\ufeff/, '')
    .split(/[\r\n]+/)
    .find((line) => !/^\s*(?:#|$)/.test(line));
  return first !== undefined && !/^\s*(?:---|\{|['"]?\w+['"]?\s*:(?:\s|$))/.test(first);
}

const table = keyTable(benchJsonSchema());
const COLUMNS = table.flatMap(({ path }) => (path.startsWith('readings[].') ? [path.slice('readings[].'.length)] : []));
const WANTED = 'Begin with the line magnification,distance or image,object,distance; lengths in mm.';

/** What a file of readings says before any of it is understood: its keys and cells as they were written. */
export function writtenBench(
  text: string,
  file: string,
): { readonly written: unknown } | { readonly problems: readonly Problem[] } {
  const source = { file, text: text.replace(/^\ufeff/, ''), kind: benchFile };
  if (isTable(text, file)) {
    const table = tableOf(source);
    return 'problems' in table ? table : { written: { readings: table.readings } };
  }
  const unreadable = textProblem(source);
  if (unreadable !== null) return { problems: [unreadable] };
  const outline = readYaml(source);
  return 'value' in outline && outline.problems.length === 0 ? { written: outline.value } : outline;
}

interface WrittenTable {
  readonly csv: CsvTable;
  readonly columns: readonly ColumnName[];
  readonly readings: readonly Readonly<Record<string, string>>[];
}

function tableOf(source: Source): WrittenTable | { readonly problems: readonly Problem[] } {
  const unreadable = textProblem(source);
  if (unreadable !== null) return { problems: [unreadable] };
  const csv = readCsv(source);
  if (csv === null)
    return {
      problems: [
        problemAt(source, null, { path: '', what: 'There is nothing but comments in the file.', accepted: WANTED }),
      ],
    };
  const wrongForm = formProblems(source, csv);
  if (wrongForm.length > 0) return { problems: wrongForm };
  const columns = csv.header.map(columnName);
  return { csv, columns, readings: csv.rows.map((row) => rowOf(row, columns, csv)) };
}

function readTable(source: Source): ReadBench {
  const written = tableOf(source);
  if ('problems' in written) return written;
  const { csv, columns, readings } = written;
  const { header, rows } = csv;
  const names = columns.map(({ name }) => name);
  const locate = ({ path, what, accepted }: BenchTrouble): Problem => {
    const [, row, key] = path;
    const cells = typeof row === 'number' ? rows[row] : undefined;
    const cell = cells?.[names.indexOf(String(key))];
    const place = typeof row === 'number' ? `row ${row + 1}${key === undefined ? '' : `, ${String(key)}`}` : '';
    return problemAt(source, cell?.span ?? wholeRow(cells ?? header), { path: place, what, accepted });
  };
  const outcome = benchSchema.safeParse({ readings }, { jitless: true });
  if (!outcome.success)
    return { problems: explainIssues(outcome.error.issues, { readings }, table).map((fault) => locate(inCsv(fault))) };
  const faults = benchFaults(outcome.data);
  if (faults.length > 0) return { problems: faults.map(locate) };
  const commas = csv.separator !== ',' && rows.some((row) => row.some(({ text }) => DECIMAL_COMMA.test(text)));
  return {
    bench: benchOf(outcome.data, commas ? ['Commas inside the numbers were read as decimal commas.'] : []),
    locate,
  };
}

/** The words for a YAML file fit a table but for what is missing. */
const inCsv = (fault: Fault): Fault =>
  fault.missing
    ? { ...fault, what: 'The cell is empty.', accepted: 'Write what was read, or set the row aside with # before it.' }
    : fault;

const DECIMAL_COMMA = /^[^.]*\d,\d[^.]*$/;

/** A number that leaves its unit to the header. */
const BARE = /\d\s*$/;

/** Where commas do not part the cells, they are what such spreadsheets write for the point. */
const rowOf = (
  row: readonly Cell[],
  columns: readonly ColumnName[],
  { separator }: CsvTable,
): Readonly<Record<string, string>> =>
  Object.fromEntries(
    row.flatMap(({ text }, i) => {
      const column = columns[i];
      if (text === '' || column === undefined) return [];
      const { name, unit } = column;
      const pointed = separator !== ',' && DECIMAL_COMMA.test(text) ? text.replace(/(\d),(\d)/g, '$1.$2') : text;
      return [[name, unit === null || !BARE.test(pointed) ? pointed : `${pointed} ${unit}`]];
    }),
  );

const wholeRow = (cells: readonly Cell[]): readonly [number, number] | null => {
  const [first, last] = [cells[0], cells.at(-1)];
  return first && last ? [first.span[0], last.span[1]] : null;
};

interface ColumnName {
  readonly name: string;
  /** Of its numbers where they have none of their own; null where the header names none. */
  readonly unit: string | null;
}

/** `Distance (in)`, `distance in`: a distance whose bare numbers are inches. */
function columnName({ text }: Cell): ColumnName {
  const found = /^(.*?)\s*[([]\s*([^)\]]*?)\s*[)\]]$/.exec(text) ?? /^(.*?)[\s_]+(mm|cm|m|in|inch|inches)$/i.exec(text);
  const unit = found?.[2]?.toLowerCase() ?? null;
  return { name: (found?.[1] ?? text).toLowerCase(), unit: unit?.replace(/^inch(?:es)?$/, 'in') ?? null };
}

/** Whether the numbers of a column can be in that unit: a magnification has none. */
const fitsColumn = ({ name, unit }: ColumnName): boolean =>
  unit === null || (!name.endsWith('magnification') && 'value' in parseLength(`1 ${unit}`));

/** What is wrong with the header, or with the number of cells in a row. */
function formProblems(source: Source, { header, rows, separator }: CsvTable): readonly Problem[] {
  const at = (cell: Cell, what: string, accepted: string) => problemAt(source, cell.span, { path: '', what, accepted });
  const [first] = header;
  if (first !== undefined && header.every(({ text }) => /^[\d.,:\s]+$/.test(text)))
    return [at(first, 'The columns have no names.', WANTED)];
  const names = header.map((cell) => columnName(cell).name);
  const misfit = header.find((cell) => !fitsColumn(columnName(cell)));
  if (misfit !== undefined)
    return [
      at(
        misfit,
        `${quoted(columnName(misfit).unit)} is no unit of this column.`,
        'Write mm, cm, m or in behind the name of a length, and nothing behind magnification.',
      ),
    ];
  const strange = header.flatMap((cell, i) => {
    const { name } = columnName(cell);
    if (names.indexOf(name) < i)
      return [at(cell, `${quoted(name)} is the name of an earlier column, too.`, 'Leave one of them out.')];
    if (COLUMNS.includes(name)) return [];
    const meant = nearestWord(name, COLUMNS);
    const known = meant === undefined ? `Known here: ${COLUMNS.join(', ')}.` : `Did you mean ${meant}?`;
    return [at(cell, `${quoted(cell.text)} is no column of bench readings.`, known)];
  });
  if (strange.length > 0) return strange;
  const needed = names.includes('magnification') ? ['distance'] : ['image', 'object', 'distance'];
  const missing = needed.filter((name) => !names.includes(name));
  if (first !== undefined && missing.length > 0)
    return [at(first, `The column ${orList(missing).replace(' or ', ' and ')} is missing.`, WANTED)];
  // one habit of writing makes all of them: one message
  const [long, ...others] = rows.filter((row) => row.length > header.length);
  const extra = long?.[header.length];
  if (long === undefined || extra === undefined) return [];
  const alike =
    others.length === 0 ? '' : ` So ${others.length === 1 ? 'has another' : `have ${others.length} others`}.`;
  const comma = separator === ',' ? ' A decimal comma parts a number in two: write a point.' : '';
  return [
    at(
      extra,
      `This row has ${long.length} cells, the header ${header.length}.${comma}${alike}`,
      'Write as many cells as there are columns.',
    ),
  ];
}
