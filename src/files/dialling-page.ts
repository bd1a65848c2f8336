import type { Dialling } from '../model/dialling.js';
import { exposureTime, plainNumber } from '../units/print.js';
import type { Colour } from './plan-page.js';
import { type Column, table, wrap } from './text-layout.js';

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

const INDENT = '  ';

/** Which sheet the exposure is for, and why it is as it is: stands before the page of the exposure. Ends with an empty line. */
export function diallingPage(dialling: Dialling, page: Page): string {
  const { sheet, process, paper, batch, written, log } = dialling;
  const material = [process, paper, batch === null ? null : `batch ${batch}`].filter((word) => word !== null);
  const state = written
    ? `Written into ${log}; it waits for what comes out.`
    : `Nothing new: ${log} has this setting already, and waits for what comes out.`;
  const sections = [
    listed(`Sheet ${sheet}: ${material.join(', ')}`, [...resultWritten(dialling), ...dialling.reasoning, state], page),
    stripRows(dialling, page),
    listed('Notes on the log', dialling.notes, page),
    listed('Beside the exposure', dialling.remarks, page),
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

function stripRows({ strip }: Dialling, { width, colour }: Page): readonly string[] {
  if (strip.length === 0) return [];
  const rows = strip.map(({ dialled, pops, time }, index) => [
    plainNumber(index + 1),
    pops === null ? exposureTime(time ?? 0) : `${plainNumber(pops)} ${pops === 1 ? 'pop' : 'pops'}`,
    signed(dialled),
  ]);
  const { titles, rows: lines } = table(COLUMNS, rows, width - INDENT.length);
  const how =
    'Draw the slide and give the first exposure to the whole sheet. Then push the slide in over one strip, the first, and give the second to what is left; and so on. All else stays as it is set below.';
  return [
    colour.heading('Test strip'),
    ...[...wrap(how, width - INDENT.length), ...titles.map(colour.faint), ...lines.flat()].map(
      (line) => `${INDENT}${line}`,
    ),
  ];
}

function signed(stops: number): string {
  const text = plainNumber(stops, 2);
  return stops > 0 && text !== '0' ? `+${text}` : text;
}
