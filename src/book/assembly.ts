import type { Block } from '../paper/blocks.js';
import { words } from '../paper/blocks.js';
import { figure } from '../paper/figure.js';
import {
  BOX,
  caution,
  heading,
  INK,
  kept,
  note,
  numbered,
  onOnePage,
  paragraph,
  subheading,
  TEXT,
  tickBox,
  tickList,
} from '../paper/prose.js';
import { TEXT_WIDTH } from '../paper/sheet-size.js';
import { table } from '../paper/table.js';
import { wordsWidth } from '../paper/words-width.js';
import type { Chapter } from './chapter.js';
import type { BookStep, StepPart } from './given.js';

/** Each step with its drawing, what comes in, what to do and what to check. */
export const assembly = (steps: readonly BookStep[]): Chapter => ({
  title: 'Putting it together',
  blocks: [
    paragraph([
      'Try every joint dry before you glue it. Glue thinly, wipe off what comes out, and make the checks while the glue is still wet: a box that sets out of square stays so.',
      'Before each step lay its parts ready and tick them. What has a number is cut or printed; what has none is bought. Mind the order of what you do: it is numbered.',
    ]),
    ...table(
      [
        { title: '', width: BOX },
        { title: 'Step', align: 'right' },
        { title: 'What is done' },
        { title: 'Cut and printed parts that come in', width: 52 },
      ],
      steps.map(({ number, title, parts }) => [
        TO_TICK,
        `${number}`,
        title,
        parts.flatMap(({ id }) => id ?? []).join(', '),
      ]),
    ),
    ...steps.flatMap((step) => onOnePage(blocksOf(step))),
  ],
});

function blocksOf({ number, title, words: told, parts, borrowed, drawing }: BookStep): readonly Block[] {
  const cautions = told.flatMap(({ cautions: own = [] }) => own);
  const acts = told.flatMap(({ acts: own }) => own);
  const checks = told.flatMap(({ checks: own = [] }) => own);
  const list = partsList(parts);
  return [
    // the drawing stands with its title and with the list of what it shows
    {
      ...kept([
        heading(`Step ${number}. ${title}`),
        ...(drawing === null ? [] : [figure(drawing, { caption: '' })]),
        ...(list === null ? [] : [list]),
      ]),
      above: 9,
      withNext: true,
    },
    ...(borrowed.length === 0
      ? []
      : [
          note(
            `Have at hand too, without glue: ${borrowed.map(({ part }) => `${part.id} (${part.name})`).join(', ')}.`,
          ),
        ]),
    ...(cautions.length === 0 ? [] : [caution(cautions)]),
    ...numbered(acts),
    ...(checks.length === 0 ? [] : [subheading('Check before you go on'), ...tickList(checks)]),
  ];
}

const TO_TICK: Block = { height: BOX + 0.6, marks: ({ x, y }) => [tickBox({ x, y: y + 0.5 })] };

const COLUMNS = 2;
const GAP = 6;

/** Boxes to tick as the parts are laid ready, side by side. */
function partsList(parts: readonly StepPart[]): Block | null {
  if (parts.length === 0) return null;
  const width = (TEXT_WIDTH - GAP * (COLUMNS - 1)) / COLUMNS;
  const cells = parts.map(({ id, name, count }): Block => {
    const number = `${count} ×${id === null ? '' : ` ${id}`}`;
    const heavy = words(number, { size: TEXT, colour: INK, width, bold: true });
    const left = BOX + 3 + wordsWidth(`${number} `, { size: TEXT, heavy: true });
    const text = words(name, { size: TEXT, colour: INK, width: width - left });
    return {
      height: text.height,
      marks: ({ x, y }) => [
        tickBox({ x, y: y + 0.72 }),
        ...heavy.marks({ x: x + BOX + 3, y }),
        ...text.marks({ x: x + left, y }),
      ],
    };
  });
  const rows = Math.ceil(cells.length / COLUMNS);
  const columns = Array.from({ length: COLUMNS }, (_, c) => cells.slice(c * rows, (c + 1) * rows));
  const heightOf = (column: readonly Block[]) => column.reduce((sum, { height }) => sum + height + 0.6, 0);
  return {
    height: Math.max(...columns.map(heightOf)),
    above: 3,
    marks: ({ x, y }) =>
      columns.flatMap((column, c) => {
        let top = y;
        return column.flatMap((cell) => {
          const own = cell.marks({ x: x + c * (width + GAP), y: top });
          top += cell.height + 0.6;
          return own;
        });
      }),
  };
}
