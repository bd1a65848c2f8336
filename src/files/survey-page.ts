import type { Assumption, LensSurveyed, SurveyDocument, SurveyPair } from '../model/survey.js';
import { nearestText } from '../units/nearest-text.js';
import { fNumber, magnification, plainNumber } from '../units/print.js';
import type { Colour } from './plan-page.js';
import { type Column, table, wrap } from './text-layout.js';

interface SurveyPageGiven {
  readonly width: number;
  readonly colour: Colour;
  /** Whether the pairs stand in an order that goes across the lenses: each line then names its lens. */
  readonly acrossLenses: boolean;
}

const INDENT = '  ';

const LENS = 'Lens';
const SUBJECT = 'subject, m';

const columns: readonly Column[] = [
  { title: LENS, align: 'left' },
  { title: 'format', align: 'left' },
  { title: 'covers', align: 'left' },
  { title: 'reach', align: 'right' },
  { title: 'made for', align: 'right' },
  { title: SUBJECT, align: 'right' },
  { title: 'travel', align: 'right' },
  { title: 'closed', align: 'right' },
  { title: 'kg', align: 'right' },
  { title: 'sheets', align: 'right' },
];

/** The survey as a page for a person at a terminal. Ends with a line break. */
export function surveyPage(survey: SurveyDocument, { width, colour, acrossLenses }: SurveyPageGiven): string {
  const { lenses, pairs } = survey;
  // under the name of its lens a line has room for the distance of the subject
  const shown = columns.filter(({ title }) => title !== (acrossLenses ? SUBJECT : LENS));
  const cells = pairs.map((pair) => {
    const own = row(pair);
    return shown.map(({ title }) => own[title] ?? '');
  });
  const { titles, rows } = table(shown, cells, width - INDENT.length);
  const indented = (lines: readonly string[]) => lines.map((line) => INDENT + line);
  const head = indented(titles).map(colour.faint);
  const blocks = acrossLenses
    ? [[...head, ...indented(rows.flat())]]
    : lenses.map((lens) => [
        ...wrap(headline(lens), width).map((line, i) => (i === 0 ? colour.heading(line) : line)),
        ...wrap(assumptions(lens.name, pairs), width - INDENT.length).map((line) => INDENT + colour.faint(line)),
        ...head,
        ...pairs.flatMap(({ lens: own }, i) => (own === lens.name ? indented(rows[i] ?? []) : [])),
        ...wrap(against(lens.name, pairs), width - INDENT.length).map((line) => INDENT + colour.faint(line)),
      ]);
  const notes = remarks(survey).flatMap((line) => wrap(line, width).map(colour.faint));
  return `${[...blocks, notes].map((lines) => lines.join('\n')).join('\n\n')}\n`;
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

/** Which rules the cameras of a lens break, and for which formats. */
function against(lens: string, pairs: readonly SurveyPair[]): string {
  const own = pairs.filter((pair) => pair.lens === lens);
  const rules = [...new Set(own.flatMap(({ camera }) => camera?.broken ?? []))];
  const said = rules.map((rule) => {
    const formats = own.flatMap(({ format, camera }) => (camera?.broken.includes(rule) ? [format] : []));
    return `${rule} (${formats.join(', ')})`;
  });
  return said.length === 0 ? '' : `! ${said.join('; ')}`;
}

/** A pair's cells under the titles of their columns. */
function row(pair: SurveyPair): Readonly<Record<string, string>> {
  const { lens, format, reachable, nearest, subjectDistance, camera, assumed } = pair;
  const marks = [...(assumed.includes('holder') ? ['h'] : []), ...(isBroken(pair) ? ['!'] : [])];
  const cells = { [LENS]: lens, format: [format, ...marks].join(' '), covers: covers(pair) };
  if (camera === null || nearest === null || reachable === null) return { ...cells, reach: 'none' };
  return {
    ...cells,
    reach: nearestText(reachable),
    'made for': `${shortOf(pair) ? '<' : ''}${nearestText(nearest)}`,
    [SUBJECT]: subjectDistance === null ? '-' : plainNumber(subjectDistance / 1000, 2),
    travel: whole(camera.travel),
    closed: [camera.width, camera.height, camera.depthClosed].map(whole).join('×'),
    kg: plainNumber(camera.mass, 1),
    sheets: camera.largerThanSheet.length > 0 ? '-' : `${camera.sheets}`,
  };
}

function covers({ state, coversFrom, nearest }: SurveyPair): string {
  if (coversFrom === null) return 'unknown';
  if (state === 'covers' || coversFrom === 0) return 'all';
  if (state === 'never-covers') return 'never';
  const from = `${nearestText(coversFrom, 'up')} on`;
  return nearest !== null && coversFrom > nearest ? `(${from})` : from;
}

/** Whether the nearest focus that was asked for is not reached. */
export const shortOf = ({ asked, nearest }: SurveyPair): boolean =>
  nearest !== null && (asked === null || nearest < asked);

/** Whether more speaks against a camera than what its lens covers. */
export const isBroken = ({ camera }: SurveyPair): boolean => camera !== null && camera.broken.length > 0;

const whole = (value: number): string => plainNumber(value, 0);
const tenths = (value: number): string => plainNumber(value, 1);

/** The signs that occur, and what the columns mean. Everything is in mm where nothing else is said. */
function remarks({ pairs }: SurveyDocument): readonly string[] {
  const asked = [...new Set(pairs.map((pair) => pair.asked))];
  const [only] = asked;
  const wanted =
    asked.length === 1 && typeof only === 'number' ? `the ${magnification(only)} asked for` : 'what is asked for';
  const signs: readonly (readonly [boolean, string])[] = [
    [
      true,
      'Lengths in mm; closed: width × height × depth. covers: the magnification from which the circle covers the image, all: from infinity on.',
    ],
    [true, `reach: the nearest that two boxes could give. made for: ${wanted}, to which all figures after it belong.`],
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
    [pairs.some(isBroken), '!  plan finds a rule broken in it as it is, and says what would cure it.'],
  ];
  return signs.flatMap(([occurs, words]) => (occurs ? [words] : []));
}
