import type { Finding } from '../model/finding.js';
import { rules } from '../model/rules.js';
import type { Assumption, CameraSurveyed, LensSurveyed, SurveyDocument, SurveyPair } from '../model/survey.js';
import { fNumber, magnification, plainNumber } from '../units/print.js';
import type { Colour } from './plan-page.js';
import { type Column, GAP, table, wrap } from './text-layout.js';

interface SurveyPageGiven {
  readonly width: number;
  readonly colour: Colour;
  /** Whether the pairs stand in an order that goes across the lenses: each line then names its lens. */
  readonly acrossLenses: boolean;
}

const INDENT = '  ';

const LENS = 'Lens';
const SUBJECT = 'at, m';
const TRAVEL = 'travel';
/** What a narrow page goes without, the first of them first: the table for spreadsheets has it all the same. */
const SPARED: readonly string[] = [SUBJECT, TRAVEL];

const columns: readonly Column[] = [
  { title: LENS, align: 'left' },
  { title: 'format', align: 'left' },
  { title: 'covers', align: 'left' },
  { title: 'reach', align: 'right' },
  { title: 'for', align: 'right' },
  { title: SUBJECT, align: 'right' },
  { title: TRAVEL, align: 'right' },
  { title: 'closed', align: 'right' },
  { title: 'kg', align: 'right' },
  { title: 'sheets', align: 'right' },
];

/** What is said of a survey, part by part, for whoever has better means to set it than a terminal: a line names its lens. */
export interface SurveyWords {
  readonly columns: readonly Pick<Column, 'title' | 'align'>[];
  /** The cells of each pair, in the order of the pairs. */
  readonly rows: readonly (readonly string[])[];
  /** Of each lens what is known, what was taken for granted, and which rules its cameras would break. */
  readonly lenses: readonly {
    readonly headline: string;
    readonly assumed: string;
    readonly against: readonly string[];
  }[];
  /** What is odd about the lists and the lenses. */
  readonly odd: readonly Finding[];
  readonly notes: readonly string[];
}

export const surveyWords = (survey: SurveyDocument): SurveyWords => ({
  columns,
  rows: survey.pairs.map(row).map((own) => columns.map(({ title }) => own[title] ?? '')),
  lenses: survey.lenses.map((lens) => ({
    headline: headline(lens),
    assumed: assumptions(lens.name, survey.pairs),
    against: against(lens.name, survey.pairs),
  })),
  odd: oddities(survey, true),
  notes: [...assumedOfAll(survey), ...remarks(survey, columns)],
});

/** The survey as a page for a person at a terminal. Ends with a line break. */
export function surveyPage(survey: SurveyDocument, { width, colour, acrossLenses }: SurveyPageGiven): string {
  const { lenses, pairs } = survey;
  // under the name of its lens a line has room for the distance of the subject
  const all = columns.filter(({ title }) => title !== (acrossLenses ? SUBJECT : LENS));
  const cellsOfPairs = pairs.map(row);
  const shown = fitting(all, cellsOfPairs, width - INDENT.length);
  const cells = cellsOfPairs.map((own) => shown.map(({ title }) => own[title] ?? ''));
  const { titles, rows } = table(shown, cells, width - INDENT.length);
  const indented = (lines: readonly string[]) => lines.map((line) => INDENT + line);
  const head = indented(titles).map(colour.faint);
  const blocks = acrossLenses
    ? [[...head, ...indented(rows.flat())]]
    : lenses.map((lens) => [
        ...wrap(headline(lens), width).map((line, i) => (i === 0 ? colour.heading(line) : line)),
        ...wrap(assumptions(lens.name, pairs), width - INDENT.length).map((line) => INDENT + colour.faint(line)),
        ...lens.findings.flatMap((finding) => told(finding, { width, colour })),
        ...head,
        ...pairs.flatMap(({ lens: own }, i) => (own === lens.name ? indented(rows[i] ?? []) : [])),
        ...against(lens.name, pairs).flatMap((said) =>
          wrap(said, width - INDENT.length).map((line) => INDENT + colour.faint(line)),
        ),
      ]);
  const odd = oddities(survey, acrossLenses).flatMap((finding) => told(finding, { width, colour }));
  const notes = [...assumedOfAll(survey), ...remarks(survey, shown)].flatMap((line) =>
    wrap(line, width).map(colour.faint),
  );
  return `${[...blocks, odd, notes]
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

type Row = Readonly<Record<string, string>>;

function fitting(all: readonly Column[], rows: readonly Row[], width: number): readonly Column[] {
  let shown = all;
  for (const spared of SPARED) {
    if (tableWidth(shown, rows) <= width) break;
    shown = shown.filter(({ title }) => title !== spared);
  }
  return shown;
}

const tableWidth = (shown: readonly Column[], rows: readonly Row[]): number =>
  shown.reduce(
    (sum, { title }) => sum + Math.max(title.length, ...rows.map((own) => (own[title] ?? '').length)),
    GAP * (shown.length - 1),
  );

/** What is odd about the lists; where the lenses have no blocks of their own, about each of them, too. */
function oddities({ lists, lenses }: SurveyDocument, acrossLenses: boolean): readonly Finding[] {
  const named = (name: string) => (finding: Finding) => ({ ...finding, message: `${name}: ${finding.message}` });
  return [
    ...lists.flatMap(({ file, findings }) => findings.map(named(file))),
    ...(acrossLenses ? lenses.flatMap(({ name, findings }) => findings.map(named(name))) : []),
  ];
}

function told(
  { level, message, hint = '' }: Finding,
  { width, colour }: Pick<SurveyPageGiven, 'width' | 'colour'>,
): readonly string[] {
  return wrap(`${level}: ${message} ${hint}`, width - INDENT.length).map(
    (line, i) => INDENT + (i === 0 ? line.replace(level, colour[level](level)) : line),
  );
}

/** What nobody said of the formats. */
function assumedOfAll({ formats }: SurveyDocument): readonly string[] {
  const own = formats.filter(({ imageAssumed }) => imageAssumed);
  if (own.length === 0) return [];
  const images = own.map(({ name, image }) => `${tenths(image.short)} × ${tenths(image.long)} (${name})`);
  return [
    `Assumed: an image of ${images.join(', ')}, the nominal size less the rebate of sheet film; where a frame of yours exposes more or less, write image.`,
  ];
}

function headline({ name, focalLength, flangeDistance, maxAperture, imageCircle }: LensSurveyed): string {
  const circle = imageCircle === null ? 'image circle not known' : `image circle ${tenths(imageCircle)} at infinity`;
  return `${name}: f ${tenths(focalLength)}, flange distance ${tenths(flangeDistance)}, ${fNumber(maxAperture)}, ${circle}`;
}

const ASSUMED: Readonly<Record<Assumption, string>> = {
  flangeDistance: 'flange distance (as long as f)',
  maxAperture: 'widest stop (f/8)',
  barrel: 'barrel (a stand-in of f/N across)',
  holder: 'holder (home-made)',
};

/** What nobody said of a lens; of its holders the lines themselves speak. */
function assumptions(lens: string, pairs: readonly SurveyPair[]): string {
  const own = pairs.find((pair) => pair.lens === lens)?.assumed.filter((key) => key !== 'holder') ?? [];
  return own.length === 0 ? '' : `Assumed: ${own.map((key) => ASSUMED[key]).join(', ')}.`;
}

/** Which rules the cameras of a lens break, for which formats: those that stand, and those that hang on what was assumed. */
function against(lens: string, pairs: readonly SurveyPair[]): readonly string[] {
  const own = pairs.filter((pair) => pair.lens === lens);
  const broken = rulesOf(own, (camera) => camera.broken);
  const open = rulesOf(own, (camera) => camera.brokenAsAssumed);
  return [
    ...(broken === '' ? [] : [`! ${broken}`]),
    ...(open === '' ? [] : [`Not judged before the assumed is measured: ${open}.`]),
  ];
}

function rulesOf(own: readonly SurveyPair[], list: (camera: CameraSurveyed) => CameraSurveyed['broken']): string {
  const cameras = own.flatMap(({ format, camera }) => (camera === null ? [] : [{ format, ids: list(camera) ?? [] }]));
  const ids = [...new Set(cameras.flatMap((camera) => camera.ids))];
  return ids
    .map((id) => {
      const formats = cameras.flatMap(({ format, ids: all }) => (all.includes(id) ? [format] : []));
      return `${id}, ${MET.get(id)} (${formats.length === own.length && own.length > 1 ? 'every format' : formats.join(', ')})`;
    })
    .join('; ');
}

/** What the builder would meet where a rule is broken. */
const MET: ReadonlyMap<string, string> = new Map(rules.map(({ id, protects }) => [id, protects]));

/** A pair's cells under the titles of their columns. */
function row(pair: SurveyPair): Row {
  const { lens, format, reachable, nearest, subjectDistance, camera, assumed } = pair;
  const marks = [...(assumed.includes('holder') ? ['h'] : []), ...(isBroken(pair) ? ['!'] : [])];
  const cells = { [LENS]: lens, format: [format, ...marks].join(' '), covers: covers(pair) };
  if (camera === null || nearest === null || reachable === null) return { ...cells, reach: 'none' };
  return {
    ...cells,
    reach: magnification(reachable),
    for: `${shortOf(pair) ? '<' : ''}${magnification(nearest)}`,
    [SUBJECT]: subjectDistance === null ? '-' : plainNumber(subjectDistance / 1000, 2),
    [TRAVEL]: whole(camera.travel),
    closed: [camera.width, camera.height, camera.depthClosed].map(whole).join('×'),
    kg: plainNumber(camera.mass, 1),
    sheets: camera.largerThanSheet.length > 0 ? '-' : `${camera.sheets}`,
  };
}

function covers({ state, coversFrom, nearest }: SurveyPair): string {
  if (coversFrom === null) return 'unknown';
  if (state === 'covers' || coversFrom === 0) return 'all';
  if (state === 'never-covers') return 'never';
  const from = `${magnification(coversFrom, 'nearer')} on`;
  return nearest !== null && coversFrom > nearest ? `(${from})` : from;
}

/** Whether the nearest focus that was asked for is not reached. */
export const shortOf = ({ asked, nearest }: SurveyPair): boolean =>
  nearest !== null && (asked === null || nearest < asked);

/** Whether more speaks against a camera than what its lens covers. */
export const isBroken = ({ camera }: SurveyPair): boolean => (camera?.broken ?? []).length > 0;

const whole = (value: number): string => plainNumber(value, 0);
const tenths = (value: number): string => plainNumber(value, 1);

/** The signs that occur, and what the columns mean. Everything is in mm where nothing else is said. */
function remarks({ pairs, lists }: SurveyDocument, shown: readonly Column[]): readonly string[] {
  const asked = [...new Set(pairs.map((pair) => pair.asked))];
  const [only] = asked;
  const silent = lists.filter(({ nearestAssumed }) => nearestAssumed);
  const usual = `${magnification(only ?? 0)}, taken since ${lists.length === 1 ? 'the list has' : 'the lists have'} no focus.nearest`;
  const wanted =
    asked.length !== 1 || typeof only !== 'number'
      ? 'what is asked for'
      : silent.length === lists.length
        ? usual
        : `the ${magnification(only)} asked for`;
  const signs: readonly (readonly [boolean, string])[] = [
    [
      true,
      'Lengths in mm; closed: width × height × depth. covers: the magnification from which the circle covers the image, all: from infinity on.',
    ],
    [
      true,
      `reach: the nearest that two boxes could give. for: what the camera is made for, ${wanted}; all figures after it belong to it.`,
    ],
    [shown.some(({ title }) => title === SUBJECT), 'at, m: how far the subject then stands from the lens.'],
    [pairs.some(shortOf), '<  what is asked for is not reached: made for the nearest that is.'],
    [
      pairs.some((pair) => covers(pair).startsWith('(')),
      '(1:3 on)  it would cover that near, and could reach it, but is made for less.',
    ],
    [
      pairs.some(({ camera }) => camera === null),
      'none  two boxes round this lens do not close: it stands too near the film for this format and holder.',
    ],
    [
      pairs.some(({ state }) => state === 'coverage-unknown'),
      'unknown  nobody said how large the image circle is: look at a bright window on the glass.',
    ],
    [pairs.some(({ assumed }) => assumed.includes('holder')), 'h  with a paper holder cut from the same sheet.'],
    [
      pairs.some(({ camera }) => camera !== null),
      'sheets: by area, at least; holders that are cut too are not counted.',
    ],
    [
      pairs.some(({ camera }) => camera !== null && camera.largerThanSheet.length > 0),
      '-  a part is larger than the sheet: take a larger one.',
    ],
    [
      pairs.some(({ state }) => state === 'never-covers'),
      'never  the circle covers the image nowhere within reach; what else speaks against that camera was not looked at.',
    ],
    [
      pairs.some(isBroken),
      '!  a design of this pair would break a rule as it is; plan on such a design says what would cure it.',
    ],
  ];
  return signs.flatMap(([occurs, words]) => (occurs ? [words] : []));
}
