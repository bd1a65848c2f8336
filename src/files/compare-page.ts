import type { BuiltCamera } from '../model/built-camera.js';
import type { ChangedFigure, CompareDocument, HolderInOldBoxes } from '../model/compare.js';
import { magnification, mm, plainNumber } from '../units/print.js';
import { type Colour, layersText } from './plan-page.js';
import { type Column, table, wrap } from './text-layout.js';

interface Page {
  readonly width: number;
  readonly colour: Colour;
}

const INDENT = '  ';

export const compareJson = (document: CompareDocument): string => `${JSON.stringify(document, null, 2)}\n`;

/** What changed from one camera to another, as a page for a person at a terminal. Ends with a line break. */
export function comparePage(
  document: CompareDocument,
  { before, after }: { readonly before: BuiltCamera; readonly after: BuiltCamera },
  page: Page,
): string {
  const { colour } = page;
  const named = ({ plan }: BuiltCamera) => `${plan.name} ${plan.revision}`;
  const title = `${colour.heading(`${named(before)} to ${named(after)}`)}`;
  const sections = [
    [title],
    figureTable(document.changed, page),
    recutTable(document, after, page),
    keptLines(document, page),
    lostLines(document, page),
    boxTable(document.inOldBoxes, page),
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

function figureTable(changed: CompareDocument['changed'], page: Page): readonly string[] {
  if (changed.length === 0) return [page.colour.heading('Figures'), `${INDENT}All figures are the same.`];
  return rowsUnder(
    'Figures that change',
    [
      { title: 'figure', align: 'left' },
      { title: 'before', align: 'right' },
      { title: 'after', align: 'right' },
    ],
    changed.map(({ figure, before, after }) => [figure, shown(before), shown(after)]),
    page,
  );
}

function recutTable({ recut, why }: CompareDocument, after: BuiltCamera, page: Page): readonly string[] {
  if (recut.length === 0) return [page.colour.heading('Cut again'), `${INDENT}Nothing: every part is there already.`];
  const nameOf = (id: string) => after.parts.find((part) => part.id === id)?.name ?? '';
  return rowsUnder(
    `Cut again: ${recut.length} of ${after.parts.length} kinds of parts`,
    [
      { title: 'part', align: 'left' },
      { title: 'what it is', align: 'left' },
      { title: 'why', align: 'left' },
    ],
    recut.map((id) => [id, nameOf(id), why[id] ?? '']),
    page,
  );
}

function keptLines({ keeps, engraved, glued, left, renamed }: CompareDocument, page: Page): readonly string[] {
  const moved = Object.entries(renamed).map(([id, was]) => `${id} was ${was}`);
  const said = [
    keeps.length === 0 ? 'No part of the earlier camera fits the later one.' : `${keeps.join(', ')}.`,
    ...(engraved.length === 0
      ? []
      : [
          `Of these, ${engraved.join(', ')} ${engraved.length === 1 ? 'bears' : 'bear'} other lines or words: scribe them by hand, or cut ${engraved.length === 1 ? 'it' : 'them'} again with tailboard part.`,
        ]),
    ...(glued.length === 0
      ? []
      : [
          `Glued to what is cut again: ${glued.join(', ')}. Of a camera that is glued up they go with it: cut them too, or part the joint.`,
        ]),
    ...(moved.length === 0 ? [] : [`Under another mark than before: ${moved.join(', ')}.`]),
    ...(left.length === 0 ? [] : [`No longer needed: ${left.join(', ')}.`]),
  ];
  return [page.colour.heading('Kept'), ...said.flatMap((text) => sentence(text, page))];
}

function lostLines({ lost }: CompareDocument, page: Page): readonly string[] {
  if (lost.length === 0) return [];
  return [
    page.colour.heading('Lost'),
    ...lost.flatMap(({ what, why }) => [
      `${INDENT}${page.colour.warning(what)}`,
      ...sentence(`  ${why}`, page).map((line) => `${INDENT}${line}`),
    ]),
  ];
}

function boxTable(holders: CompareDocument['inOldBoxes'], page: Page): readonly string[] {
  return rowsUnder(
    'In the boxes as they are',
    [
      { title: 'holder', align: 'left' },
      { title: 'farthest', align: 'right' },
      { title: 'nearest', align: 'right' },
      { title: 'what is put under', align: 'left' },
    ],
    holders.map((one) => [
      one.holder,
      one.focuses ? (one.farthest > 0 ? magnification(one.farthest) : 'infinity') : 'no focus',
      one.focuses ? magnification(one.nearest) : '',
      underText(one),
    ]),
    page,
  );
}

function underText({ spacer }: HolderInOldBoxes): string {
  if (spacer.under === 'none') return 'nothing';
  return `the ${spacer.under}: ${mm(spacer.thickness)}, ${layersText(spacer)}`;
}
