import type { RegisterBudget, RegisterContributor, RegisterSpread } from '../model/register-budget.js';
import { plainNumber } from '../units/print.js';
import type { Colour } from './plan-page.js';
import { type Column, table, wrap } from './text-layout.js';

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

const EXPLAINED =
  'How far the ground glass and the film may stand apart along the axis, and by whose fault: + where the glass stands ' +
  'behind the film. The width of the cut moves no face between them; it shows at the corners only, where it widens the play of the rails.';

/** The budgets of the register as a page for a person at a terminal, holder by holder. Ends with a line break; empty without budgets. */
export function budgetPage(budgets: readonly RegisterBudget[], page: Page): string {
  if (budgets.length === 0) return '';
  const measures = [
    ...new Set(
      budgets.flatMap(({ contributors, measured }) =>
        [...contributors, ...measured.contributors].map(({ measure }) => measure),
      ),
    ),
  ];
  const sections = [
    [page.colour.heading('Register, as a budget'), ...wrap(EXPLAINED, page.width - INDENT).map(indented)],
    ...budgets.map((budget) => section(budget, measures, page)),
    [
      page.colour.heading('What makes it smaller'),
      ...measures.flatMap((measure, i) =>
        wrap(measure, page.width - INDENT - NUMBER).map((line, k) =>
          indented(`${(k === 0 ? `${i + 1}` : '').padStart(NUMBER - 2)}  ${line}`),
        ),
      ),
    ],
  ];
  return `${sections.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** Width of the number of a measure, with the gap behind it. */
const NUMBER = 4;

function section(budget: RegisterBudget, measures: readonly string[], { width, colour }: Page): readonly string[] {
  const { holder, at, nominal, tolerance, measured, toHalve } = budget;
  const fits = (one: RegisterSpread) =>
    Math.max(...one.interval95.map(Math.abs)) <= tolerance + ROUNDING ? 'fits' : colour.warning('too far');
  const ranges: readonly Column[] = [
    { title: '', align: 'left' },
    { title: 'in 19 of 20 cameras', align: 'right' },
    { title: 'at worst', align: 'right' },
  ];
  const spreads = [
    { name: 'cut and glued, not measured', of: budget },
    { name: 'glued, measured, then shimmed', of: measured },
  ];
  const { titles, rows } = table(
    ranges,
    spreads.map(({ name, of }) => [name, range(of.interval95), range(of.worst)]),
    width - INDENT - VERDICT,
  );
  return [
    colour.heading(
      at === 'centre'
        ? `${holder}, in the middle of the picture`
        : `${holder}, at the corner of the picture, drawn out`,
    ),
    ...wrap(
      `drawn ${signed(nominal)} mm; allowed ±${plainNumber(tolerance, 2)} mm, ${at === 'centre' ? 'a quarter of the depth of focus at infinity' : 'half of the depth of focus at the nearest'}`,
      width - INDENT,
    ).map(indented),
    ...titles.map(indented).map(colour.faint),
    ...rows.flatMap((lines, i) =>
      lines.map((line, k) => indented(k === 0 && spreads[i] ? `${line}  ${fits(spreads[i].of)}` : line)),
    ),
    ...contributorTable('what strays, nothing measured', budget.contributors, measures, { width, colour }),
    ...contributorTable('what is left, measured and shimmed', measured.contributors, measures, { width, colour }),
    ...wrap(`To halve it: ${lowerFirst(toHalve)}`, width - INDENT).map(indented),
  ];
}

/** Room for the verdict behind a row. */
const VERDICT = 9;
const ROUNDING = 1e-6;

function contributorTable(
  title: string,
  contributors: readonly RegisterContributor[],
  measures: readonly string[],
  { width, colour }: Page,
): readonly string[] {
  const columns: readonly Column[] = [
    { title, align: 'left' },
    { title: '± mm', align: 'right' },
    { title: 'spread', align: 'right' },
    { title: 'worst', align: 'right' },
    { title: 'cure', align: 'right' },
  ];
  const { titles, rows } = table(
    columns,
    contributors.map(({ name, half, share, measure }) => [
      name,
      half.toFixed(3),
      percent(share.variance),
      percent(share.worst),
      `${measures.indexOf(measure) + 1}`,
    ]),
    width - INDENT,
  );
  return [...titles.map(indented).map(colour.faint), ...rows.flat().map(indented)];
}

const INDENT = 2;
const indented = (line: string): string => `${' '.repeat(INDENT)}${line}`;
const lowerFirst = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
const percent = (share: number): string => `${plainNumber(100 * share, 0)} %`;

/** Hundredths: finer than glue is spread. */
function signed(length: number): string {
  const text = plainNumber(length, 2);
  return text === '0' ? text : text.startsWith('-') ? text.replace('-', '−') : `+${text}`;
}
const range = ([low, high]: readonly [number, number]): string => `${signed(low)} to ${signed(high)} mm`;
