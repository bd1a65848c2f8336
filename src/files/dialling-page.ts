import type { Dialling } from '../model/dialling.js';
import { exposureTime, plainNumber } from '../units/print.js';
import type { Colour } from './plan-page.js';
import { type Column, table, wrap } from './text-layout.js';

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

const INDENT = '  ';

/** What is said of a sheet of a log, part by part, for whoever has better means to set it than a terminal. */
export interface DiallingWords {
  readonly title: string;
  readonly reasoning: readonly string[];
  /** How a test strip is exposed, and each strip of it under the titles of the columns; no rows where there is none. */
  readonly strip: {
    readonly how: string;
    readonly titles: readonly string[];
    readonly rows: readonly (readonly string[])[];
  };
  readonly notes: readonly string[];
  readonly remarks: readonly string[];
}

export function diallingWords(dialling: Dialling): DiallingWords {
  const { sheet, process, paper, batch } = dialling;
  const material = [process, paper, batch === null ? null : `batch ${batch}`].filter((word) => word !== null);
  return {
    title: `Sheet ${sheet}: ${material.join(', ')}`,
    reasoning: [...resultWritten(dialling), ...dialling.reasoning],
    strip: { how: HOW_STRIPS, titles: COLUMNS.map(({ title }) => title), rows: stripCells(dialling) },
    notes: dialling.notes,
    remarks: dialling.remarks,
  };
}

/** Which sheet the exposure is for, and why it is as it is: stands before the page of the exposure. Ends with an empty line. */
export function diallingPage(dialling: Dialling, page: Page): string {
  const { written, log } = dialling;
  const words = diallingWords(dialling);
  const state = written
    ? `Written into ${log}; it waits for what comes out.`
    : `Nothing new: ${log} has this setting already, and waits for what comes out.`;
  const sections = [
    listed(words.title, [...words.reasoning, state], page),
    stripRows(words, page),
    listed('Notes on the log', words.notes, page),
    listed('Beside the exposure', words.remarks, page),
  ];
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => `${lines.join('\n')}\n\n`)
    .join('');
}

/** Which sheet the verdict went to: where several wait, it must be seen at once if it is the wrong one. */
function resultWritten({ resultOf }: Dialling): readonly string[] {
  if (resultOf === null) return [];
  const { sheet, process, batch } = resultOf;
  return [`Result of sheet ${sheet} (${process}${batch === null ? '' : `, batch ${batch}`}) written.`];
}

function listed(title: string, texts: readonly string[], { width, colour }: Page): readonly string[] {
  if (texts.length === 0) return [];
  return [
    colour.heading(title),
    ...texts.flatMap((text) => wrap(text, width - INDENT.length)).map((line) => `${INDENT}${line}`),
  ];
}

const COLUMNS: readonly Column[] = [
  { title: 'Strip', align: 'right' },
  { title: 'give now', align: 'left' },
  { title: 'it has then, in stops against the reckoning', align: 'left' },
];

const HOW_STRIPS =
  'Draw the slide and give the first exposure to the whole sheet. Then push the slide in over one strip, the first, and give the second to what is left; and so on. All else stays as it is set below.';

const stripCells = ({ strip }: Dialling): readonly (readonly string[])[] =>
  strip.map(({ dialled, pops, time }, index) => [
    plainNumber(index + 1),
    pops === null ? exposureTime(time ?? 0) : `${plainNumber(pops)} ${pops === 1 ? 'pop' : 'pops'}`,
    signed(dialled),
  ]);

function stripRows({ strip }: DiallingWords, { width, colour }: Page): readonly string[] {
  if (strip.rows.length === 0) return [];
  const { titles, rows: lines } = table(COLUMNS, strip.rows, width - INDENT.length);
  return [
    colour.heading('Test strip'),
    ...[...wrap(strip.how, width - INDENT.length), ...titles.map(colour.faint), ...lines.flat()].map(
      (line) => `${INDENT}${line}`,
    ),
  ];
}

function signed(stops: number): string {
  const text = plainNumber(stops, 2);
  return stops > 0 && text !== '0' ? `+${text}` : text;
}
