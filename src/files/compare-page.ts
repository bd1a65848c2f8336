import type { BuiltCamera } from '../model/built-camera.js';
import type { ChangedFigure, CompareDocument, HolderInOldBoxes, Loss } from '../model/compare.js';
import { magnification, mm, plainNumber } from '../units/print.js';
import { type Colour, layersText } from './plan-page.js';
import { type Column, table, wrap } from './text-layout.js';

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

const INDENT = '  ';

export const compareJson = (document: CompareDocument): string => `${JSON.stringify(document, null, 2)}\n`;

/** What is said of two cameras, part by part: a terminal and a screen set the same. */
export interface CompareWords {
  /** `Heron 1a2b3c4d to Heron 5e6f7a8b` */
  readonly title: string;
  /** Name of the figure, its value before and after. */
  readonly figures: Rows;
  /** Id of the part, what it is, why it is cut again. */
  readonly recut: Rows;
  readonly kept: readonly string[];
  readonly lost: readonly Loss[];
  /** Holder, farthest and nearest focus, what is put under. */
  readonly inOldBoxes: readonly (readonly [string, string, string, string])[];
}

interface Rows {
  readonly heading: string;
  readonly rows: readonly (readonly [string, string, string])[];
  /** What is said where there are none. */
  readonly none: string;
}

interface Cameras {
  readonly before: BuiltCamera;
  readonly after: BuiltCamera;
}

export function compareWords(document: CompareDocument, { before, after }: Cameras): CompareWords {
  const named = ({ plan }: BuiltCamera) => `${plan.name} ${plan.revision}`;
  const { changed, recut } = document;
  const nameOf = (id: string) => after.parts.find((part) => part.id === id)?.name ?? '';
  return {
    title: `${named(before)} to ${named(after)}`,
    figures: {
      heading: changed.length === 0 ? 'Figures' : 'Figures that change',
      rows: changed.map((one) => [one.figure, shown(one.before), shown(one.after)]),
      none: 'All figures are the same.',
    },
    recut: {
      heading: recut.length === 0 ? 'Cut again' : `Cut again: ${recut.length} of ${after.parts.length} kinds of parts`,
      rows: recut.map((id) => [id, nameOf(id), document.why[id] ?? '']),
      none: 'Nothing: every part is there already.',
    },
    kept: keptWords(document),
    lost: document.lost,
    inOldBoxes: document.inOldBoxes.map((one) => [
      one.holder,
      one.focuses ? (one.farthest > 0 ? magnification(one.farthest, 'nearer') : 'infinity') : 'no focus',
      one.focuses ? magnification(one.nearest) : '',
      underText(one),
    ]),
  };
}

/** What changed from one camera to another, as a page for a person at a terminal. Ends with a line break. */
export function comparePage(document: CompareDocument, cameras: Cameras, page: Page): string {
  const { colour } = page;
  const words = compareWords(document, cameras);
  const sections = [
    [colour.heading(words.title)],
    figureTable(words, page),
    recutTable(words, page),
    [colour.heading('Kept'), ...words.kept.flatMap((text) => sentence(text, page))],
    lostLines(words, page),
    boxTable(words, page),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function rowsUnder(
  heading: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  { width, colour }: Page,
): readonly string[] {
  const { titles, rows: lines } = table(columns, rows, width - INDENT.length);
  return [
    colour.heading(heading),
    ...titles.map((line) => `${INDENT}${colour.faint(line)}`),
    ...lines.flat().map((line) => `${INDENT}${line}`),
  ];
}

const sentence = (text: string, { width }: Page): readonly string[] =>
  wrap(text, width - INDENT.length).map((line) => `${INDENT}${line}`);

const shown = (value: ChangedFigure['before']): string =>
  value === null
    ? 'none'
    : typeof value === 'number'
      ? plainNumber(value, 3)
      : typeof value === 'boolean'
        ? value
          ? 'yes'
          : 'no'
        : value === ''
          ? 'none'
          : value;

function figureTable({ figures }: CompareWords, page: Page): readonly string[] {
  return rowsOrNone(
    figures,
    [
      { title: 'figure', align: 'left', names: true },
      { title: 'before', align: 'right' },
      { title: 'after', align: 'right' },
    ],
    page,
  );
}

function recutTable({ recut }: CompareWords, page: Page): readonly string[] {
  return rowsOrNone(
    recut,
    [
      { title: 'part', align: 'left' },
      { title: 'what it is', align: 'left' },
      { title: 'why', align: 'left' },
    ],
    page,
  );
}

const rowsOrNone = ({ heading, rows, none }: Rows, columns: readonly Column[], page: Page): readonly string[] =>
  rows.length === 0 ? [page.colour.heading(heading), `${INDENT}${none}`] : rowsUnder(heading, columns, rows, page);

function keptWords({ keeps, sawn, engraved, glued, left, renamed }: CompareDocument): readonly string[] {
  const moved = Object.entries(renamed).map(([id, was]) => `${id} was ${was}`);
  return [
    keeps.length === 0 ? 'No part of the earlier camera fits the later one.' : `${keeps.join(', ')}.`,
    ...(sawn.length === 0
      ? []
      : [`Of a camera that is glued up ${sawn.join(', ')} stays too: saw its opening out to the new size.`]),
    ...(engraved.length === 0
      ? []
      : [
          `Of these, ${engraved.join(', ')} ${engraved.length === 1 ? 'bears' : 'bear'} other lines or words: scribe them by hand, or cut ${engraved.length === 1 ? 'it' : 'them'} again with tailboard part.`,
        ]),
    ...(glued.length === 0 ? [] : [gluedWords('what is cut again', glued)]),
    ...(moved.length === 0 ? [] : [`Under another mark than before: ${moved.join(', ')}.`]),
    ...(left.length === 0 ? [] : [`No longer needed: ${left.join(', ')}.`]),
  ];
}

/** What becomes of parts that are glued to others which are made again. */
export const gluedWords = (to: string, glued: readonly string[]): string =>
  `Glued to ${to}: ${glued.join(', ')}. Of a camera that is glued up they go with it: cut them too, or part the joint.`;

function lostLines({ lost }: CompareWords, page: Page): readonly string[] {
  if (lost.length === 0) return [];
  return [
    page.colour.heading('Lost'),
    ...lost.flatMap(({ what, why }) => [
      `${INDENT}${page.colour.warning(what)}`,
      ...sentence(`  ${why}`, page).map((line) => `${INDENT}${line}`),
    ]),
  ];
}

function boxTable({ inOldBoxes }: CompareWords, page: Page): readonly string[] {
  return rowsUnder(
    'In the boxes as they are',
    [
      { title: 'holder', align: 'left' },
      { title: 'farthest', align: 'right' },
      { title: 'nearest', align: 'right' },
      { title: 'what is put under', align: 'left' },
    ],
    inOldBoxes,
    page,
  );
}

function underText({ spacer }: HolderInOldBoxes): string {
  if (spacer.under === 'none') return 'nothing';
  return `the ${spacer.under}: ${mm(spacer.thickness)}, ${layersText(spacer)}`;
}
