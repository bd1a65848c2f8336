import type {
  Change,
  ExplainedClaim,
  ExplainedInput,
  Explanation,
  FigureList,
  FormulaText,
} from '../model/explanation.js';
import { changeOf, explainedFigure, legible, magnification, movedBy, quantity } from '../units/print.js';
import type { Colour } from './plan-page.js';
import { type Column, table, wrap } from './text-layout.js';

/** The same for a program. */
export const explanationJson = (explanation: Explanation): string => document(explanation);
export const figureListJson = (list: FigureList): string => document(list);

/** Numbers to a billionth, as the plan has them at most. */
const document = (content: object): string =>
  `${JSON.stringify(content, (_, value: unknown) => (typeof value === 'number' ? Math.round(value * 1e9) / 1e9 || 0 : value), 2)}\n`;

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

const INDENT = '  ';

/** How a figure came about, as a page for a person at a terminal. Ends with a line break. */
export function explainPage(explanation: Explanation, page: Page): string {
  const { what, figure, symbol, value, because, formula, key, inputs, governs, source } = explanation;
  const { colour } = page;
  const sections: readonly (readonly string[])[] = [
    [`${colour.heading(what)}  ${colour.faint(figure)}`, ...answer(explanation, page)],
    because === null || value === null ? [] : indented(wrap(sentence(because), page.width - 2)),
    key ? [`${INDENT}${keyWords(key)}`] : [],
    formula ? equation(symbol, formula, page) : [],
    inputTable(inputs, page),
    governs === null ? [] : governing(explanation, governs, page),
    value === null ? [] : changeTable(explanation, page),
    source === '' ? [] : [`${INDENT}${colour.heading('Source')}`, ...text(source, page, 2)],
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

/** The figures that can be explained, each with what it is. */
export function figureList({ figures }: FigureList, page: Page): string {
  const rows = figures.map(({ figure, what, value, unit }): Row => {
    const number = typeof value === 'number';
    return {
      head: figure,
      value: number ? quantity(value, unit) : '',
      text: number ? what : `${worded(value)}: ${what}`,
    };
  });
  return `${rowsOf(rows, page.width).join('\n')}\n`;
}

interface Row {
  readonly head: string;
  readonly value: string;
  readonly text: string;
}

/** Names and values in columns of their own; the words run on under their beginning. */
function rowsOf(rows: readonly Row[], width: number): readonly string[] {
  const heads = Math.max(...rows.map(({ head }) => head.length));
  const values = Math.max(...rows.map(({ value }) => value.length));
  const room = Math.max(LEAST_ROOM, width - heads - values - 4);
  return rows.flatMap(({ head, value, text: words }) =>
    wrap(words, room).map((line, i) =>
      `${(i === 0 ? head : '').padEnd(heads)}  ${(i === 0 ? value : '').padEnd(values)}  ${line}`.trimEnd(),
    ),
  );
}

/** Words in a narrower column are no longer read. */
const LEAST_ROOM = 24;

function answer({ value, unit, because, decidedBy }: Explanation, page: Page): readonly string[] {
  if (value === null) return indented(wrap(`none: ${because ?? ''}`, page.width - 2));
  if (typeof value === 'number') return [`${INDENT}${explainedFigure(value, unit)}`];
  return [`${INDENT}${worded(value)}${decidedBy === null ? '' : `; ${quantity(decidedBy, unit)} decides`}`];
}

const worded = (value: string | boolean | null): string =>
  value === null ? 'none' : typeof value === 'string' ? value : value ? 'yes' : 'no';

/** The formula with symbols, and under its sign of equality with the numbers put in. */
function equation(symbol: string, { symbols, numbers }: FormulaText, page: Page): readonly string[] {
  const room = page.width - INDENT.length - symbol.length - 3;
  const second = symbols === numbers ? [] : continued(`${' '.repeat(symbol.length)} = `, wrap(numbers, room));
  return indented([...continued(`${symbol} = `, wrap(symbols, room)), ...second]);
}

const continued = (first: string, lines: readonly string[]): readonly string[] =>
  lines.map((line, i) => `${i === 0 ? first : ' '.repeat(first.length)}${line}`);

/** What was put in, one under another; what an input is made of stands under it, further in. */
function inputTable(inputs: readonly ExplainedInput[], page: Page): readonly string[] {
  const rows = inputRows(inputs, 0, new Set());
  return rows.length === 0 ? [] : indented(rowsOf(rows, page.width - INDENT.length));
}

function inputRows(inputs: readonly ExplainedInput[], depth: number, told: Set<string>): readonly Row[] {
  return inputs.flatMap((input) => {
    const mark = `${input.symbol} ${input.value}`;
    if (told.has(mark)) return [];
    told.add(mark);
    const { symbol, value, unit, what, formula, governs, next } = input;
    const behind = next ? `; ${nextWords(next, unit)}` : '';
    return [
      { head: `${INDENT.repeat(depth)}${symbol}`, value: inFormula(value, unit), text: `${what}${origin(input)}` },
      ...(formula ? [{ head: '', value: '', text: `= ${formula.symbols}` }] : []),
      ...(governs === null ? [] : [{ head: '', value: '', text: `governed by ${governs}${behind}` }]),
      ...inputRows(input.inputs, depth + 1, told),
    ];
  });
}

const nextWords = ({ because, distance }: NonNullable<ExplainedInput['next']>, unit: string): string =>
  distance < 1e-9 ? `${because} is as much` : `next ${because}, ${quantity(distance, unit)} behind`;

/** Where a formula wants the number and the trade has another way to say it, both. */
const inFormula = (value: number, unit: string): string =>
  unit === 'magnification'
    ? `${legible(value)}, ${magnification(value)}`
    : unit === 'f-number'
      ? legible(value)
      : quantity(value, unit);

function origin({ key, figure, source, formula }: ExplainedInput): string {
  const words = key ? keyWords(key) : (figure ?? (formula ? '' : (source ?? '')));
  return words === '' ? '' : ` (${words})`;
}

const keyWords = ({ path, typed, source }: NonNullable<Explanation['key']>): string =>
  source === null ? `${path}${typed ? '' : ', default'}` : `${path} ${source}`;

function governing({ value, decidedBy, behind }: Explanation, governs: string, page: Page): readonly string[] {
  const { colour } = page;
  const own = typeof value === 'number' ? value : (decidedBy ?? 0);
  const [next, ...others] = behind;
  return [
    `${INDENT}${colour.heading('Governs')}`,
    ...text(governs, page, 2),
    ...(next
      ? [
          `${INDENT}${colour.heading('Next behind it')}`,
          ...text(`${next.because}: ${quantity(next.value, 'mm')}; ${apart(next, next.value < own)}`, page, 2),
          ...(next.formula.numbers === legible(next.value)
            ? []
            : text(`${next.formula.symbols} = ${next.formula.numbers}`, page, 3)),
        ]
      : []),
    ...others.slice(0, 2).flatMap((claim) => text(`then ${claim.because}: ${quantity(claim.value, 'mm')}`, page, 2)),
  ];
}

const apart = ({ distance }: ExplainedClaim, less: boolean): string =>
  distance < 1e-9
    ? 'the same: both govern'
    : `it governs once the first is ${quantity(distance, 'mm')} ${less ? 'less' : 'more'}`;

const CHANGES: readonly Column[] = [
  { title: 'to change it', align: 'left' },
  { title: 'now', align: 'right' },
  { title: 'so much more', align: 'left' },
  { title: 'so much less', align: 'left' },
];

/** What each key does, as the camera that was planned with it changed says. */
function changeTable(
  { value: figure, decidedBy, unit: own, changes, otherChanges }: Explanation,
  page: Page,
): readonly string[] {
  const { colour } = page;
  if (changes.length === 0)
    return [`${INDENT}${colour.heading('To change it')}`, ...text('no small change of any key moves it', page, 2)];
  const now = typeof figure === 'number' ? figure : (decidedBy ?? 0);
  const moved = ({ value, unit, step }: Change, sign: 1 | -1, by: number | null): string =>
    by === null ? 'cannot be' : `${changeOf(value, sign * step, unit)}: ${movedBy(now, by, own)}`;
  const rows = changes.map((change) => {
    const { path, typed, value, unit, what } = change;
    const name = path === 'format' ? `format, ${what}` : typed ? path : `${path}, default`;
    return [name, quantity(value, unit), moved(change, 1, change.more), moved(change, -1, change.less)];
  });
  const others = otherChanges === 1 ? 'one other key moves it, less' : `${otherChanges} other keys move it, each less`;
  return [
    `${INDENT}${colour.heading('To change it')}`,
    ...indented(indented(table(CHANGES, rows, page.width - 4).rows.flat())),
    ...(otherChanges === 0 ? [] : text(others, page, 2)),
  ];
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

const indented = (lines: readonly string[]): readonly string[] => lines.map((line) => `${INDENT}${line}`);

const text = (words: string, page: Page, depth: number): readonly string[] => {
  const margin = INDENT.repeat(depth);
  return wrap(words, page.width - margin.length).map((line) => `${margin}${line}`);
};
