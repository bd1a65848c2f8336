import type { Point } from '../geometry/path.js';
import type { Mark, Page } from '../model/page.js';
import type { FormatSurveyed, LensSurveyed, SurveyDocument, SurveyPair, SurveyState } from '../model/survey.js';
import { wordsWidth } from '../paper/words-width.js';
import { fNumber, magnification, plainNumber } from '../units/print.js';
import { isBroken, shortOf } from './survey-page.js';

/** A page of so many lenses is still taken in at a glance, and printed on A3 still read. */
const LENSES_A_PAGE = 40;

const INK = '#33302b';
const FAINT = '#8d877c';
const RULE = { colour: '#b9b3a7', width: 0.2 };

/** Pale enough to read dark letters on; the sign in the cell says the same to whoever prints without colour. */
const TONES: Readonly<Record<SurveyState, string>> = {
  covers: '#b7cfb5',
  'covers-from': '#e6e2bd',
  'never-covers': '#e8d0cd',
  'coverage-unknown': '#ffffff',
  'does-not-close': '#dcd8d0',
};

const LEGEND: readonly (readonly [SurveyState, string])[] = [
  ['covers', 'covers the whole image from infinity on'],
  ['covers-from', 'covers from the magnification given on, nearer'],
  ['never-covers', 'covers nowhere within its reach'],
  ['coverage-unknown', 'coverage not known'],
  ['does-not-close', 'two boxes do not close'],
];

const MARGIN = 10;
const NAMES = 74;
const CELL = { width: 23, height: 11 } as const;
const HEAD = 28;
const LETTER = 2.7;
const SMALL = 2.3;
const LEGEND_ROW = 5.5;

/**
 * Formats against lenses: the cells tell by tone, sign and words what the lens covers, and how near the camera focuses.
 * The lenses in the order in which the pairs name them, on as many pages as they take.
 */
export function surveyChart({ lenses, formats, pairs }: SurveyDocument): readonly Page[] {
  const named = new Map(lenses.map((lens) => [lens.name, lens]));
  const order = [...new Set(pairs.map(({ lens }) => lens))].flatMap((name) => named.get(name) ?? []);
  const cells = new Map(pairs.map((pair) => [keyOf(pair.lens, pair.format), pair]));
  const count = Math.max(1, Math.ceil(order.length / LENSES_A_PAGE));
  return Array.from({ length: count }, (_, i) => {
    const own = order.slice(i * LENSES_A_PAGE, (i + 1) * LENSES_A_PAGE);
    return chartPage(own, { formats, cells, number: count === 1 ? '' : `, page ${i + 1} of ${count}` });
  });
}

const keyOf = (lens: string, format: string): string => JSON.stringify([lens, format]);

interface Chart {
  readonly formats: readonly FormatSurveyed[];
  readonly cells: ReadonlyMap<string, SurveyPair>;
  readonly number: string;
}

function chartPage(lenses: readonly LensSurveyed[], { formats, cells, number }: Chart): Page {
  const title = `What the lenses could become${number}`;
  const bottom = HEAD + lenses.length * CELL.height;
  const width = Math.max(2 * MARGIN + NAMES + formats.length * CELL.width, 2 * MARGIN + LEGEND_WIDTH);
  const left = (column: number) => MARGIN + NAMES + column * CELL.width;
  const top = (line: number) => HEAD + line * CELL.height;
  return {
    title,
    description: `Each row is a lens, each column a format, from the smallest to the largest: from which magnification the lens covers it, and how near a camera of two boxes would focus.`,
    width,
    height: bottom + (LEGEND.length + 4) * LEGEND_ROW + MARGIN,
    marks: [
      words({ x: MARGIN, y: MARGIN + 4 }, title, { size: 5, bold: true }),
      ...formats.flatMap((format, column) => headOf(format, left(column) + CELL.width / 2)),
      ...lenses.flatMap((lens, line) => [
        ...nameOf(lens, { x: MARGIN, y: top(line) }),
        ...formats.flatMap(({ name }, column) => {
          const pair = cells.get(keyOf(lens.name, name));
          return pair === undefined ? [] : cellOf(pair, { x: left(column), y: top(line) });
        }),
      ]),
      ...legend({ x: MARGIN, y: bottom + LEGEND_ROW }),
    ],
  };
}

/** The longest line of the legend. */
const LEGEND_WIDTH = 150;

function headOf({ name, image }: FormatSurveyed, x: number): readonly Mark[] {
  const lines = wordsWidth(name, { size: LETTER, heavy: true }) > CELL.width - 1 ? name.split(/-(?=[^-]*$)/) : [name];
  const size = `${plainNumber(image.short, 0)} × ${plainNumber(image.long, 0)}`;
  return [
    ...lines.map((line, i) =>
      words({ x, y: HEAD - 5 - (lines.length - 1 - i) * 3.3 }, fitted(line, CELL.width - 1, LETTER), {
        size: LETTER,
        bold: true,
        anchor: 'middle',
      }),
    ),
    words({ x, y: HEAD - 1.8 }, size, { size: SMALL, colour: FAINT, anchor: 'middle' }),
  ];
}

function nameOf({ name, focalLength, maxAperture, imageCircle }: LensSurveyed, { x, y }: Point): readonly Mark[] {
  const circle = imageCircle === null ? 'circle not known' : `circle ${plainNumber(imageCircle, 0)}`;
  const facts = `f ${plainNumber(focalLength, 1)}, ${fNumber(maxAperture)}, ${circle}`;
  return [
    {
      kind: 'line',
      points: [
        { x, y: y + CELL.height },
        { x: x + NAMES, y: y + CELL.height },
      ],
      stroke: RULE,
    },
    words({ x, y: y + 4.6 }, fitted(name, NAMES - 3, LETTER), { size: LETTER }),
    words({ x, y: y + 8.6 }, facts, { size: SMALL, colour: FAINT }),
  ];
}

function cellOf(pair: SurveyPair, { x, y }: Point): readonly Mark[] {
  const { width, height } = CELL;
  const { state, coversFrom, reachable, camera } = pair;
  const middle = { x: x + 3.4, y: y + height / 2 };
  const from = {
    covers: 'covers',
    'covers-from': coversFrom === null ? '' : `from ${magnification(coversFrom, 'nearer')}`,
    'never-covers': 'never',
    'coverage-unknown': 'unknown',
    'does-not-close': 'no camera',
  }[state];
  const reach = reachable === null ? '' : `to ${magnification(reachable)}${shortOf(pair) ? '*' : ''}`;
  return [
    box({ x: x + 0.4, y: y + 0.4 }, { width: width - 0.8, height: height - 0.8 }, state),
    ...signOf(state, middle),
    words({ x: x + 6.4, y: y + (reach === '' ? 6.4 : 4.7) }, from, { size: SMALL }),
    words({ x: x + 6.4, y: y + 8.6 }, reach, { size: SMALL }),
    ...(isBroken(pair) ? [words({ x: x + width - 1.6, y: y + 8.8 }, '!', { ...WARNING, anchor: 'middle' })] : []),
    ...(camera !== null && camera.largerThanSheet.length > 0 ? [corner({ x: x + width - 0.4, y: y + 0.4 })] : []),
  ];
}

const box = (
  { x, y }: Point,
  { width, height }: { readonly width: number; readonly height: number },
  state: SurveyState,
): Mark => ({
  kind: 'line',
  closed: true,
  points: [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ],
  fill: TONES[state],
  stroke: { ...RULE, ...(state === 'coverage-unknown' ? { dash: [1, 0.8] as const } : {}) },
});

/** A corner cut off at the upper right: a part is larger than the sheet. */
const corner = ({ x, y }: Point): Mark => ({
  kind: 'line',
  closed: true,
  points: [
    { x, y },
    { x: x - 2.6, y },
    { x, y: y + 2.6 },
  ],
  fill: INK,
});

const WARNING = { size: 3.4, bold: true } as const;

const RADIUS = 1.7;

/** A full disc, a half one, an empty one; a question mark; a cross. */
function signOf(state: SurveyState, { x, y }: Point): readonly Mark[] {
  const stroke = { colour: INK, width: 0.35 };
  const disc = (fill: string): Mark => ({ kind: 'circle', centre: { x, y }, radius: RADIUS, fill, stroke });
  switch (state) {
    case 'covers':
      return [disc(INK)];
    case 'covers-from':
      return [disc('#ffffff'), { kind: 'line', closed: true, points: halfDisc({ x, y }), fill: INK }];
    case 'never-covers':
      return [disc('#ffffff')];
    case 'coverage-unknown':
      return [words({ x, y: y + 1.3 }, '?', { size: 4, bold: true, anchor: 'middle' })];
    case 'does-not-close':
      return [-1, 1].map(
        (side): Mark => ({
          kind: 'line',
          points: [
            { x: x - 1.3, y: y - side * 1.3 },
            { x: x + 1.3, y: y + side * 1.3 },
          ],
          stroke,
        }),
      );
  }
}

/** The lower half, as a polygon that nobody tells from an arc. */
const halfDisc = ({ x, y }: Point): readonly Point[] =>
  Array.from({ length: 13 }, (_, i) => {
    const turn = (Math.PI * i) / 12;
    return { x: x + RADIUS * Math.cos(turn), y: y + RADIUS * Math.sin(turn) };
  });

function legend({ x, y }: Point): readonly Mark[] {
  const line = (i: number) => y + i * LEGEND_ROW;
  const beside = (i: number, text: string) => words({ x: x + 10, y: line(i) + 3.3 }, text, { size: LETTER });
  const sheet = LEGEND.length;
  return [
    ...LEGEND.flatMap(([state, text], i) => [
      box({ x, y: line(i) }, { width: 8, height: 4.6 }, state),
      ...signOf(state, { x: x + 4, y: line(i) + 2.3 }),
      beside(i, text),
    ]),
    corner({ x: x + 5.3, y: line(sheet) + 1 }),
    beside(sheet, 'a part is larger than the sheet'),
    words({ x: x + 4, y: line(sheet + 1) + 3.6 }, '!', { ...WARNING, anchor: 'middle' }),
    beside(sheet + 1, 'a design of this pair would break a rule as it is'),
    words({ x: x + 4, y: line(sheet + 2) + 3.6 }, 'to', { size: SMALL, anchor: 'middle' }),
    beside(sheet + 2, 'the nearest that two boxes could focus; * that is not as near as was asked for'),
  ];
}

interface Look {
  readonly size: number;
  readonly bold?: true;
  readonly colour?: string;
  readonly anchor?: 'start' | 'middle' | 'end';
}

const words = (at: Point, text: string, { size, bold, colour = INK, anchor = 'start' }: Look): Mark => ({
  kind: 'words',
  at,
  text,
  size,
  anchor,
  colour,
  ...(bold ? { bold } : {}),
});

/** A line cut to a width, with three points where something is cut off. */
function fitted(text: string, width: number, size: number): string {
  if (wordsWidth(text, { size, heavy: false }) <= width) return text;
  const letters = [...text];
  while (letters.length > 1 && wordsWidth(`${letters.join('')}...`, { size, heavy: false }) > width) letters.pop();
  return `${letters.join('').trimEnd()}...`;
}
