import type { SheetStep, StepSheet } from '../model/step-sheet.js';
import { celsius, clockTime, duration, millilitres, plainNumber } from '../units/print.js';
import { documentNumber } from './document-number.js';
import { type Colour, findingsPage } from './plan-page.js';
import { type Column, table, wrap } from './text-layout.js';

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

/** The sheet as other programs read it; ends with a line break. */
export const processJson = (sheet: StepSheet): string =>
  `${JSON.stringify(sheet, (_, value: unknown) => (typeof value === 'number' ? documentNumber(value) : value), 2)}\n`;

type Heading = Pick<Column, 'title' | 'align'>;

/** What is said of a sheet, part by part, for whoever has better means to set it than a terminal. */
export interface ProcessWords {
  readonly name: string;
  /** How times count, and what is carried over, in sentences. */
  readonly rules: readonly string[];
  readonly columns: readonly Heading[];
  readonly rows: readonly { readonly cells: readonly string[]; readonly beside: readonly string[] }[];
  /** How long it takes, and the temperatures to be kept, in sentences. */
  readonly sums: readonly string[];
  readonly liquidColumns: readonly Heading[];
  readonly liquidRows: readonly (readonly string[])[];
  readonly liquid: string;
  readonly cautions: readonly string[];
}

const STEP_COLUMNS: readonly Heading[] = [
  { title: 'Step', align: 'left' },
  { title: 'light', align: 'left' },
  { title: 'begin', align: 'right' },
  { title: 'in by', align: 'right' },
  { title: 'drain', align: 'right' },
  { title: 'out by', align: 'right' },
  { title: 'time', align: 'right' },
  { title: '°C', align: 'right' },
  { title: 'ml', align: 'right' },
];

const LIQUID_COLUMNS: readonly Heading[] = [
  { title: 'Bath', align: 'left' },
  { title: 'ml a print', align: 'right' },
  { title: 'serves', align: 'right' },
  { title: 'baths', align: 'right' },
  { title: 'ml in all', align: 'right' },
  { title: 'thinned', align: 'right' },
];

const NONE = '–';

export const processWords = (sheet: StepSheet): ProcessWords => ({
  name: sheet.name,
  rules: rulesInWords(sheet),
  columns: STEP_COLUMNS,
  rows: sheet.steps.map((step, i) => ({
    cells: stepCells(step, i),
    beside: [...doneInStep(step), ...mindInStep(step)],
  })),
  sums: [lasting(sheet), ...temperaturesInWords(sheet)],
  liquidColumns: LIQUID_COLUMNS,
  liquidRows: sheet.steps.flatMap((step, i) => (step.poured ? [liquidCells(step, i)] : [])),
  liquid: liquidInWords(sheet),
  cautions: sheet.cautions,
});

/** How the times of a sheet count, and what goes over from bath to bath. */
export function rulesInWords({ timesFrom, tank, carryOver, steps }: StepSheet): readonly string[] {
  if (!steps.some(({ poured }) => poured)) return [];
  const [fill, drain] = [duration(tank.fillSeconds), duration(tank.drainSeconds)];
  return [
    timesFrom === 'pouring-in'
      ? `A time counts from the beginning of pouring until the tank is empty: filling (${fill}) and draining (${drain}) are part of it.`
      : `A time counts from when the bath is in until draining begins: filling (${fill}) and draining (${drain}) come on top of it.`,
    `${millilitres(carryOver)} go over from each bath into the next.`,
  ];
}

const stepCells = (step: SheetStep, i: number): readonly string[] => [
  numbered(step, i),
  step.light,
  clockTime(step.beginsAt),
  step.coveredAt === null ? NONE : clockTime(step.coveredAt),
  step.drainAt === null ? NONE : clockTime(step.drainAt),
  clockTime(step.endsAt),
  clockTime(step.time),
  step.temperature === null ? NONE : plainNumber(step.temperature, 1),
  step.volume === null ? NONE : plainNumber(step.volume, 1),
];

const numbered = ({ name }: SheetStep, i: number): string => `${i + 1} ${name}`;

/** What is done in a step, in sentences. */
export const doneInStep = ({ light, agitation }: SheetStep): readonly string[] => [
  ...(light === 'window' ? ['The slide is drawn: white light falls through the window.'] : []),
  ...(agitation === null ? [] : [asSentence(agitation)]),
];

/** What to beware of in it. */
export const mindInStep = ({ caution }: SheetStep): readonly string[] =>
  caution === null ? [] : [asSentence(`Mind: ${caution}`)];

const asSentence = (words: string): string =>
  `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? '' : '.'}`;

/** How long one print takes, and all of them, one after another in the one tank. */
export function lasting({ seconds, prints }: StepSheet): string {
  const one = `One print takes ${duration(seconds)}`;
  return prints === 1 ? `${one}.` : `${one}; ${prints}, one after another, ${duration(prints * seconds)}.`;
}

/** Which bath wants which temperature. */
export function temperaturesInWords({ steps }: StepSheet): readonly string[] {
  const wanted = [...new Set(steps.flatMap(({ temperature }) => (temperature === null ? [] : [temperature])))];
  if (wanted.length === 0) return [];
  const each = wanted.map((temperature) => {
    const names = steps.filter((step) => step.temperature === temperature).map(({ name }) => name);
    return wanted.length === 1 ? celsius(temperature) : `${celsius(temperature)} in ${names.join(', ')}`;
  });
  return [
    `Bring the baths to ${each.join('; ')} before you begin, and measure as each is poured and as it is drained.`,
  ];
}

const liquidCells = (step: SheetStep, i: number): readonly string[] => [
  numbered(step, i),
  step.volume === null ? NONE : plainNumber(step.volume, 1),
  step.serves === 1 ? 'one print' : `${step.serves} prints`,
  step.need === null ? NONE : `${step.need.baths}`,
  step.need === null ? NONE : plainNumber(step.need.total, 1),
  step.need === null || step.need.thinned === null ? NONE : `${plainNumber(100 * step.need.thinned, 1)} %`,
];

export function liquidInWords({ liquid, prints }: StepSheet): string {
  const of = prints === 1 ? 'one print' : `${prints} prints`;
  return liquid === null
    ? `For ${of} the sum is not known: a volume is missing.`
    : `For ${of} ${plainNumber(liquid / 1000, 2)} l in all. Thinned: what part of a bath is the one before, with its last print in it.`;
}

const INDENT = 2;

/** The sheet as a page for a person at a terminal. Ends with a line break. */
export function processPage(sheet: StepSheet, page: Page): string {
  const words = processWords(sheet);
  const { colour } = page;
  const sections = [
    [colour.heading(words.name), ...sentences(words.rules, page)],
    steps(words, page),
    liquids(words, page),
    [colour.heading('Mind'), ...words.cautions.flatMap((each) => sentences([each], page))],
  ];
  const found = findingsPage(sheet.findings, page);
  return `${sections.map((lines) => `${lines.join('\n')}\n`).join('\n')}${found === '' ? '' : `\n${found}`}`;
}

const sentences = (texts: readonly string[], { width }: Page): readonly string[] =>
  texts.flatMap((text) => wrap(text, width - INDENT)).map(indented);

const indented = (line: string): string => `${' '.repeat(INDENT)}${line}`;

function steps({ columns, rows, sums }: ProcessWords, page: Page): readonly string[] {
  const { colour, width } = page;
  const laid = table(
    columns,
    rows.map(({ cells }) => cells),
    width - INDENT,
  );
  return [
    colour.heading('Steps'),
    ...laid.titles.map((line) => colour.faint(indented(line))),
    ...laid.rows.flatMap((lines, i) => [
      ...lines.map(indented),
      ...(rows[i]?.beside ?? [])
        .flatMap((text) => wrap(text, width - 2 * INDENT - 2))
        .map((line) => colour.faint(indented(indented(line)))),
    ]),
    ...sentences(sums, page),
  ];
}

function liquids({ liquidColumns, liquidRows, liquid }: ProcessWords, page: Page): readonly string[] {
  const laid = table(liquidColumns, liquidRows, page.width - INDENT);
  return [
    page.colour.heading('Liquid'),
    ...laid.titles.map((line) => page.colour.faint(indented(line))),
    ...laid.rows.flat().map(indented),
    ...sentences([liquid], page),
  ];
}
