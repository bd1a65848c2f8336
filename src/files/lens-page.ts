import type { LensDocument, LensRemark, Measured } from '../model/lens-bench.js';
import { mm, plainNumber, scale } from '../units/print.js';
import { documentNumber } from './document-number.js';
import type { Colour } from './plan-page.js';
import { wrap } from './text-layout.js';

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

/** The same for a program. */
export const lensJson = (lens: LensDocument): string =>
  `${JSON.stringify(lens, (_, value: unknown) => (typeof value === 'number' ? documentNumber(value) : value), 2)}\n`;

/** What is said of a lens that was measured, part by part, for whoever has better means to set it than a terminal. */
export interface LensWords {
  readonly figures: readonly Row[];
  /** Where the film stands at the magnifications asked for. */
  readonly predictions: readonly Row[];
  readonly reckoned: string;
  readonly caution: string;
}

export const lensWords = (lens: LensDocument): LensWords => ({
  figures: figuresOf(lens),
  predictions: lens.predictions.map(predicted),
  reckoned: assumptions(lens),
  caution: CAUTION,
});

/** The figures of a lens that was measured, as a page for a person at a terminal. Ends with a line break. */
export function lensPage(lens: LensDocument, page: Page): string {
  const { colour } = page;
  const { figures, predictions, reckoned, caution } = lensWords(lens);
  const title = `${colour.heading(lens.name ?? 'Lens on the bench')}  ${colour.faint(`${lens.readings} readings`)}`;
  const sections = [
    [title],
    ['As measured, each ± what holds in 95 of 100 cases:', ...rows(figures, page)],
    predictions.length === 0 ? [] : [colour.heading('Lens seat to film'), ...rows(predictions, page)],
    [colour.heading('Readings less the line'), ...residualStrip(lens, page)],
    remarks(lens.remarks, page),
    [colour.heading('How it was reckoned'), ...words(reckoned, page)],
    words(caution, page),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

type Row = readonly [label: string, text: string];

function figuresOf(lens: LensDocument): readonly Row[] {
  const { pupilMagnification: P, coverage, maxAperture: N, frontEnlargement, intervals } = lens;
  return [
    ['Focal length', length(lens.focalLength, intervals.focalLength)],
    ['Flange distance', `${length(lens.flangeDistance, intervals.flangeDistance)}, lens seat to film at infinity`],
    ...(P === null ? [] : [['Pupil magnification', measured(P, (value) => plainNumber(value, 3))] as const]),
    ...(N === null ? [] : [['Widest stop', `f/${measured(N, (value) => plainNumber(value, 2))}`] as const]),
    ...(coverage === null
      ? []
      : [
          [
            'Image circle',
            `${measured(coverage, (value) => plainNumber(value, 0))} mm at ${scale(coverage.at)}`,
          ] as const,
        ]),
    ...(frontEnlargement === null
      ? []
      : [['Front group', `enlarges the hole ${plainNumber(frontEnlargement, 3)} times`] as const]),
    ...(N === null || frontEnlargement === null
      ? []
      : [
          [
            'Hole for f/16',
            `${mm(round(lens.focalLength / 16 / frontEnlargement, 1))}, for a stop of your own`,
          ] as const,
        ]),
  ];
}

const predicted = ({ magnification: m, distance, interval }: LensDocument['predictions'][number]): Row => [
  `At ${scale(m)}`,
  length(distance, interval),
];

const round = (value: number, decimals: number): number => Math.round(value * 10 ** decimals) / 10 ** decimals;

const length = (value: number, interval: number): string => `${value.toFixed(2)} ± ${interval.toFixed(2)} mm`;

const measured = ({ value, interval }: Measured, print: (value: number) => string): string =>
  interval === null ? `${print(value)}, of one reading` : `${print(value)} ± ${print(interval)}`;

function rows(lines: readonly Row[], { width }: Page): readonly string[] {
  const wide = Math.max(...lines.map(([label]) => label.length)) + INDENT.length + 2;
  return lines.flatMap(([label, text]) =>
    wrap(text, width - wide).map((line, i) => `${INDENT}${i === 0 ? label : ''}`.padEnd(wide) + line),
  );
}

const INDENT = '  ';

/** Columns of the strip on each side of the line. */
const HALF = 17;

/**
 * Each reading with its distance from the line, drawn to scale:
 *
 *     row     at  distance  residual  -0.4 mm                0                0.4 mm
 *       1    1:6    231.9     +0.12  |                       |    o                 |
 */
function residualStrip({ residuals, outliers }: LensDocument, page: Page): readonly string[] {
  const most = reach(Math.max(...residuals.map(({ residual }) => Math.abs(residual))));
  const ends = `${`-${mm(most)}`.padEnd(HALF + 1)}0${mm(most).padStart(HALF + 1)}`;
  const head = `${'row'.padStart(5)}${'at'.padStart(10)}${'distance'.padStart(11)}${'residual'.padStart(11)}  ${ends}`;
  const ordered = [...residuals].sort((a, b) => a.magnification - b.magnification);
  return [
    page.colour.faint(head),
    ...ordered.map(({ row, magnification: m, distance, residual }) => {
      const strip = [...`|${' '.repeat(HALF)}:${' '.repeat(HALF)}|`];
      const far = outliers.includes(row);
      strip[1 + HALF + Math.round((residual / most) * HALF)] = far ? 'X' : 'o';
      const figures = `${String(row).padStart(5)}${scale(m).padStart(10)}${distance.toFixed(2).padStart(11)}${signed(residual).padStart(11)}`;
      return `${figures}  ${strip.join('')}${far ? page.colour.warning(' outlier') : ''}`;
    }),
  ];
}

const signed = (value: number): string => {
  const text = value.toFixed(2);
  return Number(text) === 0 ? '0.00' : value > 0 ? `+${text}` : text;
};

/** A figure to end a scale with, no less than a hundredth. */
function reach(most: number): number {
  const decade = 10 ** Math.floor(Math.log10(Math.max(most, 0.01)));
  return [1, 2, 3, 4, 5, 6, 8, 10].map((step) => step * decade).find((end) => end >= most - 1e-12) ?? 10 * decade;
}

function remarks(list: readonly LensRemark[], page: Page): readonly string[] {
  return list.flatMap(({ level, message, hint }) => [
    ...wrap(`${level}: ${message}`, page.width).map((line, i) =>
      i === 0 ? line.replace(level, page.colour[level](level)) : line,
    ),
    ...(hint === '' ? [] : wrap(hint, page.width - 4).map((line) => `    ${line}`)),
  ]);
}

function assumptions(lens: LensDocument): string {
  const { correlation, standardErrors, residualStandardDeviation, outlierTest, weighted } = lens;
  return [
    `Least squares of the distance on the magnification, ${weighted ? 'each reading weighed by the uncertainty that was stated of it' : 'all readings alike'};`,
    `errors from the scatter (${plainNumber(residualStandardDeviation, 3)} mm, ${degrees(lens.readings - 2)}, Student's t).`,
    `Standard errors ${plainNumber(standardErrors.focalLength, 3)} mm of the focal length and ${plainNumber(standardErrors.flangeDistance, 3)} mm of the flange distance, correlation ${plainNumber(correlation, 3)}: what is too much in one is too little in the other, so the place of the film at a working magnification (--at) is known better than either.`,
    outlierTest.critical === null
      ? 'With three readings none can be tested for an outlier.'
      : `Outliers by ${outlierTest.name}: ${lens.outliers.length === 0 ? 'none' : `reading ${lens.outliers.join(', ')}`}.`,
    ...(outlierTest.without === null
      ? []
      : [
          `Without ${lens.outliers.length === 1 ? 'it' : 'them'} the focal length would be ${plainNumber(outlierTest.without.focalLength, 2)} mm and the flange distance ${plainNumber(outlierTest.without.flangeDistance, 2)} mm (standard errors ${plainNumber(outlierTest.without.standardErrors.focalLength, 3)} and ${plainNumber(outlierTest.without.standardErrors.flangeDistance, 3)} mm).`,
        ]),
  ].join(' ');
}

const degrees = (count: number): string => `${count} ${count === 1 ? 'degree' : 'degrees'} of freedom`;

/** Common practice, no source. */
const CAUTION =
  "Caution: some old lenses have thoriated glass, often turned yellow; do not keep one at the eye or in a pocket, and never grind or break it. A machine that a lens comes out of holds mains parts and capacitors that stay charged after the plug is out: follow its maker's instructions and the rules where you are, or have it opened by someone who knows it.";

const words = (text: string, { width }: Page): readonly string[] => wrap(text, width - 2).map((line) => `  ${line}`);
